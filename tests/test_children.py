"""What is refused and said for a body that may be a child's.

Limits of cords: read, in a summary of the 2007 edition of EN 14682. Which body may be a child's: common practice, no
source, held against published charts of children's sizes (read).
"""

from __future__ import annotations

import re

import pytest
from zoo import MEAN_HIPS, STATURES, ZOO

import draft
from draft.pieces.children import may_be_child, may_be_young

CHILDREN = ("toddler", "ten years")
ADULTS = ("woman", "man", "tall", "stout", "very large", "slim", "only required")


def drafted(body: str, **band) -> draft.Pattern:
    return draft.shorts(ZOO[body], draft.Style(band=draft.DrawstringBand(**band)))


def notes(pattern) -> str:
    return " / ".join(pattern.garment.notes)


@pytest.mark.parametrize("name", ZOO)
def test_children_are_told_from_the_body_alone(name):
    """A small woman falls inside the limits: the words say "may be"."""
    assert may_be_child(ZOO[name]) == (name in (*CHILDREN, "small"))
    assert may_be_young(ZOO[name]) == (name == "toddler")


def test_mean_children_of_the_size_charts_up_to_1500_may_be_children():
    """Hips of children's charts by stature (read); inside leg 0.64 x stature - 240, as in the zoo."""
    for stature, hip in zip(STATURES, MEAN_HIPS, strict=True):
        if stature <= 1500:
            body = draft.Body(
                waist=0.82 * hip, hip=hip, crotch_depth=0.105 * stature + 90, waist_to_hip=0.08 * stature + 30,
                inside_leg=0.64 * stature - 240,
            )  # fmt: skip
            assert may_be_child(body), stature
            assert may_be_young(body) == (stature <= 1300), stature


@pytest.mark.parametrize("body", CHILDREN)
@pytest.mark.parametrize("ease", [0.0, 100.0, 300.0])
def test_longest_cord_ends_of_a_child_keep_to_both_limits(body, ease):
    """140 with the garment fully open, 280 at fitted size: each end gains half of what the waist is drawn in."""
    style = {"ease": draft.Ease(waist=ease), "darts": draft.Darts(front=0, back=0), "pocket": None}
    with pytest.raises(draft.DraftError, match=r"style\.band\.ends is 400.*may be a child's") as told:
        draft.shorts(ZOO[body], draft.Style(band=draft.DrawstringBand(ends=400), **style))
    limit = float(re.search(r"at most (\d+) mm", told.value.expected)[1])
    pattern = draft.shorts(ZOO[body], draft.Style(band=draft.DrawstringBand(ends=limit), **style))
    drawn = pattern.measure()["waist"] - ZOO[body].girth_at(-15)  # the cord lies above the seam
    assert limit <= 140
    assert limit + drawn / 2 <= 280
    assert min(140 - limit, 280 - limit - drawn / 2) < 1  # one of them is reached
    with pytest.raises(draft.DraftError, match=r"style\.band\.ends"):
        draft.shorts(ZOO[body], draft.Style(band=draft.DrawstringBand(ends=limit + 1), **style))


@pytest.mark.parametrize("body", ADULTS)
def test_adults_choose_their_cord_and_hear_nothing_of_children(body):
    pattern = drafted(body, ends=300)
    assert "these measures may be a child's" not in notes(pattern)
    assert "child: " not in notes(pattern)


@pytest.mark.parametrize("body", CHILDREN)
def test_child_hears_of_cords_small_parts_nightwear_and_the_rules_of_the_country(body):
    told = notes(drafted(body))
    for words in ("rules of your country", "none behind", "none at the hems", "two layers", "pull hard", "nightwear"):
        assert words in told
    assert ("an elastic is safer" in told) == (body == "toddler")
    plain = notes(draft.shorts(ZOO[body]))
    assert "pull hard" in plain
    assert "cord" not in plain
