"""The tenths-of-hip method against its worked example.

Source of the numbers: Wu Hongqing, Textile Reports (in Chinese) 2018 no. 11, size 170/74A: waist 76, hip 100, length
102 with a band of 4, bottom 22 cm. The front was read; on the back only the slope of the seat line, its other lines are
from memory. The check values were computed by other code with a corner on the fork line under the hip point; tangent to
the line above, as drawn here, the front crotch seam is 1.3 mm shorter and the back one 2.4 mm longer. The other seams
and widths agree within 0.7 mm.
"""

from __future__ import annotations

import pytest
from block_numbers import assert_crotch_flows, assert_hip_line, hip_width, net_waist, numbers, off, thigh_to_side
from zoo import ZOO

from draft.methods.base import Measures
from draft.methods.tenths_of_hip import METHOD, tenths_of_hip

CM = 10
POINT_TOL_MM = 0.5
CHECK_TOL_MM = 2.0
CROTCH_TOL_MM = 3.0

# Below the band 98 = rise 25 + leg 73.
EXAMPLE = Measures(waist=760, hip=1000, body_rise=280, waist_to_hip=200, inside_leg=730)
# x, y in cm from the side line of each piece on the crotch line, as listed; the side line's own points, the side on the
# crotch line, the creases and the middle of the fork's extension by hand from their formulas.
FRONT = {
    "side line": (0, 0), "hip side": (0, 8.333), "hip": (24, 8.333), "side": (0.7, 0), "fork": (28, 0),
    "crease": (14.35, 0), "CF top": (23.2, 25), "side top": (-0.8, 25), "mid fork": (26, 0),
    "knee out": (3.363, -29.333), "knee in": (25.337, -29.333), "hem out": (4.35, -73), "hem in": (24.35, -73),
}  # fmt: skip
BACK = {
    "side line": (0, 0), "hip side": (0, 8.333), "hip": (26, 8.333), "foot": (27.944, 0), "fork": (37.944, -1),
    "crease": (18.972, 0), "CB top": (21.528, 27.5), "side top": (-2.342, 25), "knee out": (5.985, -29.333),
    "knee in": (31.959, -29.333), "hem out": (6.972, -73), "hem in": (30.972, -73),
}  # fmt: skip
CASES = [("front", name, *xy) for name, xy in FRONT.items()] + [("back", name, *xy) for name, xy in BACK.items()]


@pytest.fixture(scope="module")
def block():
    return tenths_of_hip(EXAMPLE)


@pytest.mark.parametrize(("part", "name", "x", "y"), CASES)
def test_point_of_the_example(block, part, name, x, y):
    points = getattr(block, part).points
    assert abs(points[name] - points["side line"] - CM * complex(x, y)) <= POINT_TOL_MM


def test_every_point_of_the_sheet_is_kept(block):
    assert set(block.front.points) == set(FRONT)
    assert set(block.back.points) == set(BACK)


def test_creases_of_both_pieces_lie_on_one_line(block):
    for panel in (block.front, block.back):
        assert abs(panel.points["crease"]) < 1e-9
        assert abs((panel.hem_side + panel.hem_inseam).real) < 1e-9
        assert abs((panel.knee_side + panel.knee_inseam).real) < 1e-9


@pytest.mark.parametrize(
    ("part", "waist", "hip", "thigh", "crotch", "inseam", "side"),
    [("front", 18.0, 24.0, 26.53, 26.78, 73.15, 98.20), ("back", 20.0, 26.0, 35.51, 35.85, 72.77, 98.68)],
)
def test_widths_and_seams_of_the_example(block, part, waist, hip, thigh, crotch, inseam, side):
    panel = getattr(block, part)
    found_thigh, found_crotch, *seams = thigh_to_side(panel, -2 * CM)
    found = [net_waist(panel), hip_width(panel), found_thigh, *seams]
    assert found == pytest.approx([CM * v for v in (waist, hip, thigh, inseam, side)], abs=CHECK_TOL_MM)
    assert found_crotch == pytest.approx(CM * crotch, abs=CROTCH_TOL_MM)


def test_finished_waist_and_hip_are_exactly_the_measures(block):
    """The source drafts from finished girths: it adds nothing."""
    assert 2 * (net_waist(block.front) + net_waist(block.back)) == pytest.approx(760, abs=0.01)
    assert 2 * (hip_width(block.front) + hip_width(block.back)) == pytest.approx(1000, abs=0.01)
    assert block.ease == pytest.approx({"waist": 0.0, "hip": 0.0}, abs=1e-6)
    assert METHOD.seams == 0


def test_knee_and_hem_girths_of_the_example(block):
    for name, girth in (("knee", 47.9), ("hem", 44.0)):
        sides = [getattr(p, f"{name}_inseam") - getattr(p, f"{name}_side") for p in (block.front, block.back)]
        assert sum(side.real for side in sides) == pytest.approx(girth * CM, abs=0.5)
        assert all(side.imag == 0 for side in sides)


def test_pleat_on_the_crease_and_two_darts_in_the_back(block):
    (pleat,) = block.front.darts
    assert abs(pleat.mouth.real) < 1e-9
    assert pleat.intake == pytest.approx(60)
    assert [dart.intake for dart in block.back.darts] == pytest.approx([20, 20])
    assert [abs(dart.point - dart.mouth) for dart in block.back.darts] == pytest.approx([120, 100])
    for panel in (block.front, block.back):
        assert all(off(panel.waist, dart.mouth) < 0.01 for dart in panel.darts)


def test_hip_points_and_crotch_curves_stand_where_the_block_promises(block):
    assert block.levels == pytest.approx(
        {"waist": 250, "hip": 83.333, "crotch": 0, "knee": -293.333, "hem": -730}, abs=0.01
    )
    for panel in (block.front, block.back):
        assert_hip_line(panel, block.levels["hip"])
        assert_crotch_flows(panel)


def test_two_bodies_at_once_equal_one_by_one():
    bodies = [ZOO["woman"], ZOO["man"]]
    together = tenths_of_hip(Measures.of_all(bodies))
    for row, body in enumerate(bodies):
        assert numbers(together, row) == pytest.approx(numbers(tenths_of_hip(Measures.of(body)), row), abs=1e-9)
