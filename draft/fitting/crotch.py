"""The crotch seam of one panel as a few numbers, its length, and how fast the length grows with each of them.

Glossary
--------
fork      how far the fork point moves away from the centre line, level
lift      how far the centre of the waist moves up along the straight part of the seam (down when negative)
slant     how far the straight part leans further towards the side seam, mm at the level of the waist
fullness  what the curve's handles gain, as a share of the way to the corner; more is a deeper curve
yielding  where a fork becomes narrower the top of its curve may come down with it, so that the curve stays round

All of it for one panel or, in arrays, for many. The slopes are exact: a cubic's length changes with its control points
by the integral of unit tangent times the change of the velocity.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from draft.block import PanelBlock
from draft.geometry.arrays import Real
from draft.geometry.path import Path
from draft.geometry.segments import Cubic, Line

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(24)
_T: Final = (_NODES + 1) / 2
_W: Final = _WEIGHTS / 2
# change of the velocity at the nodes with each control point
_VELOCITY: Final = (
    -3 * (1 - _T) ** 2,
    3 * (1 - _T) ** 2 - 6 * (1 - _T) * _T,
    6 * (1 - _T) * _T - 3 * _T**2,
    3 * _T**2,
)
_HALVINGS = 48
YIELD = 1.8
"""How far the top comes down: this times the square of the share by which the fork is narrower."""


@dataclass(frozen=True, eq=False)
class CrotchShape:
    """Crotch seam: level at the fork, tangent to a straight line from `top` to the centre of the waist.

    `near` and `far` are the reach of the curve's two handles, at the fork and at the top, as shares of the way to the
    corner where the straight line meets the level of the fork.
    """

    fork: complex
    top: complex
    waist_centre: complex
    near: Real
    far: Real
    yielding: bool = False
    top_per_fork: complex = 0j

    @classmethod
    def of(cls, panel: PanelBlock, *, yielding: bool = False) -> CrotchShape:
        """Shape of a panel's crotch seam."""
        curve, line = panel.crotch.segments
        fork, by_fork, by_top, top = curve.controls
        raw = cls(fork, top, line.controls[1], 0.0, 0.0)
        corner = raw.corner
        near = (by_fork - fork).real / (corner - fork).real
        return cls(fork, top, raw.waist_centre, near, (by_top - top).imag / (corner - top).imag, yielding)

    @property
    def lean(self) -> Real:
        """How much the straight part moves towards the inseam per mm of height (negative: towards the side)."""
        return (self.waist_centre - self.top).real / (self.waist_centre - self.top).imag

    @property
    def corner(self) -> complex:
        """Where the straight part, run on, meets the level of the fork."""
        down = self.fork.imag - self.top.imag
        corner: complex = self.top.real + self.lean * down + 1j * self.fork.imag
        return corner

    @property
    def straight(self) -> Real:
        """Length of the straight part."""
        return abs(self.waist_centre - self.top)

    @property
    def radius_at_fork(self) -> Real:
        """Radius of the curve where it leaves the fork."""
        handle = self.near * (self.fork - self.corner).real
        return 1.5 * handle**2 / ((1 - self.far) * (self.top - self.corner).imag)

    def changed(self, fork: Real, lift: Real, slant: Real, fullness: Real) -> CrotchShape:
        """Return the seam after a change; what each number means stands at the top of this module."""
        top, top_per_fork = self._top(fork)
        run = self.waist_centre - top
        along = run - slant
        centre = top + along / abs(along) * (abs(run) + lift)
        near, far = self.near + fullness, self.far + fullness
        return CrotchShape(self.fork + fork, top, centre, near, far, self.yielding, top_per_fork)

    def turned(self, angle: Real) -> CrotchShape:
        """Return the seam with its straight part turned about its lower end, towards the side, by `angle` radians."""
        run = (self.waist_centre - self.top) * np.exp(1j * angle)
        return replace(self, waist_centre=self.top + run)

    def _top(self, fork: Real) -> tuple[complex, complex]:
        """Top of the curve when the fork has moved, and how fast it moves with it."""
        if not self.yielding:
            return self.top, 0j
        up, width = self.top - self.corner, (self.fork - self.corner).real
        narrower = np.maximum(-fork / width, 0.0)
        return self.top - up * YIELD * narrower**2, up * 2 * YIELD * narrower / width

    @property
    def _controls(self) -> tuple[complex, complex, complex, complex]:
        corner = self.corner
        by_fork = self.fork + self.near * (corner - self.fork)
        return self.fork, by_fork, self.top + self.far * (corner - self.top), self.top

    @property
    def path(self) -> Path:
        """The seam, from fork to waist."""
        return Path((Cubic(*self._controls), Line(self.top, self.waist_centre)))

    def _slopes(self, corner_per_slant: Real) -> Mapping[str, tuple[complex, complex, complex, complex]]:
        """How fast the control points move with each number."""
        corner, none = self.corner, 0.0 * self.near
        by_slant = corner_per_slant + none
        return {
            "fork": (
                1 + none,
                1 - self.near,
                (1 - self.far) * self.top_per_fork + none,
                self.top_per_fork + none,
            ),
            "slant": (none, self.near * by_slant, self.far * by_slant, none),
            "fullness": (none, corner - self.fork, corner - self.top, none),
        }

    def length_and_slopes(self, height: Real) -> tuple[Real, dict[str, Real]]:
        """Length of the seam, and its growth per mm (per unit of fullness).

        `height` is the height of the straight part at which the slant is told.
        """
        p = [np.asarray(c)[..., None] for c in self._controls]
        velocity = sum(v * c for v, c in zip(_VELOCITY, p, strict=True))
        speed = np.abs(velocity)
        tangent = velocity / speed
        total = (speed * _W).sum(axis=-1) + self.straight
        per_slant = (self.top.imag - self.fork.imag) / height
        up = (self.waist_centre - self.top) / self.straight
        grown = {"lift": 1.0 + 0.0 * total}
        for name, rates in self._slopes(per_slant).items():
            change = sum(v * np.asarray(r)[..., None] for v, r in zip(_VELOCITY, rates, strict=True))
            grown[name] = ((tangent.conjugate() * change).real * _W).sum(axis=-1)
        grown["fork"] = grown["fork"] - (up.conjugate() * self.top_per_fork).real
        return total, grown

    def at_height(self, y: Real, height: Real) -> tuple[Real, dict[str, Real]]:
        """X of the seam at height `y`, and how fast it moves; `height` as in :meth:`length_and_slopes`."""
        t = self._parameter(y)
        b = ((1 - t) ** 3, 3 * (1 - t) ** 2 * t, 3 * (1 - t) * t**2, t**3)
        v = (-3 * (1 - t) ** 2, 3 * (1 - t) ** 2 - 6 * (1 - t) * t, 6 * (1 - t) * t - 3 * t**2, 3 * t**2)
        place = sum(w * c for w, c in zip(b, self._controls, strict=True))
        velocity = sum(w * c for w, c in zip(v, self._controls, strict=True))
        across = velocity.real / np.where(np.abs(velocity.imag) > 1e-9, velocity.imag, 1e-9)
        straight = y >= self.top.imag
        x = np.where(straight, self.top.real + self.lean * (y - self.top.imag), place.real)
        moved = {"lift": 0.0 * x}
        per_slant = (self.top.imag - self.fork.imag) / height
        for name, rates in self._slopes(per_slant).items():
            change = sum(w * r for w, r in zip(b, rates, strict=True)) + 0j
            on_line = (self.top.imag - y) / height if name == "slant" else 0.0
            moved[name] = np.where(straight, on_line, change.real - across * change.imag)
        return x, moved

    def _parameter(self, y: Real) -> Real:
        """Parameter of the curve at height `y`: it climbs all the way, so the interval is halved."""
        y0, y1, y2, y3 = (c.imag for c in self._controls)
        low = 0.0 * (y + y0 + y2)
        high = low + 1.0
        for _ in range(_HALVINGS):
            t = (low + high) / 2
            u = 1 - t
            below = u**3 * y0 + 3 * u**2 * t * y1 + 3 * u * t**2 * y2 + t**3 * y3 < y
            low, high = np.where(below, t, low), np.where(below, high, t)
        return (low + high) / 2
