"""Where the difference between hip and waist goes: into side seams, centre seams, and darts or what is in their place.

All of it for one half of the body, front and back together. What a seam takes is read off between two uprights: from
its point on the hip line to its point at the waist seam. That the parts add up to the whole is arithmetic; the limits
beside them are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from draft.block import Block, DartPlan, PanelBlock
from draft.errors import DraftError
from draft.fitting.change import leaned
from draft.geometry.points import unit
from draft.shape.leg import solve
from draft.shape.waist import LARGEST_INTAKE, SMALLEST_ASKED_INTAKE, Level, Suppression, at_level
from draft.style import Darts, WaistShares
from draft.units import HAIR, at_least, at_most

LARGEST_LEAN = {"front": 25.0, "back": 110.0}  # of a centre seam: a fly lies flat only on a nearly upright front
STEEPEST_SIDE = 0.45  # of a side seam, per mm of the height from hip to waist
DART_PLACES = {1: (0.5,), 2: (0.35, 0.66)}  # of the waist line from the centre, for a method without darts there
DART_LENGTH_SHARE = 0.6  # of the height from hip to waist


def with_places(block: Block, darts: Darts) -> Block:
    """Block with places for darts that were asked for by their share where the method has none."""
    front, back = _placed(block.front, darts.front), _placed(block.back, darts.back)
    return replace(block, front=front, back=back)


def _placed(panel: PanelBlock, count: int) -> PanelBlock:
    if len(panel.darts) >= count:
        return panel
    run = panel.waist_side - panel.waist_centre
    length = DART_LENGTH_SHARE * (panel.waist_side.imag - panel.hip_side.imag)
    mouths = [panel.waist_centre + run * place for place in DART_PLACES[count]]
    return replace(panel, darts=tuple(DartPlan(mouth, mouth + 1j * unit(run) * length, 0.0) for mouth in mouths))


def difference(hips: Mapping[str, float], girth: float) -> float:
    """Half of the difference between the finished hip and a waist of `girth` mm."""
    return hips["front"] + hips["back"] - girth / 2


def with_centres(block: Block, shares: WaistShares, whole: float, drop: float) -> Block:
    """Block whose centre seams lean as the shares say, at their old lengths and hip widths."""
    if whole <= 0:
        expected = "a hip larger than the waist: here there is nothing to share out"
        raise DraftError("style.waist_shares", round(2 * whole), expected, "leave the shares out on this body")
    wanted = {"front": shares.front_centre * whole, "back": shares.back_centre * whole}
    for name, lean in wanted.items():
        most = LARGEST_LEAN[name] / whole
        if lean / whole > most + HAIR:
            raise DraftError(
                f"style.waist_shares.{name}_centre",
                getattr(shares, f"{name}_centre"),
                f"at most {at_most(most, 3)} on this body, {LARGEST_LEAN[name]:g} mm",
                "give the rest to the side seams or the darts",
            )

    def at(name: str, slant: float) -> float:
        panel: PanelBlock = getattr(leaned(block, **{name: slant}), name)
        return panel.hip_centre.real - at_level(panel, drop).centre.real

    slants = {name: solve(lambda slant, name=name: at(name, slant), lean, 0.0) for name, lean in wanted.items()}  # type: ignore[misc]
    return leaned(block, **slants)


def shared_out(
    levels: Mapping[str, Level],
    hips: Mapping[str, float],
    whole: float,
    shares: WaistShares,
    darts: Darts,
    height: float,
) -> dict[str, Suppression]:
    """Waist of both panels by the shares; `height` is that of the waist seam above the hip line.

    Raises
    ------
    DraftError
        When a seam or a dart would take too much or too little; it names the limit.
    """
    most = 2 * STEEPEST_SIDE * height / whole
    if shares.side > most + HAIR:
        expected = f"at most {at_most(most, 3)} on this body: the seam may lean {STEEPEST_SIDE:g} mm per mm"
        raise DraftError("style.waist_shares.side", shares.side, expected, "give the rest to the darts")
    found = {}
    for name, level in levels.items():
        share, centre = getattr(shares, name), getattr(shares, f"{name}_centre")
        net = hips[name] - whole * (share + centre + shares.side / 2)
        found[name] = Suppression(net, _taken(name, level, share, whole, getattr(darts, name)))
    return found


def _taken(name: str, level: Level, share: float, whole: float, count: int) -> tuple[float, ...]:
    pleats = tuple(plan.intake for plan in level.plans if plan.pleat)
    if pleats:
        return tuple(depth + share * whole / len(pleats) for depth in pleats)
    if share == 0:
        return ()
    field = f"style.waist_shares.{name}"
    if count == 0:
        expected = f"0 without darts or pleats in the {name}"
        raise DraftError(field, share, expected, f"choose darts=draft.Darts({name}=1), or give the share to the seams")
    each = share * whole / count
    low, high = (limit * count / whole for limit in (SMALLEST_ASKED_INTAKE, LARGEST_INTAKE[name]))
    if not low - HAIR <= share <= high + HAIR:
        expected = f"0 on this body, whose {count} dart(s) want {at_least(low, 3)}"
        if low <= 1:
            expected = f"0, or {at_least(low, 3)} to {at_most(min(1.0, high), 3)} for {count} dart(s) on this body"
        raise DraftError(field, share, expected, "choose a share inside these limits, or another count of darts")
    return (each,) * count


def shares_of(
    block: Block, levels: Mapping[str, Level], nets: Mapping[str, Suppression], hips: Mapping[str, float], girth: float
) -> Mapping[str, float]:
    """Where the difference went on a block, as shares; empty where hip and waist are alike.

    `levels` are the panels at the waist seam, `nets` their sewn waists, `hips` their widths without pleats.
    """
    whole = difference(hips, girth)
    if whole < SMALLEST_ASKED_INTAKE:
        return MappingProxyType({})
    found = {}
    for name, level in levels.items():
        panel: PanelBlock = getattr(block, name)
        found[f"{name}_centre"] = (panel.hip_centre.real - level.centre.real) / whole
        found[name] = (sum(nets[name].intakes) - sum(plan.intake for plan in level.plans if plan.pleat)) / whole
    return MappingProxyType({"side": 1 - sum(found.values()), **found})
