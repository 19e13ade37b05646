"""The ten-degree wedge method against its worked example.

Source of the numbers: Gunther F. Hertzer, Garment Cutting in the Twentieth Century, 1892: wedge, fork, crease, waists,
gore and the example's measures (seat 38, waist 33, knee 19 1/2, bottom 18 in) were read; leg 32, the knee level, the
back top and what front and back share of the leg are ours. The check values were computed by other code with curves
that start from a corner on the base line; tangent to the line above, as drawn here, the front crotch seam is 4.4 mm
longer and the back one 3.3 mm shorter. The hip line, level here and 2.4 degrees lower at the side, is 1.0 mm narrower
on each panel. The side of the sheet bends at the seat; smooth, as drawn here, it makes the thigh 4.2 mm wider in front
and 2.1 mm narrower behind. The other seams and widths agree within 0.6 mm.
"""

from __future__ import annotations

import numpy as np
import pytest
from block_numbers import assert_crotch_flows, assert_hip_line, hip_width, net_waist, numbers, off, thigh_to_side
from zoo import ZOO

from draft.methods.base import Measures
from draft.methods.ten_degrees import METHOD, ten_degrees

INCH = 25.4
POINT_TOL_MM = 0.5
CHECK_TOL_MM = 2.0
THIGH_TOL_MM = 5.0
CROTCH_TOL_MM = 5.0
TO_UPRIGHT = (24 - 1j) / abs(24 - 1j)  # the crease of the sheet leans 1 in 24 to the side

EXAMPLE = Measures(waist=33 * INCH, hip=38 * INCH, body_rise=280, waist_to_hip=200, inside_leg=32 * INCH)
# x, y in inches, in the frame of the sheet (base line and fork line), as listed; the middle of knee and hem lies on the
# crease, -(y + 75.25)/24 by hand.
FRONT = {
    "apex": (0, -75.25), "fork": (4.385, 0), "seat": (0, 3.494), "seat side": (-9.843, 3.494), "CF top": (0.625, 10.25),
    "side top": (-7.625, 10.75), "knee": (-2.552, -14), "hem": (-1.802, -32), "knee out": (-6.927, -14),
    "knee in": (1.823, -14), "hem out": (-5.802, -32), "hem in": (2.198, -32),
}  # fmt: skip
BACK = {
    "CB top": (-2.002, 11.5), "side top": (-11.973, 10.75), "knee out": (-7.927, -14), "knee in": (2.823, -14),
    "hem out": (-6.802, -32), "hem in": (3.198, -32),
}  # fmt: skip
CASES = [("front", name, *xy) for name, xy in FRONT.items()] + [("back", name, *xy) for name, xy in BACK.items()]


@pytest.fixture(scope="module")
def block():
    return ten_degrees(EXAMPLE)


def on_sheet(block, p):
    """Point in inches in the frame of the sheet, found from the point of the wedge and the lean of the crease."""
    return (p - block.front.points["apex"]) / INCH / TO_UPRIGHT - 75.25j


@pytest.mark.parametrize(("part", "name", "x", "y"), CASES)
def test_point_of_the_example(block, part, name, x, y):
    found = on_sheet(block, getattr(block, part).points[name])
    assert abs(found - complex(x, y)) * INCH <= POINT_TOL_MM


def test_every_point_of_the_sheet_is_kept(block):
    assert set(block.front.points) == set(FRONT)
    assert set(block.back.points) == set(BACK)


def test_crease_stands_upright_and_both_forks_on_the_crotch_line(block):
    for name in ("apex", "knee", "hem"):
        assert abs(block.front.points[name].real) < 1e-9
    assert abs(block.front.fork.imag) < 1e-9
    assert block.front.fork == block.back.fork
    assert [block.levels[name] for name in ("knee", "hem")] == pytest.approx(
        [block.front.points[name].imag for name in ("knee", "hem")]
    )


def test_front_and_back_lie_in_a_wedge_of_ten_degrees(block):
    """From the point of the wedge, side to inner line: 1 in 8 and 1 in 24 (read: 7 1/2 and 2 1/2 degrees)."""
    apex = block.front.points["apex"]
    side, crease = block.front.points["seat side"] - apex, block.front.points["hem"] - apex
    inner = block.front.fork - 1.25 * INCH * TO_UPRIGHT - apex
    assert np.degrees(np.angle(side / inner)) == pytest.approx(7.5 + 2.5, abs=0.6)  # 9.5: 1 in 8 is 7.1 degrees
    assert np.degrees(np.angle(crease / inner)) == pytest.approx(2 * 2.5, abs=0.3)


@pytest.mark.parametrize(
    ("part", "waist", "hip", "thigh", "crotch", "inseam", "side"),
    [("front", 8.27, 9.84, 13.19, 13.08, 32.27, 43.37), ("back", 8.75, 9.84, 13.52, 14.30, 32.12, 43.22)],
)
def test_widths_and_seams_of_the_example(block, part, waist, hip, thigh, crotch, inseam, side):
    panel = getattr(block, part)
    level = (block.front.fork / TO_UPRIGHT).imag - INCH  # one inch below the fork, on the sheet
    found_thigh, found_crotch, *seams = thigh_to_side(panel, level, 1 / TO_UPRIGHT)
    found = [net_waist(panel), hip_width(panel), *seams]
    assert found == pytest.approx([INCH * v for v in (waist, hip, inseam, side)], abs=CHECK_TOL_MM)
    assert found_thigh == pytest.approx(INCH * thigh, abs=THIGH_TOL_MM)
    assert found_crotch == pytest.approx(INCH * crotch, abs=CROTCH_TOL_MM)


def test_knee_and_hem_girths_of_the_example(block):
    for name, girth in (("knee", 19.5), ("hem", 18)):
        sides = [getattr(p, f"{name}_inseam") - getattr(p, f"{name}_side") for p in (block.front, block.back)]
        assert sum(abs(side) for side in sides) == pytest.approx(girth * INCH, abs=0.01)


def test_knee_and_hem_tilt_as_little_as_the_method_says(block):
    for panel in (block.front, block.back):
        for name in ("knee", "hem"):
            fall = getattr(panel, f"{name}_side").imag - getattr(panel, f"{name}_inseam").imag
            assert 0 < fall / 2 <= 6.0


def test_ease_is_what_the_drawing_adds(block):
    waist = 2 * (net_waist(block.front) + net_waist(block.back))
    hip = 2 * (hip_width(block.front) + hip_width(block.back))
    assert block.ease == pytest.approx({"waist": waist - 33 * INCH, "hip": hip - 38 * INCH}, abs=0.01)
    assert waist == pytest.approx(34.0 * INCH, abs=CHECK_TOL_MM)
    assert hip == pytest.approx(4 * 9.84 * INCH, abs=3 * CHECK_TOL_MM)  # 4.1 mm narrower: see above
    assert METHOD.seams == 0


def test_one_gore_in_the_middle_of_the_back_waist(block):
    """The book: 1 to 1 1/2 in together."""
    assert block.front.darts == ()
    (gore,) = block.back.darts
    assert gore.intake == pytest.approx(1.25 * INCH)
    assert off(block.back.waist, gore.mouth) < 0.01
    assert abs(gore.mouth - block.back.waist_centre) == pytest.approx(abs(gore.mouth - block.back.waist_side))
    assert abs(gore.point - gore.mouth) == pytest.approx(5 * INCH)


def test_hip_points_and_crotch_curves_stand_where_the_block_promises(block):
    for panel in (block.front, block.back):
        assert_hip_line(panel, block.levels["hip"])
        assert_crotch_flows(panel)


def test_two_bodies_at_once_equal_one_by_one():
    bodies = [ZOO["woman"], ZOO["man"]]
    together = ten_degrees(Measures.of_all(bodies))
    for row, body in enumerate(bodies):
        assert numbers(together, row) == pytest.approx(numbers(ten_degrees(Measures.of(body)), row), abs=1e-9)
