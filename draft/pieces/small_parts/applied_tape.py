"""Tape, braid or zip sewn flat onto front or back: two lines parallel to a seam, the crease, the hem or the grain.

Both lines are parallels of one line of the panel, so the tape keeps its distance from it all along. The tape lies on
one layer of flat cloth: it ends at the piece's seam lines, and crosses no dart, pleat or pocket mouth.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from math import ceil

import numpy as np

from draft.choices.small_parts import AppliedTape
from draft.dart import Dart
from draft.errors import DraftError
from draft.geometry.arrays import Points
from draft.geometry.meet import meet_line
from draft.geometry.offset import parallel
from draft.geometry.path import Path
from draft.geometry.points import unit
from draft.geometry.polygon import inside
from draft.geometry.segments import Line
from draft.piece import InnerLine, Piece
from draft.pieces.plan import Plan
from draft.pieces.small_parts.front_room import front_outline
from draft.shape.shell import Panel
from draft.style import SmallPart
from draft.units import at_least, at_most, fmt

STEP_MM, HAIR_MM = 2.0, 0.3
SHORT_MM = 1.0  # the lines end this far inside the piece; the tape itself runs on
CLEAR_OF_DART = 2.0
LEAST_LENGTH = 20.0
LEAST_STRETCH = 0.2  # the far edge of the tape is never shorter than this share of the line beside it (no source)
HALVINGS = 24
TRIED_DISTANCES = np.arange(0.0, 901.0, 5.0)


@dataclass(frozen=True, eq=False)
class Ground:
    """The piece that the tape lies on, and the line that it follows; `hand` 1: the tape lies on its left."""

    base: Path
    hand: int
    outline: Points
    darts: tuple[Points, ...]

    def clear(self, along: np.ndarray, near: float, far: float) -> np.ndarray:
        """At which places of the line both edges of a tape and its middle lie on flat cloth and do not fold back."""
        at = np.array([self.base.point_at(s) for s in along])
        left = np.array([1j * self.base.direction_at(s) for s in along]) * self.hand
        bend = np.array([self.base.curvature_at(s) for s in along]) * self.hand
        found = 1 - bend * far > LEAST_STRETCH
        for beside in (max(near, HAIR_MM), (near + far) / 2, far):
            points: Points = np.asarray(at + left * beside, dtype=complex)
            found &= inside(points, self.outline)
        for beside in np.linspace(near, far, ceil((far - near) / STEP_MM) + 1):
            points = np.asarray(at + left * beside, dtype=complex)
            for dart in self.darts:
                found &= ~inside(points, dart)
        return found


@dataclass(frozen=True, eq=False)
class Laid:
    """Both edges of the tape on the piece, mm."""

    near: Path
    far: Path

    @property
    def length(self) -> float:
        """Length of the longer edge: a tape is pressed to the curve, its other edge eased."""
        return max(self.near.length, self.far.length)


def _choice(part: SmallPart) -> AppliedTape:
    assert isinstance(part, AppliedTape)
    return part


def _panel(plan: Plan, part: SmallPart) -> Panel:
    return plan.shell.front if _choice(part).on == "front" else plan.shell.back


def _offsets(tape: AppliedTape, distance: float) -> tuple[float, float]:
    """Distances of both edges from the line that the tape follows."""
    near = 0.0 if tape.along == "across" else distance
    return near, near + tape.width


def _ground(plan: Plan, part: SmallPart, distance: float) -> Ground | None:
    """Piece and line; None where there is no such line at this distance."""
    tape, panel = _choice(part), _panel(plan, part)
    cut = front_outline(plan) if tape.on == "front" else _back_outline(plan)
    line = _line(plan, panel, tape, cut, distance)
    if line is None:
        return None
    hand = 1 if tape.along in ("side", "hem") else -1
    return Ground(line, hand, cut.points(0.2), tuple(_around(dart) for dart in panel.waist.darts))


def _back_outline(plan: Plan) -> Path:
    """Outline of the back; below the yoke's seam, when it has one."""
    panel, yoke = plan.shell.back, plan.style.yoke
    if yoke is None or yoke.side >= panel.side.length or yoke.centre >= panel.crotch.length:
        return panel.outline
    side = panel.side.between(yoke.side, panel.side.length)
    crotch = panel.crotch.between(0, panel.crotch.length - yoke.centre)
    return Path.join(side, panel.hem, panel.inseam, crotch, Line(crotch.end, side.start))


def _around(dart: Dart) -> Points:
    """Corners of a dart, and a little more on every side."""
    across = CLEAR_OF_DART * unit(dart.centre_leg - dart.side_leg)
    end = dart.point + CLEAR_OF_DART * unit(2 * dart.point - dart.centre_leg - dart.side_leg)
    up = CLEAR_OF_DART * unit(dart.centre_leg + dart.side_leg - 2 * dart.point)
    corners = (dart.centre_leg + across + up, end + across, end - across, dart.side_leg - across + up)
    return np.array(corners, dtype=complex)


def _line(plan: Plan, panel: Panel, tape: AppliedTape, cut: Path, distance: float) -> Path | None:
    """Line that the tape follows, from its upper end, or from the side seam."""
    if tape.along == "side":
        return panel.side
    if tape.along == "hem":
        return panel.hem
    if tape.along == "inseam":
        return panel.inseam.reversed()
    if tape.along == "crease":
        places = [panel.outline.point_at(s) for s in meet_line(panel.outline, complex(plan.shell.crease, 0), 1j)]
        ends = max(places, key=lambda p: p.imag), min(places, key=lambda p: p.imag)
    else:
        level = panel.side.start.imag - distance
        places = [cut.point_at(s) for s in meet_line(cut, 1j * level, 1 + 0j)]
        if len(places) < 2:
            return None
        ends = complex(min(p.real for p in places), level), complex(max(p.real for p in places), level)
    return Path.line(*ends) if abs(ends[1] - ends[0]) > LEAST_LENGTH else None


def _stretches(ground: Ground, near: float, far: float) -> list[tuple[float, float]]:
    """Where along the line a tape lies on flat cloth, stretches of some length only."""
    places = np.linspace(0.0, ground.base.length, max(3, ceil(ground.base.length / STEP_MM) + 1))
    clear = np.concatenate([[False], ground.clear(places, near, far), [False]])
    starts, stops = np.flatnonzero(clear[1:] & ~clear[:-1]), np.flatnonzero(clear[:-1] & ~clear[1:]) - 1
    found = []
    for first, last in zip(starts.tolist(), stops.tolist(), strict=True):
        low = _edge_of(ground, near, far, float(places[first]), float(places[max(first - 1, 0)]))
        high = _edge_of(ground, near, far, float(places[last]), float(places[min(last + 1, len(places) - 1)]))
        low, high = (low + SHORT_MM, high - SHORT_MM)
        if high - low >= LEAST_LENGTH:
            found.append((low, high))
    return found


def _edge_of(ground: Ground, near: float, far: float, good: float, bad: float) -> float:
    """Last place that is clear, between one that is and one that is not (or the line's own end)."""
    for _ in range(HALVINGS):
        middle = (good + bad) / 2
        good, bad = (middle, bad) if ground.clear(np.array([middle]), near, far)[0] else (good, middle)
    return float(good)


@lru_cache(maxsize=8)
def laid(plan: Plan, part: SmallPart) -> Laid:
    """Both edges of the tape.

    Raises
    ------
    DraftError
        When the tape does not lie on one flat layer of the piece, with the limits between which it does.
    """
    tape = _choice(part)
    start, stop = _span(plan, part)
    ground = _ground(plan, part, tape.distance)
    assert ground is not None
    base = ground.base.between(start, stop)
    near, far = (parallel(base, ground.hand * beside) for beside in _offsets(tape, tape.distance))
    return Laid(near, far)


def _span(plan: Plan, part: SmallPart) -> tuple[float, float]:
    """Where the tape begins and ends along its line."""
    tape = _choice(part)
    room = _room(plan, part, tape.distance)
    if not room:
        raise _no_room(plan, part)
    longest = max(room, key=lambda ends: ends[1] - ends[0])
    low, high = longest if tape.start is None else next((r for r in room if r[0] - 1e-6 <= tape.start <= r[1]), longest)
    where = f"along this line at {tape.distance:g} mm"
    start = low if tape.start is None else tape.start
    if not low - 1e-6 <= start <= high - LEAST_LENGTH:
        expected = f"{at_least(low)} to {at_most(high - LEAST_LENGTH)} mm {where}"
        raise DraftError(
            "style.small_parts.start", start, expected, "begin it where the piece has room, or leave it out"
        )
    stop = high if tape.stop is None else tape.stop
    if not start + LEAST_LENGTH <= stop <= high + 1e-6:
        expected = f"{at_least(start + LEAST_LENGTH)} to {at_most(high)} mm {where}"
        raise DraftError("style.small_parts.stop", stop, expected, "end it where the piece has room, or leave it out")
    return start, stop


def _room(plan: Plan, part: SmallPart, distance: float) -> list[tuple[float, float]]:
    ground = _ground(plan, part, distance)
    return [] if ground is None else _stretches(ground, *_offsets(_choice(part), distance))


def _no_room(plan: Plan, part: SmallPart) -> DraftError:
    """What to say when nothing of the tape lies on the piece: at which distances it does."""
    tape = _choice(part)
    works = [float(d) for d in TRIED_DISTANCES if _room(plan, part, float(d))]
    if not works:
        return DraftError(
            "style.small_parts.width", tape.width, f"a narrower tape on this {tape.on}", "take a narrower one"
        )
    expected = f"{min(works):g} to {max(works):g} mm for a tape {tape.width:g} wide on this {tape.on}"
    return DraftError("style.small_parts.distance", tape.distance, expected, "choose a distance inside these limits")


def pieces(plan: Plan, part: SmallPart) -> list[Piece]:
    """No piece: it is bought."""
    return []


def marks(plan: Plan, part: SmallPart, pieces: Mapping[str, Piece]) -> dict[str, list[InnerLine]]:
    """Both edges of the tape."""
    tape, lines = _choice(part), laid(plan, part)
    note = f"tape {tape.width:g} wide, {lines.length:.0f} long"
    return {tape.on: [InnerLine("placement", lines.near, note), InnerLine("placement", lines.far)]}


def notes(plan: Plan, part: SmallPart) -> list[str]:
    """What to buy, and how it is sewn on."""
    tape, long = _choice(part), laid(plan, part).length
    each = ceil(long + 2 * tape.turned)
    where = (
        "across" if tape.along == "across" else f"along the {tape.along}" + (" seam" if tape.along == "side" else "")
    )
    return [
        f"tape on the {tape.on}, {where}: {fmt(tape.width, 0)} mm wide, 2 pieces of {each} mm, {2 * each} in all "
        f"({fmt(tape.turned, 0)} more at each end; an end at a seam is caught in it); sew both edges in the same "
        "direction, while the piece lies flat and before the seams it runs into; cover the cut ends of a zip, which "
        "scratch"
    ]
