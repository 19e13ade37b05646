"""The bottom edges of front and back, laid together as sewn, are one smooth line: any leg shape, length and body.

Measured on points of the drawn edges, not on their formulas. That the hem meets the seams square, within 3 degrees, and
runs on from front to back, within 2, are rules of a construction sheet of the trade (read).
"""

from __future__ import annotations

import numpy as np
import pytest
from zoo import ZOO

import draft

SHAPES = (None, "straight", "tapered", "wide", "flared", "bell", "breeches", "culottes", "balloon")
LENGTHS = (80.0, 160.0, 300.0, 450.0, 620.0, 950.0)
CHORD_MM = 1.0
SQUARE_TOL_DEG, FLOW_TOL_DEG = 3.0, 2.0


def away(path, *, end: bool) -> complex:
    """Direction of the chord from one end of a line to the place 1 mm on."""
    corner, near = (path.length, path.length - CHORD_MM) if end else (0.0, CHORD_MM)
    run = path.point_at(near) - path.point_at(corner)
    return run / abs(run)


def laid(hem: complex, seam: complex) -> float:
    """Angle from the seam to the hem, degrees: both are laid on one seam, the back turned over."""
    return abs(float(np.degrees(np.angle(hem / seam))))


@pytest.mark.parametrize("name", ZOO)
@pytest.mark.parametrize("shape", SHAPES)
def test_hems_of_front_and_back_are_one_smooth_line_at_every_length(name, shape):
    body = ZOO[name]
    for length in (v for v in LENGTHS if v <= body.inside_leg):
        leg = draft.Leg(shape=shape, inside_leg=length)
        pieces = draft.trousers(body, draft.Style(leg=leg, hem=draft.FacedHem(depth=15), pocket=None)).pieces
        for seam, hem_ends, seam_ends in (("side", False, True), ("inseam", True, False)):
            angles = []
            for part in ("front", "back"):
                hem, side = pieces[part].edge("hem").path, pieces[part].edge(seam).path
                angles.append(laid(away(hem, end=hem_ends), away(side, end=seam_ends)))
            assert angles == pytest.approx([90, 90], abs=SQUARE_TOL_DEG), (length, seam)
            assert sum(angles) == pytest.approx(180, abs=FLOW_TOL_DEG), (length, seam)


def test_the_measure_sees_a_hem_that_is_not_square():
    """The check can fail: a hem cut straight across a slanting seam is out by the slant."""
    from draft.geometry.path import Path

    seam, hem = Path.line(0j, 20 - 100j), Path.line(20 - 100j, 120 - 100j)
    assert abs(laid(away(hem, end=False), away(seam, end=True)) - 90) > 10
