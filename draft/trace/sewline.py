"""From a traced outline to its seam lines: parted at the corners, allowances taken off, drawn as smooth curves.

The seam line is the parallel inside the cut line, edge by edge, each as wide as its own allowance, run on or cut off
where it meets its neighbour. Where the end of an allowance was shaped (squared, mirrored, cut off) the cut line has two
corners for one of the seam line; what lies between them belongs to neither edge.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from draft.errors import DraftError
from draft.geometry.arrays import Flags, Points
from draft.geometry.path import Path
from draft.geometry.segments import Cubic, Line, Segment
from draft.trace.corners import NAMES, Corners
from draft.trace.outline import thinned

Indices: TypeAlias = NDArray[np.intp]

EDGES = ("side", "hem", "inseam", "crotch", "waist")
"""Edges counter-clockwise; each runs from the corner of the same place in `NAMES` to the next."""

CORNER_OFF_MM = 10.0  # a corner may be named so far from the outline
CLUSTER_DEG = 14.0
END_MM = 4.0  # of an edge, from which its direction is taken where it is run on
KINK_DEG = 12.0
STRAIGHT_DEG = 0.02
SHORTEST_EDGE_MM = 5.0
SPACE_MM = 4.0  # between the points of a curve
CLOSE_MM = 1.0  # points closer than this to the one before are not needed
LEVEL_MM = 0.01


def parted(ring: Points, corners: Corners, allowances: Mapping[str, float], where: str) -> dict[str, Points]:
    """Seam lines of a counter-clockwise outline, each from its first corner to its last.

    Raises
    ------
    DraftError
        When a corner does not lie on the outline, corners do not follow each other, or an allowance has no room.

    Examples
    --------
    >>> ring = np.array([0, 220, 220 + 320j, 320j])
    >>> named = Corners(320j, 0, 220, 220 + 160j, 220 + 320j)
    >>> seams = parted(ring, named, dict.fromkeys(EDGES, 10.0), "a square")
    >>> [complex(p) for p in seams["hem"]]
    [(10+10j), (210+10j)]
    """
    ring, indices = _with_corners(thinned(ring), corners, where)
    if not any(allowances.values()):
        return {name: _stretch(ring, i, j) for name, i, j in zip(EDGES, indices, _after(indices), strict=True)}
    ends = _ends(ring, indices, [allowances[name] for name in EDGES])
    runs, reaches = [], []
    for k, name in enumerate(EDGES):
        first, last = ends[k][1], ends[(k + 1) % 5][0]
        runs.append(_beside(_stretch(ring, first, last), allowances[name]))
        reaches.append(3 * max(allowances[EDGES[k - 1]], allowances[name]) + 5)  # at the start of the edge
    for k in range(5):
        before = k - 1
        runs[before], runs[k] = _met(runs[before], runs[k], reaches[k], f"{where}, {NAMES[k]}", allowances[EDGES[k]])
    return dict(zip(EDGES, runs, strict=True))


def _after(indices: Sequence[int]) -> list[int]:
    return [*indices[1:], indices[0]]


def _with_corners(ring: Points, corners: Corners, where: str) -> tuple[Points, list[int]]:
    """Outline with the corners among its points, and their places in it."""
    for name in NAMES:
        p = getattr(corners, name)
        a, b = ring, np.roll(ring, -1)
        t = np.clip(((p - a) * np.conj(b - a)).real / np.abs(b - a) ** 2, 0, 1)
        gaps = np.abs(a + t * (b - a) - p)
        k = int(np.argmin(gaps))
        if gaps[k] > CORNER_OFF_MM:
            raise DraftError(
                f"{where}, corner {name}",
                str(p),
                f"a place on the outline, which is {gaps[k]:.0f} mm away",
                "give the corner in the coordinates of the outline",
            )
        if min(abs(ring[k] - p), abs(b[k] - p)) > 0.5:  # not at a point that is there already
            ring = np.insert(ring, k + 1, a[k] + t[k] * (b[k] - a[k]))
    indices = [int(np.argmin(np.abs(ring - getattr(corners, name)))) for name in NAMES]
    steps = [(j - i) % len(ring) for i, j in zip(indices, _after(indices), strict=True)]
    if 0 in steps or sum(steps) != len(ring):
        expected = "corners that follow each other round the piece: " + ", ".join(NAMES)
        raise DraftError(f"{where}, corners", "another order", expected, "look which is which")
    return ring, indices


def _stretch(ring: Points, i: int, j: int) -> Points:
    return np.array(ring[i : j + 1] if i < j else np.concatenate([ring[i:], ring[: j + 1]]))


def _ends(ring: Points, indices: Sequence[int], widths: Sequence[float]) -> list[tuple[int, int]]:
    """For each corner where the edge before it ends and where the one after it starts, on the cut line."""
    steps = np.roll(ring, -1) - ring
    turns = np.degrees(np.angle(steps / np.roll(steps, 1)))
    size = len(ring)
    found = []
    for k, index in enumerate(indices):
        reach = 1.6 * float(np.hypot(widths[k - 1], widths[k])) + 2
        spots = []
        for way in (1, -1):
            at = index
            while abs(ring[at % size] - ring[index]) <= reach and abs(at - index) < size // 2:
                if turns[at % size] > CLUSTER_DEG:
                    spots.append(at)
                at += way
        found.append((min(spots, default=index) % size, max(spots, default=index) % size))
    return found


def _beside(line: Points, width: float) -> Points:
    """Polyline at a distance on the left of another."""
    if width == 0:
        return line
    steps = np.diff(line)
    normals = 1j * steps / np.abs(steps)
    before, after = np.append(normals[:1], normals), np.append(normals, normals[-1:])
    share = np.maximum(1 + (before * np.conj(after)).real, 0.3)
    return np.asarray(line + width * (before + after) / share)


def _direction(line: Points) -> complex:
    """Direction of the last few millimetres of a polyline."""
    back = np.flatnonzero(np.abs(line - line[-1]) >= END_MM)
    run = line[-1] - line[back[-1] if len(back) else 0]
    return complex(run / abs(run)) if run else 1.0


def _met(one: Points, two: Points, reach: float, where: str, width: float) -> tuple[Points, Points]:
    """Two polylines run on, and cut off where they meet: as near as can be to where they are to meet."""
    if abs(one[-1] - two[0]) <= LEVEL_MM:  # no corner: one edge runs on into the other
        return one, np.append(one[-1:], two[1:])
    long_one = np.append(one, one[-1] + reach * _direction(one))
    long_two = np.insert(two, 0, two[0] + reach * _direction(two[::-1]))
    i, j, places = _crossings(long_one, long_two)
    aim = (one[-1] + two[0]) / 2
    near = np.abs(places - aim) <= 2 * reach
    if not near.any():
        expected = "an allowance that leaves room for both seams"
        raise DraftError(where, f"{width:g} mm", expected, "give the allowance of each edge, or name the corner again")
    best = int(np.argmin(np.where(near, np.abs(places - aim), np.inf)))
    p = places[best]
    one, two = np.append(long_one[: i[best] + 1], p), np.insert(long_two[j[best] + 1 :], 0, p)
    for line in (one, two):
        if len(line) < 2 or float(np.sum(np.abs(np.diff(line)))) < SHORTEST_EDGE_MM:
            raise DraftError(
                where, f"{width:g} mm", "an edge that is left when the allowance is off", "give it smaller"
            )
    return one, two


def _crossings(one: Points, two: Points) -> tuple[Indices, Indices, Points]:
    """Sides of two polylines that cross, and where."""
    a, da = one[:-1, None], np.diff(one)[:, None]
    b, db = two[None, :-1], np.diff(two)[None, :]
    across = (np.conj(da) * db).imag
    with np.errstate(divide="ignore", invalid="ignore"):
        s = (np.conj(b - a) * db).imag / across
        t = (np.conj(b - a) * da).imag / across
    hair = 1e-9
    i, j = np.nonzero((across != 0) & (s >= -hair) & (s <= 1 + hair) & (t >= -hair) & (t <= 1 + hair))
    return i, j, (a + np.where(across != 0, s, 0) * da)[i, j]


def _spaced(line: Points) -> tuple[Points, Flags]:
    """Points of a polyline that a curve is drawn through, and which of them are kinks.

    These are its ends, its kinks, and others some millimetres apart: points that lie close together carry the rounding
    of the file, and a curve through all of them would waver.
    """
    line = line[np.append(True, np.abs(np.diff(line)) > 1e-6)]
    steps = np.diff(line)
    kinks = np.zeros(len(line), dtype=bool)
    kinks[1:-1] = np.abs(np.degrees(np.angle(steps[1:] / steps[:-1]))) > KINK_DEG
    kept = [0]
    for k in range(1, len(line) - 1):
        gap, left = abs(line[k] - line[kept[-1]]), abs(line[-1] - line[k])
        before_straight = abs(steps[k]) > SPACE_MM and min(gap, left) > CLOSE_MM
        if kinks[k] or before_straight or (gap >= SPACE_MM and left >= SPACE_MM / 2):
            kept.append(k)
    kept.append(len(line) - 1)
    return line[kept], kinks[kept]


def smooth_path(line: Points) -> Path:
    """Path through the points of a polyline: straight where it is straight, curved between, corners kept.

    Directions are those of the chords to either side, weighed by their lengths, so that a line stays a line where a
    curve begins. On a circle of 50 mm radius with points 5 mm apart it keeps within 0.01 mm.

    >>> bend = smooth_path(50 * np.exp(1j * np.linspace(0, np.pi / 2, 17)))
    >>> round(bend.length, 3), round(25 * np.pi, 3)
    (78.54, 78.54)
    """
    line, kinks = _spaced(line)
    steps = np.diff(line)
    chords = steps / np.abs(steps)
    inner = steps[:-1] + steps[1:] if len(steps) > 1 else steps[:0]
    arrive = np.append(inner / np.maximum(np.abs(inner), 1e-12), chords[-1])
    leave = np.append(chords[:1], inner / np.maximum(np.abs(inner), 1e-12))
    arrive = np.where(kinks[1:], chords, arrive)
    leave = np.where(kinks[:-1], chords, leave)
    # a free end bends on as the curve does: the chord lies midway between the directions at its ends
    if len(chords) > 1 and not kinks[1]:
        leave[0] = chords[0] ** 2 / arrive[0]
    if len(chords) > 1 and not kinks[-2]:
        arrive[-1] = chords[-1] ** 2 / leave[-1]
    segments: list[Segment] = []
    for p, q, out, to in zip(line[:-1], line[1:], leave, arrive, strict=True):
        chord = q - p
        bends = max(abs(np.angle(out / chord)), abs(np.angle(to / chord)))
        if bends < np.radians(STRAIGHT_DEG):
            segments.append(Line(complex(p), complex(q)))
        else:
            handle = abs(chord) / 3
            segments.append(Cubic(complex(p), complex(p + handle * out), complex(q - handle * to), complex(q)))
    return Path(tuple(segments))
