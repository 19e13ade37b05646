"""Choices: every field keeps its limits, every wrong value is told in one sentence, every told limit works."""

from __future__ import annotations

import re
from dataclasses import fields, replace

import pytest
from bad_styles import NO_ROOM, WRONG, NoRoom
from zoo import ZOO

import draft
from draft.choice import Choice

CHOICES = (
    draft.Ease, draft.Leg, draft.Darts, draft.StraightBand, draft.FlyFront, draft.CurvedPocket, draft.TurnedCuff,
    draft.PlainHem, draft.Allowances, draft.Style,
)  # fmt: skip
MEASURED = [(kind, entry.name, entry.metadata) for kind in CHOICES for entry in fields(kind) if "low" in entry.metadata]
LENGTHS = [row for row in MEASURED if not row[2].get("share") and not row[2].get("whole")]
NAMES = [f"{kind.__name__}.{name}" for kind, name, _ in MEASURED]
LENGTH_NAMES = [f"{kind.__name__}.{name}" for kind, name, _ in LENGTHS]


# Wrong in themselves


@pytest.mark.parametrize(
    ("make", "said", "expected", "remedy"), [row[1:] for row in WRONG], ids=[row[0] for row in WRONG]
)
def test_wrong_choice_is_told(make, said, expected, remedy):
    with pytest.raises(draft.DraftError, match=rf"\A{said}, expected {expected}: {remedy}") as caught:
        make()
    assert str(caught.value).startswith(caught.value.field)
    assert caught.value.expected in str(caught.value)
    assert str(caught.value).endswith(f"{caught.value.remedy}.")


def test_table_of_wrong_choices_is_large_and_its_names_unique():
    names = [row[0] for row in WRONG] + [row.name for row in NO_ROOM]
    assert len(names) == len(set(names)) >= 45


@pytest.mark.parametrize(("kind", "name", "rule"), MEASURED, ids=NAMES)
def test_limits_themselves_are_taken_and_values_beyond_are_not(kind, name, rule):
    with_room = {"bag_beyond": 90} if name == "facing_depth" else {"facing_depth": 20} if name == "bag_beyond" else {}
    for limit in (rule["low"], rule["high"]):
        assert getattr(kind(**with_room, **{name: limit}), name) == limit
    step = 1 if rule.get("whole") else 0.01
    for wrong in (rule["low"] - step, rule["high"] + step):
        with pytest.raises(draft.DraftError, match=rf"\A{re.escape(kind.where)}\.{name} is {re.escape(repr(wrong))}"):
            kind(**with_room, **{name: wrong})


@pytest.mark.parametrize(("kind", "name", "rule"), LENGTHS, ids=LENGTH_NAMES)
def test_lengths_are_read_as_text_with_a_unit(kind, name, rule):
    room = {"bag_beyond": 90} if name == "facing_depth" else {"facing_depth": 20} if name == "bag_beyond" else {}
    middle = (rule["low"] + rule["high"]) / 2
    for text in (f"{middle / 10} cm", f"{middle} mm", str(middle)):
        assert getattr(kind(**room, **{name: text}), name) == pytest.approx(middle)
    if rule["optional"]:
        assert getattr(kind(**room, **{name: None}), name) is None


def test_every_default_lies_inside_its_own_limits():
    for kind in CHOICES:
        default = kind()
        assert isinstance(default, Choice)
        assert replace(default) == default


def test_changed_copy_is_judged_like_a_new_choice():
    assert replace(draft.Style(), waist_drop="2 cm").waist_drop == 20
    with pytest.raises(draft.DraftError, match=r"style\.waist_drop is 900"):
        replace(draft.Style(), waist_drop=900)
    with pytest.raises(draft.DraftError, match=r"style\.waistdrop is 9, .*write 'waist_drop'"):
        replace(draft.Style(), waistdrop=9)


def test_equal_choices_are_equal_and_hash_alike():
    one, two = (draft.Style(leg=draft.Leg(inside_leg=text)) for text in ("15 cm", 150))
    assert one == two
    assert hash(one) == hash(two)
    assert one != draft.Style()


# Without room on a body


def refused(row: NoRoom, body: draft.Body, value: float) -> draft.DraftError | None:
    try:
        draft.shorts(body, row.make(value), fit="formula")
    except draft.DraftError as error:
        return error
    return None


def told_limit(row: NoRoom, error: draft.DraftError) -> tuple[float, int]:
    """The number of the message on the side that was passed, and which way (-1 or 1) leads inside."""
    if span := re.search(r"(-?\d+(?:\.\d+)?) to (-?\d+(?:\.\d+)?) mm", error.expected):
        low, high = (float(number) for number in span.groups())
        return (high, -1) if row.beyond > high else (low, 1)
    word = re.search(r"at (most|least) (-?\d+(?:\.\d+)?)", error.expected)
    assert word, f"no limit told: {error}"
    return float(word[2]), -1 if word[1] == "most" else 1


@pytest.mark.parametrize("row", NO_ROOM, ids=[row.name for row in NO_ROOM])
def test_choice_without_room_is_refused_with_a_limit_that_works(row):
    """On every body that has no room: just inside the told limit the pattern sews, just beyond it is not.

    Printed limits are rounded, hence the step. Bodies that have the room draw the extreme itself without a finding.
    """
    found = 0
    for body in (ZOO[name] for name in row.bodies):
        error = refused(row, body, row.beyond)
        if error is None:
            assert draft.shorts(body, row.make(row.beyond), fit="formula").check() == [], body.name
            continue
        found += 1
        assert error.field == row.field, str(error)
        assert error.value == row.beyond
        assert row.remedy in error.remedy
        limit, inward = told_limit(row, error)
        pattern = draft.shorts(body, row.make(round(limit + inward * row.step, 3)), fit="formula")
        assert pattern.check() == [], f"{body.name}: {limit}"
        beyond = round(limit - inward * 2 * row.step, 3)
        if min(limit, row.beyond) < beyond < max(limit, row.beyond):
            again = refused(row, body, beyond)
            assert again is not None, body.name
            assert again.field == row.field
    assert found >= 2
