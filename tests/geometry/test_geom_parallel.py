"""Parallel curves against the true parallel, sampled densely, and shapely's offset_curve (used as reference)."""

from __future__ import annotations

from math import inf, nan, pi

import numpy as np
import pytest
import shapely
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapes import (
    CALM_ONES,
    ZOO,
    as_line,
    as_points,
    assert_paths_close,
    calm_cubics,
    numbers,
    quarter_circles,
    sampled,
    sampling_error,
)

from draft.errors import DraftError
from draft.geometry.offset import PARALLEL_TOL_MM, WIDEST_BEND_DEG, parallel, parallel_segment
from draft.geometry.path import JOIN_TOL_MM, Path
from draft.geometry.segments import Cubic, Line

MODEST = settings(max_examples=100, deadline=None)
T = np.linspace(0, 1, 801)
FOLDS = "smallest radius on that side of the curve"


def smallest_radius(cubic: Cubic, side: int) -> float:
    """Smallest radius of the bends towards a side (1 left, -1 right), from dense curvatures by their definition."""
    velocity, acceleration = cubic.velocity(T), cubic.acceleration(T)  # type: ignore[arg-type]
    sharpest = np.max(side * (np.conj(velocity) * acceleration).imag / np.abs(velocity) ** 3)
    return 1 / sharpest if sharpest > 0 else inf


def true_parallel(cubic: Cubic, left: float) -> np.ndarray:
    """Points square to the curve at the distance, by definition; not at places where the curve stands still."""
    t = T[1:-1]
    velocity = cubic.velocity(t)
    return np.asarray(cubic.points(t) + 1j * left * velocity / np.abs(velocity))


def assert_true(cubic: Cubic, left: float, tolerance: float = PARALLEL_TOL_MM) -> None:
    found = Path(parallel_segment(cubic, left, tolerance))
    # true points lie on what was found, ...
    gaps = shapely.distance(as_points(true_parallel(cubic, left)), as_line(sampled(found, 60)))
    assert np.max(gaps) <= tolerance + sampling_error(found, 60)
    # ... and what was found keeps the distance from the curve, its ends square to the curve's ends
    away = shapely.distance(as_points(sampled(found, 9)), as_line(sampled(cubic, 1000)))
    assert np.max(away) <= abs(left) + tolerance + sampling_error(cubic, 1000)
    assert abs(found.start - cubic.p0 - 1j * left * cubic.start_dir) < 1e-9
    assert abs(found.end - cubic.p3 - 1j * left * cubic.end_dir) < 1e-9


@MODEST
@given(calm_cubics(), st.sampled_from([-1, 1]), numbers(0.01, 0.85))
def test_parallel_of_calm_cubics_strays_no_further_than_stated(cubic: Cubic, side: int, share: float) -> None:
    assert_true(cubic, side * share * min(smallest_radius(cubic, side), 60.0))


@pytest.mark.parametrize("left", [15.0, -15.0, 0.5])
@pytest.mark.parametrize("name", CALM_ONES)
def test_parallel_of_the_zoo_strays_no_further_than_stated(name: str, left: float) -> None:
    assert_true(ZOO[name], left)


@pytest.mark.parametrize("tolerance", [0.5, 0.05, 0.0005])
def test_other_tolerances_are_kept_too(tolerance: float) -> None:
    assert_true(ZOO["s_curve"], 25, tolerance)
    assert_true(ZOO["crotch"], 15, tolerance)


def test_finer_tolerance_takes_more_steps() -> None:
    counts = [len(parallel_segment(ZOO["s_curve"], 25, tolerance)) for tolerance in (0.5, 0.005, 0.0001)]
    assert counts == sorted(set(counts))


@pytest.mark.parametrize("turn", [complex(np.exp(1j * k)) for k in range(6)])
def test_handle_without_length_on_the_open_side(turn: complex) -> None:
    base = 1000 - 500j
    for name, side in (("no_first_handle", 1), ("no_last_handle", 1)):
        cubic = Cubic(*(base + turn * p for p in ZOO[name].controls))
        assert_true(cubic, 10 * side)
        with pytest.raises(DraftError, match=FOLDS):  # an end with no handle bends without limit
            parallel_segment(cubic, -10 * side)


@pytest.mark.parametrize("left", [12.0, -12.0])
@pytest.mark.parametrize("steps", [(0, 0, 200), (0, 70, 200), (0, 200, 200), (200, 200, 200), (20, 150, 200)])
def test_line_in_disguise_has_the_parallel_of_the_line(steps: tuple[int, int, int], left: float) -> None:
    for k in range(60):
        turn, origin = complex(np.exp(1j * k)), complex(17 * k - 900, 31 * k)
        cubic = Cubic(origin, *(origin + step * turn for step in steps))
        (found,) = parallel_segment(cubic, left)
        expected = Line(origin, origin + 200 * turn).moved(_aside(1j * left * turn))
        assert_paths_close(Path((found,)), Path((expected,)), within=1e-9, steps=20)


def _aside(shift: complex):
    return lambda p: p + shift


@MODEST
@given(calm_cubics(), numbers(-40, 40))
def test_parallel_agrees_with_shapely(cubic: Cubic, left: float) -> None:
    # Reference: shapely.offset_curve of a fine polyline.
    assume(abs(left) > 0.1)
    assume(all(abs(left) < 0.7 * smallest_radius(cubic, side) for side in (-1, 1)))
    path = Path(parallel_segment(cubic, left))
    found, curve = as_line(sampled(path, 50)), as_line(sampled(cubic, 400))
    stray = sampling_error(path, 50) + sampling_error(cubic, 400)
    assume(found.distance(curve) > 0.99 * abs(left))  # a parallel that comes back near the curve is cut off by shapely
    expected = shapely.offset_curve(curve, left, quad_segs=16, join_style="mitre", mitre_limit=5)
    expected = shapely.line_merge(expected)  # along straight stretches it comes in pieces
    assert expected.geom_type == "LineString"
    # GEOS first simplifies the line by up to a hundredth of the distance (from memory).
    for one, other in ((found, expected), (expected, found)):
        gaps = shapely.distance(shapely.points(one.coords), other)
        assert np.max(gaps) < 0.01 * abs(left) + stray + 2 * PARALLEL_TOL_MM


@pytest.mark.parametrize("left", [30.0, -30.0])
def test_parallel_of_a_circle_is_a_circle(left: float) -> None:
    # Walked counter-clockwise, the left hand is inside. Length and area of circles; the cubics stray up to 0.0273 %.
    radius = 100 - left
    found = parallel(quarter_circles(100, 5 + 5j), left)
    assert found.closed
    assert found.length == pytest.approx(2 * pi * radius, rel=0.0005)
    assert found.area == pytest.approx(pi * radius**2, rel=0.001)


def test_left_is_left() -> None:
    assert parallel(Path.line(0j, 10), 2).start == 2j
    assert parallel(Path.line(0j, 10), -2).end == 10 - 2j
    assert parallel(Path.line(0j, 10j), 2).start == -2


def test_no_distance_gives_the_same() -> None:
    path = Path((ZOO["calm"], Line(240 + 10j, 300 - 8j)))
    assert parallel(path, 0).segments == path.segments


@MODEST
@given(calm_cubics(), st.sampled_from([-1, 1]), numbers(1.1, 3))
def test_distance_beyond_the_smallest_radius_is_refused(cubic: Cubic, side: int, share: float) -> None:
    radius = smallest_radius(cubic, side)
    assume(radius < 1000)
    with pytest.raises(DraftError, match=FOLDS):
        parallel(Path((cubic,)), side * share * radius)


@pytest.mark.parametrize("name", ["cusp", "turns_back"])
@pytest.mark.parametrize("left", [5.0, -5.0])
def test_cusp_has_no_parallel(name: str, left: float) -> None:
    with pytest.raises(DraftError, match="no cusp"):
        parallel(Path((ZOO[name],)), left)


def test_curve_that_returns_to_its_start_has_one() -> None:
    assert_true(ZOO["returns"], -10)


@pytest.mark.parametrize("left", [nan, inf, -inf])
def test_distance_that_is_no_number_is_refused(left: float) -> None:
    for path in (Path.line(0j, 10), Path((ZOO["calm"],))):
        with pytest.raises(DraftError, match=r"distance of the parallel is .*expected a number of mm"):
            parallel(path, left)


@pytest.mark.parametrize("tolerance", [nan, 0.0, -1.0, inf])
def test_wrong_tolerance_is_refused(tolerance: float) -> None:
    with pytest.raises(DraftError, match=r"tolerance is .*expected 1e-06 mm or more"):
        parallel(Path((ZOO["calm"],)), 10, tolerance)


@pytest.mark.parametrize("left", [10.0, -10.0])
def test_slight_bend_is_bridged_and_corner_is_refused(left: float) -> None:
    def bent(angle_deg: float) -> Path:
        return Path.line(0j, 100, 100 + 100 * complex(np.exp(1j * np.deg2rad(angle_deg))))

    found = parallel(bent(0.9 * WIDEST_BEND_DEG), left)
    assert len(found.segments) == 3
    assert found.length == pytest.approx(200, abs=0.4)
    for angle in (5, 90, -90, 180):
        with pytest.raises(DraftError, match=r"path of the parallel .*part the path at its corners"):
            parallel(bent(angle), left)


def test_smooth_joints_need_no_bridge() -> None:
    cubic = ZOO["calm"]
    path = Path.join(Line(cubic.p0 - 40 * cubic.start_dir, cubic.p0), *cubic.split(0.4))
    found = parallel(path, 12)
    assert all(segment.controls[0] != segment.controls[-1] for segment in found)
    assert min(abs(s.controls[-1] - s.controls[0]) for s in found) > JOIN_TOL_MM
    assert_paths_close(
        found,
        Path.join(
            Line(path.start + 12j * cubic.start_dir, cubic.p0 + 12j * cubic.start_dir), *parallel_segment(cubic, 12)
        ),
        within=2 * PARALLEL_TOL_MM,
        steps=40,
    )
