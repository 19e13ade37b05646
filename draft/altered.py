"""A draft with its alterations: those of the style before the fit, those of the block after it, in the order given."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace

from draft.alter.base import Alteration
from draft.alter.sound import unsound
from draft.block import Block
from draft.body import Body
from draft.errors import DraftError
from draft.shape.build import Garment, inside_leg_of, shell_of
from draft.shape.leg import largest
from draft.shape.shell import Shell
from draft.shape.thigh import thigh_of
from draft.style import Style
from draft.units import at_least, at_most

EXACT: Mapping[str, Callable[[Shell], float]] = {
    "thigh": thigh_of,
    "hem": lambda shell: shell.front.hem.length + shell.back.hem.length,
    "outside_leg": lambda shell: shell.front.side.length,
}
EXACT_TOL_MM = 0.01
FOLLOWS_BY_ITSELF = ("waist", "hip", "inside_leg", "outside_leg")  # targets that the altered block or style tells


def checked(alterations: Sequence[Alteration]) -> tuple[Alteration, ...]:
    """Alterations as a tuple; anything else is refused."""
    for one in alterations:
        if not isinstance(one, Alteration):
            raise DraftError("alterations", one, "alterations", "write draft.alter.sway_back(by=12), or one like it")
    return tuple(alterations)


def with_length(style: Style, body: Body, garment: Garment) -> Style:
    """Style whose inside leg is a number, so that it can be changed by a number."""
    return replace(style, leg=replace(style.leg, inside_leg=inside_leg_of(style, body, garment)))


def on_style(style: Style, alterations: Sequence[Alteration]) -> Style:
    """Style after all alterations of the style."""
    for one in alterations:
        if one.spec.own_darts and (style.waist_shares or style.darts.back_share):
            expected = "a style without waist_shares and back_share, which say what the darts take"
            raise DraftError(f"alterations.{one.name}", str(one), expected, "change the shares instead")
        try:
            style = one.on_style(style)
        except DraftError as error:
            raise _from(one, error) from error
    return style


@dataclass(frozen=True, eq=False)
class Altered:
    """Block and shell of the right half after all alterations, and the left half's shell where it differs."""

    block: Block
    shell: Shell
    left: Shell | None = None
    why: str = ""


def altered(
    block: Block, shell: Shell, body: Body, style: Style, garment: Garment, alterations: tuple[Alteration, ...]
) -> Altered:
    """Block and shell after all alterations of the block; the targets follow what they promise.

    Raises
    ------
    DraftError
        When an alteration leaves no sound block; it names the largest amount that does.
    """
    ours = [one for one in alterations if one.spec.on_block is not None]
    if not ours:
        return Altered(block, shell)

    def drawn(block: Block) -> Shell:
        return shell_of(block, body, style, garment)

    def half(side: str) -> tuple[Block, Shell]:
        mine = [one for one in ours if one.side in ("", side)]
        made = block
        for one in mine:
            if one.spec.past_knee and shell.levels["hem"] > block.levels["knee"]:
                raise DraftError(f"alterations.{one.name}", str(one), "a leg that ends below the knee", "leave it out")
            before = made
            made = _exactly(one, before, drawn) if one.spec.exact else one.on_block(before)
            _check(one, before, made)
        done = drawn(made)
        return made, replace(done, targets=_targets(shell, done, mine), floors=_floors(shell, mine))

    right, right_shell = half("right")
    one_sided = [one for one in ours if one.side]
    if not one_sided:
        return Altered(right, right_shell)
    return Altered(right, right_shell, half("left")[1], " and ".join(map(str, one_sided)))


def _exactly(one: Alteration, before: Block, drawn: Callable[[Block], Shell]) -> Block:
    """Block whose exact size changes by what was asked (secant method on the amount)."""
    size = EXACT[one.spec.exact]
    wanted = one.spec.changes.get(one.spec.exact, 1.0) * float(one.amounts["by"])
    start = size(drawn(before))

    def miss(amount: float) -> tuple[Block, float]:
        block = one.with_by(amount).on_block(before)
        return block, size(drawn(block)) - start - wanted

    low, high = 0.0, wanted
    low_miss, (block, high_miss) = -wanted, miss(wanted)
    for _ in range(12):
        if abs(high_miss) < EXACT_TOL_MM or high_miss == low_miss:
            break
        low, high, low_miss = high, high - high_miss * (high - low) / (high_miss - low_miss), high_miss
        block, high_miss = miss(high)
    return block


def _check(one: Alteration, before: Block, after: Block) -> None:
    """Refuse an alteration that leaves something unsound that was sound before it, with the largest that does not."""
    known = unsound(before)
    faults = unsound(after) - known
    if not faults:
        return
    by = float(one.amounts.get("by", 0.0))
    side = 1 if by > 0 else -1
    most = largest(lambda mm: not unsound(one.with_by(side * mm).on_block(before)) - known, abs(by))
    word = f"at most {at_most(most)}" if side > 0 else f"at least {at_least(-most)}"
    expected = f"{word} mm on this draft: beyond, {min(faults)}"
    raise DraftError(f"alterations.{one.name}.by", by, expected, "take less, and look at the next mock-up")


def _targets(before: Shell, after: Shell, ours: Sequence[Alteration]) -> Mapping[str, float]:
    found = dict(before.targets) | {name: after.targets[name] for name in FOLLOWS_BY_ITSELF if name in after.targets}
    for one in ours:
        for name in [name for name in found if name not in FOLLOWS_BY_ITSELF]:
            if name in one.promised:
                found[name] += one.promised[name]
            elif name not in one.spec.keeps and name not in ("front_crotch", "back_crotch", "crotch"):
                del found[name]  # a size that this alteration says nothing about
    return found


def _floors(before: Shell, ours: Sequence[Alteration]) -> Mapping[str, float]:
    """Least sizes that still hold: what an alteration moved without a promise is as the maker wants it."""
    kept = {}
    for name, floor in before.floors.items():
        if all(name in one.promised or name in one.spec.keeps for one in ours):
            kept[name] = floor + sum(one.promised.get(name, 0.0) for one in ours)
    return kept


def _from(one: Alteration, error: DraftError) -> DraftError:
    """Error of a style that an alteration made, told with its name."""
    field = error.field if error.field.startswith("alterations") else f"alterations.{one.name} ({error.field})"
    return DraftError(field, error.value, error.expected, error.remedy)
