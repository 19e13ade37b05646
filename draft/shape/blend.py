"""A line between two lines: what a seam looks like while one way of drawing it goes over into another."""

from __future__ import annotations

from itertools import pairwise

from draft.geometry.path import Path
from draft.geometry.points import unit
from draft.geometry.segments import Cubic

SAME_SHARE = 1e-3  # joints of the two lines that lie closer together than this share of their lengths are one


def blended(a: Path, b: Path, share: float) -> Path:
    """Smooth line that goes over from `a` (share 0) into `b` (share 1).

    Both are cut at the same shares of their lengths, at the joints of either. Places, directions and how far each
    direction is held are mixed at the cuts, so two smooth lines give a smooth one.

    >>> blended(Path.line(0j, 90 + 0j), Path.line(0j, 90 + 20j), 0.5).end
    (90+10j)
    """
    if not 0 < share < 1:
        return a if share <= 0 else b
    stretches = ((_between(a, *cuts), _between(b, *cuts)) for cuts in pairwise(_cuts(a, b)))
    return Path(tuple(_mixed(one, two, share) for one, two in stretches))


def _cuts(a: Path, b: Path) -> list[float]:
    """Shares of the length at which either has a joint, from 0 to 1."""
    found = [0.0]
    for mark in sorted([*_joints(a), *_joints(b)]):
        if found[-1] + SAME_SHARE < mark < 1 - SAME_SHARE:
            found.append(mark)
    return [*found, 1.0]


def _joints(path: Path) -> list[float]:
    ends = [Path(path.segments[: count + 1]).length for count in range(len(path.segments))]
    return [end / ends[-1] for end in ends[:-1]]


def _between(path: Path, start: float, stop: float) -> Path:
    return path.between(start * path.length, stop * path.length)


def _mixed(one: Path, two: Path, share: float) -> Cubic:
    def mix(a: complex, b: complex) -> complex:
        return a + (b - a) * share

    start, end = mix(one.start, two.start), mix(one.end, two.end)
    leaving, arriving = unit(mix(one.start_dir, two.start_dir)), unit(mix(one.end_dir, two.end_dir))
    (near_1, far_1), (near_2, far_2) = _holds(one), _holds(two)
    return Cubic(start, start + leaving * mix(near_1, near_2), end - arriving * mix(far_1, far_2), end)


def _holds(stretch: Path) -> tuple[float, float]:
    """How far a curve holds its first and its last direction: the lengths of its handles."""
    if len(stretch.segments) == 1 and isinstance(stretch.segments[0], Cubic):
        p0, p1, p2, p3 = stretch.segments[0].controls
        return abs(p1 - p0), abs(p3 - p2)
    return stretch.length / 3, stretch.length / 3
