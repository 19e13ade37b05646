"""The place on a curve that lies closest to a point."""

from __future__ import annotations

import numpy as np

from draft.geometry.length import partial_length
from draft.geometry.path import Path
from draft.geometry.points import dot
from draft.geometry.segments import Cubic, Line, Segment


def nearest_parameter(segment: Segment, p: complex) -> float:
    """Parameter (0 to 1) of the point of the segment closest to `p`.

    For a cubic the distance is stationary where (B - p) . B' = 0, a polynomial of degree five: all its real roots are
    tried, and both ends.
    """
    if isinstance(segment, Line):
        run = segment.p1 - segment.p0
        size = abs(run) ** 2
        return 0.0 if size == 0 else float(min(1.0, max(0.0, dot(p - segment.p0, run) / size)))
    a, b, c = segment._powers
    place = np.array([c, b, a, segment.p0 - p], dtype=complex)
    speed = np.array([3 * c, 2 * b, a], dtype=complex)
    product = np.convolve(place.real, speed.real) + np.convolve(place.imag, speed.imag)
    # leading terms that are only rounding (a parabola has none of degree five) would spoil all roots
    kept = np.trim_zeros(np.where(np.abs(product) <= 1e-13 * np.max(np.abs(product)), 0.0, product), "f")
    roots = np.roots(kept)
    inside = [float(r.real) for r in roots if abs(r.imag) < 1e-7 and 0 < r.real < 1]
    return min([0.0, 1.0, *inside], key=lambda t: abs(segment.point(t) - p))


def nearest(path: Path, p: complex) -> tuple[float, float]:
    """Arc length and distance (mm) of the point of `path` closest to `p`.

    >>> nearest(Path.line(0, 100), 30 + 4j)
    (30.0, 4.0)
    """
    best_along, best_gap, before = 0.0, float("inf"), 0.0
    for segment, end in zip(path.segments, path._ends, strict=True):
        t = nearest_parameter(segment, p)
        gap = abs(segment.point(t) - p)
        if gap < best_gap:
            along = partial_length(segment, t) if isinstance(segment, Cubic) else t * (end - before)
            best_along, best_gap = before + along, gap
        before = end
    return float(best_along), float(best_gap)
