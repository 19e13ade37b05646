"""Pleats of the front: cloth that the waist folds away and the hip has."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from zoo import ZOO

import draft
from draft.shape.pleats import fullness

ADULTS = ["woman", "man", "tall", "small", "stout", "slim"]
PLEATS = [draft.Pleats(), draft.Pleats(direction="forward"), draft.Pleats(count=2), draft.Pleats(count=2, depth=50)]


def trousers(body, pleats, **more):
    return draft.trousers(ZOO[body], draft.Style(pleats=pleats, **more))


@pytest.mark.parametrize("pleats", PLEATS, ids=str)
@pytest.mark.parametrize("body", ADULTS)
def test_pleats_keep_the_waist_and_widen_the_hip(body, pleats):
    plain, folded = trousers(body, None), trousers(body, pleats)
    assert [finding for finding in folded.check() if finding.code != "fit"] == []
    depth = pleats.depth + (pleats.second if pleats.count == 2 else 0.0)
    before, after = plain.measure(), folded.measure()
    assert after["waist"] == pytest.approx(before["waist"], abs=0.5)
    assert after["hip"] - before["hip"] == pytest.approx(fullness(plain.block, pleats), abs=0.5)
    assert 0 < after["hip"] - before["hip"] < 2 * depth
    assert after["hem"] == pytest.approx(before["hem"], abs=1.0)
    assert after["front_crotch"] == pytest.approx(before["front_crotch"], abs=0.01)


@pytest.mark.parametrize("pleats", PLEATS, ids=str)
def test_mouths_are_as_wide_as_asked(pleats):
    front = trousers("woman", pleats).pieces["front"]
    depths = [pleats.depth, pleats.second][: pleats.count]
    assert [dart.intake for dart in front.darts] == pytest.approx(depths, abs=1.5)
    assert [dart.pleat for dart in front.darts] == [pleats.direction] * pleats.count
    assert [hole for hole in front.holes if hole.note == "dart"] == []
    told = [line.note for line in front.lines if line.note.startswith("pleat")]
    assert (
        told
        == [f"pleat: fold towards the {'side' if pleats.direction == 'reverse' else 'centre'}, sew 30 down"]
        * pleats.count
    )


def test_first_pleat_lies_on_the_crease():
    front = trousers("man", draft.Pleats(count=2)).pieces["front"]
    first, second = front.darts
    assert first.centre_leg.real == pytest.approx(0, abs=2.0)
    assert second.centre_leg.real < first.side_leg.real - 12


def test_cap_is_folded_the_way_the_pleat_lies():
    """Folded over the leg it lies on, the cap's half there falls on the waist seam beyond that leg."""
    for direction in ("forward", "reverse"):
        edge = trousers("woman", draft.Pleats(direction=direction)).pieces["front"].edge("waist")
        (dart,) = edge.darts
        before, after = edge.parts
        cap = dart.across(before, after)
        # The tip lies on the middle line of the fold; folded back, both halves are as long.
        middle = (dart.centre_leg + dart.side_leg) / 2
        tip = cap.point_at(cap.length / 2)
        away = (tip - dart.point) / (middle - dart.point)
        assert abs(away.imag) < 1e-3


@settings(max_examples=60, deadline=None)
@given(
    body=st.sampled_from(ADULTS),
    count=st.integers(1, 2),
    depth=st.floats(15, 60),
    second=st.floats(15, 50),
    direction=st.sampled_from(["forward", "reverse"]),
    drop=st.floats(0, 50),
)
def test_any_pleats_sew_or_are_refused(body, count, depth, second, direction, drop):
    pleats = draft.Pleats(count=count, depth=depth, second=second, direction=direction)
    try:
        pattern = trousers(body, pleats, waist_drop=drop)
    except draft.DraftError:
        return
    assert [finding for finding in pattern.check() if finding.code != "fit"] == []
