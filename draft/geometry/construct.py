"""Curves as drafting books describe them: bowed lines, curves through a touch point, smooth joins.

All take scalars or arrays of one shape.
"""

from __future__ import annotations

import numpy as np

from draft.geometry.arrays import Floats
from draft.geometry.points import choose, cross, dot, unit
from draft.geometry.segments import Cubic

_SAMPLES = np.linspace(0.0, 1.0, 33)


def bow(p: complex, q: complex, left: float) -> Cubic:
    """Line from `p` to `q` bowed by `left` mm at its middle (to the left hand; negative: to the right). A parabola.

    >>> bow(0, 96, 6).point(0.5)
    (48+6j)
    """
    corner = (p + q) / 2 + 2 * left * 1j * unit(q - p)
    return Cubic(p, p + (corner - p) * 2 / 3, q + (corner - q) * 2 / 3, q)


def hook(p0: complex, corner: complex, p3: complex, k: float) -> Cubic:
    """Curve from `p0` to `p3` into a corner: both handles point at it and reach the share `k` of the way."""
    return Cubic(p0, p0 + k * (corner - p0), p3 + k * (corner - p3), p3)


def hook_touching(
    p0: complex, corner: complex, p3: complex, touch: float, past: complex | None = None
) -> tuple[Cubic, float]:
    """Return the hook that passes a point at the distance `touch` mm, and its k.

    `past` is that point; left out, it is the corner. The distance falls steadily as k grows, so the interval of k is
    halved until it is met. A touch that no k between 0 (the chord) and 1 can reach gives the nearer end.

    >>> curve, k = hook_touching(100j, 0, 60, 30)
    >>> round(float(distance_to(curve, 0)), 3)
    30.0
    """
    target = corner if past is None else past
    low = np.zeros_like(np.asarray(touch, dtype=float) + abs(p0))
    high = np.ones_like(low)
    for _ in range(40):
        k = (low + high) / 2
        too_far = distance_to(hook(p0, corner, p3, k), target) > touch  # type: ignore[arg-type]
        low, high = np.where(too_far, k, low), np.where(too_far, high, k)
    k = (low + high) / 2
    found = float(k) if np.ndim(k) == 0 else k
    return hook(p0, corner, p3, found), found  # type: ignore[arg-type, return-value]


def distance_to(cubic: Cubic, p: complex) -> Floats:
    """Smallest distance from the curve to a point: the best of 33 places, polished by Newton's method.

    Where the curve runs fast between two of the places, one further off may hide a better one: no point between them
    is nearer than half of (both distances less the way from one to the other). The least of these is polished too.
    """
    places = cubic.points(_SAMPLES)
    gaps = np.abs(places - np.asarray(p)[..., None])
    best = np.argmin(gaps, axis=-1)
    hidden = np.argmin(gaps[..., :-1] + gaps[..., 1:] - np.abs(np.diff(places)), axis=-1)
    nearest = np.minimum(np.min(gaps, axis=-1), _polished(cubic, p, _SAMPLES[best]))
    elsewhere = (hidden != best) & (hidden != best - 1)
    if np.any(elsewhere):
        other = _polished(cubic, p, (hidden + 0.5) / (len(_SAMPLES) - 1))
        nearest = np.where(elsewhere, np.minimum(nearest, other), nearest)
    return np.asarray(nearest)


def _polished(cubic: Cubic, p: complex, t: Floats) -> Floats:
    """Distance after a few steps from parameter `t` towards the foot of the point."""
    for _ in range(4):
        gap, speed = cubic.point(t) - p, cubic.velocity(t)  # type: ignore[arg-type]
        slope = dot(speed, speed) + dot(gap, cubic.acceleration(t))  # type: ignore[arg-type]
        with np.errstate(divide="ignore", invalid="ignore"):
            step = np.where(np.abs(slope) > 1e-12, dot(gap, speed) / slope, 0.0)
        t = np.clip(t - step, 0.0, 1.0)
    return np.asarray(np.abs(cubic.point(t) - p))  # type: ignore[arg-type]


def smooth(p: complex, p_dir: complex, q: complex, q_dir: complex, near: float = 1 / 3, far: float = 1 / 3) -> Cubic:
    """Curve that leaves `p` along `p_dir` and arrives at `q` along `q_dir` (directions of length 1).

    `near` and `far` are the handles' lengths as shares of the distance from `p` to `q`: longer handles hold the
    direction longer.
    """
    span = abs(q - p)
    return Cubic(p, p + p_dir * near * span, q - q_dir * far * span, q)


def square_to(direction: complex, towards: complex) -> complex:
    """Direction square to `direction`, on the side of the vector `towards`.

    >>> square_to(1j, 5 + 1j)
    (1-0j)
    """
    return direction * choose(cross(direction, towards) >= 0, 1j, -1j)


def point_at_height(cubic: Cubic, y: float) -> complex:
    """Point of a curve that climbs or falls all the way, at height `y`; beyond its ends, the nearer end.

    >>> point_at_height(Cubic(0j, 2 + 2j, 4 + 4j, 6 + 6j), 3)
    (3+3j)
    """
    rising = np.sign(np.imag(cubic.p3) - np.imag(cubic.p0))
    low = np.zeros_like(np.asarray(y, dtype=float) + np.imag(cubic.p0))
    high = np.ones_like(low)
    for _ in range(52):
        t = (low + high) / 2
        above = (np.imag(cubic.point(t)) - y) * rising > 0  # type: ignore[arg-type]
        low, high = np.where(above, low, t), np.where(above, t, high)
    found = cubic.point((low + high) / 2)  # type: ignore[arg-type]
    return complex(np.round(found, 12)) if np.ndim(found) == 0 else found


def bow_into(a: complex, b: complex, c: complex, left_ab: float, left_bc: float) -> tuple[Cubic, Cubic, Cubic, Cubic]:
    """Two bowed lines a-b and b-c that flow smoothly through `b`.

    Both bows keep their outer part; at `b` they share the direction halfway between theirs. Used where a book says
    "draw the hip curve and continue to the knee".

    >>> upper, joint, onward, lower = bow_into(0, 100 + 10j, 300, 5, 0)
    >>> bool(abs(joint.end_dir - onward.start_dir) < 1e-12 and joint.p3 == 100 + 10j)
    True
    """
    before, after = bow(a, b, left_ab), bow(b, c, left_bc)
    through_dir = unit(before.end_dir + after.start_dir)
    upper, _ = before.split(0.5)
    _, lower = after.split(0.45)
    joint = smooth(upper.p3, upper.end_dir, b, through_dir)
    onward = smooth(b, through_dir, lower.p0, lower.start_dir)
    return upper, joint, onward, lower
