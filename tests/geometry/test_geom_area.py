"""Area against the shoelace formula, shapely (used as reference) and closed formulas."""

from __future__ import annotations

from fractions import Fraction
from math import pi

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapes import ZOO, numbers, outlines, places, quarter_circles, sampled, sampling_error, stacked

from draft.geometry.area import signed_area
from draft.geometry.construct import bow
from draft.geometry.path import Path
from draft.geometry.segments import Line, Motion

MODEST = settings(max_examples=100, deadline=None)


def shoelace(corners: list[complex]) -> Fraction:
    """Area of a polygon in exact fractions (the surveyor's formula; a handbook formula, from memory)."""
    xs, ys = [Fraction(p.real) for p in corners], [Fraction(p.imag) for p in corners]
    twice = sum(xs[k - 1] * ys[k] - xs[k] * ys[k - 1] for k in range(len(corners)))
    return Fraction(twice) / 2


@MODEST
@given(st.lists(places(), min_size=3, max_size=9))
def test_area_of_polygons_is_the_shoelace_formula(corners: list[complex]) -> None:
    path = Path.line(*corners, corners[0])
    assert path.area == pytest.approx(float(shoelace(corners)), abs=1e-8, rel=1e-12)


def test_area_counts_positive_counter_clockwise() -> None:
    square = Path.line(0j, 10, 10 + 10j, 10j, 0j)
    assert square.area == 100
    assert square.reversed().area == -100


@MODEST
@given(outlines())
def test_area_of_outlines_agrees_with_shapely(path: Path) -> None:
    # Reference: the area of a fine polygon by shapely (unsigned); its error is at most the strays times the length.
    polygon = sampled(path, 2000)
    expected = shapely.Polygon(np.column_stack([polygon.real, polygon.imag])).area
    error = sampling_error(path, 2000) * path.length + 1e-6
    assert abs(path.area) == pytest.approx(expected, abs=error)


def test_area_of_a_circle() -> None:
    # The cubics stray outwards by 0 to 0.0273 % of the radius, so the area is larger by less than twice that.
    assert 0 < quarter_circles(100, 30 - 700j).area / (pi * 100**2) - 1 < 2 * 0.000273
    assert quarter_circles(100).reversed().area < 0


def test_area_under_a_bow_is_two_thirds_of_the_box() -> None:
    # Archimedes: a parabola fills two thirds of the box around it.
    curve = bow(96, 0j, -12)
    assert signed_area([curve, Line(0j, 96)]) == pytest.approx(2 / 3 * 96 * 12, rel=1e-12)


def test_area_of_a_figure_of_eight_cancels() -> None:
    eight = Path.line(0j, 10 + 10j, 10, 10j, 0j)
    assert eight.area == 0


@MODEST
@given(outlines(), places(2000))
def test_area_of_an_outline_does_not_depend_on_where_it_lies(path: Path, shift: complex) -> None:
    assert path.moved(Motion(shift=shift)).area == pytest.approx(path.area, abs=1e-5)


@MODEST
@given(outlines(), numbers(0.01, 0.99))
def test_parts_on_both_sides_of_a_cut_add_up(path: Path, share: float) -> None:
    head, tail = path.split_at(share * path.length)
    parts = Path.join(head, Line(head.end, head.start)).area + Path.join(tail, Line(tail.end, tail.start)).area
    assert parts == pytest.approx(path.area, abs=1e-5)


def test_areas_as_one_array_equal_one_by_one() -> None:
    many = stacked(list(ZOO.values()))
    together = signed_area([many, Line(many.p3, many.p0)])
    one_by_one = [signed_area([c, Line(c.p3, c.p0)]) for c in ZOO.values()]
    np.testing.assert_allclose(together, one_by_one, rtol=1e-12, atol=1e-12)
