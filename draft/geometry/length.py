"""Arc length of a segment, and the parameter at an arc length.

Gauss-Legendre quadrature with 24 nodes is good to about 0.00001 mm on calm curves of garment size; loops and cusps
need more. So every length is computed twice, whole and in halves, and split further until both agree.
"""

from __future__ import annotations

import numpy as np

from draft.geometry.arrays import Floats
from draft.geometry.segments import Cubic, Line, Segment

LENGTH_TOL_MM = 1e-6
_DEEPEST_SPLIT = 14
_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(24)
_UNIT_NODES = (_NODES + 1) / 2
_UNIT_WEIGHTS = _WEIGHTS / 2
_HALF_NODES = np.concatenate([_UNIT_NODES / 2, (1 + _UNIT_NODES) / 2])
_HALF_WEIGHTS = np.concatenate([_UNIT_WEIGHTS / 2, _UNIT_WEIGHTS / 2])


def length(segment: Segment) -> float:
    """Arc length in mm, within 0.001 mm (most curves: a thousand times better).

    Parameters
    ----------
    segment : Line or Cubic
        Scalar or array control points; the result has their shape.

    Examples
    --------
    >>> length(Line(0, 3 + 4j))
    5.0
    >>> round(length(Cubic(0, 0, 10, 10)), 6)  # a straight line in disguise
    10.0
    """
    if isinstance(segment, Line):
        return abs(segment.p1 - segment.p0)
    return partial_length(segment, 1.0)


def partial_length(cubic: Cubic, t: float) -> float:
    """Arc length from the start to parameter `t`; exact to LENGTH_TOL_MM."""
    found = _between(cubic, np.zeros_like(np.asarray(t, dtype=float)), np.asarray(t, dtype=float), 0)
    return float(found) if np.ndim(found) == 0 else found  # type: ignore[return-value]


def _between(cubic: Cubic, t0: Floats, t1: Floats, depth: int) -> Floats:
    span = (t1 - t0)[..., None]
    whole = (t1 - t0) * (cubic.speeds(t0[..., None] + span * _UNIT_NODES) @ _UNIT_WEIGHTS)
    halves = (t1 - t0) * (cubic.speeds(t0[..., None] + span * _HALF_NODES) @ _HALF_WEIGHTS)
    gap = np.abs(whole - halves)
    settled = not np.any(gap > LENGTH_TOL_MM)  # nan rows count as settled
    if settled or depth >= _DEEPEST_SPLIT:
        return np.asarray(halves)
    middle = (t0 + t1) / 2
    return _between(cubic, t0, middle, depth + 1) + _between(cubic, middle, t1, depth + 1)


def parameter_at(segment: Segment, along: float, total: float) -> float:
    """Parameter t at arc length `along` of a segment that is `total` long.

    Newton's method kept inside a shrinking bracket; stops when the length is met within LENGTH_TOL_MM.
    """
    guess = along / total
    if isinstance(segment, Line):
        return guess
    low, high = np.zeros_like(np.asarray(guess, float)), np.ones_like(np.asarray(guess, float))
    t = np.asarray(guess, float)
    for _ in range(60):
        miss = np.asarray(partial_length(segment, t)) - along  # type: ignore[arg-type]
        if not np.any(np.abs(miss) > LENGTH_TOL_MM):
            break
        low, high = np.where(miss < 0, t, low), np.where(miss < 0, high, t)
        with np.errstate(divide="ignore", invalid="ignore"):
            step = t - miss / np.abs(np.asarray(segment.velocity(t)))  # type: ignore[arg-type]
        t = np.where((step > low) & (step < high), step, (low + high) / 2)
    return float(t) if np.ndim(t) == 0 else t  # type: ignore[return-value]
