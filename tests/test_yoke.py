"""A yoke at the back: what was one piece sews together again, and its darts are gone into the seam."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from zoo import ZOO

import draft
from draft.geometry.points import angle_deg

BODIES = ["woman", "man", "tall", "small", "slim", "stout"]
FEW = settings(max_examples=40, deadline=None)


def shorts(body="woman", yoke=None, **more):
    return draft.shorts(ZOO[body], draft.Style(yoke=yoke or draft.Yoke(), **more))


def without_fit(pattern):
    return [finding for finding in pattern.check() if finding.code != "fit"]


@pytest.mark.parametrize("body", BODIES)
def test_yoked_back_sews_together(body):
    pattern = shorts(body)
    assert without_fit(pattern) == []
    assert "waist" not in {edge.name for edge in pattern.pieces["back"].edges}
    assert pattern.pieces["back"].darts == pattern.pieces["back_yoke"].darts == ()


@pytest.mark.parametrize("body", BODIES)
def test_yoke_changes_no_finished_size(body):
    plain, parted = draft.shorts(ZOO[body]), shorts(body)
    for name, size in plain.measure().items():
        assert parted.measure()[name] == pytest.approx(size, abs=0.5), name


@pytest.mark.parametrize("darts", [1, 2])
def test_yoke_turns_by_what_the_darts_took(darts):
    """Closing a dart turns the cloth beside it by the angle between its legs: the side seam shows the sum."""
    style = draft.Darts(back=darts)
    pattern = shorts(darts=style)
    yoke, panel = pattern.pieces["back_yoke"], pattern.shell.back
    turned = angle_deg(panel.side.start_dir, yoke.edge("side").start_dir)
    angles = sum(abs(angle_deg(d.centre_leg - d.point, d.side_leg - d.point)) for d in panel.waist.darts)
    assert len(panel.waist.darts) == darts
    assert abs(turned) == pytest.approx(angles, abs=0.01)


def test_edges_add_up_to_the_whole_back():
    pattern = shorts()
    back, yoke, whole = pattern.pieces["back"], pattern.pieces["back_yoke"], pattern.garment.whole["back"]
    for name in ("side", "crotch"):
        assert back.edge(name).length + yoke.edge(name).length == pytest.approx(whole.edge(name).length, abs=0.01)
    assert yoke.edge("waist").length == pytest.approx(whole.edge("waist").length, abs=0.01)
    assert yoke.edge("yoke").length == pytest.approx(back.edge("yoke").length, abs=0.01)


@FEW
@given(
    centre=st.floats(45, 120), side=st.floats(25, 100), drop=st.sampled_from([0.0, 25.0]), body=st.sampled_from(BODIES)
)
def test_any_yoke_sews_or_is_refused_with_a_limit(centre, side, drop, body):
    try:
        pattern = shorts(body, draft.Yoke(centre=centre, side=side), waist_drop=drop)
    except draft.DraftError as error:
        pattern, refused = None, error
    if pattern is None:
        assert "mm" in refused.expected
        return
    assert without_fit(pattern) == []
    assert pattern.pieces["back_yoke"].edge("side").length == pytest.approx(side, abs=0.01)
    assert pattern.pieces["back_yoke"].edge("crotch").length == pytest.approx(centre, abs=0.01)


@pytest.mark.parametrize(
    ("style", "said"),
    [
        ({"yoke": draft.Yoke(centre=200, side=60)}, r"style\.yoke\.centre is 200.*at most \d+ mm on this body"),
        ({"yoke": draft.Yoke(centre=60, side=200)}, r"style\.yoke\.side is 200.*at most \d+ mm on this body"),
    ],
    ids=["centre", "side"],
)
def test_yoke_below_the_hip_is_refused(style, said):
    with pytest.raises(draft.DraftError, match=said):
        draft.shorts(ZOO["ten years"], draft.Style(**style))


def test_yoke_and_folds_exclude_each_other():
    with pytest.raises(draft.DraftError, match=r"back_as is 'pleats'.*'darts' with a yoke"):
        draft.Style(yoke=draft.Yoke(), darts=draft.Darts(back_as="pleats"))
