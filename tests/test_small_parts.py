"""Belt loops, strap tabs and braces."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from zoo import ZOO

import draft
from draft.choices.small_parts import BeltLoops, Braces, Lining, StrapTab
from draft.pieces.plan import Plan
from draft.pieces.small_parts import belt_loops

ALL = (BeltLoops(), StrapTab(), Braces(), Lining())


def shorts(*parts, body="woman"):
    return draft.shorts(ZOO[body], draft.Style(small_parts=parts))


@pytest.mark.parametrize("body", ZOO)
def test_small_parts_come_with_every_body(body):
    pattern = shorts(*ALL, body=body)
    assert [finding for finding in pattern.check() if finding.code != "fit"] == []
    assert {"belt_loops", "strap", "ring_loop", "brace"} <= set(pattern.pieces)


def test_loops_are_seven_on_a_middle_waist():
    """Read: navy trousers of a middle size have 7; 5 on small and 8 on large ones is common practice, no source."""
    for body, count in (("woman", 5), ("man", 7), ("stout", 8)):
        told = next(note for note in shorts(BeltLoops(), body=body).garment.notes if note.startswith("belt loops"))
        assert told.startswith(f"belt loops: {count}")


@settings(max_examples=60, deadline=None)
@given(count=st.integers(1, 12), belt=st.floats(15, 80), width=st.floats(6, 25))
def test_loops_are_cut_from_one_strip_and_set_evenly(count, belt, width):
    part = BeltLoops(count=count, belt=belt, width=width)
    pattern = shorts(part)
    strip = pattern.pieces["belt_loops"]
    assert strip.edge("lower").length == pytest.approx(count * (belt + 10 + 2 * 12))
    assert strip.edge("left").length == pytest.approx(3 * width)
    plan = Plan(pattern.body, pattern.style, pattern.shell, "")
    places = belt_loops.places(plan, part)
    half = pattern.shell.front.waist.length + pattern.shell.back.waist.length
    on_both = 2 * len(places) - (count % 2)
    assert on_both == count
    assert all(0 < place <= half + 1e-6 for place in places)
    if count % 2:
        assert places[-1] == pytest.approx(half)


def test_strap_is_as_wide_as_its_ring():
    assert StrapTab(width=30, ring=31).ring == 31
    for ring in (29, 33):
        with pytest.raises(draft.DraftError, match=r"style\.small_parts\.ring is .*30 to 32 mm for a strap of 30"):
            StrapTab(width=30, ring=ring)


def test_braces_are_as_long_as_measured():
    brace = shorts(Braces(over_shoulder=940, adjust=60)).pieces["brace"]
    assert brace.edge("lower").length == 1000
    assert brace.cut.count == 2
    assert any("children" in note for note in shorts(Braces()).garment.notes)


def test_wrong_parts_are_told():
    for wrong in ([BeltLoops()], BeltLoops(), ("loops",)):
        with pytest.raises(draft.DraftError, match=r"style\.small_parts .*a tuple of small parts"):
            draft.Style(small_parts=wrong)


@pytest.mark.parametrize("make", [draft.shorts, draft.trousers])
@pytest.mark.parametrize("length", ["full", "half"])
@pytest.mark.parametrize("body", ZOO)
def test_lining_is_the_garment_only_shorter(make, length, body):
    pattern = make(ZOO[body], draft.Style(small_parts=(Lining(length=length),)))
    assert [finding for finding in pattern.check() if finding.code != "fit"] == []
    for part in ("front", "back"):
        panel, lining = getattr(pattern.shell, part), pattern.pieces[f"lining_{part}"]
        assert lining.edge("waist").length == pytest.approx(panel.waist.length)
        assert lining.edge("crotch").length == pytest.approx(panel.crotch.length)
        short = panel.inseam.length - lining.edge("inseam").length
        assert panel.side.length - lining.edge("side").length == pytest.approx(short, abs=1e-3)
        assert short == pytest.approx(25, abs=1e-3) if length == "full" else short >= 25 - 1e-3
    inseams = [pattern.pieces[f"lining_{part}"].edge("inseam").length for part in ("front", "back")]
    assert inseams[0] == pytest.approx(inseams[1], abs=0.01)


def test_lining_too_short_is_told():
    with pytest.raises(draft.DraftError, match=r"style\.small_parts\.shorter is 100.*at most 50 mm on this leg"):
        draft.shorts(ZOO["woman"], draft.Style(leg=draft.Leg(inside_leg=80), small_parts=(Lining(shorter=100),),
                                               hem=draft.PlainHem(depth=20)))  # fmt: skip
