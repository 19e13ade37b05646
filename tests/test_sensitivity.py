"""What an error of the tape does, what would help most, and the picture of what the fit did."""

from __future__ import annotations

import xml.etree.ElementTree as ET
from dataclasses import replace

import pytest
from zoo import ZOO

import draft
from draft.fitting.fit import FORK_OF_DEPTH
from draft.fitting.worth import WEIGHTS, most_useful
from draft.guide.lessons import lessons_of

WOMAN = ZOO["woman"]


@pytest.fixture(scope="module")
def told() -> draft.Sensitivity:
    return draft.sensitivity(WOMAN, error=6)


def test_an_error_of_a_fitted_length_comes_out_in_full(told):
    for name in ("front_crotch", "back_crotch"):
        assert told.changes[name][name] == pytest.approx(6, abs=0.01)
        assert told.changes[name]["crotch"] == pytest.approx(6, abs=0.01)
        assert told.changes[name]["waist"] == pytest.approx(0, abs=0.01)
    assert told.changes["waist"]["waist"] == pytest.approx(6, abs=0.01)


def test_measures_that_the_shorts_do_not_use_change_nothing(told):
    for name in ("calf", "ankle", "knee_height"):
        assert told.largest(name) == 0
    assert told.take_twice[-1] in ("calf", "ankle", "knee_height", "knee", "thigh")


def test_only_given_measures_are_told():
    few = draft.sensitivity(ZOO["only required"], error=5)
    assert set(few.changes) == {"waist", "hip", "crotch_depth", "waist_to_hip", "inside_leg"}


@pytest.mark.parametrize("who", ["home", "trained"])
def test_usual_errors_are_those_of_the_guide(who):
    few = draft.sensitivity(ZOO["only required"], error=who)
    assert few.errors["waist"] == getattr(lessons_of("waist")[0], who).mm
    assert "Change of the finished lengths" in str(few)
    assert "<table" in few._repr_html_()


def test_measure_at_the_edge_of_another_is_moved_by_less():
    """The knee may not be larger than the thigh: an error that leads beyond is made smaller and scaled up."""
    tight = replace(WOMAN, thigh=600, knee=598, calf=None, ankle=None)
    assert draft.sensitivity(tight, error=10).changes["knee"]["waist"] == pytest.approx(0, abs=0.01)


@pytest.mark.parametrize("error", [0, -1, 51, "large", True, float("nan")])
def test_wrong_error_is_told(error):
    with pytest.raises(draft.DraftError, match=r"error is .*expected more than 0 and at most 50 mm"):
        draft.sensitivity(WOMAN, error=error)


def test_wrong_garment_is_told():
    with pytest.raises(draft.DraftError, match="garment is 'skirt'"):
        draft.sensitivity(WOMAN, garment="skirt")


def test_most_useful_measure_leaves_least_unknown():
    bare = replace(WOMAN, **dict.fromkeys(WEIGHTS))
    order = []
    while (worth := most_useful(bare)) is not None:
        assert worth.left < worth.now
        assert worth.sd > 0
        order.append(worth.field)
        bare = replace(bare, **{worth.field: getattr(WOMAN, worth.field)})
    assert sorted(order) == sorted(WEIGHTS)
    assert order[-1] == "hip_depth"
    assert WEIGHTS["hip_depth"] == FORK_OF_DEPTH


def test_report_names_the_measure_to_take_next():
    assert "Measure next: front_crotch" in draft.shorts(ZOO["only required"]).report()
    assert "Measure next" not in draft.shorts(WOMAN).report()


def test_overlay_draws_both_blocks():
    pattern = draft.shorts(WOMAN)
    root = ET.fromstring(pattern.overlay().svg())
    dashes = [path.get("stroke-dasharray") for path in root.iter("{http://www.w3.org/2000/svg}path")]
    assert dashes.count(None) == dashes.count("6 4")
    words = {text.text for text in root.iter("{http://www.w3.org/2000/svg}text")}
    assert words == {"Front", "Back", "formula", "fitted"}
    assert pattern.overlay()._repr_svg_() == pattern.overlay().svg()


def test_methods_print_as_a_table():
    listed = draft.methods()
    assert [method.name for method in listed] == list(listed.names)
    for method in listed:
        assert method.name in str(listed)
        assert method.source
        assert method.made_for
        assert set(method.required) <= set(draft.Body.__dataclass_fields__)
        assert draft.shorts(WOMAN, method=method).check() == []
    assert "<table" in listed._repr_html_()
