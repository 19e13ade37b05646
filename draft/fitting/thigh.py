"""Width of the thigh on a block, and how it moves with the forks."""

from __future__ import annotations

from dataclasses import dataclass
from typing import cast

from draft.block import PanelBlock
from draft.geometry.arrays import Real
from draft.geometry.construct import bow, point_at_height
from draft.geometry.points import choose, unit
from draft.geometry.segments import Cubic

THIGH_BELOW_CROTCH = 25.0
"""Level of the thigh girth below the crotch line, mm."""


@dataclass(frozen=True, eq=False)
class ThighOf:
    """What the thigh of one panel needs to be followed through a change.

    The inseam is the method's own, not yet turned square to the crotch seam: the turned one lies a few mm further out,
    so a thigh that is wide enough here is wide enough on the pattern. The side seam follows the hip in proportion to
    the height above the knee.
    """

    knee: complex
    fork: complex
    hollow: Real
    side_x: Real
    share: Real

    @classmethod
    def of(cls, panel: PanelBlock, y_hip: Real) -> ThighOf:
        """Thigh of a panel before any change."""
        y = -THIGH_BELOW_CROTCH
        _, _, onward, lower = (cast(Cubic, s) for s in panel.side_to(panel.waist_side, panel.knee_side))
        on_side = choose(y > lower.p0.imag, point_at_height(onward, y), point_at_height(lower, y))
        y_knee = panel.knee_side.imag
        share = (y - y_knee) / (y_hip - y_knee)
        return cls(panel.knee_inseam, panel.fork, panel.inseam_hollow, on_side.real, share)

    def width(self, fork: Real, hip_moved: Real) -> tuple[Real, Real]:
        """Width with the fork moved out and the hip of the side seam moved with it; and its growth with the fork."""
        knee, tip, hollow = self.knee, self.fork + fork, self.hollow
        curve = bow(knee, tip, hollow)
        x = curve.point(_parameter(curve, -THIGH_BELOW_CROTCH)).real
        return x - self.side_x - self.share * hip_moved, self._growth(curve, knee, tip, hollow)

    def _growth(self, curve: Cubic, knee: complex, tip: complex, hollow: Real) -> Real:
        along = unit(tip - knee)
        corner = 0.5 + 2j * hollow * (1 - along * along.real) / abs(tip - knee)
        t = _parameter(curve, -THIGH_BELOW_CROTCH)
        u = 1 - t
        change = 3 * u * u * t * corner * 2 / 3 + 3 * u * t * t * (1 + 2 * corner) / 3 + t**3
        velocity = curve.velocity(t)
        return change.real - velocity.real / velocity.imag * change.imag


def _parameter(curve: Cubic, y: Real) -> Real:
    """Parameter of a bowed line at height `y`: it is a parabola along its chord, nearly even in height."""
    t = (y - curve.p0.imag) / (curve.p3.imag - curve.p0.imag)
    for _ in range(6):
        t = t - (curve.point(t).imag - y) / curve.velocity(t).imag
    return t
