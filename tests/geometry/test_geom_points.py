"""Points and directions: by definition, and against numpy's own angles; what cannot be had is an error or nan."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import assume, given, settings
from shapes import directions, lines, numbers, places

from draft.errors import DraftError
from draft.geometry.points import (
    angle_deg,
    choose,
    cross,
    cross_lines,
    dot,
    mid,
    mirror,
    turn_deg,
    unit,
    with_y,
)
from draft.geometry.segments import Line

MODEST = settings(max_examples=100, deadline=None)


@MODEST
@given(places(), places())
def test_dot_and_cross_are_those_of_plane_vectors(a: complex, b: complex) -> None:
    assert dot(a, b) == pytest.approx(np.dot([a.real, a.imag], [b.real, b.imag]), abs=1e-9)
    assert cross(a, b) == pytest.approx(np.linalg.det([[a.real, a.imag], [b.real, b.imag]]), abs=1e-6)


@MODEST
@given(places(), numbers(-180, 180))
def test_turning_keeps_the_size_and_gives_the_angle(v: complex, angle: float) -> None:
    assume(abs(v) > 1e-3)
    assume(abs(angle) < 179.999)
    turned = turn_deg(v, angle)
    assert abs(turned) == pytest.approx(abs(v))
    assert angle_deg(v, turned) == pytest.approx(angle, abs=1e-6)


@MODEST
@given(lines(), lines())
def test_lines_cross_on_both(one: Line, two: Line) -> None:
    assume(abs(cross(one.start_dir, two.start_dir)) > 0.01)
    found = cross_lines(one.p0, one.start_dir, two.p0, two.start_dir)
    assert cross(one.start_dir, found - one.p0) == pytest.approx(0, abs=1e-6)
    assert cross(two.start_dir, found - two.p0) == pytest.approx(0, abs=1e-6)


@MODEST
@given(places(), places(), directions())
def test_mirror_is_as_far_on_the_other_side(p: complex, a: complex, along: complex) -> None:
    image = mirror(p, a, a + 7 * along)
    assert cross(along, image - a) == pytest.approx(-cross(along, p - a), abs=1e-8)
    assert dot(along, image - a) == pytest.approx(dot(along, p - a), abs=1e-8)


def test_parallel_lines_do_not_cross() -> None:
    with pytest.raises(DraftError, match=r"angle of two lines is 0\.0, expected lines that are not parallel"):
        cross_lines(0j, 1, 5j, 2)
    found = cross_lines(0j, np.array([1, 1 + 1j]), 5j, 1)  # type: ignore[arg-type]
    assert np.isfinite(found).tolist() == [False, True]  # type: ignore[attr-defined]
    assert found[1] == 5 + 5j  # type: ignore[index]


def test_one_point_and_itself_have_no_direction() -> None:
    for nothing in (0j, 0, np.complex128(0)):
        with pytest.raises(DraftError, match=r"distance of two points is 0\.0, expected more than 0 mm"):
            unit(nothing)
    found = unit(np.array([0j, 3 + 4j]))  # type: ignore[arg-type]
    assert np.isnan(found).tolist() == [True, False]
    assert found[1] == pytest.approx(0.6 + 0.8j)  # type: ignore[index]


def test_level_line_reaches_one_height_only() -> None:
    with pytest.raises(DraftError, match=r"rise of the line is 0\.0, expected a line that is not level"):
        with_y(0j, 10 + 0j, 5)
    found = with_y(0j, np.array([10 + 0j, 10 + 20j]), 5)  # type: ignore[arg-type]
    assert np.isfinite(found).tolist() == [False, True]  # type: ignore[attr-defined]
    assert found[1] == 2.5 + 5j  # type: ignore[index]


def test_middle_and_choice() -> None:
    assert mid(2 + 2j, 4 - 8j) == 3 - 3j
    assert choose(True, 1, 2j) == 1
    assert choose(np.bool_(False), 1, 2j) == 2j
    assert list(choose(np.array([True, False]), 1j, 2)) == [1j, 2]  # type: ignore[call-overload, arg-type]
