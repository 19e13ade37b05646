"""A recipe comes back from its file as it was."""

from __future__ import annotations

import tomllib
from dataclasses import fields, replace
from datetime import date
from typing import Any

import pytest
from hypothesis import example, given, settings
from recipes import LEARNED, NOTES, RECIPES
from styles import NAMED
from zoo import WOMAN, ZOO

import draft
from draft.choice import Choice, choice, mm
from draft.recipe import Fitting, Recipe, load
from draft.recipe.kinds import FAMILIES, kinds_of
from draft.recipe.recipe import of_text
from draft.style import Hem

PARTS = {"Band": "band", "Closing": "closing", "Pocket": "pocket", "BackPocket": "back_pocket", "Hem": "hem"}
KINDS = [kind for family in FAMILIES for kind in kinds_of(family).values()]


@settings(max_examples=60, deadline=None)
@given(recipe=RECIPES)
def test_any_recipe_comes_back(recipe):
    text = recipe.toml()
    assert of_text(text) == recipe
    assert tomllib.loads(text)["format"] == 1


@settings(max_examples=40, deadline=None)
@given(first=RECIPES, second=RECIPES)
def test_any_change_of_a_recipe_that_was_read_is_written(first, second):
    read = of_text(first.toml())
    changed = replace(second, text=read.text)
    assert of_text(changed.toml()) == second


@settings(max_examples=100, deadline=None)
@example(notes="\n")
@example(notes="\n\nlow at the back\n")
@example(notes='"""\n\\')
@given(notes=NOTES)
def test_notes_come_back_to_the_letter(notes):
    recipe = Recipe(WOMAN, mock_ups=(Fitting(date(2026, 3, 1), notes),))
    assert of_text(recipe.toml()).mock_ups[0].notes == notes


def test_every_alteration_comes_back():
    recipe = Recipe(WOMAN, mock_ups=(Fitting(date(2026, 3, 1), alterations=tuple(LEARNED)),))
    assert of_text(recipe.toml()) == recipe


@pytest.mark.parametrize("name", NAMED)
def test_named_style_comes_back_from_a_file(name, tmp_path):
    recipe = Recipe(WOMAN, NAMED[name])
    assert load(recipe.save(tmp_path / "a.toml")) == recipe


@pytest.mark.parametrize("preset", draft.presets(), ids=lambda p: p.name)
def test_preset_comes_back(preset):
    recipe = Recipe(WOMAN, preset.style, preset.garment)
    assert of_text(recipe.toml()) == recipe


@pytest.mark.parametrize("name", ZOO)
def test_body_comes_back(name):
    assert of_text(Recipe(ZOO[name]).toml()).body == ZOO[name]


def other_values(kind: type[Choice]) -> list[dict[str, Any]]:
    """Choices of a kind in which one field is not its default."""
    found: list[dict[str, Any]] = [{}]
    for entry in fields(kind):
        rule = entry.metadata
        tried = [rule["low"], rule["high"]] if "low" in rule else list(rule.get("names", ()))
        tried += [not entry.default] if "flag" in rule else []
        found += [{entry.name: value} for value in tried if value != entry.default]
    return found


@pytest.mark.parametrize("kind", KINDS, ids=lambda k: k.__name__)
def test_every_field_of_every_kind_comes_back(kind):
    tried = 0
    for values in other_values(kind):
        try:
            chosen = kind(**values)
        except draft.DraftError:
            continue  # two fields of the kind forbid it
        part = next((name for family, name in PARTS.items() if family in [c.__name__ for c in kind.__mro__]), None)
        style = draft.Style(**{part: chosen}) if part else draft.Style(small_parts=(chosen,))
        assert of_text(Recipe(WOMAN, style).toml()).style == style
        tried += 1
    assert tried > len(fields(kind)) / 2


def test_no_field_is_named_like_the_kind():
    """`kind` in a file is the name of the class."""
    assert KINDS
    assert not [kind for kind in KINDS if "kind" in [entry.name for entry in fields(kind)]]


def test_kind_made_outside_the_library_is_found():
    @choice
    class ScallopedTestHem(Hem):
        """A kind of your own."""

        scallop: float = mm(20.0, 5, 60)

    style = draft.Style(hem=ScallopedTestHem(scallop=25))
    text = Recipe(WOMAN, style).toml()
    assert 'kind = "ScallopedTestHem"' in text
    assert of_text(text).style == style


def test_only_what_differs_from_the_defaults_is_written():
    tables = tomllib.loads(Recipe(WOMAN, draft.Style(hem=draft.PlainHem(depth=25), pocket=None)).toml())
    assert tables["style"] == {"pocket": "none", "hem": {"kind": "PlainHem", "depth": 25}}
    assert "style" not in tomllib.loads(Recipe(WOMAN).toml())


def test_notes_of_several_lines_are_written_in_lines():
    text = Recipe(WOMAN).with_mock_up(notes="Tight seat.\nLong front.", date=date(2026, 3, 1)).toml()
    assert 'notes = """\nTight seat.\nLong front."""' in text


def test_part_may_be_written_as_the_name_of_its_kind():
    text = Recipe(WOMAN).toml() + '[style]\nhem = "BlindHem"\nback_pocket = "WeltPocket"\nyoke = "none"\n'
    style = of_text(text).style
    assert (style.hem, style.back_pocket, style.yoke) == (draft.BlindHem(), draft.WeltPocket(), None)


def test_file_gives_the_pattern_that_it_was_saved_from(tmp_path):
    recipe = Recipe(WOMAN, draft.Style(hem=draft.FacedHem(), leg=draft.Leg(inside_leg="15.5 cm")))
    again = load(recipe.save(tmp_path / "a.toml")).pattern()
    assert dict(again.measure()) == dict(draft.shorts(WOMAN, recipe.style).measure())
