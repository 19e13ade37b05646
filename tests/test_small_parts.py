"""Belt loops, strap tabs, braces and the lining: their sizes, and where they lie on other pieces."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon
from zoo import ZOO

import draft
from draft.checks import check_seams
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


STYLES = {
    "curved": draft.Style(),
    "curved, loose, right over left": draft.Style(
        pocket=draft.CurvedPocket(mouth_ease=4), closing=draft.FlyFront(lap="right_over_left")
    ),
    "slanted, grown on": draft.Style(pocket=draft.SlantedPocket(grown_on=True, mouth_ease=4)),
    "pocket in the seam": draft.Style(pocket=draft.InSeamPocket()),
    "pleats": draft.Style(pleats=draft.Pleats(count=2), pocket=None),
    "grown-on fly": draft.Style(closing=draft.GrownOnFly()),
    "side zip": draft.Style(closing=draft.SideZip(), pocket=None, band=draft.StraightBand(underlap=30)),
    "elastic, no closing": draft.Style(
        band=draft.ElasticCasing(), closing=draft.NoClosing(), ease=draft.Ease(waist=290)
    ),
    "elastic at the back": draft.Style(band=draft.ElasticCasing(elastic="back")),
    "drawstring": draft.Style(band=draft.DrawstringBand()),
    "contour band": draft.Style(band=draft.ContourBand(), waist_drop=30),
    "contour band with a seam": draft.Style(
        band=draft.ContourBand(back="seam"), waist_drop=30, closing=draft.FlyFront(lap="right_over_left")
    ),
    "band in sections, eased": draft.Style(band=draft.StraightBand(sections="side_seams", eased=12, overlap=40)),
    "sections, right over left": draft.Style(
        band=draft.StraightBand(sections="side_seams"), closing=draft.FlyFront(lap="right_over_left")
    ),
    "faced waist": draft.Style(band=draft.FacedWaist()),
    "faced waist, loose mouth": draft.Style(band=draft.FacedWaist(), pocket=draft.CurvedPocket(mouth_ease=6)),
}
ALL_STYLES = pytest.mark.parametrize("style", STYLES.values(), ids=list(STYLES))


def with_parts(style, *parts, body="woman"):
    return draft.shorts(ZOO[body], replace(style, small_parts=parts))


def faults(pattern):
    return [finding for finding in pattern.check() if finding.code != "fit"]


@ALL_STYLES
@pytest.mark.parametrize("length", ["full", "half"])
def test_every_edge_of_the_lining_has_a_partner_of_its_length(style, length):
    pattern = with_parts(style, Lining(length=length))
    assert faults(pattern) == []
    runs = [run for seam in pattern.seams if seam.name.startswith("lining") for run in (seam.a, seam.b)]
    for part in ("front", "back"):
        for name in ("side", "inseam", "crotch", "waist"):
            lining, edge = f"lining_{part}", pattern.pieces[f"lining_{part}"].edge(name)
            own = {f"lining_{other}" for other in ("front", "back")}
            partners = [s for s in pattern.seams if s.b.piece == lining and s.b.edge == name and s.a.piece not in own]
            walked = sum(seam.b.length(pattern.pieces) for seam in partners)
            assert walked == pytest.approx(edge.length, abs=0.01), f"{lining}.{name}"
            assert any(run.piece == lining and run.edge == name for run in runs)


def test_lining_of_a_stretched_leg_is_stretched_as_the_leg():
    leg = draft.Leg(stretch=6)
    pattern = draft.trousers(ZOO["man"], draft.Style(leg=leg, small_parts=(Lining(),)))
    assert faults(pattern) == []
    inseam = next(seam for seam in pattern.seams if seam.name == "lining, inseam")
    assert inseam.ease == pytest.approx(6)
    assert inseam.length_a - inseam.length_b == pytest.approx(6, abs=0.01)


def test_lining_too_long_by_3_is_found():
    """The seams of the lining are walked: a waist cut wrong by 3 mm is a finding."""
    pattern = with_parts(draft.Style(), Lining())
    seam = next(seam for seam in pattern.seams if seam.name == "lining in the front waist")
    wrong = replace(seam, length_b=seam.length_b + 3)
    assert [finding.where for finding in check_seams((wrong,))] == ["lining in the front waist"]


def part_lines(pattern, note, kind="placement"):
    """Marks with a note, by piece."""
    return {
        name: found
        for name, piece in pattern.pieces.items()
        if (found := [line.path for line in piece.lines if line.kind == kind and line.note.startswith(note)])
    }


@ALL_STYLES
@pytest.mark.parametrize("body", ["woman", "stout", "toddler", "very large"])
def test_places_of_loops_tabs_and_braces_are_marked(style, body):
    parts = (BeltLoops(), StrapTab(), Braces())
    try:
        plain = with_parts(style, body=body)
    except draft.DraftError:
        pytest.skip("this body has no room for the style without small parts")
    pattern = with_parts(style, *parts, body=body)
    assert faults(pattern) == faults(plain) == []
    for note in ("belt loop", "ring loop", "strap"):
        assert part_lines(pattern, note), note
    assert part_lines(pattern, "button of the braces", "button")
    for name, piece in pattern.pieces.items():
        new = piece.lines[len(plain.pieces[name].lines) :] if name in plain.pieces else ()
        outline = Polygon([(p.real, p.imag) for p in piece.cut_line.points(0.1)]).buffer(0.05)
        assert all(outline.covers(LineString([(p.real, p.imag) for p in line.path.points(0.5)])) for line in new)


def along_waist(pattern, half):
    """For either half: function from a place on the strip to the distance from the centre front, by its notches."""
    strip = pattern.pieces["waistband"]
    places = {notch.match: strip.edge("waist").point_at(notch.along).real for notch in strip.notches}
    return lambda x: abs(x - places[f"{half}centre front"])


@pytest.mark.parametrize("lap", ["left_over_right", "right_over_left"])
@pytest.mark.parametrize("count", [4, 5, 7, 8])
def test_loops_lie_on_the_band_where_the_note_says(count, lap):
    style = draft.Style(band=draft.StraightBand(overlap=40), closing=draft.FlyFront(lap=lap))
    loops = BeltLoops(count=count)
    pattern = with_parts(style, loops)
    plan = Plan(pattern.body, pattern.style, pattern.shell, "")
    told = belt_loops.places(plan, loops)
    (paths,) = part_lines(pattern, "belt loop").values()
    girth = 2 * (pattern.shell.front.waist.length + pattern.shell.back.waist.length)
    from_front = along_waist(pattern, "")
    found = sorted(min(from_front(path.start.real), girth - from_front(path.start.real)) for path in paths)
    expected = sorted(place - 5 for place in told for _ in range(2))
    assert found == pytest.approx(expected, abs=0.01)
    assert all(path.length == pytest.approx(40) for path in paths)


def test_loops_of_a_band_in_sections_are_those_of_the_strip():
    strip = with_parts(draft.Style(), BeltLoops(count=7))
    parts = with_parts(draft.Style(band=draft.StraightBand(sections="side_seams")), BeltLoops(count=7))
    one = {round(path.start.real, 2) for path in part_lines(strip, "belt loop")["waistband"]}
    left, right, back = (
        {round(path.start.real, 2) for path in part_lines(parts, "belt loop").get(f"waistband_{name}", [])}
        for name in ("left", "right", "back")
    )
    assert left | right | back <= one
    assert len(left) == len(right)
    assert len(left) + len(back) == 4  # the back is half a piece on the fold


def test_strap_begins_behind_the_side_seam_and_the_ring_before_it():
    pattern = with_parts(draft.Style(), StrapTab(width=25))
    strip = pattern.pieces["waistband"]
    sides = [n.along for n in strip.notches if n.match.endswith("side seam")]
    (rings,), (straps,) = part_lines(pattern, "ring loop").values(), part_lines(pattern, "strap").values()
    assert sorted(min(abs(r.start.real - s) for s in sides) for r in rings) == pytest.approx([20, 20])
    assert sorted(min(abs(r.start.real - s) for s in sides) for r in straps) == pytest.approx([70, 70])
    assert all(path.length == pytest.approx(25) for path in (*rings, *straps))
    between = [s for s in straps if sides[0] < s.start.real < sides[1]]
    assert len(between) == 2  # the back lies between the side seams


def test_buttons_of_braces_sit_inside_15_below_the_edge():
    band = draft.StraightBand(depth=40)
    pattern = with_parts(draft.Style(band=band), Braces())
    buttons = part_lines(pattern, "button of the braces", "button")["waistband"]
    assert [path.point_at(8).imag for path in buttons] == pytest.approx([40 + 15] * 4)
    inner = part_lines(with_parts(STYLES["contour band"], Braces()), "button of the braces", "button")
    assert set(inner) == {"waistband_left_inner", "waistband_right_inner", "waistband_back_inner"}
    faced = part_lines(with_parts(STYLES["faced waist"], Braces()), "button of the braces", "button")
    assert set(faced) == {"waist_facing_left", "waist_facing_right", "waist_facing_back"}


def test_faced_waist_carries_its_loops_on_the_garment():
    marked = part_lines(with_parts(STYLES["faced waist"], BeltLoops(count=9)), "belt loop")
    assert set(marked) == {"front", "pocket_facing", "back"}


# Limits, and every kind of waist


@pytest.mark.parametrize("less", [0, 1e-6, 0.06, 0.5])
def test_lining_may_be_as_long_as_the_leg(less):
    pattern = draft.shorts(ZOO["woman"], draft.Style(small_parts=(Lining(shorter=less),)))
    assert pattern.check() == []
    hem = pattern.shell.back.hem.length
    assert pattern.pieces["lining_back"].edge("hem").length == pytest.approx(hem, abs=0.5)


def test_half_lining_whose_bottom_would_cross_the_crotch_seam_is_told_how_far_below_the_fork_it_may_end():
    def made(below: float) -> draft.Pattern:
        lining = Lining(length="half", below_fork=below)
        return draft.shorts(ZOO["very large"], draft.Style(pocket=None, hem=draft.PlainHem(), small_parts=(lining,)))

    with pytest.raises(draft.DraftError, match=r"small_parts\.below_fork is 50\.0, expected at least \d+ mm") as caught:
        made(50)
    least = int(caught.value.expected.split()[2])
    assert made(least).check() == []
    with pytest.raises(draft.DraftError, match="below_fork"):
        made(least - 1)


FOLDED = {
    kind: {"darts": draft.Darts(front=1, front_as=kind, back_as=kind), "pocket": None}
    for kind in ("pleats", "tucks", "gathers")
}
WAISTS = {
    **FOLDED,
    "raised": {"waist_drop": -50},
    "raised with pleats": {"waist_drop": -50, "darts": draft.Darts(back_as="pleats")},
    "yoke": {"yoke": draft.Yoke()},
    "pleats of the front": {"pleats": draft.Pleats()},
}


@pytest.mark.parametrize("waist", WAISTS)
@pytest.mark.parametrize("body", ["woman", "man"])
def test_lining_sews_into_every_kind_of_waist(waist, body):
    for lining in (Lining(), Lining(length="half")):
        assert draft.trousers(ZOO[body], draft.Style(small_parts=(lining,), **WAISTS[waist])).check() == []
