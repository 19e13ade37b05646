"""Corners taken out of paths, and ends turned square."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import assume, given, settings
from shapes import assert_paths_close, calm_cubics, directions, numbers

from draft.geometry.flow import end_square, flow_through
from draft.geometry.path import Path
from draft.geometry.points import angle_deg
from draft.geometry.segments import Cubic, Motion

MODEST = settings(max_examples=100, deadline=None)


def corner_of(one: Cubic, two: Cubic) -> Path:
    return Path.join(one, Cubic(one.p3, *two.moved(Motion(shift=one.p3 - two.p0)).controls[1:]))


@MODEST
@given(calm_cubics(), calm_cubics(), numbers(5, 25))
def test_curve_flows_through_the_corner_point(one: Cubic, two: Cubic, reach: float) -> None:
    path = corner_of(one, two)
    along = path.split_at(path._ends[0])[0].length
    assume(abs(angle_deg(one.end_dir, path.segments[1].start_dir)) < 150)
    found = flow_through(path, along, reach)
    for before, after in pairwise(found.segments):
        assert angle_deg(before.end_dir, after.start_dir) == pytest.approx(0, abs=0.01)
    assert min(abs(s.controls[-1] - one.p3) for s in found) < 1e-9


@MODEST
@given(calm_cubics(), calm_cubics(), numbers(5, 25))
def test_only_the_stretches_beside_the_corner_change(one: Cubic, two: Cubic, reach: float) -> None:
    path = corner_of(one, two)
    along = path._ends[0]
    assume(abs(angle_deg(one.end_dir, path.segments[1].start_dir)) < 150)
    found = flow_through(path, along, reach)
    left, right = along - reach, path.length - along - reach
    assert_paths_close(found.between(0, left), path.between(0, left), within=1e-4, steps=40)
    same = found.between(found.length - right, found.length)
    assert_paths_close(same, path.between(path.length - right, path.length), within=1e-4, steps=40)


@MODEST
@given(calm_cubics(), directions(), numbers(5, 40))
def test_end_arrives_as_told_and_stays_where_it_was(cubic: Cubic, arrive_dir: complex, reach: float) -> None:
    path = Path((cubic,))
    found = end_square(path, arrive_dir, reach)
    assert found.end == path.end
    assert found.end_dir == pytest.approx(arrive_dir, abs=1e-9)
    assert np.abs(found.point_at(path.length - reach) - path.point_at(path.length - reach)) < 1e-4
