"""Questions about closed polylines, answered for all their sides at once."""

from __future__ import annotations

import numpy as np

from draft.geometry.arrays import Floats, Points
from draft.geometry.points import cross

_SIDE_TOL_MM2 = 1e-6  # below it a corner lies on the line: sides that only touch do not cross


def inside(points: Points, polygon: Points) -> np.ndarray:
    """Which points lie inside a polygon (crossing count; its first corner is not repeated).

    >>> inside(np.array([1 + 1j, 5 + 1j]), np.array([0, 2, 2 + 2j, 2j]))
    array([ True, False])
    """
    a, b = polygon[None, :], np.roll(polygon, -1)[None, :]
    p = np.asarray(points)[:, None]
    spans = (a.imag > p.imag) != (b.imag > p.imag)
    with np.errstate(divide="ignore", invalid="ignore"):
        x = a.real + (p.imag - a.imag) * (b.real - a.real) / (b.imag - a.imag)
    return np.asarray(np.sum(spans & (p.real < x), axis=1) % 2 == 1)


def first_crossing(polygon: Points) -> complex | None:
    """Return a point where a closed polyline crosses itself, or None when it is simple.

    >>> first_crossing(np.array([0, 2 + 2j, 2, 2j]))
    (1+1j)
    >>> first_crossing(np.array([0, 2, 2 + 2j, 2j])) is None
    True
    """
    a = np.asarray(polygon, dtype=complex)
    a = a[np.abs(a - np.roll(a, 1)) > 1e-9]
    b = np.roll(a, -1)
    n = len(a)
    side_a: Floats = np.asarray(cross((b - a)[:, None], a[None, :] - a[:, None]))
    side_b: Floats = np.asarray(cross((b - a)[:, None], b[None, :] - a[:, None]))
    apart = ((side_a > _SIDE_TOL_MM2) & (side_b < -_SIDE_TOL_MM2)) | (
        (side_a < -_SIDE_TOL_MM2) & (side_b > _SIDE_TOL_MM2)
    )
    hits = apart & apart.T
    index = np.arange(n)
    gap = np.abs(index[:, None] - index[None, :])
    hits &= (gap > 1) & (gap < n - 1)
    found = np.argwhere(np.triu(hits))
    if not len(found):
        return None
    i, j = found[0]
    t = cross(a[j] - a[i], b[j] - a[j]) / cross(b[i] - a[i], b[j] - a[j])
    return complex(a[i] + t * (b[i] - a[i]))


def longest_upright(polygon: Points, tries: int = 41) -> tuple[complex, complex]:
    """Longest upright line inside a polygon, lower end first: the best of evenly spaced ones.

    >>> longest_upright(np.array([0, 4, 4 + 1j, 3 + 1j, 3 + 5j, 2 + 5j, 2 + 1j, 1j]), tries=7)
    ((2.571429+0j), (2.571429+5j))
    """
    a, b = polygon, np.roll(polygon, -1)
    low, high = polygon.real.min(), polygon.real.max()
    best = (complex(a[0]), complex(a[0]))
    for x in low + (high - low) * (np.arange(tries) + 0.5) / tries - 1e-9 * (high - low):
        spans = (a.real > x) != (b.real > x)
        heights = np.sort((a.imag + (x - a.real) * (b.imag - a.imag) / np.where(spans, b.real - a.real, 1.0))[spans])
        for bottom, top in zip(heights[::2], heights[1::2], strict=True):
            if top - bottom > best[1].imag - best[0].imag + 1e-9:
                best = (complex(x, bottom), complex(x, top))
    return complex(np.round(best[0], 6)), complex(np.round(best[1], 6))
