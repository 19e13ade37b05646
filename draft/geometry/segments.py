"""Line and Cubic: one straight or curved stretch, by its parameter t from 0 to 1.

Control points are complex numbers in mm, or complex arrays of one shape for many drafts at once. What goes by
length along the curve lives in :mod:`draft.geometry.length` and :mod:`draft.geometry.path`.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np

from draft.geometry.arrays import Floats, Points
from draft.geometry.points import choose, unit


@dataclass(frozen=True, eq=False)
class Motion:
    """A rigid move of the plane: turn, shift and, when `flip` is set, mirror in the x axis first.

    >>> Motion(turn=1j, shift=5)(2 + 1j)
    (4+2j)
    """

    turn: complex = 1.0
    shift: complex = 0.0
    flip: bool = False

    def __call__(self, p: complex) -> complex:
        """Image of a point (or of an array of points)."""
        return self.turn * (p.conjugate() if self.flip else p) + self.shift

    @classmethod
    def mirror(cls, a: complex, b: complex) -> Motion:
        """Mirror in the line through `a` and `b`.

        >>> Motion.mirror(0, 1j)(3 + 2j)
        (-3+2j)
        """
        turn = unit(b - a) ** 2
        return cls(turn=turn, shift=a - turn * a.conjugate(), flip=True)

    @classmethod
    def about(cls, centre: complex, direction: complex) -> Motion:
        """Turn about a point so that the x axis comes to lie along `direction` (length 1)."""
        return cls(turn=direction, shift=centre - direction * centre)


@dataclass(frozen=True, eq=False)
class Line:
    """Straight stretch from `p0` to `p1`.

    >>> Line(0, 10 + 0j).point(0.25)
    (2.5+0j)
    """

    p0: complex
    p1: complex

    def point(self, t: float) -> complex:
        """Point at parameter `t`."""
        return self.p0 + (self.p1 - self.p0) * t

    def points(self, t: Floats) -> Points:
        """Points at many parameters, on a new last axis."""
        p0, p1 = (np.asarray(p)[..., None] for p in (self.p0, self.p1))
        return np.asarray(p0 + (p1 - p0) * t)

    def velocity(self, t: float) -> complex:
        """Change of the point per unit of `t`."""
        return self.p1 - self.p0

    def acceleration(self, t: float) -> complex:
        """Change of the velocity per unit of `t`: none."""
        return 0j * self.p0

    def split(self, t: float) -> tuple[Line, Line]:
        """Two lines that meet at parameter `t`."""
        here = self.point(t)
        return Line(self.p0, here), Line(here, self.p1)

    def reversed(self) -> Line:
        """Return the same line walked the other way."""
        return Line(self.p1, self.p0)

    def moved(self, motion: Motion) -> Line:
        """Image under a rigid move."""
        return Line(motion(self.p0), motion(self.p1))

    @property
    def controls(self) -> tuple[complex, ...]:
        """The points that define it."""
        return self.p0, self.p1

    @property
    def start_dir(self) -> complex:
        """Direction of travel at the start (length 1)."""
        return unit(self.p1 - self.p0)

    @property
    def end_dir(self) -> complex:
        """Direction of travel at the end (length 1)."""
        return self.start_dir


@dataclass(frozen=True, eq=False)
class Cubic:
    """Curve from `p0` to `p3` that leaves towards `p1` and arrives from `p2` (cubic Bernstein form).

    >>> Cubic(0, 10j, 10 + 10j, 10 + 0j).point(0.5)
    (5+7.5j)
    """

    p0: complex
    p1: complex
    p2: complex
    p3: complex

    @cached_property
    def _powers(self) -> tuple[complex, complex, complex]:
        """Coefficients of t, t^2 and t^3."""
        return (
            3 * (self.p1 - self.p0),
            3 * (self.p0 - 2 * self.p1 + self.p2),
            self.p3 - self.p0 + 3 * (self.p1 - self.p2),
        )

    def point(self, t: float) -> complex:
        """Point at parameter `t`."""
        if isinstance(t, float | int):  # the ends are met exactly, so that joined outlines stay joined
            if t == 0:
                return self.p0
            if t == 1:
                return self.p3
        a, b, c = self._powers
        return self.p0 + t * (a + t * (b + t * c))

    def points(self, t: Floats) -> Points:
        """Points at many parameters, on a new last axis."""
        a, b, c = (np.asarray(k)[..., None] for k in self._powers)
        return np.asarray(np.asarray(self.p0)[..., None] + t * (a + t * (b + t * c)))

    def velocity(self, t: float) -> complex:
        """Change of the point per unit of `t`."""
        a, b, c = self._powers
        return a + t * (2 * b + 3 * c * t)

    def velocities(self, t: Floats) -> Points:
        """Velocity at many parameters; `t` of shape (..., n) or (n,)."""
        a, b, c = (np.asarray(k)[..., None] for k in self._powers)
        return np.asarray(a + t * (2 * b + 3 * c * t))

    def accelerations(self, t: Floats) -> Points:
        """Acceleration at many parameters; `t` of shape (..., n) or (n,)."""
        _, b, c = (np.asarray(k)[..., None] for k in self._powers)
        return np.asarray(2 * b + 6 * c * t)

    def speeds(self, t: Floats) -> Floats:
        """Length of the velocity at many parameters; `t` of shape (..., n) or (n,)."""
        return np.abs(self.velocities(t))

    def acceleration(self, t: float) -> complex:
        """Change of the velocity per unit of `t`."""
        _, b, c = self._powers
        return 2 * b + 6 * c * t

    def split(self, t: float) -> tuple[Cubic, Cubic]:
        """Two cubics that meet at parameter `t` (de Casteljau's scheme)."""
        a, b, c = (p + (q - p) * t for p, q in ((self.p0, self.p1), (self.p1, self.p2), (self.p2, self.p3)))
        d, e = a + (b - a) * t, b + (c - b) * t
        here = d + (e - d) * t
        return Cubic(self.p0, a, d, here), Cubic(here, e, c, self.p3)

    def reversed(self) -> Cubic:
        """Return the same curve walked the other way."""
        return Cubic(self.p3, self.p2, self.p1, self.p0)

    def moved(self, motion: Motion) -> Cubic:
        """Image under a rigid move."""
        return Cubic(*(motion(p) for p in self.controls))

    @property
    def controls(self) -> tuple[complex, complex, complex, complex]:
        """The four control points."""
        return self.p0, self.p1, self.p2, self.p3

    @property
    def start_dir(self) -> complex:
        """Direction of travel at the start (length 1), also where the first handle has no length."""
        return _first_direction(self.p1 - self.p0, self.p2 - self.p0, self.p3 - self.p0)

    @property
    def end_dir(self) -> complex:
        """Direction of travel at the end (length 1)."""
        return _first_direction(self.p3 - self.p2, self.p3 - self.p1, self.p3 - self.p0)


Segment = Line | Cubic

_NO_HANDLE_MM = 1e-9


def _first_direction(*chords: complex) -> complex:
    """Direction of the first chord that has a length."""
    found = chords[-1]
    for chord in reversed(chords[:-1]):
        found = choose(abs(chord) > _NO_HANDLE_MM, chord, found)
    return unit(found)
