"""Nearest places against dense sampling refined by scipy, and against shapely's project (used as references)."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import minimize_scalar
from shapely import Point
from shapes import (
    ZOO,
    as_line,
    calm_cubics,
    lines,
    numbers,
    paths,
    places,
    quarter_circles,
    sampled,
    sampling_error,
    wild_cubics,
)

from draft.geometry.construct import bow
from draft.geometry.nearest import nearest, nearest_parameter
from draft.geometry.path import Path
from draft.geometry.segments import Cubic, Line, Segment

MODEST = settings(max_examples=100, deadline=None)
T = np.linspace(0, 1, 1001)


def true_distance(segment: Segment, p: complex) -> float:
    """Best of 1001 places, refined between its neighbours by scipy.optimize.minimize_scalar."""
    gaps = np.abs(segment.points(T) - p)
    best = int(np.argmin(gaps))
    around = (T[max(best - 1, 0)], T[min(best + 1, len(T) - 1)])
    refined = minimize_scalar(
        lambda t: abs(segment.point(t) - p), bounds=around, method="bounded", options={"xatol": 1e-10}
    )
    return float(min(refined.fun, gaps[best]))


@MODEST
@given(st.one_of(calm_cubics(), wild_cubics(), lines()), places(700))
def test_nearest_distance_is_the_true_one(segment: Segment, p: complex) -> None:
    along, gap = nearest(Path((segment,)), p)
    assert gap <= true_distance(segment, p) + 1e-7
    # and it is the distance of a place on the path, so it cannot be too small either
    assert abs(Path((segment,)).point_at(along) - p) == pytest.approx(gap, abs=1e-4)


@pytest.mark.parametrize("name", ZOO)
def test_nearest_on_the_zoo(name: str) -> None:
    cubic = ZOO[name]
    size = abs(cubic.p3 - cubic.p0) + abs(cubic.p1 - cubic.p0)
    for k in range(24):
        p = cubic.point(k / 23) + size * (k % 5) / 4 * np.exp(1j * k)
        gap = abs(cubic.point(nearest_parameter(cubic, p)) - p)
        assert gap <= true_distance(cubic, p) * (1 + 1e-9) + 1e-7


@MODEST
@given(places(), places(), numbers(-60, 60), places(700))
def test_nearest_on_a_parabola_whose_cubic_term_is_only_rounding(
    a: complex, b: complex, left: float, p: complex
) -> None:
    if abs(b - a) < 1:
        b = a + 1
    curve = bow(a, b, left)
    assert nearest(Path((curve,)), p)[1] <= true_distance(curve, p) + 1e-7


@pytest.mark.parametrize("scale", [1e-12, 1e-60, 1e-200])
def test_nearest_on_a_parabola_with_next_to_no_cubic_term(scale: float) -> None:
    curve = Cubic(scale * 1j, -0.5 + 4j / 3, -1 + 4j / 3, -1.5 + 0j)
    assert nearest(Path((curve,)), 1j)[1] == pytest.approx(true_distance(curve, 1j), abs=1e-7)


@MODEST
@given(paths(), places(700))
def test_nearest_place_on_paths_agrees_with_shapely(path: Path, p: complex) -> None:
    # Reference: shapely's distance and project on a fine polyline.
    line = as_line(sampled(path, 2000))
    along, gap = nearest(path, p)
    assert gap == pytest.approx(line.distance(Point(p.real, p.imag)), abs=0.001)
    foot = line.interpolate(line.project(Point(p.real, p.imag)))
    other = abs(complex(foot.x, foot.y) - p)
    assert abs(path.point_at(along) - p) <= other + sampling_error(path, 2000) + 1e-6


@MODEST
@given(calm_cubics(), numbers(0, 1))
def test_point_on_the_curve_is_its_own_nearest(cubic: Cubic, t: float) -> None:
    _, gap = nearest(Path((cubic,)), cubic.point(t))
    assert gap < 1e-7


@MODEST
@given(lines(), numbers(0.05, 0.95), numbers(-100, 100))
def test_foot_on_a_line_is_square_to_it(line: Line, t: float, left: float) -> None:
    path = Path((line,))
    along, gap = nearest(path, line.point(t) + 1j * left * line.start_dir)
    assert along == pytest.approx(t * path.length, abs=1e-8)
    assert gap == pytest.approx(abs(left), abs=1e-8)


def test_beyond_the_ends_the_end_is_nearest() -> None:
    path = Path.line(0j, 30, 30 + 40j)
    assert nearest(path, -3 - 4j) == (0, 5)
    assert nearest(path, 30 + 45j) == (70, 5)


def test_centre_of_a_circle_is_equally_near_to_all() -> None:
    # Inside 0.0273 % of the radius: the stray of the four cubics.
    _, gap = nearest(quarter_circles(100, 4 + 4j), 4 + 4j)
    assert gap == pytest.approx(100, abs=1e-9)


def test_stretch_without_length() -> None:
    assert nearest(Path.line(5j, 5j), 3 + 9j) == (0, 5)
    point = Cubic(5j, 5j, 5j, 5j)
    assert abs(point.point(nearest_parameter(point, 3 + 9j)) - (3 + 9j)) == 5
