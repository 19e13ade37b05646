"""Least change under lengths to meet and bounds to keep: one small quadratic problem for each of many rows.

Find z between `low` and `high` for which ``|z|^2 + r^T C^-1 r`` is smallest, where ``r = b - A z`` are the misses and C
says how much of each is tolerated. One of the misses may be a floor: it counts only while it is missed from below.

Solved through the multipliers m of the misses: at the solution z is A^T m brought between its bounds and r = C m. The
multipliers lie at the lowest place of a convex function (the dual one) that is quadratic as long as the same bounds
are active; Newton's method with an exact search along its step ends after a few steps.
"""

from __future__ import annotations

import numpy as np

from draft.geometry.arrays import Floats

_STEPS = 60
_HALVINGS = 60
_RESIDUAL = 1e-11


def least_change(
    a: Floats, b: Floats, tolerated: Floats, low: Floats, high: Floats, floor: int | None = None
) -> Floats:
    """Solve for z.

    Parameters
    ----------
    a : (rows, misses, numbers) array
    b : (rows, misses) array
    tolerated : (rows, misses, misses) array
        C, positive definite.
    low, high : (rows, numbers) arrays
    floor : int, optional
        Which miss is a floor.

    Examples
    --------
    One length that grows by 1 and by 2 with two numbers and is to grow by 5; the second may grow by 1 at most:

    >>> one, free = np.array([[[1.0, 2.0]]]), np.full((1, 2), 9.0)
    >>> exact = np.array([[[1e-12]]])
    >>> least_change(one, np.array([[5.0]]), exact, -free, free).round(6).tolist()
    [[1.0, 2.0]]
    >>> least_change(one, np.array([[5.0]]), exact, -free, np.array([[9.0, 1.0]])).round(6).tolist()
    [[3.0, 1.0]]

    The same length as a floor, already exceeded:

    >>> least_change(one, np.array([[-5.0]]), exact, -free, free, floor=0).round(6).tolist()
    [[0.0, 0.0]]
    """
    if floor is None:
        return _solved(a, b, tolerated, low, high)
    # A single floor that is missed without it is met exactly with it, as the problem is convex.
    without = np.arange(b.shape[1]) != floor
    alone = np.where(without[:, None] & without, tolerated, np.eye(len(without)))
    z = _solved(a * without[:, None], b * without, alone, low, high)
    short = np.flatnonzero(b[:, floor] - np.einsum("rn,rn->r", a[:, floor], z) > 0)
    if len(short):
        z[short] = _solved(*(array[short] for array in (a, b, tolerated, low, high)))
    return z


def _solved(a: Floats, b: Floats, tolerated: Floats, low: Floats, high: Floats) -> Floats:
    m = np.zeros_like(b)
    going = np.arange(len(b))
    for _ in range(_STEPS):
        part = tuple(array[going] for array in (a, b, tolerated, low, high))
        step, miss = _newton(m[going], *part)
        still = miss > _RESIDUAL * (np.abs(b[going]).max(axis=1) + 1.0)
        going, step, part = going[still], step[still], tuple(array[still] for array in part)
        if not len(going):
            break
        m[going] += _share(m[going], step, *part)[:, None] * step
    return np.asarray(np.clip(np.einsum("rmn,rm->rn", a, m), low, high))


def _newton(m: Floats, a: Floats, b: Floats, tolerated: Floats, low: Floats, high: Floats) -> tuple[Floats, Floats]:
    """Newton's step for the multipliers, and how far they are from solving."""
    y = np.einsum("rmn,rm->rn", a, m)
    miss = b - np.einsum("rmn,rn->rm", a, np.clip(y, low, high)) - np.einsum("rmk,rk->rm", tolerated, m)
    free = ((y > low) & (y < high)).astype(float)
    matrix = np.einsum("rmn,rn,rkn->rmk", a, free, a) + tolerated
    return np.linalg.solve(matrix, miss[..., None])[..., 0], np.abs(miss).max(axis=1)


def _share(m: Floats, step: Floats, a: Floats, b: Floats, tolerated: Floats, low: Floats, high: Floats) -> Floats:
    """Which share of the step leads to the lowest place along it.

    The slope along the step only grows: where the function still falls at the end, all of it; elsewhere the place
    without slope is found by halving.
    """
    share = np.ones(len(m))
    rows = np.flatnonzero(_slope(share, m, step, a, b, tolerated, low, high) > 0)
    if not len(rows):
        return share
    part = tuple(array[rows] for array in (m, step, a, b, tolerated, low, high))
    below, above = np.zeros(len(rows)), share[rows]
    for _ in range(_HALVINGS):
        middle = (below + above) / 2
        rising = _slope(middle, *part) > 0
        below, above = np.where(rising, below, middle), np.where(rising, middle, above)
    share[rows] = above
    return share


def _slope(
    share: Floats, m: Floats, step: Floats, a: Floats, b: Floats, tolerated: Floats, low: Floats, high: Floats
) -> Floats:
    """Slope of the dual function along the step, after a share of it."""
    here = m + share[:, None] * step
    z = np.clip(np.einsum("rmn,rm->rn", a, here), low, high)
    miss = np.einsum("rmn,rn->rm", a, z) + np.einsum("rmk,rk->rm", tolerated, here) - b
    return np.asarray((miss * step).sum(axis=1))
