"""Styles for tests: a few named ones, and a hypothesis strategy over the whole range of choices."""

from __future__ import annotations

from hypothesis import strategies as st

import draft

NAMED = {
    "plain defaults": draft.Style(),
    "front dart, no pocket": draft.Style(darts=draft.Darts(front=1), pocket=None),
    "one back dart, low waist": draft.Style(darts=draft.Darts(back=1), waist_drop=25),
    "no darts": draft.Style(darts=draft.Darts(front=0, back=0)),
    "plain hem": draft.Style(hem=draft.PlainHem()),
    "right over left, sections": draft.Style(
        closing=draft.FlyFront(lap="right_over_left"), band=draft.StraightBand(sections="side_seams")
    ),
    "left over right, sections, tab": draft.Style(band=draft.StraightBand(sections="side_seams", overlap=45)),
    "right over left, one strip, tab": draft.Style(
        closing=draft.FlyFront(lap="right_over_left"), band=draft.StraightBand(overlap=45, eased=10)
    ),
    "roomy": draft.Style(ease=draft.Ease(waist=25, hip=110)),
    "loose mouth": draft.Style(pocket=draft.CurvedPocket(mouth_ease=4)),
    "no interfacing": draft.Style(interfacing=False),
    "faced hem": draft.Style(hem=draft.FacedHem()),
    "hook and bar, sections": draft.Style(band=draft.StraightBand(fastener="hook", sections="side_seams")),
    "contour band, side zip, hook": draft.Style(
        band=draft.ContourBand(fastener="hook", underlap=30), closing=draft.SideZip(), pocket=None
    ),
    "elastic hem": draft.Style(hem=draft.ElasticHem()),
    "blind hem": draft.Style(hem=draft.BlindHem()),
    "vented hem": draft.Style(hem=draft.VentedHem()),
    "faced waist": draft.Style(band=draft.FacedWaist()),
    "elastic casing": draft.Style(band=draft.ElasticCasing()),
    "elastic at the back": draft.Style(band=draft.ElasticCasing(elastic="back")),
    "drawstring": draft.Style(band=draft.DrawstringBand(openings="eyelets")),
    "contour band": draft.Style(band=draft.ContourBand(), waist_drop=30),
    "contour band, tab": draft.Style(band=draft.ContourBand(back="seam", overlap=45, depth=50)),
    "patch pockets with flaps": draft.Style(back_pocket=draft.PatchPocket(flap=True)),
    "rounded patch, one dart": draft.Style(back_pocket=draft.PatchPocket(shape="rounded"), darts=draft.Darts(back=1)),
    "welt pockets": draft.Style(back_pocket=draft.WeltPocket()),
    "slanted pocket": draft.Style(pocket=draft.SlantedPocket()),
    "slanted pocket, facing grown on": draft.Style(pocket=draft.SlantedPocket(grown_on=True, mouth_ease=4)),
    "pocket in the side seam": draft.Style(pocket=draft.InSeamPocket()),
    "patch pocket on the front": draft.Style(pocket=draft.FrontPatchPocket()),
    "button fly": draft.Style(closing=draft.ButtonFly()),
    "grown-on fly, right over left": draft.Style(closing=draft.GrownOnFly(lap="right_over_left")),
    "side zip": draft.Style(closing=draft.SideZip(), pocket=None, band=draft.StraightBand(underlap=30)),
    "pleat, small parts": draft.Style(
        pleats=draft.Pleats(), pocket=None, small_parts=(draft.BeltLoops(), draft.StrapTab(), draft.Lining())
    ),
}


def _maybe(strategy: st.SearchStrategy[float]) -> st.SearchStrategy[float | None]:
    return st.none() | strategy


def _mm(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False).map(lambda v: round(v, 1))


@st.composite
def styles(draw: st.DrawFn, *, long: bool = False) -> draft.Style:
    """Any style whose parts lie inside their own limits; a body may still have no room for it."""
    eases = draft.Ease(
        waist=draw(_maybe(_mm(0, 60))), hip=draw(_maybe(_mm(20, 160))), thigh=draw(st.none() | _mm(55, 140))
    )
    leg = draft.Leg(
        inside_leg=draw(_maybe(_mm(60, 700) if long else _mm(60, 320))),
        hem=None,
        stretch=draw(st.none() | st.just(0.0)),
    )
    darts = draft.Darts(
        front=draw(st.integers(0, 1)),
        back=draw(st.integers(0, 2)),
        front_share=draw(_maybe(st.floats(0.2, 0.45))),
        back_share=draw(_maybe(st.floats(0.25, 0.7))),
    )
    band = draft.StraightBand(
        depth=draw(_mm(25, 50)),
        sections=draw(st.sampled_from(["one", "side_seams"])),
        overlap=draw(st.sampled_from([0.0, 40.0])),
        eased=draw(_mm(0, 20)),
    )
    closing = draft.FlyFront(lap=draw(st.sampled_from(["left_over_right", "right_over_left"])))
    pocket = draw(
        st.none()
        | st.builds(
            draft.CurvedPocket,
            width=_maybe(_mm(60, 120)),
            depth=_maybe(_mm(50, 110)),
            mouth_ease=st.sampled_from([0.0, 4.0]),
            facing_depth=_mm(25, 40),
        )
    )
    hem = draw(
        st.builds(draft.TurnedCuff, depth=_mm(20, 60), clearance=_mm(0, 2), roll=_mm(0, 2))
        | st.builds(draft.PlainHem, depth=_mm(15, 40), turn=_mm(0, 12))
    )
    allowances = draft.Allowances(
        side=draw(_mm(6, 20)), inseam=draw(_mm(6, 20)), crotch=draw(_mm(6, 12)), waist=draw(_mm(6, 12))
    )
    return draft.Style(
        ease=eases,
        leg=leg,
        darts=darts,
        band=band,
        closing=closing,
        pocket=pocket,
        hem=hem,
        allowances=allowances,
        waist_drop=draw(st.just(0.0) | _mm(0, 60)),
        interfacing=draw(st.booleans()),
    )
