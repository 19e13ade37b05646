"""Alterations as values: names, amounts, errors, and what they do to pattern and report."""

from __future__ import annotations

import pytest
from zoo import ZOO

import draft

WOMAN = ZOO["woman"]


def test_they_are_listed_with_fault_and_promise():
    listed = draft.alterations()
    assert "sway_back" in listed.names
    assert "back crotch -1 mm per mm" in str(listed)
    assert "<table" in listed._repr_html_()
    for spec in listed:
        assert spec.cures
        assert spec.moves
        assert spec.promise


def test_amounts_are_read_with_units_and_compare():
    assert draft.alteration("sway_back", by="1.2 cm") == draft.alter.sway_back(12) == draft.alter.sway_back(by=12.0)
    assert str(draft.alter.sway_back(12)) == "sway_back(by=12)"
    assert draft.alter.sway_back(12).amounts["by"] == 12


@pytest.mark.parametrize(
    ("make", "said"),
    [
        (lambda: draft.alteration("sway_bak", by=3), r"alteration is 'sway_bak'.*write 'sway_back'"),
        (draft.alter.sway_back, r"alterations\.sway_back\.by is .*expected 0 to 40 mm: say how much"),
        (lambda: draft.alter.sway_back(by=400), r"alterations\.sway_back\.by is 400, expected 0 to 40 mm"),
        (lambda: draft.alter.sway_back(bi=4), r"alterations\.sway_back\.bi is 4, expected by: "),
        (lambda: draft.alter.contour_band(by=4), r"contour_band\.by is 4, expected no amounts: leave it out"),
        (lambda: draft.shorts(WOMAN, alterations=["sway_back"]), r"alterations is 'sway_back', expected alterations"),
    ],
)
def test_wrong_alteration_is_told(make, said):
    with pytest.raises(draft.DraftError, match=said):
        make()


def test_too_much_for_a_draft_is_told_with_the_most_that_works():
    with pytest.raises(draft.DraftError, match=r"scoop_back\.by is 25.*at most \d+ mm on this draft") as told:
        draft.shorts(WOMAN, alterations=[draft.alter.scoop_back(25)])
    most = float(told.value.expected.split("at most ")[1].split(" mm")[0])
    pattern = draft.shorts(WOMAN, alterations=[draft.alter.scoop_back(most)])
    assert pattern.check() == []
    assert most >= 3


def test_targets_follow_the_alterations():
    plain = draft.shorts(WOMAN)
    made = draft.shorts(WOMAN, alterations=[draft.alter.sway_back(10), draft.alter.waist_ease(20)])
    assert made.targets()["back_crotch"] == pytest.approx(plain.targets()["back_crotch"] - 10)
    assert made.targets()["waist"] == pytest.approx(plain.targets()["waist"] + 20)
    assert made.check() == []


def test_dependent_pieces_follow():
    """One note from a mock-up: band, pocket and facing are cut to the new waist."""
    plain, made = draft.shorts(WOMAN), draft.shorts(WOMAN, alterations=[draft.alter.waist_ease(24)])
    band, wider = (p.pieces["waistband"].edge("waist").length for p in (plain, made))
    assert wider - band == pytest.approx(24, abs=0.1)


def test_darts_with_shares_are_not_altered():
    style = draft.Style(darts=draft.Darts(back_share=0.4))
    with pytest.raises(draft.DraftError, match=r"darts_to_side.*a style without waist_shares"):
        draft.shorts(WOMAN, style, alterations=[draft.alter.darts_to_side(5)])


def test_darts_give_to_the_side():
    plain, made = draft.shorts(WOMAN), draft.shorts(WOMAN, alterations=[draft.alter.darts_to_side(8)])
    was, now = (sum(dart.intake for dart in p.pieces["back"].darts) for p in (plain, made))
    assert was - now == pytest.approx(8, abs=0.3)
    assert made.measure()["waist"] == pytest.approx(plain.measure()["waist"], abs=0.1)


def test_report_lists_the_alterations():
    pattern = draft.shorts(WOMAN, alterations=[draft.alter.sway_back(10)])
    assert "sway_back(by=10)" in pattern.report()
