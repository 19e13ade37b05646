"""Bias binding: its length is that of the pattern's own edges; strips and square yield at least that much.

Outside truth: a strip of a length and a width cannot have more area than the cloth it is cut from, and how rows lie
in a square is counted on a drawn one.
"""

from __future__ import annotations

import re
from math import sqrt

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.affinity import rotate
from shapely.geometry import box
from zoo import ZOO

import draft
from draft.choices.small_parts import BiasBinding
from draft.pieces.plan import Plan
from draft.pieces.small_parts import bias_binding
from draft.pieces.small_parts.bias_binding import ENDS, JOIN, continuous, square_for, strips


def made(binding, body="woman", **style):
    return draft.shorts(ZOO[body], draft.Style(small_parts=(binding,), **style))


def cut(pattern, piece, *edges):
    """Lengths of a piece's edges, all of its kind that are cut."""
    found = pattern.pieces[piece]
    return found.cut.count * sum(found.edge(name).length for name in edges)


def bound(pattern, name):
    plan = Plan(pattern.body, pattern.style, pattern.shell, "")
    return sum(bias_binding.bound(plan, pattern.style.small_parts[0])[name])


@pytest.mark.parametrize("body", ZOO)
def test_length_is_that_of_the_edges_of_all_pieces_that_are_cut(body):
    pattern = made(BiasBinding(edges=("waist", "hem", "seams", "pocket bags")), body)
    assert [finding for finding in pattern.check() if finding.code != "fit"] == []
    seen = next(n.along for n in pattern.pieces["pocket_facing"].notches if n.edge == "side")
    assert bound(pattern, "hem") == pytest.approx(cut(pattern, "front", "hem") + cut(pattern, "back", "hem"))
    seams = cut(pattern, "front", "side", "inseam", "crotch", "fly") + cut(pattern, "back", "side", "inseam", "crotch")
    assert bound(pattern, "seams") == pytest.approx(seams + 2 * seen, abs=0.01)
    assert bound(pattern, "pocket bags") == pytest.approx(cut(pattern, "pocket_bag_front", "contour"))
    assert bound(pattern, "waist") == pytest.approx(pattern.garment.waist_girth, abs=0.01)  # darts closed


def test_note_adds_up():
    told = made(BiasBinding(edges=("hem", "waist"))).garment.notes[-2:]
    hem, waist = (float(re.search(rf"{name} (\d+)", told[0]).group(1)) for name in ("hem", "waist"))
    needed = float(re.search(r"(\d+) mm in all", told[0]).group(1))
    assert needed == pytest.approx(hem + waist + 3 * ENDS, abs=2)
    assert float(re.search(r"one strip of (\d+)", told[1]).group(1)) >= needed


@settings(max_examples=40, deadline=None)
@given(needed=st.floats(100, 20000), wide=st.floats(12, 120))
def test_square_yields_the_length_and_no_more_than_its_area(needed, wide):
    side = square_for(needed, wide)
    assert continuous(side, wide) >= needed
    assert needed * wide <= side**2
    assert continuous(side, wide) * wide <= side**2


@pytest.mark.parametrize(("side", "wide"), [(500, 32), (400, 50), (300, 28)])
def test_rows_in_a_square_are_those_between_its_bias_edges(side, wide):
    """The slanted piece made of both halves of the square is half as high as the square is from corner to corner."""
    square = rotate(box(0, 0, side, side), 45)
    low, high = square.bounds[1], square.bounds[3]
    rows = round(continuous(side, wide) / (sqrt(2) * (side - 4 * JOIN)))
    assert rows * wide <= (high - low) / 2 < (rows + 1) * wide


@settings(max_examples=40, deadline=None)
@given(needed=st.floats(50, 20000), cloth=st.floats(200, 3200))
def test_strips_across_the_cloth_reach_and_one_less_does_not(needed, cloth):
    each = sqrt(2) * (cloth - 2 * JOIN)
    many = strips(needed, cloth)
    assert many * each >= needed > (many - 1) * each


def test_bags_are_asked_of_a_pocket_that_has_them():
    binding = BiasBinding(edges=("pocket bags",))
    assert bound(made(binding, pocket=draft.InSeamPocket()), "pocket bags") > 0
    for pocket in (None, draft.FrontPatchPocket()):
        with pytest.raises(draft.DraftError, match=r"style\.small_parts\.edges .*a front pocket with bags"):
            made(binding, pocket=pocket)


def test_wrong_edges_are_told():
    for wrong in ("hem", (), ("hem", "hem"), ("cuff",), ["hem"], None, (3,)):
        with pytest.raises(draft.DraftError, match=r"style\.small_parts\.edges .*'waist', 'hem', 'seams'"):
            BiasBinding(edges=wrong)
