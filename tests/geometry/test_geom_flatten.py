"""The promised bound of polylines, against shapely's distance (used as reference), and wrong tolerances."""

from __future__ import annotations

from math import inf, nan

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from shapes import ZOO, as_line, as_points, outlines, paths, sampled

from draft.errors import DraftError
from draft.geometry.flatten import steps_for
from draft.geometry.path import Path
from draft.geometry.segments import Cubic

TOLERANCES_MM = (2.0, 0.1, 0.01, 0.001)
ROUNDING_MM = 1e-9


def largest_gap(path: Path, tolerance: float) -> float:
    """Largest distance from dense points of the true curve to the polyline."""
    corners = path.points(tolerance)
    line = as_line(np.append(corners, corners[0]) if path.closed else corners)
    return float(np.max(shapely.distance(as_points(sampled(path, 397)), line)))


@pytest.mark.parametrize("tolerance", TOLERANCES_MM)
@pytest.mark.parametrize("name", [name for name in ZOO if name != "huge"])
def test_zoo_lies_within_the_tolerance(name: str, tolerance: float) -> None:
    assert largest_gap(Path((ZOO[name],)), tolerance) <= tolerance + ROUNDING_MM


@pytest.mark.parametrize("tolerance", [1000.0, 10.0, 0.5])
def test_huge_curve_lies_within_the_tolerance(tolerance: float) -> None:
    assert largest_gap(Path((ZOO["huge"],)), tolerance) <= tolerance + ROUNDING_MM


@settings(max_examples=100, deadline=None)
@given(paths())
def test_paths_lie_within_the_tolerance(path: Path) -> None:
    for tolerance in (1.0, 0.1, 0.02):
        assert largest_gap(path, tolerance) <= tolerance + ROUNDING_MM


def test_bound_is_used_up_and_not_wasted() -> None:
    # A parabola strays from equal chords by the same amount everywhere: the bound is met nearly exactly.
    path = Path((Cubic(0j, 100 + 50j, 200 + 50j, 300 + 0j),))
    for tolerance in (0.1, 0.01, 0.001):
        assert 0.7 * tolerance < largest_gap(path, tolerance) <= tolerance


@settings(max_examples=100, deadline=None)
@given(paths())
def test_corners_of_the_polyline_lie_on_the_path_and_its_ends_are_kept(path: Path) -> None:
    corners = path.points(0.1)
    for segment in path:
        for end in (segment.controls[0], segment.controls[-1]):
            assert np.min(np.abs(corners - end)) < ROUNDING_MM
    assert np.max(shapely.distance(as_points(corners), as_line(sampled(path, 2000)))) < 0.001
    assert (corners[0], corners[-1]) == (path.start, path.end)


@settings(max_examples=50, deadline=None)
@given(outlines())
def test_closed_path_does_not_repeat_its_first_point(path: Path) -> None:
    corners = path.points(0.1)
    assert corners[0] == path.start
    assert abs(corners[-1] - corners[0]) > ROUNDING_MM


def test_lines_need_their_corners_only() -> None:
    assert Path.line(0j, 10, 10 + 5j).points(0.001).tolist() == [0, 10, 10 + 5j]
    assert Path.line(0j, 10, 10 + 5j, 0j).points(0.001).tolist() == [0, 10, 10 + 5j]


def test_evenly_paced_line_in_disguise_needs_one_step() -> None:
    assert steps_for(Cubic(0j, 10 + 5j, 20 + 10j, 30 + 15j), 1e-6) == 1


@pytest.mark.parametrize("tolerance", [0.0, -0.1, nan, inf, -inf, 1e-9])
@pytest.mark.parametrize("path", [Path((ZOO["calm"],)), Path.line(0j, 10)], ids=["cubic", "line"])
def test_wrong_tolerance_is_refused(path: Path, tolerance: float) -> None:
    with pytest.raises(DraftError, match=r"tolerance is .*expected 1e-06 mm or more: use 0\.1 for cutting"):
        path.points(tolerance)
