"""Outline: a closed line that somebody else drew, as points in mm, with where it came from.

Glossary
--------
run      an open or closed stretch of points as one element of a file gives it
loose    a run that is open; loose runs whose ends lie together are joined into closed ones
lines    runs that stay open and lie inside an outline: grain, dart legs, fold lines
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property

import numpy as np

from draft.errors import DraftError
from draft.geometry.arrays import Floats, Points
from draft.geometry.path import Path
from draft.geometry.polygon import first_crossing, inside

SMALLEST_MM = 20.0  # a closed line that is narrower is a mark, a letter or a hole, no piece
FURTHEST_MM = 1e5  # coordinates beyond 100 m are no pattern
MOST_POINTS = 200_000
JOIN_MM = 0.5
SAME_MM = 1e-4
THIN_MM = 0.005
MOST_PAIRS = 9e6  # pairs of sides that are tried for crossings, over all outlines of a file
MOST_LOOSE = 3000


@dataclass(frozen=True, eq=False)
class Outline:
    """A closed line, counter-clockwise, y up, its first point not repeated.

    ``source`` says where it came from, ``lines`` are open lines drawn inside it, ``error`` is the likely error of a
    point in mm (one standard deviation) where it is known, ``notes`` what else a reader should know.

    Raises
    ------
    DraftError
        For fewer than three points, coordinates that are no finite numbers, an outline without area, or one that
        crosses itself.

    Examples
    --------
    >>> Outline([0, 100j, 100 + 100j, 100], "by hand")
    <Outline by hand: 100 x 100 mm, 4 points>
    >>> Outline([0, 100, 100j, 100 + 100j], "by hand")
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: outline (by hand) is '(50.0, 50.0)', expected a line that does not cross itself: part it at
    that place or draw that stretch again.
    """

    points: Points
    source: str = ""
    lines: tuple[Points, ...] = ()
    error: float | None = None
    notes: tuple[str, ...] = field(default=())

    def __post_init__(self) -> None:
        ring = _ring(finite(self.points, self._where))
        if len(ring) < 3 or abs(area_of(ring)) < 1e-6 * max(1.0, float(np.ptp(ring.real) + np.ptp(ring.imag))) ** 2:
            self._check_crossing(ring)
            raise DraftError(
                self._where, f"{len(ring)} points, area 0", "three points or more around an area", "draw all round"
            )
        self._check_crossing(ring)
        ring = ring[::-1] if area_of(ring) < 0 else ring
        ring.setflags(write=False)
        object.__setattr__(self, "points", ring)

    def _check_crossing(self, ring: Points) -> None:
        thin = thinned(ring)
        if len(thin) ** 2 > MOST_PAIRS:
            most = int(MOST_PAIRS**0.5)
            raise DraftError(self._where, f"{len(thin)} corners", f"at most {most}", "smooth the line first")
        place = first_crossing(thin) if len(thin) > 3 else None
        if place is not None:
            raise DraftError(
                self._where,
                f"({place.real:.1f}, {place.imag:.1f})",
                "a line that does not cross itself",
                "part it at that place or draw that stretch again",
            )

    @property
    def _where(self) -> str:
        return f"outline ({self.source})" if self.source else "outline"

    @cached_property
    def path(self) -> Path:
        """Closed path of straight stretches from point to point."""
        ring = [complex(p) for p in self.points]
        return Path.line(*ring, ring[0])

    @property
    def area(self) -> float:
        """Area in mm2."""
        return area_of(self.points)

    @property
    def length(self) -> float:
        """Length all round in mm."""
        return float(np.sum(np.abs(np.roll(self.points, -1) - self.points)))

    @property
    def size(self) -> tuple[float, float]:
        """Width and height in mm."""
        return float(np.ptp(self.points.real)), float(np.ptp(self.points.imag))

    def moved(self, turn: complex = 1, shift: complex = 0, *, flip: bool = False) -> Outline:
        """Outline mirrored left to right (if `flip`), turned and scaled by `turn`, then shifted.

        >>> Outline([0, 100, 100 + 50j]).moved(turn=1j).size
        (50.0, 100.0)
        """

        def place(p: Points) -> Points:
            return np.asarray(turn * (-np.conj(p) if flip else p) + shift)

        return replace(self, points=place(self.points), lines=tuple(place(line) for line in self.lines))

    def __repr__(self) -> str:
        wide, high = self.size
        return f"<Outline {self.source or 'of points'}: {wide:.0f} x {high:.0f} mm, {len(self.points)} points>"


@dataclass(frozen=True, eq=False)
class Run:
    """Points of one element of a file; runs are only joined to others of their `group`."""

    points: Points
    closed: bool
    source: str
    group: str = ""


def finite(points: object, where: str) -> Points:
    """Points as a complex array; every coordinate a finite number within 100 m."""
    try:
        found = np.atleast_1d(np.array(points, dtype=complex))
    except (TypeError, ValueError):
        raise DraftError(where, type(points).__name__, "points as complex numbers, in mm", "write x + 1j * y") from None
    if found.ndim != 1:
        raise DraftError(where, f"an array of shape {found.shape}", "one row of points", "give one outline at a time")
    if len(found) > MOST_POINTS:
        raise DraftError(where, f"{len(found)} points", f"at most {MOST_POINTS}", "thin the line first")
    wrong = ~np.isfinite(found) | (np.abs(found) > FURTHEST_MM)
    if wrong.any():
        at = found[wrong][0]
        expected = f"finite numbers between -{FURTHEST_MM:.0f} and {FURTHEST_MM:.0f} mm"
        raise DraftError(f"{where}, coordinate", str(at), expected, "correct the point, or the unit of the drawing")
    return found


def area_of(ring: Points) -> float:
    """Signed area of a closed polyline, mm2."""
    if not len(ring):
        return 0.0
    ring = ring - ring.mean()
    return float(np.sum((np.conj(ring) * np.roll(ring, -1)).imag)) / 2


def _ring(points: Points) -> Points:
    """Points without those that repeat the one before, and without a repeated first one at the end."""
    return np.array(points[np.abs(points - np.roll(points, 1)) > SAME_MM]) if len(points) > 1 else points


def thinned(ring: Points, tolerance: float = THIN_MM) -> Points:
    """Closed polyline with only those of its points that are needed to stay within `tolerance` mm of it."""
    if len(ring) < 4:
        return ring
    start = int(np.argmin(ring.real + ring.imag))
    line = np.append(np.roll(ring, -start), ring[start])
    far = int(np.argmax(np.abs(line - line[0])))
    keep = np.zeros(len(line), dtype=bool)
    keep[[0, far, -1]] = True
    spans = [(0, far), (far, len(line) - 1)]
    while spans:
        i, j = spans.pop()
        if j - i < 2:
            continue
        gaps = _off_chord(line[i + 1 : j], line[i], line[j])
        k = int(np.argmax(gaps))
        if gaps[k] > tolerance:
            keep[i + 1 + k] = True
            spans += [(i, i + 1 + k), (i + 1 + k, j)]
    return np.asarray(line[keep][:-1])


def _off_chord(points: Points, a: complex, b: complex) -> Floats:
    run = b - a
    size = abs(run) ** 2
    t = np.clip(((points - a) * np.conj(run)).real / size, 0, 1) if size else 0.0
    return np.asarray(np.abs(points - a - t * run))


def gathered(runs: Sequence[Run], where: str, join: float) -> tuple[Outline, ...]:
    """Closed outlines of the runs of a file, the largest first; loose runs are joined where ends lie within `join` mm.

    Raises
    ------
    DraftError
        When no closed outline is left, or one of them is faulty.
    """
    if not runs:
        raise DraftError(where, "no lines", "closed outlines of pieces", "choose the file that holds the pattern")
    checked = [replace(run, points=finite(run.points, f"{where}, {run.source}")) for run in runs]
    closed = [run for run in checked if run.closed or _shut(run.points, join)]
    loose = [run for run in checked if not (run.closed or _shut(run.points, join))]
    rings = [run for run in [*closed, *joined(loose, join)] if _is_piece(run.points)]
    if not rings:
        told = f"{len(closed)} closed lines, none a piece, and {len(loose)} open ones"
        raise DraftError(
            where,
            told,
            f"a closed line around an area, at least {SMALLEST_MM:g} mm wide and high",
            "close the outlines, widen the tolerance `join`, or give the unit of the drawing",
        )
    thin = [len(thinned(run.points)) for run in rings]
    if sum(n * n for n in thin) > 2 * MOST_PAIRS:
        raise DraftError(where, f"{sum(thin)} corners", "a drawing of smooth outlines", "smooth the lines first")
    found = [Outline(run.points, run.source, _within(run, loose)) for run in rings]
    return tuple(sorted(found, key=lambda outline: -outline.area))


def _shut(points: Points, join: float) -> bool:
    return len(points) > 2 and abs(points[-1] - points[0]) <= join


def _is_piece(points: Points) -> bool:
    return min(float(np.ptp(points.real)), float(np.ptp(points.imag))) >= SMALLEST_MM or (
        len(points) > 2 and max(float(np.ptp(points.real)), float(np.ptp(points.imag))) > 10 * SMALLEST_MM
    )


def _within(ring: Run, loose: Iterable[Run]) -> tuple[Points, ...]:
    """Loose runs that lie inside a ring: their middle inside, nothing outside its box."""
    left, right = ring.points.real.min() - 1, ring.points.real.max() + 1
    low, high = ring.points.imag.min() - 1, ring.points.imag.max() + 1
    near = [
        run.points
        for run in loose
        if len(run.points) > 1
        and left <= run.points.real.min()
        and run.points.real.max() <= right
        and low <= run.points.imag.min()
        and run.points.imag.max() <= high
    ]
    if not near:
        return ()
    held = inside(np.array([(line[0] + line[-1]) / 2 if len(line) == 2 else line.mean() for line in near]), ring.points)
    return tuple(line for line, is_in in zip(near, held, strict=True) if is_in)


def joined(loose: Sequence[Run], join: float) -> list[Run]:
    """Closed runs made of loose ones: each end is joined to the nearest other end of its group, the straightest first.

    >>> corner = [Run(np.array([0, 50, 50 + 50j]), False, "a"), Run(np.array([50.1 + 50j, 50j, 0.1j]), False, "b")]
    >>> [len(run.points) for run in joined(corner, 0.5)]
    [6]
    """
    if len(loose) > MOST_LOOSE:
        raise DraftError("loose lines", len(loose), f"at most {MOST_LOOSE}", "join them in the drawing first")
    found: list[Run] = []
    for group in dict.fromkeys(run.group for run in loose):
        rest = [run for run in loose if run.group == group and len(run.points) > 1]
        while rest:
            chain, rest = _chained(rest[0], rest[1:], join)
            if chain is not None:
                found.append(chain)
    return found


def _chained(first: Run, rest: list[Run], join: float) -> tuple[Run | None, list[Run]]:
    """Run grown at its end until it meets its start; the runs that it used up are taken away when it does."""
    points, left = first.points, list(rest)
    while not _shut(points, join):
        if not left:
            return None, rest
        ends = np.array([[run.points[0], run.points[-1]] for run in left])
        gaps = np.abs(ends - points[-1])
        if gaps.min() > join:
            return None, rest
        turns = np.abs(np.angle(_leaving(left) / _unit(points[-1] - points[-2])))
        index = int(np.argmin(np.where(gaps <= join, turns, np.inf)))
        run = left.pop(index // 2)
        points = np.concatenate([points, run.points[:: -1 if index % 2 else 1]])
    return Run(points, closed=True, source=first.source, group=first.group), left


def _leaving(runs: list[Run]) -> Points:
    """Directions in which runs leave their start and, walked the other way, their end."""
    return np.array([[_unit(p[1] - p[0]), _unit(p[-2] - p[-1])] for p in (run.points for run in runs)])


def _unit(v: complex) -> complex:
    return v / abs(v) if v else 1.0
