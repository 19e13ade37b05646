"""Comparison with a body: our own pattern fits its body, another body is told what to alter."""

from dataclasses import replace

import pytest
from tracing import PLAIN, levels, traced
from zoo import WOMAN

import draft
from draft.errors import DraftError
from draft.trace import compare


@pytest.fixture(scope="module")
def own():
    pattern = draft.trousers(WOMAN, PLAIN)
    return replace(traced(pattern), **levels(pattern))


def body(**changed):
    keys = ("waist", "hip", "crotch_depth", "waist_to_hip", "inside_leg", "front_crotch", "back_crotch", "thigh")
    return draft.Body(**{**{key: getattr(WOMAN, key) for key in keys}, **changed})


def suggested(own, **changed):
    return {one.name: one.amounts["by"] for one in compare(own, body(**changed)).suggestions}


def test_a_pattern_fits_the_body_it_was_drafted_for(own):
    found = compare(own, WOMAN)
    assert found.fits
    assert "nothing to alter" in str(found)


@pytest.mark.parametrize(
    ("changed", "wanted"),
    [
        ({"hip": 1010}, {"hip_ease": 30}),
        ({"waist": 750}, {"waist_ease": 30}),
        ({"waist": 690}, {"waist_ease": -30}),
        ({"inside_leg": 775}, {"lengthen_at_hem": 15}),
        ({"inside_leg": 800}, {"lengthen_at_knee": 40}),
        ({"back_crotch": 425}, {"raise_back_waist": 13, "extend_back_fork": 27}),
        ({"back_crotch": 360}, {"sway_back": 25}),
        ({"front_crotch": 325}, {"raise_front_waist": 13, "extend_front_fork": 12}),
        ({"front_crotch": 275}, {"raise_front_waist": -25}),
        # 20 deeper lengthens each seam by 20 (front and back by as much as the depth), and that is all that is wanted
        ({"crotch_depth": 277, "front_crotch": 320, "back_crotch": 405}, {"crotch_depth": 20}),
    ],
)
def test_each_fault_has_its_alteration(own, changed, wanted):
    assert suggested(own, **changed) == pytest.approx(wanted, abs=1.5)


def test_girths_that_are_all_too_small_are_altered_together(own):
    room = own.measure()["thigh"]
    found = suggested(own, waist=770, hip=1030, thigh=room)
    assert found == pytest.approx({"all_girths": 50})


def test_what_lies_within_the_tolerances_is_left(own):
    assert not suggested(own, waist=729, hip=993, back_crotch=398, inside_leg=768)


def test_the_table_says_how_much(own):
    text = str(compare(own, body(hip=1010)))
    assert "hip             1040  1010    1070   -30  too tight" in text
    assert "<table>" in compare(own, body())._repr_html_()


def test_other_things_are_refused(own):
    with pytest.raises(DraftError, match="traced is 'int'"):
        compare(3, body())
    with pytest.raises(DraftError, match="ease is 3"):
        compare(own, body(), ease=3)
