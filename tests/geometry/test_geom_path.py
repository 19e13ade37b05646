"""Paths: places by arc length, splitting, reversing, rigid moves, and the errors of wrong distances."""

from __future__ import annotations

from math import inf, nan

import numpy as np
import pytest
import shapely
from hypothesis import assume, given, settings
from shapely import affinity
from shapes import (
    CALM_ONES,
    ZOO,
    as_line,
    assert_paths_close,
    calm_cubics,
    motions,
    numbers,
    outlines,
    paths,
    quarter_circles,
    sampled,
    true_length,
    wild_cubics,
)

from draft.errors import DraftError
from draft.geometry.path import JOIN_TOL_MM, Path, chain
from draft.geometry.points import mirror
from draft.geometry.segments import Cubic, Line, Motion

MODEST = settings(max_examples=100, deadline=None)
LENGTH_MM = 1e-5
CORNER = Path.line(0j, 30, 30 + 40j)


# -- the comparison itself ---------------------------------------------------------------------------------------


def test_comparison_says_the_largest_gap_and_where() -> None:
    with pytest.raises(AssertionError, match=r"largest gap 0\.5\d* mm .* at 15\.000\+0\.500j, 15\.0 mm along"):
        assert_paths_close(Path.line(0j, 15 + 0.5j, 30), Path.line(0j, 30), within=0.1)


def test_comparison_sees_a_path_that_stops_short() -> None:
    with pytest.raises(AssertionError, match="along the expected path"):
        assert_paths_close(Path.line(0j, 29), Path.line(0j, 30), within=0.1)


# -- making one --------------------------------------------------------------------------------------------------


def test_path_without_segments_is_refused() -> None:
    with pytest.raises(DraftError, match="path is missing, expected at least one segment"):
        Path(())


def test_line_of_one_point_is_refused() -> None:
    with pytest.raises(DraftError, match="at least one segment"):
        Path.line(5j)


def test_gap_between_segments_is_refused_and_told() -> None:
    with pytest.raises(DraftError, match=r"path is 0\.25, expected segments that join end to end: close the gap"):
        Path((Line(0j, 10), Line(10.25, 20)))


def test_gap_below_the_joining_tolerance_is_accepted() -> None:
    assert len(Path((Line(0j, 10), Line(10 + 0.5 * JOIN_TOL_MM, 20))).segments) == 2


def test_gap_in_one_row_of_many_is_refused() -> None:
    ends, starts = np.array([10, 10 + 0j]), np.array([10, 11 + 0j])
    with pytest.raises(DraftError, match="close the gap"):
        Path((Line(0j, ends), Line(starts, 20)))  # type: ignore[arg-type]


def test_join_and_chain_keep_the_order() -> None:
    joined = Path.join(Line(0j, 10), Path.line(10, 10 + 5j), Line(10 + 5j, 0j))
    assert [s.controls[0] for s in joined] == [0, 10, 10 + 5j]
    assert [s.controls for s in chain([CORNER, Path.line(30 + 40j, 0j)])] == [(0, 30), (30, 30 + 40j), (30 + 40j, 0)]
    assert joined.closed
    assert not CORNER.closed
    assert (joined.start, joined.end) == (0, 0)


def test_tidy_leaves_out_what_has_no_length() -> None:
    path = Path((Line(0j, 0j), Line(0j, 10), Cubic(10, 10, 10, 10), Line(10, 10 + 5j)))
    assert [s.controls for s in path.tidy()] == [(0, 10), (10, 10 + 5j)]


# -- places by arc length ----------------------------------------------------------------------------------------


@pytest.mark.parametrize("name", ZOO)
@pytest.mark.parametrize("t", [0.03, 0.35, 0.62, 0.97])
def test_point_lies_at_its_arc_length(name: str, t: float) -> None:
    # Reference: the arc length up to t by scipy.integrate.quad.
    cubic = ZOO[name]
    along = true_length(cubic, t)
    assert abs(Path((cubic,)).point_at(along) - cubic.point(t)) < 0.001


@MODEST
@given(calm_cubics(), numbers(0.01, 0.99))
def test_point_of_calm_cubics_lies_at_its_arc_length(cubic: Cubic, t: float) -> None:
    # Reference: scipy.integrate.quad.
    path = Path.join(Line(cubic.p0 - 25, cubic.p0), cubic)
    assert abs(path.point_at(25 + true_length(cubic, t)) - cubic.point(t)) < LENGTH_MM


@MODEST
@given(paths(), numbers(0, 1))
def test_point_agrees_with_walking_a_fine_polyline(path: Path, share: float) -> None:
    # Reference: shapely's line_interpolate_point on a polyline, whose chords are shorter than the arcs.
    line = as_line(sampled(path, 2000))
    place = line.interpolate(share, normalized=True)
    assert abs(path.point_at(share * path.length) - complex(place.x, place.y)) < 0.005


@MODEST
@given(paths(), numbers(0.01, 0.99))
def test_direction_agrees_with_a_short_chord(path: Path, share: float) -> None:
    # Reference: the difference quotient, by definition; not at corners.
    along, step = share * path.length, 1e-3
    assume(all(abs(along - end) > 2 * step for end in path._ends))
    assume(0.01 < along < path.length - 0.01)
    chord = path.point_at(along + step) - path.point_at(along - step)
    direction = path.direction_at(along)
    assert abs(direction) == pytest.approx(1, abs=1e-12)
    assert abs(direction - chord / abs(chord)) < 0.01


def test_direction_at_ends_and_corners() -> None:
    assert CORNER.direction_at(0) == CORNER.start_dir == 1
    assert CORNER.direction_at(29.999) == 1
    assert CORNER.direction_at(30) == 1j
    assert CORNER.direction_at(70) == CORNER.end_dir == 1j


@pytest.mark.parametrize("name", ["no_first_handle", "no_last_handle", "no_handles"])
def test_direction_where_a_handle_has_no_length_is_that_of_the_curve_nearby(name: str) -> None:
    path = Path((ZOO[name],))
    first, last = path.point_at(0.01) - path.start, path.end - path.point_at(path.length - 0.01)
    assert abs(path.direction_at(0) - first / abs(first)) < 0.01
    assert abs(path.direction_at(path.length) - last / abs(last)) < 0.01


def test_direction_at_a_cusp_is_that_of_what_follows() -> None:
    path = Path((ZOO["cusp"],))
    assert ZOO["cusp"].velocity(0.5) == 0
    assert path.direction_at(path.length / 2) == pytest.approx(-1j)


def test_segments_without_length_are_passed_over() -> None:
    path = Path.line(0j, 0j, 10, 10, 10 + 5j, 10 + 5j)
    assert path.direction_at(0) == 1
    assert path.direction_at(10) == 1j
    assert path.direction_at(15) == 1j
    assert path.curvature_at(0) == 0
    assert path.point_at(0) == 0
    assert path.point_at(15) == 10 + 5j


def test_path_of_no_length_has_a_place_but_no_direction() -> None:
    path = Path.line(7j, 7j)
    assert path.point_at(0) == 7j
    with pytest.raises(DraftError, match="more than 0 mm to have a direction"):
        path.direction_at(0)


def test_curvature_of_a_parabola() -> None:
    # y = x^2 / (2 r) bends with 1/r at its vertex and (1/r) / (1 + x^2/r^2)^1.5 at x (calculus).
    radius, reach = 80.0, 60.0
    height = reach**2 / (2 * radius)
    third = reach / 3
    parabola = Cubic(-reach + height * 1j, -third - height / 3 * 1j, third - height / 3 * 1j, reach + height * 1j)
    path = Path((parabola,))
    at_end = (1 + reach**2 / radius**2) ** -1.5 / radius
    assert path.curvature_at(path.length / 2) == pytest.approx(1 / radius, rel=1e-9)
    assert path.curvature_at(0) == pytest.approx(at_end, rel=1e-9)
    assert path.curvature_at(path.length) == pytest.approx(at_end, rel=1e-9)
    assert path.reversed().curvature_at(path.length / 2) == pytest.approx(-1 / radius, rel=1e-9)


@MODEST
@given(calm_cubics(), numbers(0.05, 0.95))
def test_curvature_is_the_turn_of_the_direction_per_mm(cubic: Cubic, share: float) -> None:
    path, step = Path((cubic,)), 0.01
    along = share * path.length
    turn = np.angle(path.direction_at(along + step) / path.direction_at(along - step))
    assert path.curvature_at(along) == pytest.approx(turn / (2 * step), rel=0.01, abs=1e-4)


def test_curvature_is_infinite_at_a_cusp_and_where_a_bending_handle_has_no_length() -> None:
    start, cusp = Path((ZOO["no_first_handle"],)), Path((ZOO["cusp"],))
    assert start.curvature_at(0) == -inf
    assert start.curvature_at(1e-3) < -0.01
    assert abs(cusp.curvature_at(cusp.length / 2)) == inf
    assert np.sign(cusp.curvature_at(cusp.length / 2)) == np.sign(cusp.curvature_at(cusp.length / 2 + 0.01))


@pytest.mark.parametrize("cubic", [Cubic(0j, 0j, 30 + 10j, 90 + 30j), Cubic(0j, 0j, 0j, 90 + 31j), Line(0j, 9 + 2j)])
def test_curvature_of_straight_ones_is_none(cubic: Cubic | Line) -> None:
    path = Path((cubic,))
    assert path.curvature_at(0) == 0
    assert path.curvature_at(path.length / 3) == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize("along", [-0.001, 70.001, -inf, inf, nan])
@pytest.mark.parametrize("what", ["point_at", "direction_at", "curvature_at"])
def test_distance_off_the_path_is_refused(what: str, along: float) -> None:
    with pytest.raises(DraftError, match=r"distance along the path is .*expected 0 to 70\.000 mm: measure from"):
        getattr(CORNER, what)(along)


@pytest.mark.parametrize("along", [-1e-7, 70 + 1e-7])
def test_distance_off_the_path_by_rounding_is_the_end(along: float) -> None:
    assert CORNER.point_at(along) in (CORNER.start, CORNER.end)


# -- splitting ---------------------------------------------------------------------------------------------------


@MODEST
@given(paths(), numbers(0.001, 0.999))
def test_split_keeps_length(path: Path, share: float) -> None:
    along = share * path.length
    head, tail = path.split_at(along)
    assert head.length == pytest.approx(along, abs=LENGTH_MM)
    assert head.length + tail.length == pytest.approx(path.length, abs=LENGTH_MM)
    assert head.end == tail.start
    assert abs(head.end - path.point_at(along)) < LENGTH_MM
    assert (head.start, tail.end) == (path.start, path.end)


@pytest.mark.parametrize("name", ZOO)
def test_halves_of_the_zoo_add_up_and_lie_on_it(name: str) -> None:
    path = Path((ZOO[name],))
    head, tail = path.split_at(path.length / 3)
    assert head.length + tail.length == pytest.approx(path.length, abs=0.001)
    assert_paths_close(Path.join(head, tail), path, within=1e-6 * max(1.0, path.length / 1000))


def test_split_at_a_joint_parts_there() -> None:
    for along in (30, np.nextafter(30, 0), np.nextafter(30, 60), 30 + 5e-7):
        head, tail = CORNER.split_at(along)
        assert [s.controls for s in head] == [(0, 30)]
        assert [s.controls for s in tail] == [(30, 30 + 40j)]


@pytest.mark.parametrize("along", [0, 70, -3, 75, nan])
def test_split_outside_is_refused(along: float) -> None:
    with pytest.raises(DraftError, match=r"distance along the path .* more than 0 and less than 70\.000 mm"):
        CORNER.split_at(along)


@MODEST
@given(paths(), numbers(0, 1), numbers(0, 1))
def test_between_is_as_long_as_the_stretch(path: Path, one: float, two: float) -> None:
    start, stop = sorted((one * path.length, two * path.length))
    assume(stop - start > 0.01)
    piece = path.between(start, stop)
    assert piece.length == pytest.approx(stop - start, abs=LENGTH_MM)
    assert abs(piece.start - path.point_at(start)) < LENGTH_MM
    assert abs(piece.end - path.point_at(stop)) < LENGTH_MM
    middle = (start + stop) / 2
    assert abs(piece.point_at(piece.length / 2) - path.point_at(middle)) < 2 * LENGTH_MM


def test_between_the_ends_is_the_whole() -> None:
    assert CORNER.between(0, CORNER.length).segments == CORNER.segments


@pytest.mark.parametrize(
    ("start", "stop"), [(-5, 20), (20, 80), (20, 20), (30, 20), (nan, 20), (20, nan), (-inf, inf), (80, 90)]
)
def test_stretch_that_is_none_is_refused(start: float, stop: float) -> None:
    with pytest.raises(DraftError, match=r"stretch of the path is \(.*start before stop, both 0 to 70\.000 mm"):
        CORNER.between(start, stop)


# -- reversing and moving ----------------------------------------------------------------------------------------


@MODEST
@given(paths(), numbers(0, 1))
def test_reversed_walks_the_same_places_backwards(path: Path, share: float) -> None:
    back = path.reversed()
    along = share * path.length
    assert back.length == pytest.approx(path.length, abs=LENGTH_MM)
    assert (back.start, back.end) == (path.end, path.start)
    assert abs(back.point_at(back.length - along) - path.point_at(along)) < LENGTH_MM
    assert back.start_dir == pytest.approx(-path.end_dir)


@MODEST
@given(outlines())
def test_reversing_twice_gives_the_same_and_once_turns_the_area(path: Path) -> None:
    assert [s.controls for s in path.reversed().reversed()] == [s.controls for s in path]
    assert path.reversed().area == pytest.approx(-path.area, abs=1e-6)


@MODEST
@given(outlines(), motions())
def test_rigid_move_changes_no_length_and_no_area_but_the_mirror_turns_its_sign(path: Path, motion: Motion) -> None:
    moved = path.moved(motion)
    assert moved.length == pytest.approx(path.length, abs=LENGTH_MM)
    assert moved.area == pytest.approx(-path.area if motion.flip else path.area, abs=1e-5, rel=1e-9)


@MODEST
@given(wild_cubics(), motions(), numbers(0, 1))
def test_moving_the_curve_moves_its_points(cubic: Cubic, motion: Motion, t: float) -> None:
    assert abs(cubic.moved(motion).point(t) - motion(cubic.point(t))) < 1e-9


@pytest.mark.parametrize("name", CALM_ONES)
def test_turn_about_a_point_agrees_with_shapely(name: str) -> None:
    # Reference: shapely.affinity.rotate.
    path, centre, angle = Path((ZOO[name],)), 40 - 15j, 33.0
    turned = path.moved(Motion.about(centre, complex(np.exp(1j * np.deg2rad(angle)))))
    expected = affinity.rotate(as_line(sampled(path, 50)), angle, origin=(centre.real, centre.imag))
    found = as_line(sampled(turned, 50))
    assert np.max(shapely.distance(shapely.points(found.coords), shapely.points(expected.coords))) < 1e-9


def test_mirror_keeps_the_axis_and_agrees_with_the_mirror_of_points() -> None:
    a, b, p = 3 + 1j, 10 - 8j, -20 + 33j
    motion = Motion.mirror(a, b)
    assert motion(a) == pytest.approx(a)
    assert motion(b) == pytest.approx(b)
    assert motion(p) == pytest.approx(mirror(p, a, b))
    assert abs(motion(p) - a) == pytest.approx(abs(p - a))
    assert motion(motion(p)) == pytest.approx(p)


def test_mirror_in_a_line_without_direction_is_refused() -> None:
    with pytest.raises(DraftError, match="move them apart"):
        Motion.mirror(3j, 3j)


def test_circle_is_closed_and_smooth() -> None:
    circle = quarter_circles(50, 7 + 3j)
    assert circle.closed
    for one, two in zip(circle.segments, circle.segments[1:] + circle.segments[:1], strict=True):
        assert one.end_dir == pytest.approx(two.start_dir)
