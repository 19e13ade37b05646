"""Advice from what was seen: vocabulary, amounts, and the order of suggestions."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from zoo import WOMAN

import draft
from draft.advice.causes import CAUSES, ORDER
from draft.advice.note import ALLOWED
from draft.advice.symptoms import SYMPTOMS


@st.composite
def some_notes(draw):
    symptom = draw(st.sampled_from(sorted(SYMPTOMS)))
    noted = SYMPTOMS[symptom].noted
    side = draw(st.sampled_from(["both", "left", "right"]))
    if noted == "none" or draw(st.booleans()):
        return draft.Note(symptom, side=side)
    per = draw(st.sampled_from(ALLOWED[noted]))
    return draft.Note(symptom, draw(st.floats(0.5, 60)), per, 2 if per == "fold" else None, side)


def test_vocabulary_is_large_and_every_word_is_said():
    known = draft.symptoms()
    assert len(known) >= 30
    assert len(set(known.names)) == len(known)
    for symptom in known:
        assert all((symptom.looks.endswith("."), symptom.where, symptom.cures)), symptom
        assert {cure.alteration for cure in symptom.cures} <= set(CAUSES)


def test_vocabulary_prints_as_text_and_html():
    known = draft.symptoms()
    assert "gapes at centre back" in str(known)
    assert known._repr_html_().count("<tr>") == len(known) + 1


def test_every_cause_has_a_step_and_a_test():
    assert all(1 <= cause.step <= len(ORDER) and cause.more and cause.test for cause in CAUSES.values())


def test_every_cause_cures_something():
    assert set(CAUSES) == {cure.alteration for symptom in SYMPTOMS.values() for cure in symptom.cures}


def test_alterations_and_arguments_exist():
    pytest.importorskip("draft.alter")
    specs = {spec.name: {argument.name for argument in spec.arguments} for spec in draft.alterations()}
    for symptom in SYMPTOMS:
        for suggestion in draft.advise([symptom]):
            arguments = {*suggestion.amounts, *suggestion.needs}
            assert arguments == specs[suggestion.name], suggestion


@pytest.mark.parametrize("symptom", SYMPTOMS)
def test_suggestions_with_amounts_can_be_made(symptom):
    pytest.importorskip("draft.alter")
    per = next(iter(ALLOWED[SYMPTOMS[symptom].noted]), None)
    amount = {"fold": 4, None: 8}[per] if SYMPTOMS[symptom].noted != "none" else None
    note = draft.Note(symptom, amount, per, 2 if per == "fold" else None, "left")
    for suggestion in draft.advise([note]):
        if not suggestion.needs:
            assert str(draft.alteration(suggestion.name, **suggestion.amounts)) == str(suggestion)


# Read: a fork too short or too long makes lines that rise from or fall away from it (a pattern cutter's article).
@pytest.mark.parametrize(
    ("symptom", "sign"), [("smile lines at the front fork", 1), ("frown lines at the front fork", -1)]
)
def test_smiles_and_frowns_are_the_front_fork(symptom, sign):
    (first,) = draft.advise([(symptom, 8)]).first
    assert (first.name, first.amounts["by"]) == ("extend_front_fork", 8 * sign)


# Read: pockets gape first for want of hip (a manual of uniform fitting, an article on pocket flare).
def test_a_gaping_pocket_asks_for_hip_first():
    (first,) = draft.advise(["front pocket mouth gapes"]).first
    assert first.name == "hip_ease"


# Read: a leg that looks too long may be one of the wrong slope or a fork too small (a cutter's book of 1892).
def test_a_long_leg_may_be_fork_or_slope():
    others = draft.advise(["leg too long"]).first[0].others
    assert {"extend_back_fork", "leg_slope"} <= set(others)


# Read: a sway back was cured by taking about 13 off the centre back at the band (a bespoke case).
def test_a_fold_under_the_back_band_is_a_sway_back():
    (first,) = draft.advise([draft.Note("horizontal fold under the back band", "0.5 in", per="total")]).first
    assert (first.name, first.amounts["by"]) == ("sway_back", 12.7)


# Geometry: a fold takes up twice its depth, a quarter of the girth is a quarter of the cloth.
@pytest.mark.parametrize(
    ("note", "cloth"),
    [
        (draft.Note("waist too loose", 10, "total"), 10),
        (draft.Note("waist too loose", 10, "side"), 20),
        (draft.Note("waist too loose", 10, "fold", folds=2), 40),
        (draft.Note("gapes at centre back", 10, "fold"), 20),
        (draft.Note("too tight across the thigh", "3 cm", "total"), 30),
        (draft.Note("leg too long", 10, "fold"), 20),
        (draft.Note("side seam swings forward", 10), 10),
        (draft.Note("side seam swings forward", 10, "side"), 10),
        (draft.Note("leg too long"), None),
    ],
)
def test_a_note_says_how_much_cloth_it_is(note, cloth):
    assert note.cloth == cloth


def test_a_gape_at_the_centre_back_is_shared_by_both_backs():
    advice = draft.advise([draft.Note("gapes at centre back", 10, "fold")])
    amounts = {s.name: s.amounts.get("by") for s in advice}
    assert (amounts["widen_back_darts"], amounts["side_to_centre_back"], amounts["waist_ease"]) == (10, -10, -20)


@pytest.mark.parametrize(
    ("given", "match"),
    [
        ((), "notes is .*at least one note"),
        (7, "notes is 7"),
        ([7], r"notes\[0\] is 7"),
        (["gaps at centre back"], r"notes\[0\].symptom .*gapes at centre back"),
        (["folds seat"], "under the seat"),
        ([("leg too long", 20)], r"notes\[0\].per is missing.*'fold' .*twice its depth.* or 'total'"),
        ([("leg too long", 20, "side")], "note|per is 'side'"),
        ([("waist too loose", 20, "fold")], r"notes\[0\].folds is missing"),
        ([("side seam swings back", 20, "total")], "per is 'total'"),
        ([("whiskers from the fork", 20, "total")], "nothing to pin"),
        ([("leg too long", -20, "total")], "more than 0"),
        ([("leg too long", "20 parsecs", "total")], "parsecs"),
    ],
)
def test_notes_that_mean_several_things_are_refused(given, match):
    with pytest.raises(draft.DraftError, match=match):
        draft.advise(given)


def test_all_faults_are_told_at_once():
    with pytest.raises(draft.DraftError) as told:
        draft.advise(["gaps", "leg too long", ("hem too wide", 3)])
    assert [error.field for error in told.value.many] == ["notes[0].symptom", "notes[2].per"]


@pytest.mark.parametrize("wrong", [{"side": "up"}, {"amount": 5, "per": "total", "folds": 2}])
def test_a_note_refuses_what_it_cannot_mean(wrong):
    with pytest.raises(draft.DraftError, match="note"):
        draft.Note("leg too long", **wrong)


def test_several_notes_raise_a_cause():
    alone = draft.advise(["horizontal folds under the seat"])
    both = draft.advise(["horizontal folds under the seat", "slack across the seat"])
    assert alone.first[0].name == "sway_back"
    assert [s.name for s in both.first] == ["flat_seat"]
    assert both.first[0].weight > max(s.weight for s in alone)


def test_the_smallest_amount_is_taken():
    notes = [("horizontal folds under the seat", 15, "total"), ("slack across the seat", 10, "total")]
    first = draft.advise(notes).first[0]
    assert (first.name, first.amounts["by"]) == ("flat_seat", 10)
    assert "the smallest of 2 is taken" in first.derived


def test_without_an_amount_none_is_made_up():
    for symptom in SYMPTOMS:
        for suggestion in draft.advise([symptom]):
            assert not suggestion.amounts
            assert (suggestion.needs == ()) == (CAUSES[suggestion.name].amount == "none")


def test_first_tries_stand_in_the_order_of_work():
    seen = [
        "hem too wide",
        "dart points poke",
        "too tight across the hip",
        "crotch hangs low",
        "band wants to sit lower",
    ]
    assert [s.name for s in draft.advise(seen).first] == [
        "raise_waist",
        "hip_ease",
        "crotch_depth",
        "lengthen_back_darts",
        "widen_hem",
    ]


def test_a_high_hip_asks_for_its_side():
    assert draft.advise(["band tilts to one side"]).first[0].needs == ("side", "by")
    told = draft.advise([draft.Note("band tilts to one side", 8, "total", side="left")]).first[0]
    assert dict(told.amounts) == {"side": "left", "by": 8}
    assert str(told) == "high_hip(side='left', by=8)"


def test_one_sided_notes_and_opposed_notes_are_remarked():
    advice = draft.advise([draft.Note("too tight across the thigh", side="left"), "too loose at the thigh"])
    assert any("left side only" in text for text in advice.remarks)
    assert any(text.startswith("fuller_thigh: some notes ask for more") for text in advice.remarks)


def test_the_pattern_tells_sizes_and_what_it_has_not():
    shorts = draft.shorts(WOMAN, draft.Style(darts=draft.Darts(back=0)))
    advice = draft.advise([("too tight across the hip", 20, "total"), "gapes at centre back"], shorts)
    assert not any("dart" in s.name for s in advice)
    hip = shorts.measure()["hip"]
    assert any(f"hip {hip:.1f} now, {hip + 20:.1f} mm after it" in s.derived for s in advice)
    with pytest.raises(draft.DraftError, match="above the knee"):
        draft.advise(["folds behind the knee"], shorts)
    assert draft.advise(["folds behind the knee"], draft.trousers(WOMAN))


def test_the_slope_of_a_short_leg_has_no_amount_of_its_own():
    note = draft.Note("creases down the inner leg", 12)
    assert draft.advise([note], draft.trousers(WOMAN)).first[0].amounts["by"] == 12
    assert draft.advise([note], draft.shorts(WOMAN)).first[0].needs == ("by",)


@settings(max_examples=80, deadline=None)
@given(st.lists(some_notes(), min_size=1, max_size=6))
def test_every_note_gets_a_first_try_and_every_line_its_reason(notes):
    advice = draft.advise(notes)
    seen = {symptom for suggestion in advice.first for symptom in suggestion.seen}
    assert seen >= {note.symptom for note in notes}
    names = [str(s) + s.because for s in advice]
    assert len(names) == len(set(names))
    for suggestion in advice:
        assert suggestion.because
        assert suggestion.test
        assert len(suggestion.derived) >= len([n for n in notes if n.symptom in suggestion.seen])
        by = suggestion.amounts.get("by")
        assert by is None or (by < 0) == suggestion.negative or by == 0
    assert str(advice).startswith("Advice\n")
    assert advice._repr_html_().count("<tr>") == len(advice) + 1
