"""Arc length against scipy.integrate.quad (used as reference) and against closed formulas."""

from __future__ import annotations

from math import asinh, hypot, pi

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapes import (
    ZOO,
    calm_cubics,
    directions,
    lines,
    numbers,
    quarter_circles,
    stacked,
    true_length,
    wild_cubics,
)

from draft.geometry.construct import bow, hook
from draft.geometry.length import LENGTH_TOL_MM, length, parameter_at, partial_length
from draft.geometry.segments import Cubic, Line

PROMISED_MM = 0.001
MODEST = settings(max_examples=100, deadline=None)


@pytest.mark.parametrize("name", ZOO)
def test_length_of_zoo(name: str) -> None:
    assert length(ZOO[name]) == pytest.approx(true_length(ZOO[name]), abs=PROMISED_MM)


@pytest.mark.parametrize("name", ZOO)
@pytest.mark.parametrize("t", [0.0, 0.1, 0.5, 0.77])
def test_length_to_a_parameter(name: str, t: float) -> None:
    expected = true_length(ZOO[name], t) if t else 0.0
    assert partial_length(ZOO[name], t) == pytest.approx(expected, abs=PROMISED_MM)


@MODEST
@given(calm_cubics())
def test_length_of_calm_cubics_is_a_thousand_times_better_than_promised(cubic: Cubic) -> None:
    assert length(cubic) == pytest.approx(true_length(cubic), abs=PROMISED_MM / 1000)


@MODEST
@given(wild_cubics())
def test_length_of_wild_cubics(cubic: Cubic) -> None:
    assert length(cubic) == pytest.approx(true_length(cubic), abs=PROMISED_MM)


@MODEST
@given(numbers(0.2, 0.9), numbers(-1e-3, 1e-3), numbers(-1e-3, 1e-3))
def test_length_close_to_a_cusp(t: float, across: float, up: float) -> None:
    # A curve that stands still at t, moved a little: the speed dips to nearly nothing over a very short stretch.
    still = np.array([(1 - t) ** 2, 2 * t * (1 - t), t**2])
    first, second = 130 + 40j, -60 + 90j
    third = -(still[0] * first + still[1] * second) / still[2]
    cubic = Cubic(0j, first, first + second, first + second + complex(third) + complex(across, up))
    assert length(cubic) == pytest.approx(true_length(cubic), abs=PROMISED_MM)


@settings(max_examples=200, deadline=None)
@given(*(numbers(-300, 300) for _ in range(4)), directions())
def test_length_of_lines_in_disguise_that_turn_back(a: float, b: float, c: float, d: float, turn: complex) -> None:
    # Exact: the steps between the turning points (zeros of the derivative), to and fro along one line.
    derivative = np.poly1d([3 * (d - a + 3 * (b - c)), 6 * (a - 2 * b + c), 3 * (b - a)])
    t = np.array([0.0, *sorted(r.real for r in np.atleast_1d(derivative.roots) if r.imag == 0 and 0 < r.real < 1), 1.0])
    places = (1 - t) ** 3 * a + 3 * t * (1 - t) ** 2 * b + 3 * t**2 * (1 - t) * c + t**3 * d
    cubic = Cubic(*(turn * x for x in (a, b, c, d)))
    assert length(cubic) == pytest.approx(float(np.sum(np.abs(np.diff(places)))), abs=PROMISED_MM)


HIDDEN_KINKS = [(0.75225895, 0.7383893), (1.15959949, 0.000932202), (0.99944782, 0.32050435), (-2.089, 0.49965445)]


@pytest.mark.parametrize("kinks", HIDDEN_KINKS)
def test_length_with_turning_points_between_two_nodes(kinks: tuple[float, float]) -> None:
    # These turn back where neither rule of 24 nodes, whole or halved, has a node between edge and turning point.
    one, two = kinks
    steps = [one * two, one * two - (one + two) / 2, (1 - one) * (1 - two)]  # Bernstein form of (t - one)(t - two)
    x = 2000 * np.concatenate([[0.0], np.cumsum(steps)])
    t = np.array([0.0, *sorted(k for k in kinks if 0 < k < 1), 1.0])
    places = 3 * t * (1 - t) ** 2 * x[1] + 3 * t**2 * (1 - t) * x[2] + t**3 * x[3]
    expected = float(np.sum(np.abs(np.diff(places))))
    assert length(Cubic(*(complex(p) for p in x))) == pytest.approx(expected, abs=PROMISED_MM)
    many = stacked([Cubic(*(p * (0.6 + 0.8j) for p in x)), ZOO["calm"]])
    assert np.asarray(length(many))[0] == pytest.approx(expected, abs=PROMISED_MM)


def test_length_of_a_parabola_meets_the_formula() -> None:
    # Arc of a parabola with base b and height h, from calculus: s = r/2 + b^2/(8h) asinh(4h/b), r = hypot(b, 4h).
    base, height = 96.0, 30.0
    root = hypot(base, 4 * height)
    expected = root / 2 + base**2 / (8 * height) * asinh(4 * height / base)
    assert length(bow(3 + 4j, 3 + 4j + base * 1j, height)) == pytest.approx(expected, abs=1e-9)


def test_length_of_a_circle() -> None:
    # The cubics stray outwards by 0 to 0.0273 % of the radius, so the length lies within 0.03 % of 2 pi r.
    circle = quarter_circles(100)
    assert 0 < circle.length / (200 * pi) - 1 < 0.0003


@MODEST
@given(lines())
def test_line_in_disguise_is_as_long_as_the_line(line: Line) -> None:
    disguised = Cubic(line.p0, line.point(0.1), line.point(0.7), line.p1)
    assert length(disguised) == pytest.approx(length(line), abs=1e-9)
    assert length(line) == abs(line.p1 - line.p0)


def test_point_has_no_length() -> None:
    assert length(Cubic(5 + 5j, 5 + 5j, 5 + 5j, 5 + 5j)) == 0
    assert length(Line(5j, 5j)) == 0


def test_lengths_of_the_zoo_as_one_array_equal_one_by_one() -> None:
    together = length(stacked(list(ZOO.values())))
    one_by_one = [length(cubic) for cubic in ZOO.values()]
    assert np.shape(together) == (len(ZOO),)
    np.testing.assert_allclose(together, one_by_one, atol=2 * LENGTH_TOL_MM, rtol=1e-12)


@MODEST
@given(st.lists(st.one_of(calm_cubics(), wild_cubics()), min_size=2, max_size=6), numbers(0, 1))
def test_arrays_equal_one_by_one(cubics: list[Cubic], t: float) -> None:
    many = stacked(cubics)
    np.testing.assert_allclose(length(many), [length(c) for c in cubics], atol=2 * LENGTH_TOL_MM)
    np.testing.assert_allclose(partial_length(many, t), [partial_length(c, t) for c in cubics], atol=2 * LENGTH_TOL_MM)


def test_one_end_for_many_curves() -> None:
    many = hook(90j, 0j, 60 + 0j, np.array([0.3, 0.5, 0.7]))  # type: ignore[arg-type]
    alone = [hook(90j, 0j, 60 + 0j, k) for k in (0.3, 0.5, 0.7)]
    total = [length(curve) for curve in alone]
    np.testing.assert_allclose(length(many), total, atol=2 * LENGTH_TOL_MM)
    found = parameter_at(many, 40.0, np.array(total))  # type: ignore[arg-type]
    np.testing.assert_allclose(found, [parameter_at(c, 40.0, s) for c, s in zip(alone, total, strict=True)], atol=1e-7)


def test_array_of_lines() -> None:
    many = Line(np.array([0j, 1j]), np.array([3 + 4j, 11j]))  # type: ignore[arg-type]
    np.testing.assert_array_equal(length(many), [5, 10])


def test_missing_row_stays_missing_and_alone() -> None:
    gone = complex("nan")
    found = np.asarray(length(stacked([ZOO["calm"], Cubic(gone, gone, gone, gone), ZOO["loop"]])))
    assert np.isnan(found).tolist() == [False, True, False]
    np.testing.assert_allclose(found[[0, 2]], [length(ZOO["calm"]), length(ZOO["loop"])], atol=2 * LENGTH_TOL_MM)


@pytest.mark.parametrize("name", ZOO)
@pytest.mark.parametrize("share", [0.0, 0.001, 0.25, 0.5, 0.9, 1.0])
def test_parameter_at_is_met_by_the_reference(name: str, share: float) -> None:
    cubic = ZOO[name]
    total = length(cubic)
    t = parameter_at(cubic, share * total, total)
    assert 0 <= t <= 1
    assert (true_length(cubic, t) if t > 0 else 0.0) == pytest.approx(share * total, abs=PROMISED_MM)


@MODEST
@given(wild_cubics(), numbers(0, 1))
def test_parameter_at_undoes_partial_length(cubic: Cubic, share: float) -> None:
    total = length(cubic)
    assume(total > 1)
    t = parameter_at(cubic, share * total, total)
    assert partial_length(cubic, t) == pytest.approx(share * total, abs=PROMISED_MM / 100)


def test_parameters_as_one_array_equal_one_by_one() -> None:
    names = [name for name in ZOO if name != "huge"]
    many = stacked([ZOO[name] for name in names])
    total = np.asarray(length(many))
    together = parameter_at(many, 0.3 * total, total)  # type: ignore[arg-type]
    one_by_one = [parameter_at(ZOO[name], 0.3 * total[k], total[k]) for k, name in enumerate(names)]
    gaps = np.abs(many.point(together) - np.array([ZOO[n].point(t) for n, t in zip(names, one_by_one, strict=True)]))
    assert np.max(gaps) < 1e-5


def test_parameter_on_a_line() -> None:
    assert parameter_at(Line(0j, 8 + 0j), 2.0, 8.0) == 0.25
