"""Meeting points against shapely's intersections of lines and fine polylines (used as reference)."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import assume, given, settings
from shapes import (
    ZOO,
    as_line,
    calm_cubics,
    directions,
    lines,
    numbers,
    paths,
    places,
    quarter_circles,
    sampled,
    sampling_error,
)

from draft.geometry.construct import bow
from draft.geometry.meet import Meeting, line_crossings, meet, meet_line
from draft.geometry.path import Path
from draft.geometry.points import cross
from draft.geometry.segments import Cubic, Line, Motion, Segment

MODEST = settings(max_examples=100, deadline=None)
STEPS = 1500
SLANT = complex(np.exp(0.3j))
TURNS = [complex(np.exp(1j * k)) for k in range(8)]


def shapely_points(one: shapely.Geometry, two: shapely.Geometry) -> np.ndarray:
    """Points (not stretches) of shapely's intersection."""
    parts = shapely.get_parts(shapely.intersection(one, two))
    return np.array([complex(p.x, p.y) for p in parts if p.geom_type == "Point"])


def assert_on_both(found: list[Meeting], a: Path, b: Path, within: float = 1e-5) -> None:
    assert [m.along_a for m in found] == sorted(m.along_a for m in found)
    for m in found:
        assert abs(a.point_at(m.along_a) - m.point) < within
        assert abs(b.point_at(m.along_b) - m.point) < within


# -- lines and lines ---------------------------------------------------------------------------------------------

LINE_PAIRS = {
    "cross": ((0j, 10 + 10j), (0 + 10j, 10 + 0j)),
    "vertical and horizontal": ((5 - 5j, 5 + 5j), (0j, 10 + 0j)),
    "vertical and slanting": ((5 - 5j, 5 + 5j), (0 - 1j, 10 + 3j)),
    "horizontal and slanting": ((0 + 1j, 10 + 1j), (0 - 1j, 10 + 3j)),
    "tee: an end on the middle": ((5 + 0j, 5 + 8j), (0j, 10 + 0j)),
    "shared end": ((0j, 10 + 0j), (10 + 0j, 13 + 8j)),
    "shared start": ((0j, 10 + 0j), (0j, 13 + 8j)),
    "shared end, in one line": ((0j, 10 + 0j), (10 + 0j, 25 + 0j)),
    "shared end, in one upright line": ((0j, 10j), (25j, 10j)),
    "apart, in one line": ((0j, 10 + 0j), (11 + 0j, 25 + 0j)),
    "parallel": ((0j, 10 + 0j), (0 + 1j, 10 + 1j)),
    "parallel upright": ((0j, 10j), (1 + 0j, 1 + 10j)),
    "parallel slanting": ((0j, 9 + 3j), (1 + 0j, 10 + 3j)),
    "overlap": ((0j, 10 + 0j), (5 + 0j, 15 + 0j)),
    "too short by a little": ((5 + 0.001j, 5 + 8j), (0j, 10 + 0j)),
    "would cross beyond the end": ((0j, 4 + 4j), (0 + 10j, 10 + 0j)),
}


@pytest.mark.parametrize("name", LINE_PAIRS)
def test_lines_meet_where_shapely_says(name: str) -> None:
    (a, b), (c, d) = LINE_PAIRS[name]
    expected = shapely_points(as_line(np.array([a, b])), as_line(np.array([c, d])))
    for one, two in ((Path.line(a, b), Path.line(c, d)), (Path.line(d, c), Path.line(a, b))):
        found = meet(one, two)
        assert [m.point for m in found] == pytest.approx(list(expected), abs=1e-9)
        assert_on_both(found, one, two)


@pytest.mark.parametrize("turn", TURNS)
@pytest.mark.parametrize("name", LINE_PAIRS)
def test_lines_meet_as_often_when_turned(name: str, turn: complex) -> None:
    motion = Motion(turn, 700 - 300j)
    one, two = (Path.line(*pair) for pair in LINE_PAIRS[name])
    assert [m.point for m in meet(one.moved(motion), two.moved(motion))] == pytest.approx(
        [motion(m.point) for m in meet(one, two)], abs=1e-9
    )


@MODEST
@given(lines(), lines())
def test_random_lines_meet_where_shapely_says(one: Line, two: Line) -> None:
    a, b = Path((one,)), Path((two,))
    assume(abs(cross(one.start_dir, two.start_dir)) > 1e-3)
    expected = shapely_points(as_line(np.array(one.controls)), as_line(np.array(two.controls)))
    found = meet(a, b)
    ends = [p.distance(q) for p, q in _ends_and_line(one, two)]
    assume(min(ends) > 1e-5)  # whether an end reaches the other line is rounding there
    assert [m.point for m in found] == pytest.approx(list(expected), abs=1e-6)
    assert_on_both(found, a, b)


def _ends_and_line(one: Segment, two: Segment) -> list[tuple[shapely.Point, shapely.LineString]]:
    pairs = []
    for s, t in ((one, two), (two, one)):
        pairs += [(shapely.Point(p.real, p.imag), as_line(sampled(t))) for p in (s.controls[0], s.controls[-1])]
    return pairs


def test_line_without_length_meets_nothing() -> None:
    assert meet(Path.line(5j, 5j), Path.line(0j, 10j)) == []
    assert line_crossings(Line(0j, 10), 5, 0) == []


# -- curves ------------------------------------------------------------------------------------------------------


def assert_meets_as_polylines(one: Segment, two: Segment) -> None:
    """Every clear crossing of the polylines is found, and nothing else; near touches may be counted either way."""
    a, b = Path((one,)), Path((two,))
    found = meet(a, b)
    assert_on_both(found, a, b)
    stray = sampling_error(one, STEPS) + sampling_error(two, STEPS)
    expected = shapely_points(as_line(sampled(one, STEPS)), as_line(sampled(two, STEPS)))
    sharpness = [abs(cross(a.direction_at(m.along_a), b.direction_at(m.along_b))) for m in found]
    assume(all(s > 0.02 for s in sharpness))
    assume(all(p.distance(q) > 0.01 for p, q in _ends_and_line(one, two)))
    assert len(found) == len(expected), f"found {found}, shapely {expected}"
    for m, sharp in zip(found, sharpness, strict=True):
        assert np.min(np.abs(expected - m.point)) < 2 * stray / sharp


@MODEST
@given(lines(), calm_cubics(), numbers(0, 1), numbers(0, 1))
def test_line_meets_curve_where_shapely_says(line: Line, cubic: Cubic, s: float, t: float) -> None:
    aimed = line.moved(Motion(shift=cubic.point(t) - line.point(s)))
    assert_meets_as_polylines(aimed, cubic)
    assert_meets_as_polylines(cubic, aimed)


@MODEST
@given(calm_cubics(), calm_cubics(), numbers(0, 1), numbers(0, 1))
def test_curve_meets_curve_where_shapely_says(one: Cubic, two: Cubic, s: float, t: float) -> None:
    assert_meets_as_polylines(one.moved(Motion(shift=two.point(t) - one.point(s))), two)


@MODEST
@given(calm_cubics(300), calm_cubics(300))
def test_curves_that_need_not_meet(one: Cubic, two: Cubic) -> None:
    assert_meets_as_polylines(one, two)


@pytest.mark.parametrize("first", ["loop", "s_curve", "near_cusp", "turns_back", "no_first_handle", "returns"])
@pytest.mark.parametrize("second", ["loop", "s_curve", "cusp", "straight", "no_handles"])
def test_zoo_meets_where_shapely_says(first: str, second: str) -> None:
    moved = ZOO[second].moved(Motion(np.exp(0.7j), 30 + 20.3j))
    a, b = Path((ZOO[first],)), Path((moved,))
    found = meet(a, b)
    expected = shapely_points(as_line(sampled(a, 4000)), as_line(sampled(b, 4000)))
    assert_on_both(found, a, b)
    assert len(found) == len(expected)
    for m in found:
        assert np.min(np.abs(expected - m.point)) < 0.01


@pytest.mark.parametrize("turn", TURNS)
def test_line_that_only_touches_a_curve_meets_it_once(turn: complex) -> None:
    base = -700 + 1100j * turn
    curve = bow(base, base + 300 * turn, 40)
    touch = base + (150 + 40j) * turn
    line = Path.line(touch - 160 * turn, touch + 160 * turn)
    (found,) = meet(Path((curve,)), line)
    assert abs(found.point - touch) < 0.001
    (along,) = meet_line(Path((curve,)), touch - 1000 * turn, turn)
    assert along == pytest.approx(Path((curve,)).length / 2, abs=0.001)


@pytest.mark.parametrize("turn", TURNS)
def test_line_past_a_curve_by_a_hair_misses_and_into_it_by_a_hair_meets_twice(turn: complex) -> None:
    curve = Path((bow(0, 300 * turn, 40),))
    assert meet_line(curve, 40.0001j * turn, turn) == []
    one, two = meet_line(curve, 39.9999j * turn, turn)
    assert one < curve.length / 2 < two
    # The height of the parabola falls with the square of the distance from its middle: 40 (2x/300)^2 = 0.0001.
    assert abs(curve.point_at(two) - curve.point_at(one)) == pytest.approx(300 * (0.0001 / 40) ** 0.5, rel=0.01)


@pytest.mark.parametrize("turn", TURNS)
def test_curves_that_only_touch_meet_once(turn: complex) -> None:
    base = 900 - 400j
    one, two = bow(base, base + 300 * turn, 40), bow(base + 80j * turn, base + (300 + 80j) * turn, -40)
    (found,) = meet(Path((one,)), Path((two,)))
    assert abs(found.point - (base + (150 + 40j) * turn)) < 0.0001


@pytest.mark.parametrize("depth", [1, 0.1, 0.02, 0.01, 0.001])
def test_nearly_straight_curves_that_meet_twice(depth: float) -> None:
    one = bow(0j, 200, depth)
    two = Cubic(0.75j * depth, 60 + 0.75j * depth, 150 + 0.75j * depth, 200 + 0.75j * depth)
    found = meet(Path((one,)), Path((two,)))
    # 1 - (x/100)^2 = 0.75 at half the half chord
    assert [m.point.real for m in found] == pytest.approx([50, 150], abs=1e-3)


SHARED = {
    "line and line": (Line(-50 * SLANT, 0j), Line(0j, 40 - 9j)),
    "line flows into curve": (Line(-50 * SLANT, 0j), Cubic(0j, 30 * SLANT, 60 + 20j, 100 + 0j)),
    "curve flows into line": (Cubic(-100 + 13j, -60 + 3j, -33 * SLANT, 0j), Line(0j, 70 * SLANT)),
    "curve flows into curve": (Cubic(-100 + 13j, -60 + 3j, -33 * SLANT, 0j), Cubic(0j, 30 * SLANT, 60 + 20j, 100 + 0j)),
    "corner of curves": (Cubic(-100 + 13j, -60 + 3j, -33 * SLANT, 0j), Cubic(0j, -30j, 60 - 20j, 100 + 0j)),
    "handle without length": (Cubic(-100 + 13j, -60 + 3j, 0j, 0j), Cubic(0j, 0j, 60 - 20j, 100 + 0j)),
    "line and disguised line": (Line(-50 * SLANT, 0j), Cubic(0j, 10 * SLANT, 60 * SLANT, 90 * SLANT)),
}


@pytest.mark.parametrize("name", SHARED)
def test_shared_end_is_a_meeting_point(name: str) -> None:
    for shift in (0j, 631 - 277.3j):
        one, two = (Path((segment.moved(Motion(shift=shift)),)) for segment in SHARED[name])
        for a, b in ((one, two), (two, one), (one.reversed(), two), (one, two.reversed())):
            (found,) = meet(a, b)
            assert abs(found.point - shift) < 1e-9
            assert_on_both([found], a, b)


@MODEST
@given(calm_cubics(), numbers(0.1, 0.9))
def test_parts_of_a_split_curve_meet_where_it_was_split(cubic: Cubic, t: float) -> None:
    one, two = cubic.split(t)
    points = [m.point for m in meet(Path((one,)), Path((two,)))]
    assert any(abs(p - one.p3) < 1e-9 for p in points)


def test_curves_that_run_together_share_their_ends_only() -> None:
    calm = ZOO["calm"]
    assert [m.point for m in meet(Path((calm,)), Path((calm,)))] == [calm.p0, calm.p3]
    line = Path.line(0j, 10)
    assert [m.point for m in meet(line, line)] == [0, 10]


def test_zigzag_across_a_circle_counts_every_crossing_once() -> None:
    # Through the joints of the circle too, where two segments meet the line in one point.
    circle = quarter_circles(100)
    crossing = Path.line(-150 + 0j, 150 + 0j, 150 + 50j, -150 + 50j)
    found = meet(circle, crossing)
    expected = [100, (100**2 - 50**2) ** 0.5 + 50j, -((100**2 - 50**2) ** 0.5) + 50j, -100]
    assert [m.point for m in found] == pytest.approx(expected, abs=0.03)
    assert_on_both(found, circle, crossing)


@settings(max_examples=60, deadline=None)
@given(paths(), paths())
def test_meeting_points_of_paths_lie_on_both(a: Path, b: Path) -> None:
    assert_on_both(meet(a, b), a, b)


# -- endless lines -----------------------------------------------------------------------------------------------


@MODEST
@given(paths(), places(), directions())
def test_endless_line_crosses_where_shapely_says(path: Path, p: complex, direction: complex) -> None:
    found = meet_line(path, p, direction)
    far = as_line(np.array([p - 1e4 * direction, p + 1e4 * direction]))
    expected = shapely_points(as_line(sampled(path, STEPS)), far)
    sharpness = [abs(cross(path.direction_at(along), direction)) for along in found]
    joints = [s.controls[0] for s in path] + [path.end]
    assume(all(s > 0.02 for s in sharpness))
    assume(all(abs(cross(direction, q - p)) > 0.01 for q in joints))
    assert found == sorted(found)
    assert len(found) == len(expected)
    for along, sharp in zip(found, sharpness, strict=True):
        place = path.point_at(along)
        assert abs(cross(direction, place - p)) < 1e-5
        assert np.min(np.abs(expected - place)) < 2 * sampling_error(path, STEPS) / sharp + 1e-6


@MODEST
@given(numbers(0.05, 0.3), numbers(0.35, 0.6), numbers(0.65, 0.95), directions(), places())
def test_three_crossings_at_chosen_parameters(r: float, s: float, t: float, turn: complex, shift: complex) -> None:
    # Heights (x - r)(x - s)(x - t) times 1000, written in Bernstein form; the parameters are the chosen roots.
    powers = 1000 * np.poly([r, s, t])[::-1]
    heights = [powers[0], powers[0] + powers[1] / 3, powers[0] + 2 * powers[1] / 3 + powers[2] / 3, sum(powers)]
    cubic = Cubic(*(complex(100 * k, h) for k, h in enumerate(heights))).moved(Motion(turn, shift))
    assert line_crossings(cubic, shift, turn) == pytest.approx([r, s, t], abs=1e-9)


def test_upright_and_level_lines() -> None:
    box = Path.line(0j, 10, 10 + 10j, 10j, 0j)
    assert meet_line(box, 4 + 3j, 1) == [13, 37]
    assert meet_line(box, 4 + 3j, -1j) == [4, 26]
    assert meet_line(box, 4 + 11j, 1) == []


def test_endless_line_through_a_corner_or_along_a_side_counts_the_corner_once() -> None:
    box = Path.line(0j, 10, 10 + 10j, 10j)
    assert meet_line(box, 10 + 10j, 1 - 1j) == pytest.approx([20])
    assert meet_line(box, 3, 1) == pytest.approx([10])
    assert meet_line(box, 3 + 10j, 1) == pytest.approx([20])


@pytest.mark.parametrize("turn", TURNS)
@pytest.mark.parametrize("scale", [1, 7, 1e-3])
def test_segment_on_the_line_has_no_crossing(turn: complex, scale: float) -> None:
    origin = 1000 - 33.3j
    straight = [origin + x * turn for x in (0, 10, 130, 200)]
    assert line_crossings(Line(straight[0], straight[-1]), origin + 3.3 * turn, scale * turn) == []
    assert line_crossings(Cubic(*straight), origin + 3.3 * turn, scale * turn) == []


@pytest.mark.parametrize("turn", TURNS)
def test_segment_beside_a_parallel_line_has_no_crossing(turn: complex) -> None:
    origin = 1000 - 33.3j
    straight = [origin + x * turn for x in (0, 10, 130, 200)]
    assert line_crossings(Line(straight[0], straight[-1]), origin + 0.001j * turn, turn) == []
    assert line_crossings(Cubic(*straight), origin + 0.001j * turn, turn) == []


def test_line_through_an_inflection_that_it_touches_meets_once() -> None:
    # y = (x - 50)^3 / 1000 touches y = 0 at its inflection.
    cubic = Cubic(0 - 125j, 100 / 3 + 125j, 200 / 3 - 125j, 100 + 125j)
    (found,) = line_crossings(cubic, 0, 1)
    assert found == pytest.approx(0.5, abs=1e-3)
