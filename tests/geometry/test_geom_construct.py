"""Bowed lines, curves through a touch point, smooth joins, and the distance to a curve."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
import shapely
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapes import ZOO, as_line, calm_cubics, directions, numbers, places, sampled, stacked, wild_cubics

from draft.errors import DraftError
from draft.geometry.construct import (
    bow,
    bow_into,
    distance_to,
    hook,
    hook_touching,
    point_at_height,
    smooth,
    square_to,
)
from draft.geometry.points import cross, dot, unit
from draft.geometry.segments import Cubic

MODEST = settings(max_examples=100, deadline=None)
T = np.linspace(0, 1, 2001)

# Corners as at a crotch: upright leg, corner, level leg (mm), invented.
UPRIGHT, CORNER, LEVEL = 90j, 0j, 60 + 0j
CHORD_MM = 60 * 90 / (60**2 + 90**2) ** 0.5  # distance of the corner from the straight join, by its area


# -- bow ---------------------------------------------------------------------------------------------------------


@MODEST
@given(places(), directions(), numbers(1, 600), numbers(-80, 80), numbers(0, 1))
def test_bow_is_a_parabola_of_that_height(p: complex, turn: complex, chord: float, left: float, t: float) -> None:
    curve = bow(p, p + chord * turn, left)
    # height over the chord at the share t of the chord: 4 left t (1 - t)
    place = (curve.point(t) - p) / turn
    assert place == pytest.approx(complex(chord * t, 4 * left * t * (1 - t)), abs=1e-8)


def test_bow_to_the_left_and_right() -> None:
    assert bow(0j, 100, 6).point(0.5) == pytest.approx(50 + 6j)
    assert bow(0j, 100, -6).point(0.5) == pytest.approx(50 - 6j)
    assert bow(100 + 0j, 0, 6).point(0.5) == pytest.approx(50 - 6j)


def test_bow_between_one_point_and_itself_is_refused() -> None:
    with pytest.raises(DraftError, match="more than 0 mm to have a direction: move them apart"):
        bow(5j, 5j, 3)


# -- hook --------------------------------------------------------------------------------------------------------


@MODEST
@given(places(), places(), places(), numbers(0, 1))
def test_hook_leaves_and_arrives_along_the_legs(p0: complex, corner: complex, p3: complex, k: float) -> None:
    assume(min(abs(corner - p0), abs(corner - p3)) > 1)
    assume(k > 0.01)
    curve = hook(p0, corner, p3, k)
    assert curve.start_dir == pytest.approx(unit(corner - p0), abs=1e-9)
    assert curve.end_dir == pytest.approx(unit(p3 - corner), abs=1e-9)
    assert abs(curve.p1 - p0) == pytest.approx(k * abs(corner - p0))
    assert abs(curve.p2 - p3) == pytest.approx(k * abs(corner - p3))


def test_hook_without_reach_is_the_chord_and_with_all_of_it_presses_into_the_corner() -> None:
    assert float(distance_to(hook(UPRIGHT, CORNER, LEVEL, 0.0), CORNER)) == pytest.approx(CHORD_MM)
    # at k = 1 both inner control points are the corner: B(t) - corner = (1-t)^3 (p0 - c) + t^3 (p3 - c)
    gaps = np.abs((1 - T) ** 3 * UPRIGHT + T**3 * LEVEL)
    assert float(distance_to(hook(UPRIGHT, CORNER, LEVEL, 1.0), CORNER)) == pytest.approx(np.min(gaps), abs=1e-3)


@MODEST
@given(places(200), places(200), places(200), numbers(0.02, 0.98))
def test_hook_touching_meets_the_distance(p0: complex, corner: complex, p3: complex, share: float) -> None:
    assume(min(abs(p0 - corner), abs(p3 - corner), abs(p0 - p3)) > 20)
    nearest_mm, furthest_mm = (float(distance_to(hook(p0, corner, p3, k), corner)) for k in (1.0, 0.0))
    touch = nearest_mm + share * (furthest_mm - nearest_mm)
    curve, k = hook_touching(p0, corner, p3, touch)
    assert 0 <= k <= 1
    assert curve.controls == hook(p0, corner, p3, k).controls
    # Reference: shapely's distance to a fine polyline.
    assert as_line(sampled(curve, 3000)).distance(shapely.Point(corner.real, corner.imag)) == pytest.approx(
        touch, abs=0.001
    )


def test_touch_out_of_reach_gives_the_nearer_end() -> None:
    too_near, k = hook_touching(UPRIGHT, CORNER, LEVEL, 1.0)
    assert k == pytest.approx(1, abs=1e-9)
    assert too_near.controls == pytest.approx((UPRIGHT, CORNER, CORNER, LEVEL), abs=1e-6)
    too_far, k = hook_touching(UPRIGHT, CORNER, LEVEL, CHORD_MM + 1)
    assert k == pytest.approx(0, abs=1e-9)
    assert too_far.controls == pytest.approx((UPRIGHT, UPRIGHT, LEVEL, LEVEL), abs=1e-6)


def test_reach_grows_as_the_touch_comes_nearer() -> None:
    reaches = [hook_touching(UPRIGHT, CORNER, LEVEL, touch)[1] for touch in (45, 40, 35, 30, 25, 22)]
    assert reaches == sorted(set(reaches))


def test_hook_touching_another_point_than_the_corner() -> None:
    past = 8 + 5j
    curve, k = hook_touching(UPRIGHT, CORNER, LEVEL, 20.0, past)
    assert 0 < k < 1
    assert as_line(sampled(curve, 3000)).distance(shapely.Point(8, 5)) == pytest.approx(20, abs=0.001)


@pytest.mark.parametrize("what", ["touch", "all"])
def test_hook_touching_many_equals_one_by_one(what: str) -> None:
    rng = np.random.default_rng(7)
    touch = rng.uniform(15, 55, 40)  # some out of reach
    p0, corner, p3 = np.full(40, UPRIGHT), np.full(40, CORNER), np.full(40, LEVEL)
    if what == "all":
        p0, corner, p3 = (p + rng.uniform(-9, 9, 40) + 1j * rng.uniform(-9, 9, 40) for p in (p0, corner, p3))
        many, reach = hook_touching(p0, corner, p3, touch)
    else:
        many, reach = hook_touching(UPRIGHT, CORNER, LEVEL, touch)
    for k in range(40):
        one, alone = hook_touching(complex(p0[k]), complex(corner[k]), complex(p3[k]), float(touch[k]))
        assert isinstance(alone, float)
        assert reach[k] == pytest.approx(alone, abs=1e-9)
        row = [np.broadcast_to(c, 40)[k] for c in many.controls]
        assert row == pytest.approx(list(one.controls), abs=1e-6)


def test_missing_row_stays_missing_and_alone() -> None:
    touch = np.array([30.0, np.nan, 35.0])
    _, reach = hook_touching(UPRIGHT, CORNER, LEVEL, touch)
    assert reach[0] == pytest.approx(hook_touching(UPRIGHT, CORNER, LEVEL, 30.0)[1])
    assert reach[2] == pytest.approx(hook_touching(UPRIGHT, CORNER, LEVEL, 35.0)[1])


# -- distance ----------------------------------------------------------------------------------------------------


@MODEST
@given(st.one_of(calm_cubics(), wild_cubics()), places(600))
def test_distance_agrees_with_shapely(cubic: Cubic, p: complex) -> None:
    # Reference: shapely's distance to a fine polyline.
    expected = as_line(sampled(cubic, 3000)).distance(shapely.Point(p.real, p.imag))
    assert float(distance_to(cubic, p)) == pytest.approx(expected, abs=0.002)


@pytest.mark.parametrize("name", [name for name in ZOO if name != "huge"])
def test_distance_from_the_zoo_agrees_with_shapely(name: str) -> None:
    line = as_line(sampled(ZOO[name], 20_000))
    for p in (50 + 60j, 110 - 40j, 100 + 90j, 20 + 1j, 9100 + 9000j):
        assert float(distance_to(ZOO[name], p)) == pytest.approx(line.distance(shapely.Point(p.real, p.imag)), abs=1e-4)


def test_distance_where_a_curve_runs_fast_past_the_point() -> None:
    # The start lies 1 mm away, every one of 33 equal steps further; between two of them the curve passes closer.
    curve = Cubic(0j, 0j, -22j, 1 + 1j)
    expected = as_line(sampled(curve, 20_000)).distance(shapely.Point(1, 0))
    assert expected < 0.05
    assert float(distance_to(curve, 1)) == pytest.approx(expected, abs=1e-4)


@MODEST
@given(st.lists(st.one_of(calm_cubics(), wild_cubics()), min_size=2, max_size=5), places(600))
def test_distances_as_one_array_equal_one_by_one(cubics: list[Cubic], p: complex) -> None:
    found = distance_to(stacked(cubics), p)
    assert found == pytest.approx([float(distance_to(c, p)) for c in cubics], abs=1e-9)


def test_distances_of_many_points_from_one_curve() -> None:
    points = np.array([0j, 50 + 60j, 200 - 10j])
    found = distance_to(ZOO["calm"], points)  # type: ignore[arg-type]
    assert found == pytest.approx([float(distance_to(ZOO["calm"], complex(p))) for p in points], abs=1e-9)


# -- smooth joins and small helpers ------------------------------------------------------------------------------


@MODEST
@given(places(), directions(), places(), directions(), numbers(0.05, 0.8), numbers(0.05, 0.8))
def test_smooth_leaves_and_arrives_as_told(
    p: complex, p_dir: complex, q: complex, q_dir: complex, near: float, far: float
) -> None:
    assume(abs(p - q) > 1)
    curve = smooth(p, p_dir, q, q_dir, near, far)
    assert (curve.p0, curve.p3) == (p, q)
    assert curve.start_dir == pytest.approx(p_dir, abs=1e-9)
    assert curve.end_dir == pytest.approx(q_dir, abs=1e-9)
    assert abs(curve.p1 - p) == pytest.approx(near * abs(q - p))
    assert abs(curve.p2 - q) == pytest.approx(far * abs(q - p))


def test_smooth_along_the_chord_is_the_chord() -> None:
    assert smooth(0j, 1, 90, 1).controls == pytest.approx((0, 30, 60, 90))


@MODEST
@given(directions(), places())
def test_square_to_is_square_and_on_the_side(direction: complex, towards: complex) -> None:
    found = square_to(direction, towards)
    assert abs(found) == pytest.approx(1)
    assert dot(found, direction) == pytest.approx(0, abs=1e-12)
    assert dot(found, towards) >= -1e-9 * abs(towards)


def test_square_to_many_equals_one_by_one() -> None:
    towards = np.array([5 + 1j, -5 + 1j, 3j])
    found = square_to(1j, towards)  # type: ignore[arg-type]
    assert list(found) == [square_to(1j, complex(v)) for v in towards]  # type: ignore[call-overload]


@MODEST
@given(numbers(0.01, 0.99), st.booleans())
def test_point_at_height_lies_there(share: float, falls: bool) -> None:
    curve = ZOO["crotch"] if falls else ZOO["crotch"].reversed()
    y = 230 * share
    place = point_at_height(curve, y)
    assert place.imag == pytest.approx(y, abs=1e-9)
    # Reference: numpy.interp on dense samples.
    dense = curve.points(np.linspace(0, 1, 20_001))
    order = np.argsort(dense.imag)
    assert place.real == pytest.approx(np.interp(y, dense.imag[order], dense.real[order]), abs=0.01)


def test_point_at_height_beyond_the_ends_is_the_nearer_end_and_many_equal_one_by_one() -> None:
    curve = ZOO["crotch"]
    heights = np.array([-5.0, 40.0, 120.0, 400.0])
    one_by_one = [point_at_height(curve, float(y)) for y in heights]
    assert one_by_one[0] == pytest.approx(curve.p3, abs=1e-9)
    assert one_by_one[-1] == pytest.approx(curve.p0, abs=1e-9)
    assert list(point_at_height(curve, heights)) == pytest.approx(one_by_one, abs=1e-9)  # type: ignore[arg-type, call-overload]


@MODEST
@given(places(), numbers(60, 400), numbers(-0.4, 0.4), numbers(60, 400), numbers(-15, 15), numbers(-15, 15))
def test_bows_through_a_point_flow(
    a: complex, first: float, bend: float, second: float, left_ab: float, left_bc: float
) -> None:
    b = a + first
    c = b + second * complex(np.exp(1j * bend))
    run = bow_into(a, b, c, left_ab, left_bc)
    assert (run[0].p0, run[1].p3, run[3].p3) == (a, b, c)
    for one, two in pairwise(run):
        assert abs(one.p3 - two.p0) < 1e-9
        assert abs(cross(one.end_dir, two.start_dir)) < 1e-9
        assert dot(one.end_dir, two.start_dir) > 0
