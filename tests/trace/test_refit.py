"""The body behind a traced pattern: found again from the outlines alone."""

from dataclasses import replace
from xml.etree import ElementTree

import pytest
from population import drawn
from tracing import PLAIN, levels, traced
from zoo import ONLY_REQUIRED, SLIM, WOMAN

import draft
from draft.errors import DraftError
from draft.trace import Outline, Traced, refit

BODY_TOL_MM = 3.0
MEASURES = ("waist", "hip", "inside_leg")
BODIES = {body.name: body for body in (WOMAN, SLIM, ONLY_REQUIRED, *drawn(4).bodies[:3])}


@pytest.mark.parametrize("name", BODIES)
def test_the_body_of_a_traced_pattern_is_found(name):
    body = BODIES[name]
    pattern = draft.trousers(body, PLAIN)
    found = refit(traced(pattern))
    wanted = {key: getattr(body, key) for key in MEASURES} | {"crotch_depth": body.seated_crotch_depth()}
    assert {key: getattr(found.body, key) for key in wanted} == pytest.approx(wanted, abs=BODY_TOL_MM)
    assert found.rms < 0.5
    assert found.largest < 2
    assert not [one for one in found.pattern.check() if one.code != "fit"]


@pytest.fixture(scope="module")
def shorts():
    style = draft.Style(pocket=None, hem=draft.PlainHem(), ease=PLAIN.ease, leg=draft.Leg(inside_leg=200))
    return refit(traced(draft.shorts(WOMAN, style), "old <shorts>"), known={"inside_leg": WOMAN.inside_leg})


def test_shorts_are_found_with_what_is_known(shorts):
    assert shorts.pattern.garment_name == "shorts"
    assert shorts.body.inside_leg == WOMAN.inside_leg
    assert shorts.body.waist == pytest.approx(WOMAN.waist, abs=BODY_TOL_MM)
    assert shorts.pattern.measure()["inside_leg"] == pytest.approx(200, abs=0.1)


def test_the_picture_shows_both_outlines_apart(shorts):
    root = ElementTree.fromstring(shorts._repr_svg_())
    lines = [e for e in root if e.tag.endswith("path")]
    looks = {(e.get("stroke"), e.get("stroke-dasharray")) for e in lines}
    assert len(lines) == 6  # front and back, both, and two in the legend
    assert len(looks) == 2
    assert "old &lt;shorts&gt;" in shorts._repr_svg_()


def test_a_hip_level_that_was_said_is_kept():
    pattern = draft.trousers(SLIM, PLAIN)
    said = replace(traced(pattern), waist_to_hip=levels(pattern)["waist_to_hip"])
    found = refit(said).body
    assert found.waist_to_hip == pytest.approx(said.waist_to_hip)
    assert found.hip == pytest.approx(SLIM.hip, abs=BODY_TOL_MM)


def test_what_is_known_must_be_a_measure():
    pattern = draft.trousers(SLIM, PLAIN)
    for known in ({"shoe": 40}, {"waist": "wide"}, {"waist": 5}):
        with pytest.raises(DraftError):
            refit(traced(pattern), known=known)


def test_the_ease_decides_the_body():
    pattern = draft.trousers(SLIM, PLAIN)
    loose = refit(traced(pattern), ease=draft.Ease(hip=90))
    assert loose.body.hip == pytest.approx(SLIM.hip - 30, abs=BODY_TOL_MM)


@pytest.mark.parametrize(
    ("given", "told"),
    [({"ease": 10}, "ease is 10"), ({"garment": "skirt"}, "garment is 'skirt'"), ({"method": "none"}, "method")],
)
def test_a_wrong_choice_is_told(given, told):
    with pytest.raises(DraftError, match=told):
        refit(traced(draft.trousers(SLIM, PLAIN)), **given)


def test_a_pattern_for_nobody_is_told():
    leg = [100j - 110, -160j - 110, -160j + 110, 130, 80 + 20j, 70 + 45j, 65 + 100j, 65 + 250j, 250j - 110]
    doll = Outline(leg).moved(0.35)
    with pytest.raises(DraftError, match="traced pattern"):
        refit(Traced(front=doll, back=doll, allowance=0))
