"""Styles for tests: a few named ones, and a hypothesis strategy over the whole range of choices."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import strategies as st
from zoo import WOMAN

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
    "yoke": draft.Style(yoke=draft.Yoke(centre=60, side=35), darts=draft.Darts(back=1)),
    "back pleats, front tucks": draft.Style(
        darts=draft.Darts(front=1, front_as="tucks", back_as="pleats"), pocket=None, leg=draft.Leg(pressed=True)
    ),
    "gathers, raised waist": draft.Style(darts=draft.Darts(back_as="gathers"), waist_drop=-30, pocket=None),
    "cut-on turn-up": draft.Style(hem=draft.CutOnTurnUp(depth=25)),
    "coin pocket, tape, binding, loops": draft.Style(
        small_parts=(draft.CoinPocket(), draft.AppliedTape(), draft.BiasBinding(), draft.BeltLoops(), draft.Braces())
    ),
    "pleat, small parts": draft.Style(
        pleats=draft.Pleats(), pocket=None, small_parts=(draft.BeltLoops(), draft.StrapTab(), draft.Lining())
    ),
}


# Strategies: one per part of the style. Optional sizes are left out more often than not, as people leave them out.


def _mm(low: float, high: float) -> st.SearchStrategy[float]:
    return st.floats(low, high, allow_nan=False).map(lambda v: round(v, 1))


def _maybe(strategy: st.SearchStrategy[float]) -> st.SearchStrategy[float | None]:
    return st.none() | strategy


def _seldom(strategy: st.SearchStrategy[float]) -> st.SearchStrategy[float | None]:
    return st.integers(0, 3).flatmap(lambda n: strategy if n == 3 else st.none())


LAPS = st.sampled_from(["left_over_right", "right_over_left"])
ONE_IN = 12  # a contrary style draws its parts without regard to each other this often


# Bands


def straight_bands(*, at_side: bool = False) -> st.SearchStrategy[draft.StraightBand]:
    """Straight bands; one that opens at the side is a single strip, with an underlap of its own for the button."""
    return st.builds(
        draft.StraightBand,
        depth=_mm(25, 60),
        sections=st.just("one") if at_side else st.sampled_from(["one", "side_seams"]),
        overlap=st.sampled_from([0.0, 40.0]) | _mm(0, 60),
        underlap=_mm(34, 80) if at_side else _seldom(_mm(34, 80)),
        eased=_mm(0, 20),
        button=_mm(12, 22),
    )


def contour_bands() -> st.SearchStrategy[draft.ContourBand]:
    return st.builds(
        draft.ContourBand,
        depth=_mm(20, 80),
        back=st.sampled_from(["fold", "seam"]),
        overlap=st.sampled_from([0.0, 40.0]) | _mm(0, 60),
        underlap=_seldom(_mm(30, 80)),
        button=_mm(10, 18),
    )


def faced_waists() -> st.SearchStrategy[draft.FacedWaist]:
    return st.builds(draft.FacedWaist, depth=_maybe(_mm(20, 60)))


def casings() -> st.SearchStrategy[draft.ElasticCasing]:
    return st.builds(
        draft.ElasticCasing,
        elastic=st.sampled_from(["all_round", "back"]),
        width=_mm(6, 60),
        clearance=_mm(2, 8),
        shorter=st.floats(0.02, 0.2).map(lambda v: round(v, 3)),
    )


def drawstrings() -> st.SearchStrategy[draft.DrawstringBand]:
    return st.builds(
        draft.DrawstringBand,
        depth=_mm(30, 60),
        openings=st.sampled_from(["buttonholes", "eyelets"]),
        apart=_mm(30, 100),
        cord=_mm(2, 9),
        ends=_mm(60, 400),
    )


def bands() -> st.SearchStrategy[draft.style.Band]:
    return straight_bands() | contour_bands() | faced_waists() | casings() | drawstrings()


def bands_for(closing: draft.style.Closing) -> st.SearchStrategy[draft.style.Band]:
    """Bands that go with a closing."""
    if isinstance(closing, draft.SideZip):
        return straight_bands(at_side=True)
    if isinstance(closing, draft.NoClosing):
        return casings() | drawstrings() | faced_waists() | contour_bands()
    return bands()


# Closings


def _fly(kind: type[draft.FlyFront], **more: st.SearchStrategy[object]) -> st.SearchStrategy[draft.FlyFront]:
    return st.builds(
        kind,
        lap=LAPS,
        width=_seldom(_mm(32, 50)),
        length=_seldom(_mm(60, 150)),
        shield_width=_seldom(_mm(45, 60)),
        facing_beyond=_mm(10, 22),
        shield_beyond=_mm(10, 40),
        topstitch=_seldom(_mm(20, 26)),
        **more,
    )


def closings() -> st.SearchStrategy[draft.style.Closing]:
    return (
        _fly(draft.FlyFront)
        | _fly(draft.ButtonFly, button=_seldom(_mm(10, 16)), button_thickness=_mm(1, 5), spacing=_mm(20, 80))
        | _fly(draft.GrownOnFly, under=_mm(10, 20))
        | st.builds(draft.SideZip, lap=LAPS, length=_maybe(_mm(60, 220)))
        | st.builds(draft.SideZip, length=_maybe(_mm(60, 220)), insertion=st.just("lapped"))  # the front lies over it
        | st.builds(draft.NoClosing, lap=LAPS)
    )


# Front pockets


@st.composite
def mouth_pockets(draw: st.DrawFn, kind: type[draft.style.Pocket]) -> draft.style.Pocket:
    """Curved and slanted pockets: the facing lies on the bag, so it reaches no further."""
    curved = kind is draft.CurvedPocket
    beyond = draw(_mm(25, 60))
    more = {} if curved else {"grown_on": draw(st.booleans())}
    return kind(
        width=draw(_seldom(_mm(60, 110) if curved else _mm(40, 100))),
        depth=draw(_seldom(_mm(60, 100) if curved else _mm(90, 180))),
        bag_depth=draw(_seldom(_mm(40, 150))),
        bag_beyond=beyond,
        facing_depth=draw(_mm(20, min(beyond, 45))),
        mouth_ease=draw(st.sampled_from([0.0, 4.0])),
        stay=draw(_maybe(_mm(10, 25))),
        **more,
    )


def in_seam_pockets() -> st.SearchStrategy[draft.InSeamPocket]:
    return st.builds(
        draft.InSeamPocket,
        below_waist=_seldom(_mm(15, 80)),
        mouth=_seldom(_mm(90, 170)),
        bag_depth=_seldom(_mm(40, 140)),
        bag_width=_seldom(_mm(60, 170)),
        strip=_seldom(_mm(20, 55)),
    )


def front_patches() -> st.SearchStrategy[draft.FrontPatchPocket]:
    return st.builds(
        draft.FrontPatchPocket,
        width=_seldom(_mm(60, 150)),
        height=_seldom(_mm(70, 170)),
        below_waist=_seldom(_mm(50, 120)),
        from_side=_seldom(_mm(12, 50)),
        point=_mm(0, 30),
        mouth_hem=_mm(15, 40),
        turn=_mm(6, 15),
    )


def pockets() -> st.SearchStrategy[draft.style.Pocket | None]:
    cut = mouth_pockets(draft.CurvedPocket) | mouth_pockets(draft.SlantedPocket)
    return st.none() | cut | in_seam_pockets() | front_patches()


def pockets_for(
    closing: draft.style.Closing, pleats: draft.Pleats | None
) -> st.SearchStrategy[draft.style.Pocket | None]:
    """Pockets that leave a zipped side seam whole, and pleats free."""
    patches = st.nothing() if pleats else front_patches()
    if isinstance(closing, draft.SideZip):
        return st.none() | patches
    return pockets() if pleats is None else st.none() | mouth_pockets(draft.CurvedPocket) | in_seam_pockets()


# Back pockets


def back_pockets() -> st.SearchStrategy[draft.style.BackPocket | None]:
    patch = st.builds(
        draft.PatchPocket,
        width=_seldom(_mm(70, 140)),
        height=_seldom(_mm(110, 150)),
        below=_seldom(_mm(40, 80)),
        shape=st.sampled_from(["pointed", "rounded", "square"]),
        point=_mm(4, 30),
        taper=_mm(0, 10),
        hem=_mm(10, 40),
        turn=_mm(0, 15),
        flap=st.booleans(),
        flap_depth=_seldom(_mm(30, 60)),
    )
    welt = st.builds(
        draft.WeltPocket,
        width=_seldom(_mm(60, 130)),
        below=_seldom(_mm(35, 85)),
        welts=st.integers(1, 2),
        welt=_seldom(_mm(4, 20)),
        bag_depth=_seldom(_mm(60, 140)),
    )
    return st.none() | patch | welt


# Hems


def free_hems() -> st.SearchStrategy[draft.style.Hem]:
    """Hems that go with most lengths and shapes of the leg."""
    return (
        st.builds(draft.TurnedCuff, depth=_mm(20, 60), clearance=_mm(0, 2), roll=_mm(0, 2))
        | st.builds(draft.PlainHem, depth=_mm(15, 40), turn=_mm(0, 12))
        | st.builds(draft.FacedHem, depth=_mm(15, 70), turn=_mm(0, 15))
        | st.builds(draft.BlindHem, depth=_mm(20, 60), turn=_mm(0, 12))
        | vented_hems()
    )


@st.composite
def vented_hems(draw: st.DrawFn) -> draft.VentedHem:
    depth = draw(_mm(10, 40))
    return draft.VentedHem(
        depth=depth, turn=draw(_mm(0, 15)), vent=draw(_mm(max(20, depth + 1), 90)), facing=draw(_mm(20, 45))
    )


def ruffles() -> st.SearchStrategy[draft.RuffledHem]:
    return st.builds(draft.RuffledHem, depth=_mm(20, 200), fullness=st.integers(110, 300), turn=_mm(4, 15))


def turn_ups() -> st.SearchStrategy[draft.CutOnTurnUp]:
    return st.builds(draft.CutOnTurnUp, depth=_mm(25, 60), inside=_maybe(_mm(15, 60)), clearance=_mm(0, 3))


@st.composite
def knee_bands(draw: st.DrawFn) -> draft.KneeBand:
    button = draw(_mm(8, 18))
    return draft.KneeBand(
        at=draw(st.sampled_from(["knee", "calf"])),
        ease=draw(_mm(0, 60)),
        depth=draw(_mm(max(18, button + 10), 60)),
        underlap=draw(_mm(30, 60)),
        opening=draw(_mm(30, 130)),
        button=button,
    )


def gathered_hems() -> st.SearchStrategy[draft.style.Hem]:
    return st.builds(draft.GatheredHem, depth=_mm(20, 60)) | st.builds(draft.ElasticHem, width=_mm(6, 30))


def hems() -> st.SearchStrategy[draft.style.Hem]:
    return free_hems() | ruffles() | turn_ups() | knee_bands() | gathered_hems()


# Leg, darts, pleats, ease


def _girth(share: float) -> st.SearchStrategy[float | None]:
    """Hem or knee, seldom asked for in mm: what fits one body is refused for another."""
    return st.integers(0, 7).flatmap(lambda n: _mm(share * 420, share * 560) if n == 7 else st.none())


SHAPES = (None, "straight", "tapered", "wide", "flared", "bell", "breeches", "culottes", "balloon")


def legs(like: draft.Body, *, long: bool) -> st.SearchStrategy[draft.Leg]:
    longest = min(like.inside_leg, 700 if long else 320)
    return st.builds(
        draft.Leg,
        inside_leg=_maybe(_mm(60, longest)),
        hem=_girth(1.2),
        knee=st.none() if not long else _girth(1.0),
        shape=st.sampled_from(SHAPES),
        stretch=st.none() | st.just(0.0) | _mm(0, 2),
        pressed=st.booleans(),
    )


def legs_for(hem: draft.style.Hem, like: draft.Body, *, long: bool) -> st.SearchStrategy[draft.Leg]:
    """Legs whose length suits the hem."""
    above_floor, knee = like.inside_leg, like.known("knee_height")
    shape = st.sampled_from(SHAPES)
    if isinstance(hem, draft.KneeBand):  # ends just below the knee
        shape = st.sampled_from((None, "breeches", "balloon"))
        return st.builds(draft.Leg, inside_leg=_mm(above_floor - knee + 2, above_floor - 0.9 * knee), shape=shape)
    if isinstance(hem, draft.RuffledHem):  # ends above the floor
        longest = max(70, min(above_floor - hem.depth - 10, 700 if long else 320))
        return st.builds(draft.Leg, inside_leg=_mm(60, longest), shape=shape)
    return legs(like, long=long)


@st.composite
def darts(draw: st.DrawFn, like: draft.Body) -> draft.Darts:
    front, back = draw(st.integers(0, 1)), draw(st.integers(0, 2))
    to_hip = like.waist_to_hip
    return draft.Darts(
        front=front,
        back=back,
        front_share=draw(_seldom(st.floats(0.2, 0.45))),
        back_share=draw(_seldom(st.floats(0.25, 0.6))),
        front_length=draw(_seldom(_mm(0.45 * to_hip, 0.65 * to_hip))),
        back_centre_length=draw(_seldom(_mm(0.45 * to_hip, 0.8 * to_hip))),
        back_side_length=draw(_seldom(_mm(0.45 * to_hip, 0.8 * to_hip))),
        front_as=draw(FOLDS),
        back_as=draw(FOLDS),
        sewn=draw(_mm(20, 120)),
    )


FOLDS = st.sampled_from(["darts"] * 5 + ["pleats", "tucks", "gathers"])


@st.composite
def waist_shares(draw: st.DrawFn, chosen: draft.Darts) -> draft.WaistShares | None:
    """Shares that add up; darts take some where there are darts."""
    if draw(st.integers(0, 5)) < 5:
        return None
    front = draw(st.floats(0.08, 0.15)) if chosen.front else 0.0
    back = draw(st.floats(0.2, 0.4)) if chosen.back else 0.0
    front_centre, back_centre = draw(st.floats(0, 0.1)), draw(st.floats(0.05, 0.25))
    side = 1 - front - back - front_centre - back_centre
    return draft.WaistShares(side=side, front_centre=front_centre, back_centre=back_centre, front=front, back=back)


@st.composite
def yokes(draw: st.DrawFn, like: draft.Body) -> draft.Yoke | None:
    if draw(st.integers(0, 5)) < 5:
        return None
    to_hip = like.waist_to_hip
    return draft.Yoke(
        centre=max(30, draw(_mm(0.25 * to_hip, 0.7 * to_hip))), side=max(20, draw(_mm(0.2 * to_hip, 0.5 * to_hip)))
    )


def pleats() -> st.SearchStrategy[draft.Pleats | None]:
    some = st.builds(
        draft.Pleats,
        count=st.integers(1, 2),
        depth=_mm(15, 60),
        second=_mm(15, 50),
        direction=st.sampled_from(["forward", "reverse"]),
        sewn=_mm(0, 80),
    )
    return st.none() | st.none() | some


def eases() -> st.SearchStrategy[draft.Ease]:
    return st.builds(
        draft.Ease,
        waist=_maybe(_mm(0, 60)),
        hip=_maybe(_mm(20, 160)),
        thigh=st.none() | _mm(55, 140),
        front_crotch=_seldom(_mm(0, 30)),
        back_crotch=_seldom(_mm(0, 40)),
    )


def eases_for(closing: draft.style.Closing, like: draft.Body) -> st.SearchStrategy[draft.Ease]:
    """Ease; without a closing the waist has to pass the hip."""
    if isinstance(closing, draft.NoClosing):
        least = min(290, max(0, like.hip - like.waist) + 5)
        return st.builds(draft.Ease, waist=_mm(least, 300), hip=_mm(20, 200))
    return eases()


# Small parts and the rest


@st.composite
def straps(draw: st.DrawFn) -> draft.StrapTab:
    width = draw(_mm(10, 45))
    return draft.StrapTab(width=width, ring=round(width + draw(_mm(0, 1.9)), 1), length=draw(_mm(60, 250)))


@st.composite
def small_parts(draw: st.DrawFn, pocket: draft.style.Pocket | None) -> tuple[draft.style.SmallPart, ...]:
    """Any of them that go with the front pocket, each at most once."""
    kinds = (
        st.builds(draft.BeltLoops, count=st.integers(0, 12), width=_mm(6, 25), belt=_mm(15, 80)),
        straps(),
        st.builds(draft.Braces, over_shoulder=_mm(300, 1600), width=_mm(15, 60), adjust=_mm(0, 200)),
        st.builds(draft.Lining, length=st.sampled_from(["full", "half"]), shorter=_mm(0, 40), below_fork=_mm(30, 200)),
        st.builds(draft.CoinPocket) if isinstance(pocket, draft.CurvedPocket | draft.SlantedPocket) else st.nothing(),
        st.builds(draft.AppliedTape, on=st.sampled_from(["front", "back"]), along=st.sampled_from(["side", "hem"])),
        st.builds(draft.BiasBinding, width=_mm(5, 20)),
    )
    return tuple(draw(kind) for kind in kinds if draw(st.integers(0, 3)) == 3 and not kind.is_empty)


def allowances() -> st.SearchStrategy[draft.Allowances]:
    return st.builds(
        draft.Allowances,
        side=_mm(6, 20),
        inseam=_mm(6, 20),
        crotch=_mm(6, 12),
        waist=_mm(6, 12),
        fly=_mm(6, 15),
        mouth=_mm(4, 12),
        bag=_mm(5, 15),
        band=_mm(5, 15),
        cuff=_mm(5, 15),
    )


@st.composite
def styles(draw: st.DrawFn, *, long: bool = False, contrary: bool = False, like: draft.Body = WOMAN) -> draft.Style:
    """Any style whose parts lie inside their own limits; a body may still have no room for it.

    The parts go together, but for one in twelve of the `contrary` styles. Lengths and heights suit the body `like`.
    """
    free = contrary and draw(st.integers(1, ONE_IN)) == ONE_IN
    closing, hem, folds = draw(closings()), draw(hems()), draw(pleats())
    chosen, yoke, drop = (
        draw(darts(like)),
        draw(yokes(like)),
        draw(_mm(-0.3 * like.waist_to_hip, 0.22 * like.waist_to_hip)),
    )
    shares, behind = draw(waist_shares(chosen)), draw(back_pockets())
    pocket = draw(pockets() if free else pockets_for(closing, folds))
    chosen = replace(  # what a style refuses by itself, whatever the body
        chosen,
        front_as="darts" if folds else chosen.front_as,
        back_as="darts" if yoke or behind else chosen.back_as,
        **({"front_share": None, "back_share": None} if shares else {}),
    )
    drop = abs(drop) if yoke else drop
    return draft.Style(
        leg=draw(legs(like, long=long) if free else legs_for(hem, like, long=long)),
        ease=draw(eases() if free else eases_for(closing, like)),
        waist_drop=draw(st.sampled_from([0.0, drop])),
        darts=chosen,
        waist_shares=shares,
        yoke=yoke,
        pleats=folds,
        band=draw(bands() if free else bands_for(closing)),
        closing=closing,
        pocket=pocket,
        back_pocket=behind,
        small_parts=draw(small_parts(pocket)),
        hem=hem,
        allowances=draw(allowances()),
        interfacing=draw(st.booleans()),
    )


@st.composite
def dressed(draw: st.DrawFn, bodies: st.SearchStrategy[draft.Body]) -> tuple[draft.Body, draft.Style]:
    """Body, and a style that suits its lengths."""
    body = draw(bodies)
    return body, draw(styles(long=True, contrary=True, like=body))
