"""Many bodies at once: as one by one, to the last digit, and in linear time."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import population
import pytest
from zoo import ZOO

import draft
from draft.block import mapped
from draft.methods import METHODS
from draft.methods.base import Method

SAME_MM = 1e-6
BODIES = [*ZOO.values(), *population.drawn(40).bodies]


def numbers(block: draft.Block) -> np.ndarray:
    seen: list[complex] = []
    mapped(block, lambda number: (seen.append(number), number)[1])
    return np.array(seen)


@pytest.mark.parametrize("fit", ["measured", "formula"])
@pytest.mark.parametrize("method", METHODS)
def test_each_row_is_the_body_alone(method, fit):
    many = draft.blocks(BODIES, method=method, fit=fit)
    for row, body in enumerate(BODIES):
        alone = draft.blocks([body], method=method, fit=fit)[0]
        assert np.abs(numbers(many[row]) - numbers(alone)).max() <= SAME_MM
        try:
            pattern = draft.shorts(body, draft.Style(darts=draft.Darts(back=0), pocket=None), method=method, fit=fit)
        except draft.DraftError:  # men's drafts by formula have no room for some allowances on children
            assert body.hip < 700
            continue
        assert np.abs(numbers(many[row]) - numbers(pattern.block)).max() <= SAME_MM


def test_rows_are_the_same_across_chunks(monkeypatch):
    whole = draft.blocks(BODIES)
    monkeypatch.setattr("draft.many.ROWS_AT_ONCE", 7)
    parts = draft.blocks(BODIES)
    assert len(parts) == len(BODIES)
    for row in range(len(BODIES)):
        assert np.abs(numbers(whole[row]) - numbers(parts[row])).max() <= SAME_MM


def test_order_does_not_matter():
    turned = draft.blocks(BODIES[::-1])
    for one, two in zip(draft.blocks(BODIES), list(turned)[::-1], strict=True):
        assert np.abs(numbers(one) - numbers(two)).max() <= SAME_MM


def test_lengths_and_misses_by_name():
    many = draft.blocks(BODIES)
    assert set(many.lengths) == {"front_crotch", "back_crotch", "crotch", "thigh", "fork", "waist", "hip"}
    assert set(many.misses) == {"front_crotch", "back_crotch", "thigh", "fork"}
    assert all(len(values) == len(BODIES) for values in many.lengths.values())
    asked = [body.front_crotch is not None for body in BODIES]
    assert (~np.isnan(many.misses["front_crotch"])).tolist() == asked
    assert repr(many) == f"<Blocks: {len(BODIES)} bodies, method centre_line>"
    assert many.front.fork[3] == many[3].front.fork
    assert many.back.hip_side[-1] == many[-1].back.hip_side
    assert many.fit[2].block.method == "centre_line"
    with pytest.raises(IndexError):
        many[len(BODIES)]


def test_recipe_of_plain_numbers_does_for_many_too():
    recipe = METHODS["centre_line"].draft
    own = Method("own", "own", "", "", "mm", (), recipe, one_by_one=True)
    one, two = draft.blocks(BODIES, method=own), draft.blocks(BODIES)
    for row in range(len(BODIES)):
        assert np.abs(numbers(one[row]) - numbers(two[row])).max() <= SAME_MM


def test_progress_is_shown_when_asked(capsys):
    draft.blocks(BODIES, progress=True)
    assert f"{len(BODIES)}/{len(BODIES)}" in capsys.readouterr().err
    draft.blocks(BODIES)
    assert capsys.readouterr().err == ""


@pytest.mark.parametrize(
    ("make", "words"),
    [
        (lambda: draft.blocks([]), r"bodies is \[\], expected one draft.Body or more"),
        (lambda: draft.blocks([ZOO["woman"], 7]), "bodies is 7"),
        (lambda: draft.blocks([ZOO["woman"]], 7), "style is 7, expected a draft.Style or a draft.Ease"),
        (lambda: draft.blocks([ZOO["woman"]], fit="tight"), "fit is 'tight', expected 'measured' or 'formula'"),
        (lambda: draft.blocks([ZOO["woman"]], method="none"), "method is 'none'"),
    ],
)
def test_wrong_input_is_told(make, words):
    with pytest.raises(draft.DraftError, match=words):
        make()


def test_ease_of_a_style_counts():
    body = [ZOO["woman"]]
    ease = draft.Ease(hip=90, back_crotch=20)
    one, two = draft.blocks(body, ease), draft.blocks(body, draft.Style(ease=ease))
    assert one.lengths["hip"].tolist() == two.lengths["hip"].tolist() == pytest.approx([ZOO["woman"].hip + 90])
    assert one.lengths["back_crotch"] == pytest.approx(ZOO["woman"].back_crotch + 20, abs=1e-3)


def test_estimated_measures_are_not_fitted():
    body = replace(ZOO["woman"], front_crotch=None, back_crotch=None)
    assert np.isnan(draft.blocks([body]).misses["front_crotch"]).all()
