"""Path: segments joined end to end, walked by arc length as a tape is laid along a seam."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np

from draft.errors import DraftError
from draft.geometry.area import signed_area
from draft.geometry.arrays import Points
from draft.geometry.flatten import flatten
from draft.geometry.length import length, parameter_at
from draft.geometry.points import cross
from draft.geometry.segments import Line, Motion, Segment

JOIN_TOL_MM = 1e-4
_END_SLACK_MM = 1e-6


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
            gap = np.max(np.abs(np.asarray(one.controls[-1]) - two.controls[0]))
            if gap > JOIN_TOL_MM:
                raise DraftError("path", float(gap), "segments that join end to end", "close the gap between them")

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
        return bool(np.max(np.abs(np.asarray(self.end) - self.start)) <= JOIN_TOL_MM)

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
        if along <= 0:
            return 0, 0.0
        if along >= total:
            return len(self.segments) - 1, 1.0
        index = min(bisect_right(self._ends, along), len(self.segments) - 1)
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
        return velocity / abs(velocity)

    def curvature_at(self, along: float) -> float:
        """Curvature in 1/mm at an arc length: positive where the path bends to the left, 0 on a line."""
        index, t = self._place(along)
        velocity = self.segments[index].velocity(t)
        return float(cross(velocity, self.segments[index].acceleration(t)) / abs(velocity) ** 3)

    def split_at(self, along: float) -> tuple[Path, Path]:
        """Two paths that meet at an arc length, which must lie inside the path."""
        index, t = self._place(along)
        head, tail = list(self.segments[:index]), list(self.segments[index + 1 :])
        if t <= 0:
            tail.insert(0, self.segments[index])
        elif t >= 1:
            head.append(self.segments[index])
        else:
            one, two = self.segments[index].split(t)
            head.append(one)
            tail.insert(0, two)
        return Path(tuple(head)), Path(tuple(tail))

    def between(self, start: float, stop: float) -> Path:
        """Return the stretch from one arc length to another (`start` < `stop`)."""
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
        """Return the path without segments that have no length."""
        return Path(tuple(segment for segment in self.segments if length(segment) > shortest))


def chain(paths: Iterable[Path]) -> Path:
    """One path of many."""
    return Path.join(*paths)
