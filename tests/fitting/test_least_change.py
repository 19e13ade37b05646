"""The quadratic problem and its slopes, against scipy and against differences."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import lsq_linear
from zoo import ZOO

import draft
from draft.fitting.change import NAMES, Change, changed
from draft.fitting.fit import formula_block, spread
from draft.fitting.lengths import Lengths
from draft.fitting.quadratic import least_change
from draft.methods import METHODS
from draft.methods.base import Measures

SEEDS = st.integers(0, 2**32 - 1)
BODIES = list(ZOO.values())
STEPS = {name: 1e-6 if name.endswith("fullness") else 1e-4 for name in NAMES}


def problem(seed: int, *, near: bool):
    rng = np.random.default_rng(seed)
    a = rng.normal(size=(1, 3, 7)) * 10
    b = rng.normal(size=(1, 3)) * (5 if near else 60)
    root = rng.normal(size=(3, 3)) * 0.05 + np.eye(3) * 0.1
    low, high = -rng.uniform(0.2, 3, size=(1, 7)), rng.uniform(0.2, 3, size=(1, 7))
    return a, b, (root @ root.T)[None], low, high


@settings(max_examples=200, deadline=None)
@given(seed=SEEDS, near=st.booleans())
def test_least_change_is_the_bounded_least_squares_of_scipy(seed, near):
    """scipy.optimize.lsq_linear on the same problem written as one tall matrix: |z|^2 + |C^-1/2 (b - A z)|^2."""
    a, b, c, low, high = problem(seed, near=near)
    whiten = np.linalg.inv(np.linalg.cholesky(c[0]))
    tall, right = np.vstack([np.eye(7), whiten @ a[0]]), np.concatenate([np.zeros(7), whiten @ b[0]])
    theirs = lsq_linear(tall, right, (low[0], high[0]), method="bvls", tol=1e-14, max_iter=500)
    ours = least_change(a, b, c, low, high)[0]
    assert np.all(ours >= low[0])
    assert np.all(ours <= high[0])
    assert np.sum((tall @ ours - right) ** 2) == pytest.approx(2 * theirs.cost, rel=1e-6, abs=1e-8)
    assert ours == pytest.approx(theirs.x, abs=1e-4)


@settings(max_examples=100, deadline=None)
@given(seed=SEEDS)
def test_floor_counts_only_from_below(seed):
    """Without the floor where that already stands above it, else with the floor as a length to meet."""
    a, b, c, low, high = problem(seed, near=True)
    floored = least_change(a, b, c, low, high, floor=1)
    keep = np.array([True, False, True])
    c_kept = c * keep[:, None] * keep + np.diag(np.where(keep, 0.0, 1.0))
    without = least_change(a * keep[:, None], b * keep, c_kept, low, high)
    if (a[0, 1] @ without[0]) >= b[0, 1]:
        assert floored == pytest.approx(without, abs=1e-6)
    else:
        assert floored == pytest.approx(least_change(a, b, c, low, high), abs=1e-9)


def test_rows_do_not_touch_each_other():
    many = [problem(seed, near=seed % 2 == 0) for seed in range(40)]
    stacked = [np.concatenate(parts) for parts in zip(*many, strict=True)]
    together = least_change(*stacked)
    assert np.abs(together - np.concatenate([least_change(*one) for one in many])).max() < 1e-9


@pytest.mark.parametrize("method", METHODS)
def test_slopes_are_those_of_the_lengths(method):
    """Central differences at random changes of the whole zoo; the thigh's side seam is followed in proportion."""
    block = formula_block(METHODS[method], Measures.of_all(BODIES), draft.Ease())
    lengths = Lengths.of(spread(block, len(BODIES)))
    rng = np.random.default_rng(7)
    scale = np.array([0.02 if name.endswith("fullness") else 8.0 for name in NAMES])
    at = rng.uniform(-1, 1, size=(len(BODIES), len(NAMES))) * scale
    _, slopes = lengths(at)
    for index, name in enumerate(NAMES):
        step = np.zeros(len(NAMES))
        step[index] = STEPS[name]
        measured = (lengths(at + step)[0] - lengths(at - step)[0]) / (2 * STEPS[name])
        assert slopes[..., index] == pytest.approx(measured, abs=2e-6 * max(1.0, np.abs(measured).max()))


@pytest.mark.parametrize("method", METHODS)
def test_lengths_of_the_solver_are_those_of_the_drawn_block(method):
    """Against the walked paths of the changed block; 24 nodes are enough for these calm curves."""
    for body in BODIES:
        block = formula_block(METHODS[method], Measures.of(body), draft.Ease())
        change = Change(6.0, -5.0, 0.02, 9.0, 4.0, -0.03, 3.0)
        many = spread(formula_block(METHODS[method], Measures.of_all([body]), draft.Ease()), 1)
        (front, back, _, fork), _ = (part[0] for part in Lengths.of(many)(change.numbers[None]))
        drawn = changed(block, change)
        assert front == pytest.approx(drawn.front.crotch.length, abs=1e-4)
        assert back == pytest.approx(drawn.back.crotch.length, abs=1e-4)
        widths = [panel.fork.real - panel.hip_centre.real for panel in (drawn.front, drawn.back)]
        assert fork == pytest.approx(sum(widths), abs=1e-6)


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("body", ZOO)
def test_change_keeps_what_it_promises_to_keep(method, body):
    """Waist girth, hip girth and the levels; the curve stays tangent to the straight part and level at the fork."""
    block = formula_block(METHODS[method], Measures.of(ZOO[body]), draft.Ease())
    drawn = changed(block, Change(6.0, -5.0, 0.02, 9.0, 4.0, -0.03, 3.0))
    for before, after in ((block.front, drawn.front), (block.back, drawn.back)):
        assert abs(after.waist_side - after.waist_centre) == pytest.approx(abs(before.waist_side - before.waist_centre))
        width = (before.hip_centre - before.hip_side).real
        assert (after.hip_centre - after.hip_side).real == pytest.approx(width, abs=1e-6)
        curve, straight = after.crotch.segments
        assert abs(curve.end_dir - straight.start_dir) < 1e-9
        assert abs(curve.start_dir.imag) < 1e-9
    assert drawn.levels == block.levels


def test_no_change_is_no_change():
    block = formula_block(METHODS["centre_line"], Measures.of(ZOO["woman"]), draft.Ease())
    same = changed(block, Change())
    for before, after in ((block.front, same.front), (block.back, same.back)):
        assert after.points == pytest.approx(before.points, abs=1e-9)
        assert after.crotch.length == pytest.approx(before.crotch.length, abs=1e-9)
        for one, two in zip(before.darts, after.darts, strict=True):
            assert abs(one.mouth - two.mouth) < 1e-9
            assert abs(one.point - two.point) < 1e-9
