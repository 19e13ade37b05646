"""The leg at any length and width: seams equal, smooth, and without a jump where the hem passes the knee."""

from __future__ import annotations

import re
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from zoo import ZOO, bodies

import draft
from draft.checks import KINK_TOL_DEG
from draft.fitting.fit import formula_block
from draft.geometry.meet import meet_line
from draft.geometry.path import Path
from draft.geometry.points import angle_deg
from draft.geometry.segments import Cubic
from draft.methods import METHODS
from draft.methods.base import Measures
from draft.shape.blend import blended
from draft.shape.leg import (
    NEAR_KNEE_MM,
    LegSeams,
    SideTop,
    Widths,
    inseam_to,
    knee_bend,
    largest,
    legs_for,
    side_from,
    solve,
)

LENGTH_TOL_MM = 0.005
SHORTEST = 60.0
STRETCH_SHARE = 0.015
JUMP_MM = 3.0  # the most that the hem may move for 1 mm of leg
FEW = settings(max_examples=40, deadline=None)


class Legs:
    """Legs of one body, with the waist as the method has it."""

    def __init__(self, body: draft.Body) -> None:
        self.body = body
        self.block = formula_block(METHODS["centre_line"], Measures.of(body), draft.Ease())
        self.sides = (SideTop(self.block.front.waist_side), SideTop(self.block.back.waist_side))
        self.knee = -self.block.levels["knee"]

    def at(self, length: float, hem: float | None = None, knee: float | None = None) -> LegSeams:
        return legs_for(self.block, self.sides, length, STRETCH_SHARE * length, 0.0, hem, knee)


def turns(path: Path) -> list[float]:
    return [abs(angle_deg(one.end_dir, two.start_dir)) for one, two in pairwise(path.segments)]


def corners(legs: LegSeams) -> np.ndarray:
    return np.array(
        [p for _, hem, _ in (legs.front, legs.back) for p in (hem.start, hem.point_at(hem.length / 2), hem.end)]
    )


def assert_sound(legs: LegSeams, length: float) -> None:
    (side_f, _, inseam_f), (side_b, _, inseam_b) = legs.front, legs.back
    assert inseam_f.length == pytest.approx(length, abs=LENGTH_TOL_MM)
    assert inseam_b.length == pytest.approx(length * (1 - STRETCH_SHARE), abs=LENGTH_TOL_MM)
    assert side_b.length == pytest.approx(side_f.length, abs=LENGTH_TOL_MM)
    for side, hem, inseam in (legs.front, legs.back):
        assert max(turns(side) + turns(inseam), default=0.0) <= KINK_TOL_DEG
        assert angle_deg(side.end_dir, hem.start_dir) == pytest.approx(90, abs=1e-6)
        assert angle_deg(hem.end_dir, inseam.start_dir) == pytest.approx(90, abs=1e-6)
        assert Path.join(side, hem).end == inseam.start


@FEW
@given(body=bodies(), share=st.floats(0, 1))
def test_leg_of_any_length_closes_and_is_smooth(body, share):
    length = SHORTEST + share * (body.inside_leg - SHORTEST)
    assert_sound(Legs(body).at(length), length)


@pytest.mark.parametrize("body", ZOO)
def test_hem_does_not_jump_where_the_leg_passes_the_knee(body):
    """Lengths 1 mm apart, from 20 above the knee to 20 below the depth where its bend is whole: 3 mm at the most."""
    legs = Legs(ZOO[body])
    lengths = np.arange(legs.knee - 20, min(legs.knee + NEAR_KNEE_MM + 40, ZOO[body].inside_leg), 1.0)
    drawn = [legs.at(float(length)) for length in lengths]
    for length, one in zip(lengths, drawn, strict=True):
        assert_sound(one, float(length))
    places = np.array([corners(one) for one in drawn])
    assert np.abs(np.diff(places, axis=0)).max() <= JUMP_MM
    assert np.abs(np.diff([one.hem for one in drawn])).max() <= JUMP_MM


@FEW
@given(body=bodies(), share=st.floats(0, 1))
def test_hem_of_two_lengths_1_mm_apart_differs_by_less_than_3(body, share):
    length = SHORTEST + share * (body.inside_leg - SHORTEST - 1)
    one, two = (Legs(body).at(length + more) for more in (0.0, 1.0))
    assert np.abs(corners(one) - corners(two)).max() <= JUMP_MM


@pytest.mark.parametrize("body", ["woman", "very large", "toddler"])
def test_asked_hem_does_not_jump_at_the_knee(body):
    """With a hem 40 mm wider than the method's: the seams' ends move, but by no more than their length allows."""
    legs = Legs(ZOO[body])
    around = (legs.knee - 0.01, legs.knee + 0.01)
    one, two = (legs.at(length, hem=legs.at(legs.knee).hem + 40) for length in around)
    assert np.abs(corners(one) - corners(two)).max() <= 0.05


# Widths


@FEW
@given(body=bodies(), share=st.floats(0, 1), change=st.floats(-60, 60))
def test_hem_is_as_asked_or_refused_with_a_limit(body, share, change):
    length = SHORTEST + share * (body.inside_leg - SHORTEST)
    legs = Legs(body)
    wanted = legs.at(length).hem + change
    try:
        found = legs.at(length, hem=wanted)
    except draft.DraftError as error:
        word = re.match(r"at (most|least) (\d+) mm", error.expected)
        if error.field != "style.leg.hem" or not word:
            raise
        wanted = float(word[2]) + (-1 if word[1] == "most" else 1)
        found = legs.at(length, hem=wanted)
    assert found.hem == pytest.approx(wanted, abs=0.01)
    assert_sound(found, length)


def girth_at(legs: LegSeams, y: float) -> float:
    def x(path: Path) -> float:
        return path.point_at(meet_line(path, 1j * y, 1 + 0j)[0]).real

    return sum(x(inseam) - x(side) for side, _, inseam in (legs.front, legs.back))


@pytest.mark.parametrize("body", ["woman", "man", "stout", "ten years"])
@pytest.mark.parametrize("change", [-60, 0, 80])
@pytest.mark.parametrize("hem", [None, -40, 60])
def test_knee_is_as_asked(body, change, hem):
    legs = Legs(ZOO[body])
    length = ZOO[body].inside_leg - 20
    own = legs.at(length)
    wanted = girth_at(own, -legs.knee) + change
    found = legs.at(length, hem=None if hem is None else own.hem + hem, knee=wanted)
    assert girth_at(found, -legs.knee) == pytest.approx(wanted, abs=0.2)
    assert found.hem == pytest.approx(own.hem + (hem or 0), abs=0.5 if hem is None else 0.01)
    assert_sound(found, length)


@pytest.mark.parametrize("body", ZOO)
def test_knee_just_above_the_hem_is_refused_with_the_length_it_needs(body):
    legs = Legs(ZOO[body])
    own = girth_at(legs.at(ZOO[body].inside_leg), -legs.knee)
    with pytest.raises(
        draft.DraftError, match=r"style\.leg\.knee is .* 60 below the knee: leave the knee out"
    ) as caught:
        legs.at(legs.knee + 10, knee=own)
    least = float(re.search(r"inside leg of (\d+) mm", caught.value.expected)[1])
    found = legs.at(least + 1, knee=own)
    assert girth_at(found, -legs.knee) == pytest.approx(own, abs=0.5)
    assert_sound(found, least + 1)


def test_knee_of_a_leg_that_ends_above_it_is_left_unused():
    legs = Legs(ZOO["woman"])
    assert np.abs(corners(legs.at(200, knee=700)) - corners(legs.at(200))).max() == 0


def test_shorts_leg_is_straightened_by_ten_at_each_inseam():
    """The default of a hem well above the knee: 10 mm more at front and back inseam, nothing at the knee."""
    legs = Legs(ZOO["woman"])
    front = legs.block.front
    y = legs.at(160).front[2].start.imag
    plain, widened = (inseam_to(front, y, Widths(hem_inseam=out)) for out in (0.0, 10.0))
    assert widened.start - plain.start == pytest.approx(10, abs=1e-9)
    assert abs(legs.at(160).front[2].start - widened.start) < 0.01


# What it is built of


@pytest.mark.parametrize("part", ["front", "back"])
def test_seams_meet_at_the_knee_whichever_way_they_are_drawn(part):
    """A hair above and below the knee the same curve; 60 below, the method's own."""
    legs = Legs(ZOO["woman"])
    panel = getattr(legs.block, part)
    knee = panel.knee_inseam.imag
    for draw in (
        lambda y: inseam_to(panel, y, Widths(12.0, 7.0)),
        lambda y: side_from(panel, panel.waist_side, y, Widths(12.0, 7.0)),
    ):
        for y in (knee, knee - NEAR_KNEE_MM):
            above, below = draw(y + 1e-4), draw(y - 1e-4)
            for share in np.linspace(0, 1, 41):
                gap = abs(above.point_at(share * above.length) - below.point_at(share * below.length))
                assert gap <= 0.002, (y, share)


def test_knee_bend_rises_steadily_from_the_knee():
    shares = [knee_bend(depth) for depth in np.linspace(-10, 80, 181)]
    assert shares[0] == 0
    assert shares[-1] == 1
    assert all(one <= two for one, two in pairwise(shares))


@pytest.mark.parametrize("share", [0.0, 0.25, 0.5, 1.0])
def test_blend_lies_between_two_lines_and_is_smooth(share):
    a = Path((Cubic(0j, 30 + 5j, 60 + 12j, 90 + 30j), Cubic(90 + 30j, 120 + 48j, 160 + 60j, 200 + 60j)))
    b = Path((Cubic(0j, 40 + 0j, 90 - 10j, 130 + 0j), Cubic(130 + 0j, 150 + 5j, 180 + 30j, 200 + 60j)))
    found = blended(a, b, share)
    assert max(turns(found), default=0.0) < 1e-6 if 0 < share < 1 else found is (a if share == 0 else b)
    for at in np.linspace(0, 1, 11):
        p, q = a.point_at(at * a.length), b.point_at(at * b.length)
        assert abs(found.point_at(at * found.length) - (p + (q - p) * share)) < 2.5


def test_solve_and_largest_find_what_they_are_asked_for():
    assert solve(lambda x: 3 * x + 0.01 * x * x, 50.0, 10.0) == pytest.approx(15.831, abs=0.001)
    assert largest(lambda x: x * x <= 2, 10.0) == pytest.approx(2**0.5, abs=1e-6)
    assert largest(lambda x: x <= 20, 10.0) == 10.0
