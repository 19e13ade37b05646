"""Where a back pocket's mouth lies: straight and parallel to the waist seam when the darts are sewn.

The mouth is usually nearer the waist than the dart points are. The darts are then sewn before the pocket is, and run
through its mouth. So the mouth is drawn with the darts closed, and its parts are carried back to the open back, where
they lie apart by the darts between them.

Glossary
--------
stretch  the part of the back beside or between darts; number 0 is the one at the centre back
closed   with every dart closed: each stretch turned about the point of its dart, as it is below the body's waist
flat     as the back is cut, darts open
frame    the pocket's own place in the closed back: origin in the middle of the mouth, x to the centre, y up
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property, lru_cache
from itertools import pairwise

import numpy as np

from draft.dart import Dart
from draft.geometry.path import Path, chain
from draft.geometry.points import cross_lines, dot, unit
from draft.geometry.polygon import inside
from draft.geometry.segments import Motion
from draft.piece import InnerLine
from draft.shape.shell import Panel

ENDS_AT_MOUTH = 5.0  # a dart that runs less past the mouth ends at it
ABOVE_HIP = 15.0  # the middle of the mouth above the hip line: nobody sits on it (common practice, no source)
CLEAR = 12.0  # of every seam of the back (common practice, no source)
HOLE_INSIDE = 3.0  # drill hole inside the corner, where the pocket covers it (read)
STAYS = Motion()


@dataclass(frozen=True, eq=False)
class ClosedBack:
    """The back with its darts closed; one dart is closed from both sides, of two darts the middle stretch stays.

    ``motions`` carry each stretch to its closed place; ``hinges`` name the dart each stretch turns about. Above the
    bends of a raised waist the legs of a dart are parallel: there ``above`` carries each stretch on, without a turn.
    """

    panel: Panel
    motions: tuple[Motion, ...]
    hinges: tuple[int | None, ...]
    above: tuple[Motion, ...]

    @cached_property
    def waist(self) -> Path:
        """Closed waist seam, centre to side."""
        parts = self.panel.waist.parts
        return chain(part.moved(motion) for part, motion in zip(parts, self.above, strict=True))

    @cached_property
    def middle(self) -> float:
        """Place of the pocket's middle along the sewn waist: the dart, halfway between two, or half of the waist."""
        parts = self.panel.waist.parts
        if len(parts) == 1:
            return parts[0].length / 2
        return parts[0].length + (parts[1].length / 2 if len(parts) > 2 else 0.0)

    @cached_property
    def folds(self) -> tuple[tuple[complex, complex], ...]:
        """Point of each dart, and the way up along its closed legs."""
        found = []
        for index, dart in enumerate(self.panel.waist.darts):
            leg = self.motions[index](lower_ends(dart)[0])
            found.append((dart.point, unit(leg - dart.point)))
        return tuple(found)


@lru_cache(maxsize=8)
def closed_back(panel: Panel) -> ClosedBack:
    """Back with its darts closed."""
    darts = panel.waist.darts
    if not darts:
        return ClosedBack(panel, (STAYS,), (None,), (STAYS,))
    one = darts[0]
    if len(darts) == 1:
        turns = tuple(_about(one.point, one.fold_dir / unit(end - one.point)) for end in lower_ends(one))
        return ClosedBack(panel, turns, (0, 0), tuple(_carried(one, side, turns[side]) for side in (0, 1)))
    two = darts[1]
    (from_a, to_a), (to_b, from_b) = lower_ends(one), lower_ends(two)
    first = _about(one.point, unit(to_a - one.point) / unit(from_a - one.point))
    last = _about(two.point, unit(to_b - two.point) / unit(from_b - two.point))
    above = (_carried(one, 0, first), STAYS, _carried(two, 1, last))
    return ClosedBack(panel, (first, STAYS, last), (0, None, 1), above)


def lower_ends(dart: Dart) -> tuple[complex, complex]:
    """Where the legs that start at the point end, centre and side: at the body's waist, or at a lower waist seam."""
    return (dart.centre_leg, dart.side_leg) if dart.bends is None else dart.bends


def _carried(dart: Dart, side: int, motion: Motion) -> Motion:
    """Move of a stretch above the bends of a dart, whose end on one side `motion` closes below."""
    if dart.bends is None:
        return motion
    end = dart.bends[side]
    return Motion(shift=motion(end) - end)


def _about(p: complex, turn: complex) -> Motion:
    return Motion(turn=turn, shift=p - turn * p)


def _undone(motion: Motion) -> Motion:
    return Motion(turn=1 / motion.turn, shift=-motion.shift / motion.turn)


@dataclass(frozen=True, eq=False)
class Stretch:
    """The part of a straight line across the pocket that lies in one stretch: from `low` to `high` in x."""

    low: float
    high: float
    to_flat: Motion

    def from_flat(self, p: complex) -> complex:
        """Point of the flat back in the frame."""
        return _undone(self.to_flat)(p)


@dataclass(frozen=True, eq=False)
class Frame:
    """The pocket's frame in the closed back."""

    back: ClosedBack
    place: Motion

    def closed(self, p: complex) -> complex:
        """Point of the frame in the closed back."""
        return self.place(p)

    def cross_at(self, dart: int, y: float) -> tuple[float, float]:
        """Where the closed dart meets the line at height `y` of the frame: its x, and how far up from the point."""
        point, up = self.back.folds[dart]
        at = cross_lines(point, up, self.place(1j * y), self.place.turn)
        return (_undone(self.place)(at)).real, dot(at - point, up)

    def crossing(self, y: float) -> list[int]:
        """Darts that run past the line at height `y`."""
        return [dart for dart in range(len(self.back.folds)) if self.cross_at(dart, y)[1] > ENDS_AT_MOUTH]

    def stretches(self, low: float, high: float, y: float) -> list[Stretch]:
        """Parts of the line at height `y`, from the side to the centre, between the darts that run past it."""
        past = self.crossing(y)
        places = [self.cross_at(dart, y)[0] for dart in range(len(self.back.folds))]
        ends = [low, *sorted(places[dart] for dart in past if low < places[dart] < high), high]
        return [Stretch(a, b, self._to_flat((a + b) / 2, places, past)) for a, b in pairwise(ends)]

    def _to_flat(self, x: float, places: Sequence[float], past: Sequence[int]) -> Motion:
        index = sum(place > x for place in places)
        opened = self.back.hinges[index] in past
        return _after(self.place, _undone(self.back.motions[index])) if opened else self.place

    def line(self, low: float, high: float, y: float, y_high: float | None = None) -> list[Path]:
        """Straight line of the frame, from the height `y` to `y_high`, as it lies in the flat back."""
        slope = 0.0 if y_high is None else (y_high - y) / (high - low)
        return [
            Path.line(*(part.to_flat(x + 1j * (y + slope * (x - low))) for x in (part.low, part.high)))
            for part in self.stretches(low, high, y if y_high is None else (y + y_high) / 2)
        ]

    def box(self, low: float, high: float, top: float, bottom: float) -> list[Path]:
        """Box of a mouth in the flat back: one outline, or its parts on both sides of each dart."""
        parts = self.stretches(low, high, (top + bottom) / 2)
        if len(parts) == 1:
            a, b, c, d = (
                parts[0].to_flat(x + 1j * y) for x, y in ((low, top), (low, bottom), (high, bottom), (high, top))
            )
            return [Path.line(a, b, c, d, a)]
        found = []
        for part in parts:
            ends = [(part.low, top), (part.low, bottom), (part.high, bottom), (part.high, top)]
            a, b, c, d = (part.to_flat(x + 1j * y) for x, y in ends)
            if part is parts[0]:
                found.append(Path.line(d, a, b, c))
            elif part is parts[-1]:
                found.append(Path.line(b, c, d, a))
            else:
                found += [Path.line(a, d), Path.line(b, c)]
        return found


def _after(first: Motion, then: Motion) -> Motion:
    return Motion(turn=then.turn * first.turn, shift=then.turn * first.shift + then.shift)


def frame_at(back: ClosedBack, below: float, width: float) -> Frame:
    """Frame of a mouth `below` mm under the waist seam, parallel to the waist's chord above it."""
    waist, half = back.waist, width / 2
    inner, outer = max(0.0, back.middle - half), min(waist.length, back.middle + half)
    to_centre = unit(waist.point_at(inner) - waist.point_at(outer))
    middle = waist.point_at(back.middle) - 1j * to_centre * below
    return Frame(back, Motion(turn=to_centre, shift=middle))


def lowest_mouth(back: ClosedBack, hip: float, width: float) -> float:
    """Largest distance below the waist seam at which the middle of the mouth is still clear of the hip line."""
    at_waist = frame_at(back, 0.0, width).place
    return (at_waist.shift.imag - hip - ABOVE_HIP) / at_waist.turn.real


def clear_of_seams(panel: Panel, points: Sequence[complex], margin: float = CLEAR) -> bool:
    """Whether all points lie inside the back, at least `margin` mm from its seams."""
    outline, p = _outline(panel), np.asarray(points)
    if not inside(p, outline).all():
        return False
    run = np.roll(outline, -1) - outline
    gap = p[:, None] - outline[None, :]
    share = np.clip((gap * run.conjugate()).real / np.maximum(np.abs(run) ** 2, 1e-12), 0, 1)
    return bool(np.abs(gap - share * run).min() >= margin)


@lru_cache(maxsize=8)
def _outline(panel: Panel) -> np.ndarray:
    return panel.outline.points(0.1)


def placement(paths: Sequence[Path], note: str) -> list[InnerLine]:
    """Placement lines; only the first carries the note."""
    return [InnerLine("placement", path, note if path is paths[0] else "") for path in paths]


def dart_notes(frame: Frame, low: float, high: float, y: float, pocket: str) -> list[str]:
    """What to do with darts that run through the mouth."""
    past = [
        (dart + 1, reach)
        for dart in range(len(frame.back.folds))
        for x, reach in [frame.cross_at(dart, y)]
        if low < x < high and reach > ENDS_AT_MOUTH
    ]
    if not past:
        return []
    which = " and ".join(f"back dart {dart} by {reach:.0f} mm" for dart, reach in past)
    return [
        f"{pocket}: sew and press the back darts first, then join its marks across them; below the mouth runs on "
        f"{which} (shorter darts: style.darts.back_centre_length, back_side_length)"
    ]
