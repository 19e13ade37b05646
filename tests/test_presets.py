"""Ten named styles, each one line to draft."""

from __future__ import annotations

import pytest
from zoo import ZOO

import draft

NAMES = draft.presets().names


def test_there_are_ten_and_they_print():
    listed = draft.presets()
    assert len(listed) == len(set(NAMES)) == 10
    for preset in listed:
        assert preset.name in str(listed)
        assert preset.words in str(listed)
    assert "<table" in listed._repr_html_()


@pytest.mark.parametrize("body", ["woman", "man", "tall", "stout", "ten years"])
@pytest.mark.parametrize("name", NAMES)
def test_preset_sews_on_bodies_of_different_build(name, body):
    pattern = draft.presets().named(name).draft(ZOO[body])
    assert [finding for finding in pattern.check() if finding.code != "fit"] == []
    assert pattern.name.startswith(name.capitalize())


def test_preset_takes_a_method():
    pattern = draft.presets().named("gallery trousers").draft(ZOO["man"], method="third_of_hip")
    assert pattern.method.name == "third_of_hip"


def test_unknown_preset_is_told():
    with pytest.raises(
        draft.DraftError, match=r"preset is 'quay short', expected one of quay shorts.*write 'quay shorts'"
    ):
        draft.presets().named("quay short")
