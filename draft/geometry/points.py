"""Points and directions as complex numbers: the few operations that drafting uses all the time.

All functions take scalars or arrays of any matching shape.
"""

from __future__ import annotations

import numpy as np


def dot(a: complex, b: complex) -> float:
    """Dot product of two vectors.

    >>> dot(3 + 4j, 1j)
    4.0
    """
    return (a * b.conjugate()).real


def cross(a: complex, b: complex) -> float:
    """Cross product: positive when `b` lies to the left of `a`.

    >>> cross(1, 1j)
    1.0
    """
    return (a.conjugate() * b).imag


def unit(v: complex) -> complex:
    """Direction of a vector (length 1); a zero vector gives nan.

    >>> unit(3 + 4j)
    (0.6+0.8j)
    """
    return v / abs(v)


def mid(a: complex, b: complex) -> complex:
    """Point halfway between two points.

    >>> mid(0, 10 + 4j)
    (5+2j)
    """
    return (a + b) / 2


def turn_deg(v: complex, angle_deg: float) -> complex:
    """Vector turned by an angle, counter-clockwise.

    >>> complex(np.round(turn_deg(1, 90), 9))
    1j
    """
    return v * np.exp(1j * np.deg2rad(angle_deg))  # type: ignore[no-any-return]


def angle_deg(from_dir: complex, to_dir: complex) -> float:
    """Signed angle from one direction to another, -180 to 180, counter-clockwise positive.

    >>> round(angle_deg(1, -1 + 1j), 6)
    135.0
    """
    return float(np.rad2deg(np.angle(to_dir / from_dir)))


def mirror(p: complex, a: complex, b: complex) -> complex:
    """Image of a point in the line through `a` and `b`.

    >>> mirror(3 + 2j, 0, 1)
    (3-2j)
    """
    line_dir = unit(b - a)
    return a + line_dir * ((p - a) / line_dir).conjugate()


def cross_lines(a: complex, a_dir: complex, b: complex, b_dir: complex) -> complex:
    """Where two endless lines meet, each given by a point and a direction; parallel lines give nan or inf.

    >>> cross_lines(0j, 1, 5 + 5j, 1j)
    (5+0j)
    """
    return a + a_dir * (cross(b - a, b_dir) / cross(a_dir, b_dir))


def choose(condition: Floats | int, yes: complex, no: complex) -> complex:
    """`yes` where the condition holds, else `no`; for one draft or, row by row, for many.

    >>> choose(np.array([True, False]), 1, 2)
    array([1, 2])
    """
    if isinstance(condition, int) or np.ndim(condition) == 0:
        return yes if condition else no
    return np.where(condition, yes, no)  # type: ignore[return-value]


def with_y(a: complex, b: complex, y: float) -> complex:
    """Point at height `y` on the endless line through `a` and `b` (not level).

    >>> with_y(0, 10 + 20j, 5)
    (2.5+5j)
    """
    share = (y - a.imag) / (b.imag - a.imag)
    return a + (b - a) * share
