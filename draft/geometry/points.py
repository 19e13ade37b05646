"""Points and directions as complex numbers: the few operations that drafting uses all the time.

All functions take scalars or arrays of any matching shape.
"""

from __future__ import annotations

import numpy as np

from draft.errors import DraftError
from draft.geometry.arrays import Floats


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
    """Direction of a vector (length 1). One vector of no length is an error; in an array such a row becomes nan.

    >>> unit(3 + 4j)
    (0.6+0.8j)
    """
    size = abs(v)
    if np.ndim(size) == 0:
        if size == 0:
            raise DraftError("distance of two points", 0.0, "more than 0 mm to have a direction", "move them apart")
        return v / size
    with np.errstate(invalid="ignore"):
        return v / size


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
    """Where two endless lines meet, each given by a point and a direction.

    Two parallel lines are an error; in arrays such a row becomes nan or inf.

    >>> cross_lines(0j, 1, 5 + 5j, 1j)
    (5+0j)
    """
    turn = cross(a_dir, b_dir)
    if np.ndim(turn) == 0:
        if turn == 0:
            raise DraftError("angle of two lines", 0.0, "lines that are not parallel", "turn one of them")
        return a + a_dir * (cross(b - a, b_dir) / turn)
    with np.errstate(divide="ignore", invalid="ignore"):
        return a + a_dir * (cross(b - a, b_dir) / turn)


def choose(condition: Floats | int, yes: complex, no: complex) -> complex:
    """`yes` where the condition holds, else `no`; for one draft or, row by row, for many.

    >>> choose(np.array([True, False]), 1, 2)
    array([1, 2])
    """
    if isinstance(condition, int) or np.ndim(condition) == 0:
        return yes if condition else no
    return np.where(condition, yes, no)  # type: ignore[return-value]


def with_y(a: complex, b: complex, y: float) -> complex:
    """Point at height `y` on the endless line through `a` and `b`, which must not be level.

    >>> with_y(0, 10 + 20j, 5)
    (2.5+5j)
    """
    rise = b.imag - a.imag
    if np.ndim(rise) == 0:
        if rise == 0:
            raise DraftError("rise of the line", 0.0, "a line that is not level", "move one of its points up or down")
        return a + (b - a) * ((y - a.imag) / rise)
    with np.errstate(divide="ignore", invalid="ignore"):
        return a + (b - a) * ((y - a.imag) / rise)
