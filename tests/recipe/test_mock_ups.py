"""The history of mock-ups: any state of it can be drafted, and any two compared."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from datetime import date
from pathlib import Path

import numpy as np
import pytest
from zoo import MAN, WOMAN

import draft
from draft.alter.catalogue import alteration
from draft.drawing.overlay import AFTER, BEFORE
from draft.recipe import Recipe, load
from draft.recipe.comparison import _lines

EXAMPLE = Path(__file__).parents[2] / "examples" / "recipe.toml"


@pytest.fixture(scope="module")
def recipe() -> Recipe:
    first = Recipe(WOMAN, draft.Style(leg=draft.Leg(inside_leg=150)))
    longer = first.with_mock_up([alteration("lengthen_at_hem", by=20)], notes="Short.", date=date(2026, 3, 1))
    nothing = longer.with_mock_up(notes="Good.", date=date(2026, 3, 8))
    return nothing.with_mock_up([alteration("lengthen_at_hem", by=-5)], date=date(2026, 3, 15))


@pytest.mark.parametrize(("upto", "inside_leg"), [(0, 150), (1, 170), (2, 170), (3, 165), (None, 165)])
def test_state_has_what_was_learned_up_to_it(recipe, upto, inside_leg):
    assert recipe.pattern(upto).measure()["inside_leg"] == pytest.approx(inside_leg, abs=0.01)


def test_garment_method_and_fit_are_those_of_the_recipe():
    pattern = Recipe(MAN, garment="trousers", method="third_of_hip", fit="formula").pattern()
    assert (pattern.garment_name, pattern.method.name, pattern.measured) == ("trousers", "third_of_hip", False)


@pytest.mark.parametrize("number", [-1, 4, 1.0, "1", True, None])
def test_state_that_does_not_exist_is_told(recipe, number):
    with pytest.raises(draft.DraftError, match=r"i is .*, expected the number of a mock-up, 0 .* to 3"):
        recipe.compare(number, 1)
    if number is not None:
        with pytest.raises(draft.DraftError, match="upto is"):
            recipe.pattern(number)


def test_mock_up_is_added_without_changing_the_recipe(recipe):
    first = Recipe(WOMAN)
    first.with_mock_up(date=date(2026, 3, 1))
    assert first.mock_ups == ()
    assert recipe.mock_ups[0].notes == "Short."


def test_single_alteration_needs_no_list():
    one = alteration("sway_back", by=5)
    assert Recipe(WOMAN).with_mock_up(one, date=date(2026, 3, 1)).mock_ups[0].alterations == (one,)


def test_table_holds_the_lengths_that_changed(recipe):
    rows = {row[0]: row[1:] for row in recipe.compare(0, 1).table().rows}
    assert rows["inside leg"] == ("150.0", "170.0", "20.0")
    assert rows["seam: inseam"] == ("150.0", "170.0", "20.0")
    assert "waist" not in rows
    assert all(abs(float(row[2])) >= 0.05 for row in rows.values() if row[2])


def test_table_of_a_state_with_itself_is_empty(recipe):
    told = recipe.compare(1, 2)
    assert told.table().rows == ()
    assert "0 lengths" in repr(told)
    assert "after mock-up 1" in str(told)


def test_length_that_only_one_state_has_stands_alone():
    from draft.recipe.comparison import Comparison

    two = [draft.shorts(WOMAN, draft.Style(darts=draft.Darts(back=count))) for count in (2, 1)]
    rows = {row[0]: row[1:] for row in Comparison(*two).table().rows}
    before, after, change = rows["back dart 2, length"]
    assert (float(before) > 50, after, change) == (True, "", "")


def test_picture_tells_old_and_new_apart_by_dash_and_by_colour(recipe):
    root = ET.fromstring(recipe.compare(0, 1)._repr_svg_())
    paths = [e.attrib for e in root.iter() if e.tag.endswith("path")]
    old = [p for p in paths if p.get("stroke-dasharray") == BEFORE[2] and p["stroke"] == BEFORE[0]]
    new = [p for p in paths if "stroke-dasharray" not in p and p["stroke"] == AFTER[0]]
    assert len(old) == len(new) >= 2 + 1  # front and back, and the legend
    assert BEFORE[0] != AFTER[0]
    words = [e.text for e in root.iter() if e.tag.endswith("text")]
    assert words == ["Front", "Back", "first draft", "after mock-up 1"]


@pytest.mark.parametrize("name", ["front", "back"])
def test_states_lie_on_each_other_at_crease_and_fork(recipe, name):
    """The hem of a longer leg lies 20 mm lower, and nothing above it has moved."""
    short, longer = (_lines(recipe.pattern(number), name)[0] for number in (0, 1))
    assert short.imag.min() - longer.imag.min() == pytest.approx(20, abs=2.0)  # the hem is hollow
    assert short.imag.max() == pytest.approx(longer.imag.max(), abs=0.01)
    assert np.abs(short).min() > 10  # the crease runs inside the piece


def test_outline_in_the_picture_is_closed(recipe):
    outline = _lines(recipe.pattern(0), "back")[0]
    assert outline[0] == outline[-1]


def test_example_is_true():
    """It loads, says what it shows, and its mock-up changes the pattern."""
    recipe = load(EXAMPLE)
    assert "invented" in EXAMPLE.read_text("utf-8").splitlines()[0]
    assert [finding for finding in recipe.pattern().check() if finding.code != "fit"] == []
    assert recipe.style.hem == draft.TurnedCuff(depth=35)
    assert recipe.style.pocket == draft.CurvedPocket()
    rows = {row[0]: row[3] for row in recipe.compare(0, 1).table().rows}
    assert rows["inside leg"] == "15.0"
    assert float(rows["back crotch"]) < -5


def test_what_the_example_offers_in_comments_works():
    text = EXAMPLE.read_text("utf-8")
    assert "# pocket = " in text
    from draft.recipe.recipe import of_text

    assert of_text(text.replace("# pocket = ", "pocket = ")).style.pocket is None
    assert of_text(text.replace('"shorts"', '"trousers"')).garment == "trousers"
