"""Curves as polylines with a proven bound.

A chord of a curve over a parameter step h strays at most max|B''| h^2 / 8 from it, and the second derivative of a cubic
is nowhere longer than 6 times the longer second difference of its control points. So n equal steps with
n >= sqrt(6 m / (8 tolerance)) keep within the tolerance.
"""

from __future__ import annotations

from collections.abc import Iterable
from math import ceil, isfinite, sqrt

import numpy as np

from draft.errors import DraftError
from draft.geometry.arrays import Points
from draft.geometry.segments import Cubic, Line, Segment

FINEST_TOLERANCE_MM = 1e-6


def steps_for(cubic: Cubic, tolerance: float) -> int:
    """How many equal parameter steps keep the chords within `tolerance` mm.

    >>> steps_for(Cubic(0, 1, 2, 3), 0.1)
    1
    """
    p0, p1, p2, p3 = cubic.controls
    bend = max(abs(p0 - 2 * p1 + p2), abs(p1 - 2 * p2 + p3))
    return max(1, ceil(sqrt(0.75 * bend / tolerance)))


def check_tolerance(tolerance: float) -> None:
    """Refuse a tolerance that is no number or finer than rounding lets it be kept."""
    if not (isfinite(tolerance) and tolerance >= FINEST_TOLERANCE_MM):
        raise DraftError("tolerance", tolerance, f"{FINEST_TOLERANCE_MM} mm or more", "use 0.1 for cutting")


def flatten(segments: Iterable[Segment], tolerance: float, *, closed: bool) -> Points:
    """Polyline through the ends of all segments, within `tolerance` mm of them; last point left out when `closed`."""
    check_tolerance(tolerance)
    runs = []
    last: complex = 0j
    for segment in segments:
        last = segment.controls[-1]
        if isinstance(segment, Line):
            runs.append(np.array([segment.p0]))
        else:
            steps = steps_for(segment, tolerance)
            runs.append(segment.points(np.arange(steps) / steps))
    if not closed:
        runs.append(np.array([last]))
    return np.concatenate(runs).astype(complex)
