"""The waist seam: its level, what the darts and the side seams take in, and its line with the darts closed.

The seam is drawn in stretches, each square to what it meets: centre seam, dart legs, side seam. Two stretches that are
square to the legs of one dart, or to two side seams, continue each other when these are sewn.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import inf

from draft.block import Block, DartPlan, PanelBlock
from draft.body import Body
from draft.dart import Dart
from draft.errors import DraftError
from draft.geometry.construct import smooth
from draft.geometry.path import Path
from draft.geometry.points import cross, cross_lines, dot, unit
from draft.shape.shell import Waist
from draft.style import Darts, StraightBand, Style, Yoke
from draft.units import HAIR, at_least, at_most

LARGEST_INTAKE = {"front": 30.0, "back": 35.0}  # one dart; common practice, no source
USUAL_INTAKE = {"front": 25.0, "back": 30.0}  # above it a cutter splits the dart
SMALLEST_INTAKE = 9.0  # the method's own darts below this are left out: not worth sewing
SMALLEST_ASKED_INTAKE = 5.0  # darts that were asked for may be smaller
MOST_DARTS = {"front": 1, "back": 2}
SMALLEST_GAP = 12.0  # between a dart and the next dart or seam
LENGTH_TOL_MM = 0.01
SHARPEST_MM = 13.0  # smallest radius of the seam beside a dart: an allowance of 10 mm still lies beside it
FOLD_RUN = 300.0  # to where the legs of a fold would meet, so that it is pressed almost parallel
PLACES = tuple(i / 16 for i in range(17))
SHORTEST_SPEED, FLAT_MM = 1e-6, 1e6


@dataclass(frozen=True, eq=False)
class Level:
    """One panel at the level where its waist seam will lie: ends of the seam, and the darts there as drawn."""

    centre: complex
    side: complex
    plans: tuple[DartPlan, ...]

    @property
    def run(self) -> float:
        """Distance from centre to side, darts open."""
        return abs(self.side - self.centre)

    @property
    def intake(self) -> float:
        """What all darts take at this level."""
        return sum(plan.intake for plan in self.plans)


@dataclass(frozen=True)
class Suppression:
    """What one panel's waist becomes: its sewn length, and the intake of each of its darts (centre first)."""

    net: float
    intakes: tuple[float, ...]


def waist_ease(block: Block, body: Body, drop: float) -> float:
    """Ease at the level of the waist seam: the waist's, growing to the hip's as the girth grows."""
    share = min(1.0, max(0.0, drop) / body.waist_to_hip)
    return block.ease["waist"] + (block.ease["hip"] - block.ease["waist"]) * share * (2 - share)


def waist_target(block: Block, body: Body, drop: float) -> float:
    """Finished girth of the waist seam: body at that level plus ease."""
    return body.girth_at(drop) + waist_ease(block, body, drop)


def at_level(panel: PanelBlock, drop: float) -> Level:
    """Panel at a level `drop` mm below the method's waist line, measured along centre seam and side seam.

    A little above it (negative) both seams and the legs of the darts run straight on.
    """
    if drop == 0:
        return Level(panel.waist_centre, panel.waist_side, panel.darts)
    if drop > 0:
        centre, side = panel.crotch.point_at(panel.crotch.length - drop), panel.side.point_at(drop)
    else:
        centre, side = panel.crotch.end - drop * panel.crotch.end_dir, panel.side.start + drop * panel.side.start_dir
    plans = []
    for plan in panel.darts:
        axis = unit(plan.mouth - plan.point)
        mouth = cross_lines(plan.point, axis, centre, unit(side - centre))
        share = dot(mouth - plan.point, axis) / abs(plan.mouth - plan.point)
        plans.append(replace(plan, mouth=mouth, intake=max(0.0, plan.intake * share)))
    return Level(centre, side, tuple(plans))


def suppress(front: Level, back: Level, hips: dict[str, float], girth: float, darts: Darts) -> dict[str, Suppression]:
    """Share the waist out between front and back, darts and side seams.

    Parameters
    ----------
    front, back : Level
    hips : dict
        Width of either panel at the hip.
    girth : float
        Whole girth that the two waist seams are to have, mm.
    darts : Darts
        The style's choice. What its darts leave of the method's intake goes in equal parts to the side seams of
        front and back, so that the side seam stays where it hangs.
    """
    levels = {"front": front, "back": back}
    own = {name: level.run - level.intake for name, level in levels.items()}
    change = (girth / 2 - sum(own.values())) / 2
    net = {name: own[name] + change for name in levels}
    counts = {"front": darts.front, "back": darts.back}
    shares = {"front": darts.front_share, "back": darts.back_share}
    intakes: dict[str, tuple[float, ...]] = {}
    # A share is taken of the difference that is left when the other panel's darts have moved the side seam.
    for name in sorted(levels, key=lambda panel: shares[panel] is not None):
        level, difference = levels[name], hips[name] - net[name]
        if any(plan.pleat for plan in level.plans):
            intakes[name] = tuple(plan.intake for plan in level.plans)
        elif shares[name] is None:
            intakes[name] = own_intakes(name, level, counts[name])
            left = (level.intake - sum(intakes[name])) / 2
            other = "back" if name == "front" else "front"
            net[name], net[other] = net[name] + left, net[other] - left
        else:
            intakes[name] = _shared_intakes(name, level, counts[name], shares[name] or 0.0, difference)
    return {name: Suppression(net[name], intakes[name]) for name in levels}


def own_intakes(name: str, level: Level, count: int) -> tuple[float, ...]:
    """Intakes of `count` darts as the method has them, none larger than usual nor too small to sew."""
    if count == 0 or level.intake == 0:
        return ()
    planned = [plan.intake for plan in level.plans]
    fixed = any(plan.fixed for plan in level.plans)
    usual = inf if fixed else USUAL_INTAKE[name]
    wanted = [min(intake, usual) for intake in planned] if count == len(planned) else [min(level.intake, usual)]
    return tuple(wanted) if min(wanted) >= (SMALLEST_ASKED_INTAKE if fixed else SMALLEST_INTAKE) else ()


def _shared_intakes(name: str, level: Level, count: int, share: float, difference: float) -> tuple[float, ...]:
    field = f"style.darts.{name}_share"
    if count == 0 or share == 0 or difference <= 0:
        return ()
    room = level.run - SMALLEST_GAP * (2 * count + 1)
    largest = min(count * LARGEST_INTAKE[name], difference, max(0.0, room)) / difference
    if share > largest + HAIR:
        raise DraftError(
            field,
            share,
            f"at most {at_most(largest, 3)} for {count} dart(s) on this body",
            "take a smaller share" + _or_darts(name, range(count + 1, MOST_DARTS[name] + 1), share * difference),
        )
    least = count * SMALLEST_ASKED_INTAKE / difference
    if least > largest:  # waist and hip so alike that no dart has anything to take
        return ()
    if share < least - HAIR:
        raise DraftError(
            field,
            share,
            f"at least {at_least(least, 3)} for {count} dart(s) on this body, {SMALLEST_ASKED_INTAKE:g} mm each",
            "take a larger share" + _or_darts(name, range(count - 1, -1, -1), share * difference),
        )
    return (share * difference / count,) * count


def _or_darts(name: str, counts: range, taken: float) -> str:
    """Remedy besides another share: the first count of darts that take `taken` mm, none too small or too large."""
    for count in counts:
        if count == 0 or SMALLEST_ASKED_INTAKE <= taken / count <= LARGEST_INTAKE[name]:
            return f", or style.darts.{name}={count}"
    return ""


def placed(
    level: Level,
    panel: PanelBlock,
    intakes: tuple[float, ...],
    lengths: tuple[float | None, ...],
    fold: str = "",
    foot: tuple[complex, complex] | None = None,
) -> list[Dart]:
    """Darts on the seam line: at the method's places, one of two in the middle between them.

    `fold` says how they are taken up when they are no darts (see `Dart.pleat`): then their legs run nearly parallel.
    `foot` is a line that they end on.
    """
    plans = level.plans
    if len(intakes) == 1 and len(plans) == 2:
        middle = (plans[0].mouth + plans[1].mouth) / 2
        plans = (DartPlan(middle, (plans[0].point + plans[1].point) / 2, 0.0),)
    along = unit(level.side - level.centre)
    found = []
    for plan, intake, length in zip(plans, intakes, lengths, strict=False):
        point = plan.point
        axis = unit(plan.mouth - plan.point)
        if length is not None:
            full = abs(plan.mouth - plan.point)
            drop = _dropped(level, panel, plan)
            point = plan.mouth - axis * (length - drop) if length > drop else plan.mouth - axis * full
        square = unit(along - axis * dot(along, axis))
        if foot is not None:
            point = cross_lines(plan.mouth, axis, foot[0], unit(foot[1] - foot[0]))
        if fold:
            point = plan.mouth - axis * FOLD_RUN
        legs = plan.mouth - square * intake / 2, plan.mouth + square * intake / 2
        found.append(Dart(*legs, point, pleat=plan.pleat or fold))
    return found


def _dropped(level: Level, panel: PanelBlock, plan: DartPlan) -> float:
    """How far the seam lies below the method's waist line along a dart."""
    on_line = cross_lines(
        plan.point, unit(plan.mouth - plan.point), panel.waist_centre, unit(panel.waist_side - panel.waist_centre)
    )
    return abs(on_line - plan.mouth) if level.centre != panel.waist_centre else 0.0


def drawn(centre: complex, centre_dir: complex, side: complex, side_dir: complex, darts: list[Dart]) -> Waist:
    """Waist seam from centre to side, square to the centre seam, to every dart leg and to the side seam.

    `centre_dir` is the way up the centre seam, `side_dir` the way down the side seam.
    """
    starts = [(centre, 1j * centre_dir)] + [(d.side_leg, 1j * unit(d.side_leg - d.roots[1])) for d in darts]
    ends = [(d.centre_leg, 1j * unit(d.centre_leg - d.roots[0])) for d in darts] + [(side, -1j * side_dir)]
    parts = tuple(Path((smooth(p, p_dir, q, q_dir),)) for (p, p_dir), (q, q_dir) in zip(starts, ends, strict=True))
    return Waist(parts, tuple(darts))


def band_ease(style: Style) -> float:
    """How much longer the trousers' waist edge is than the band."""
    return style.band.eased if isinstance(style.band, StraightBand) else 0.0


def waist_seam(
    panel: PanelBlock,
    level: Level,
    plan: Suppression,
    lengths: tuple[float | None, ...],
    fold: str = "",
    yoke: Yoke | None = None,
) -> Waist:
    """Trued waist seam whose sewn length is exactly what the plan says.

    The curve is a little longer than the straight line it replaces: the darts take that up, or, without darts, the
    side seam.
    """
    centre_dir = panel.crotch.end_dir
    intakes = plan.intakes
    side_at = plan.net + sum(intakes)
    along = unit(level.side - level.centre)
    for _ in range(8):
        side = level.centre + along * side_at
        below = panel.side_to(side, panel.knee_side)
        foot = None if yoke is None else _yoke_line(panel, level, below, yoke)
        darts = placed(level, panel, intakes, lengths, fold, foot)
        side_dir = below.start_dir
        seam = drawn(level.centre, centre_dir, side, side_dir, darts)
        over = seam.length - plan.net
        if abs(over) < LENGTH_TOL_MM:
            break
        if intakes:
            intakes = tuple(intake + over / len(intakes) for intake in intakes)
        else:
            side_at -= over
    return seam


def _yoke_line(panel: PanelBlock, level: Level, side: Path, yoke: Yoke) -> tuple[complex, complex]:
    """Ends of the yoke seam: on the centre seam and on the side seam, as far below the waist seam as it says."""
    on_centre = level.centre - panel.crotch.end_dir * yoke.centre
    return on_centre, side.point_at(min(yoke.side, side.length))


def has_room(level: Level, seam: Waist, sharpest: float = SHARPEST_MM) -> bool:
    """Whether there is seam enough beside each dart, and no stretch bends with less than `sharpest` mm of radius."""
    return all(
        abs(part.end - part.start) >= SMALLEST_GAP
        and dot(part.end - part.start, level.side - level.centre) > 0
        and _radius(part) >= sharpest
        for part in (seam.parts if seam.darts else ())
    )


def _radius(part: Path) -> float:
    """Smallest radius of one stretch of the seam, at 17 places."""
    bends = (
        abs(cross(curve.velocity(t), curve.acceleration(t))) / max(abs(curve.velocity(t)), SHORTEST_SPEED) ** 3
        for curve in part
        for t in PLACES
    )
    return 1 / max(1 / FLAT_MM, *bends)


def no_room(name: str, seam: Waist) -> DraftError:
    """Say that darts which were asked for do not fit."""
    return DraftError(
        f"style.darts.{name}",
        len(seam.darts),
        f"{SMALLEST_GAP:g} mm of waist seam beside each dart",
        "choose fewer darts or a smaller share",
    )
