"""Points by ruler and from photographs: the photographs are taken here by a pinhole camera."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from draft.errors import DraftError
from draft.trace import from_photo, from_points
from draft.trace.points import homography

PIECE = np.array([-150, 150, 160 + 300j, 60 + 320j, 50 + 600j, -140 + 590j]) + 0j
SQUARE = np.array([0, 100, 100 + 100j, 100j]) + 200 - 80j


def seen(points, tilt_deg, turn_deg=10.0, distance=1500.0, focal_px=3000.0):
    """Picture of points of a plane by a camera whose axis is tilted: perspective by its definition, y down."""
    p = points * np.exp(1j * np.radians(turn_deg))
    tilt = np.radians(tilt_deg)
    deep = distance + p.imag * np.sin(tilt)
    return focal_px * (p.real - 1j * p.imag * np.cos(tilt)) / deep + 2000 + 1500j


@given(tilt=st.floats(0, 35), turn=st.floats(-180, 180))
def test_the_perspective_is_taken_out(tilt, turn):
    found = from_photo(seen(PIECE, tilt, turn), seen(SQUARE, tilt, turn), 100)
    wanted = PIECE - SQUARE[0]
    # the first point of an outline is the first one that was given
    assert np.abs(found.points - wanted).max() < 1e-6


def test_the_error_is_that_of_many_trials():
    rng, tilt = np.random.default_rng(3), 5
    points, square = seen(PIECE, tilt), seen(SQUARE, tilt)
    told = from_photo(points, square, 100, click_px=1.0).error

    def shaken(p):
        return p + rng.normal(size=len(p)) + 1j * rng.normal(size=len(p))

    off = [from_photo(shaken(points), shaken(square), 100).points - (PIECE - SQUARE[0]) for _ in range(600)]
    assert np.sqrt(np.mean(np.abs(off) ** 2)) == pytest.approx(told, rel=0.15)


def test_check_lengths_are_told_and_refused_when_they_are_off():
    points, square = seen(PIECE, 3), seen(SQUARE, 3)
    ends = points[0], points[1]
    assert from_photo(points, square, 100, checks=[(*ends, 301.0)]).notes == ("check 1: 300.0 mm, measured 301.0",)
    with pytest.raises(DraftError, match=r"check 1 is 300\.0, expected 310 mm as measured, within 3\.0 mm"):
        from_photo(points, square, 100, checks=[(*ends, 310.0)])


def test_more_than_four_places_are_met_by_least_squares():
    rng = np.random.default_rng(1)
    true = rng.uniform(-300, 300, 12) + 1j * rng.uniform(-300, 300, 12)
    place = homography(seen(true, 20), true)
    x, y, w = place @ np.stack([seen(true, 20).real, seen(true, 20).imag, np.ones(12)])
    assert np.abs((x + 1j * y) / w - true).max() < 1e-6


@pytest.mark.parametrize(
    "square", [SQUARE[:3], SQUARE[[0, 2, 1, 3]], SQUARE * 0, SQUARE.real + 0j, SQUARE * 0.001, SQUARE * np.nan]
)
def test_what_is_no_square_is_refused(square):
    with pytest.raises(DraftError):
        from_photo(PIECE, square, 100)


@pytest.mark.parametrize("square_mm", [0, -5, np.nan, 1e9])
def test_a_side_that_is_none_is_refused(square_mm):
    with pytest.raises(DraftError, match="square_mm"):
        from_photo(PIECE, SQUARE, square_mm)


def test_a_smooth_line_keeps_corners_and_rounds_bends():
    angles = np.radians(np.arange(-90, 91, 15))
    half = from_points([*(200 * np.exp(1j * angles)), -300 + 200j, -300 - 200j], smooth=True)
    assert half.area == pytest.approx(np.pi * 200**2 / 2 + 300 * 400, rel=2e-3)
    assert np.abs(half.points - (-300 + 200j)).min() == 0


@pytest.mark.parametrize(
    ("points", "told"),
    [
        ([], "three points"),
        ([0, 100], "three points"),
        ([0, 100, 200], "area 0"),
        ([0, 100, np.nan], "finite numbers"),
        ([0, 100, 1j * np.inf], "finite numbers"),
        ([0, 100 + 100j, 100, 100j], "cross itself"),
        ("abc", "complex numbers"),
        ([[0, 1], [1, 2]], "one row of points"),
        (np.zeros(1_000_000), "at most"),
        (np.exp(2j * np.pi * np.arange(150_000) / 150_000) * 5e4, "at most 3000"),
    ],
)
def test_points_that_are_no_outline_are_refused(points, told):
    with pytest.raises(DraftError, match=told):
        from_points(points)
