"""Shares of the waist-to-hip difference, folds in place of darts, and a raised waist."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LinearRing, LineString
from zoo import ZOO

import draft
from draft.methods import METHODS

BODIES = ["woman", "man", "tall", "small", "slim"]
FEW = settings(max_examples=40, deadline=None)
FOLDS = ["darts", "pleats", "tucks", "gathers"]


def shorts(body="woman", method="centre_line", **style):
    return draft.shorts(ZOO[body], draft.Style(**style), method=method)


def without_fit(pattern):
    return [finding for finding in pattern.check() if finding.code != "fit"]


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("body", ["woman", "man", "stout"])
def test_a_method_tells_shares_that_add_up(method, body):
    shares = shorts(body, method).waist_shares()
    if shares:
        assert set(shares) == {"side", "front_centre", "front", "back_centre", "back"}
        assert sum(shares.values()) == pytest.approx(1)


@pytest.mark.parametrize("method", METHODS)
def test_shares_are_met_whatever_the_method(method):
    asked = draft.WaistShares(side=0.4, front_centre=0.05, back_centre=0.2, front=0.1, back=0.25)
    darts = draft.Darts(front=1, back=2)
    pattern = shorts(method=method, waist_shares=asked, darts=darts, pocket=None)
    told = pattern.waist_shares()
    for name in ("side", "front_centre", "back_centre", "front", "back"):
        assert told[name] == pytest.approx(getattr(asked, name), abs=0.002), name
    assert without_fit(pattern) == []


def test_shares_are_what_the_outline_shows():
    """Measured with shapely on the outlines, between uprights: nothing of the planning is asked."""
    asked = draft.WaistShares(side=0.4, front_centre=0.04, back_centre=0.2, back=0.36)
    pattern = shorts(waist_shares=asked, pocket=None, hem=draft.PlainHem())
    sizes, level = pattern.measure(), pattern.shell.levels["hip"]
    whole = (sizes["hip"] - sizes["waist"]) / 2
    for name, centre in (("front", 0.04), ("back", 0.2)):
        panel = getattr(pattern.shell, name)
        outline = LinearRing([(p.real, p.imag) for p in panel.outline.points(0.01)])
        on_hip = outline.intersection(LineString([(-999, level), (999, level)])).bounds[2]
        assert (on_hip - panel.waist.parts[0].start.real) / whole == pytest.approx(centre, abs=0.006)
    taken = sum(dart.intake for dart in pattern.pieces["back"].darts)
    assert taken / whole == pytest.approx(0.36, abs=0.02)


@FEW
@given(
    body=st.sampled_from(BODIES),
    side=st.floats(0.2, 0.6),
    front_centre=st.floats(0, 0.1),
    back_centre=st.floats(0.05, 0.3),
    front=st.floats(0, 0.2),
    drop=st.sampled_from([0.0, 30.0]),
)
def test_any_shares_sew_or_are_refused(body, side, front_centre, back_centre, front, drop):
    back = 1 - side - front_centre - back_centre - front
    if back < 0:
        return
    shares = draft.WaistShares(side=side, front_centre=front_centre, back_centre=back_centre, front=front, back=back)
    try:
        pattern = shorts(body, waist_shares=shares, darts=draft.Darts(front=1), pocket=None, waist_drop=drop)
    except draft.DraftError as error:
        pattern, refused = None, error
    if pattern is None:
        assert refused.field.startswith(("style.waist_shares", "style.darts"))
        return
    assert without_fit(pattern) == []
    plain = shorts(body, pocket=None, waist_drop=drop)
    for name in ("waist", "hip", "front_crotch", "back_crotch", "inside_leg"):
        assert pattern.measure()[name] == pytest.approx(plain.measure()[name], abs=0.5), name


@pytest.mark.parametrize(
    ("shares", "darts", "said"),
    [
        (
            {"side": 0.35, "front": 0.1},
            {"front": 0},
            r"waist_shares\.front is 0\.1, expected 0 without darts or pleats in the front",
        ),
        ({"back": 0.05, "side": 0.75}, {}, r"waist_shares\.(side|back) is 0\.\d+, expected (at most|0, or) 0\.\d+"),
        (
            {"front_centre": 0.3, "side": 0.2},
            {},
            r"waist_shares\.front_centre is 0\.3, expected at most 0\.\d+ on this",
        ),
    ],
)
def test_impossible_shares_are_told(shares, darts, said):
    with pytest.raises(draft.DraftError, match=said):
        shorts(waist_shares=draft.WaistShares(**shares), darts=draft.Darts(**darts))


def test_shares_and_dart_shares_exclude_each_other():
    with pytest.raises(draft.DraftError, match=r"back_share is 0\.4, expected None with waist_shares"):
        draft.Style(waist_shares=draft.WaistShares(), darts=draft.Darts(back_share=0.4))


def test_shares_need_a_difference():
    with pytest.raises(draft.DraftError, match="a hip larger than the waist"):
        shorts("stout", waist_shares=draft.WaistShares(), ease=draft.Ease(waist=200, hip=0))


@pytest.mark.parametrize("body", ["woman", "man", "small"])
@pytest.mark.parametrize("front", FOLDS)
@pytest.mark.parametrize("back", FOLDS)
def test_folds_take_what_darts_took(front, back, body):
    def made(**as_):
        return shorts(body, darts=draft.Darts(front=1, **as_), pocket=None, hem=draft.PlainHem())

    darts, folded = made(), made(front_as=front, back_as=back)
    assert without_fit(folded) == []
    for name, size in darts.measure().items():
        assert folded.measure()[name] == pytest.approx(size, abs=1.0), name
    for piece in ("front", "back"):
        was, now = (sum(d.intake for d in p.pieces[piece].darts) for p in (darts, folded))
        assert now == pytest.approx(was, abs=2.5)


def test_tucks_are_marked_as_long_as_they_are_sewn():
    back = shorts(darts=draft.Darts(back_as="tucks", sewn=75)).pieces["back"]
    folds = [line for line in back.lines if line.kind == "fold" and "sewn" not in line.note and line.path.length < 100]
    assert [round(line.path.length) for line in folds] == [75] * 4
    assert any("sew 75 down" in line.note for line in folds)


def test_gathers_are_marked_between_two_notches():
    back = shorts(darts=draft.Darts(back_as="gathers")).pieces["back"]
    places = {notch.match: notch.along for notch in back.notches}
    note = next(line.note for line in back.lines if line.note.startswith("gather to"))
    assert note == f"gather to {places['end of the gathers'] - places['gathers']:.0f} mm"
    assert 0 < places["gathers"] < places["end of the gathers"] < back.edge("waist").length


def test_pleats_of_the_front_exclude_its_folds():
    with pytest.raises(draft.DraftError, match=r"front_as is 'tucks'.*'darts' with pleats"):
        draft.Style(pleats=draft.Pleats(), darts=draft.Darts(front_as="tucks"))


@pytest.mark.parametrize("band", [draft.StraightBand(), draft.FacedWaist(), draft.ContourBand()], ids=str)
@pytest.mark.parametrize("raise_", [15, 40, 70, 90])
@pytest.mark.parametrize("body", ["woman", "man", "stout", "ten years"])
def test_raised_waist_keeps_all_below_it(body, raise_, band):
    def made(drop):
        return draft.trousers(
            ZOO[body], draft.Style(waist_drop=drop, band=band, pocket=None, darts=draft.Darts(front=1))
        )

    plain, high = made(0.0), made(-raise_)
    assert without_fit(high) == []
    before, after = plain.measure(), high.measure()
    for name in ("hip", "thigh", "knee", "hem", "inside_leg"):
        assert after[name] == pytest.approx(before[name], abs=0.5), name
    for name in ("front_crotch", "back_crotch"):
        assert after[name] - before[name] == pytest.approx(raise_, abs=0.1)
    grown = ZOO[body].girth_at(-raise_) - ZOO[body].waist
    assert after["waist"] - before["waist"] == pytest.approx(grown, abs=0.5)


def test_darts_of_a_raised_waist_bend_at_the_waist():
    pattern = draft.trousers(ZOO["woman"], draft.Style(waist_drop=-50))
    plain = draft.trousers(ZOO["woman"], draft.Style())
    for raised, low in zip(pattern.pieces["back"].darts, plain.pieces["back"].darts, strict=True):
        assert raised.intake == pytest.approx(low.intake, abs=0.05)
        assert raised.length == pytest.approx(low.length + 50, abs=0.5)
        assert raised.bends is not None


def test_crease_is_marked_to_the_hem():
    pattern = draft.trousers(ZOO["woman"], draft.Style(leg=draft.Leg(pressed=True), pleats=draft.Pleats()))
    for name in ("front", "back"):
        piece = pattern.pieces[name]
        crease = next(line for line in piece.lines if line.note == "press the crease")
        assert crease.path.start.real == crease.path.end.real == pattern.shell.crease
        assert abs(piece.grainline.p0.real - pattern.shell.crease) > 15
    assert without_fit(pattern) == []
