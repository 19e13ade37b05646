"""Path: segments joined end to end, walked by arc length as a tape is laid along a seam."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise
from math import copysign, inf

import numpy as np

from draft.errors import DraftError
from draft.geometry.area import signed_area
from draft.geometry.arrays import Points
from draft.geometry.flatten import flatten
from draft.geometry.length import length, parameter_at
from draft.geometry.points import cross
from draft.geometry.segments import Line, Motion, Segment

JOIN_TOL_MM = 1e-4
STRAIGHT_TOL = 1e-9  # sine of the angle between two lines that count as one
_END_SLACK_MM = 1e-6
_REST_MM = 3e-9  # velocity at which a curve stands still: three times a handle taken for none


@dataclass(frozen=True, eq=False)
class Path:
    """One or more segments joined end to end.

    Raises
    ------
    DraftError
        When there is no segment, or a segment does not start where the one before it ends.

    Examples
    --------
    >>> corner = Path.line(0, 30, 30 + 40j)
    >>> corner.length
    70.0
    >>> corner.point_at(50)
    (30+20j)
    >>> corner.point_at(71)
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: distance along the path is 71, expected 0 to 70.000 mm: measure from the start of the path.
    """

    segments: tuple[Segment, ...]

    def __post_init__(self) -> None:
        if not self.segments:
            raise DraftError("path", None, "at least one segment", "give it one")
        for one, two in pairwise(self.segments):
            gap = abs(one.controls[-1] - two.controls[0])
            if np.any(gap > JOIN_TOL_MM) if isinstance(gap, np.ndarray) else gap > JOIN_TOL_MM:
                raise DraftError(
                    "path", float(np.max(gap)), "segments that join end to end", "close the gap between them"
                )

    @classmethod
    def line(cls, *corners: complex) -> Path:
        """Straight stretches from corner to corner."""
        return cls(tuple(Line(a, b) for a, b in pairwise(corners)))

    @classmethod
    def join(cls, *parts: Path | Segment) -> Path:
        """One path of several, in the order given."""
        segments: list[Segment] = []
        for part in parts:
            segments.extend(part.segments if isinstance(part, Path) else (part,))
        return cls(tuple(segments))

    def __iter__(self) -> Iterator[Segment]:
        return iter(self.segments)

    @property
    def start(self) -> complex:
        """First point."""
        return self.segments[0].controls[0]

    @property
    def end(self) -> complex:
        """Last point."""
        return self.segments[-1].controls[-1]

    @property
    def start_dir(self) -> complex:
        """Direction of travel at the start."""
        return self.segments[0].start_dir

    @property
    def end_dir(self) -> complex:
        """Direction of travel at the end."""
        return self.segments[-1].end_dir

    @property
    def closed(self) -> bool:
        """Whether it ends where it starts."""
        return bool(np.max(abs(self.end - self.start)) <= JOIN_TOL_MM)

    @cached_property
    def _ends(self) -> tuple[float, ...]:
        """Arc length at the end of each segment."""
        total, ends = 0.0, []
        for segment in self.segments:
            total = total + length(segment)
            ends.append(total)
        return tuple(ends)

    @property
    def length(self) -> float:
        """Arc length in mm."""
        return self._ends[-1]

    @cached_property
    def area(self) -> float:
        """Enclosed area in mm2, exact for the curves; positive when walked counter-clockwise."""
        return signed_area(self.segments)

    def _place(self, along: float) -> tuple[int, float]:
        """Segment and parameter at an arc length (one draft only, not arrays)."""
        total = self.length
        if not -_END_SLACK_MM <= along <= total + _END_SLACK_MM:
            raise DraftError(
                "distance along the path", along, f"0 to {total:.3f} mm", "measure from the start of the path"
            )
        last = len(self.segments) - 1
        if along <= 0:  # segments without length at either end are passed over: they have no direction
            return min(bisect_right(self._ends, 0.0), last), 0.0
        if along >= total:
            return bisect_left(self._ends, total), 1.0
        index = min(bisect_right(self._ends, along), last)
        before = self._ends[index - 1] if index else 0.0
        here = self._ends[index] - before
        return index, parameter_at(self.segments[index], along - before, here)

    def point_at(self, along: float) -> complex:
        """Point at an arc length from the start."""
        index, t = self._place(along)
        return self.segments[index].point(t)

    def direction_at(self, along: float) -> complex:
        """Direction of travel (length 1) at an arc length; at a corner, that of the segment that starts there.

        >>> Path.line(0, 30, 30 + 40j).direction_at(30)
        1j
        """
        index, t = self._place(along)
        segment = self.segments[index]
        if t <= 0:
            return segment.start_dir
        if t >= 1:
            return segment.end_dir
        velocity = segment.velocity(t)
        if abs(velocity) <= _REST_MM:  # a cusp, left along what comes after it
            return segment.split(t)[1].start_dir
        return velocity / abs(velocity)

    def curvature_at(self, along: float) -> float:
        """Curvature in 1/mm at an arc length: positive where the path bends to the left, 0 on a line.

        At a cusp, and at an end whose handle has no length, it is infinite unless the curve is straight there.
        """
        index, t = self._place(along)
        segment = self.segments[index]
        velocity, acceleration = segment.velocity(t), segment.acceleration(t)
        if abs(velocity) > _REST_MM:
            return float(cross(velocity, acceleration) / abs(velocity) ** 3)
        jerk = segment.acceleration(1.0) - segment.acceleration(0.0)
        turn = float(cross(acceleration, jerk))
        return copysign(inf, turn) if abs(turn) > 1e-9 * abs(acceleration) * abs(jerk) else 0.0

    def split_at(self, along: float) -> tuple[Path, Path]:
        """Two paths that meet at an arc length, which must lie inside the path.

        Within 0.000001 mm of a joint the path is parted at the joint, so that no sliver is left.
        """
        total = self.length
        if not _END_SLACK_MM < along < total - _END_SLACK_MM:
            raise DraftError(
                "distance along the path", along, f"more than 0 and less than {total:.3f} mm", "split inside the path"
            )
        for joint, end in enumerate(self._ends[:-1], start=1):
            if abs(end - along) <= _END_SLACK_MM:
                return Path(self.segments[:joint]), Path(self.segments[joint:])
        index, t = self._place(along)
        one, two = self.segments[index].split(t)
        return Path((*self.segments[:index], one)), Path((two, *self.segments[index + 1 :]))

    def between(self, start: float, stop: float) -> Path:
        """Return the stretch from one arc length to another (`start` < `stop`, both on the path)."""
        if not (start >= -_END_SLACK_MM and start + _END_SLACK_MM < stop <= self.length + _END_SLACK_MM):
            raise DraftError(
                "stretch of the path",
                (start, stop),
                f"start before stop, both 0 to {self.length:.3f} mm",
                "measure both from the start of the path",
            )
        piece = self
        if stop < self.length - _END_SLACK_MM:
            piece, _ = piece.split_at(stop)
        if start > _END_SLACK_MM:
            _, piece = piece.split_at(start)
        return piece

    def reversed(self) -> Path:
        """Return the same path walked the other way."""
        return Path(tuple(segment.reversed() for segment in reversed(self.segments)))

    def moved(self, motion: Motion) -> Path:
        """Image under a rigid move; a mirrored outline keeps its order and so runs the other way round."""
        return Path(tuple(segment.moved(motion) for segment in self.segments))

    def points(self, tolerance: float = 0.1) -> Points:
        """Corner points of a polyline nowhere further than `tolerance` mm from the path.

        Returns
        -------
        complex array, shape (n,)
            For a closed path the first point is not repeated at the end.
        """
        return flatten(self.segments, tolerance, closed=self.closed)

    def tidy(self, shortest: float = 1e-6) -> Path:
        """Return the path without segments that have no length, lines that continue each other made one."""
        kept: list[Segment] = []
        for segment in self.segments:
            if length(segment) <= shortest:
                continue
            last = kept[-1] if kept else None
            if isinstance(last, Line) and isinstance(segment, Line) and _continues(last, segment):
                kept[-1] = Line(last.p0, segment.p1)
            else:
                kept.append(segment)
        return Path(tuple(kept))


def _continues(one: Line, two: Line) -> bool:
    turn = two.start_dir / one.end_dir
    return bool(turn.real > 0 and abs(turn.imag) < STRAIGHT_TOL)


def chain(paths: Iterable[Path]) -> Path:
    """One path of many."""
    return Path.join(*paths)
