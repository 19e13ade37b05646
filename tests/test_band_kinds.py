"""Facing, casings and contour band: they fit the waist they are sewn to, and do what the trade asks of them.

Sources of the rules: a construction sheet of the trade and notes on pattern practice ("read"), geometry, or common
practice without a source; each test says which.
"""

from __future__ import annotations

from math import pi

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapely import affinity
from shapely.geometry import LineString, Polygon
from zoo import ZOO

import draft
from draft.choices.bands import ContourBand, DrawstringBand, ElasticCasing, FacedWaist
from draft.choices.closings import NoClosing
from draft.geometry.points import angle_deg
from draft.seams import Joint

GARMENTS = {"shorts": draft.shorts, "trousers": draft.trousers}
NAMED = {
    "facing": FacedWaist(),
    "elastic": ElasticCasing(),
    "elastic at the back": ElasticCasing(elastic="back"),
    "cord": DrawstringBand(),
    "cord, eyelets": DrawstringBand(openings="eyelets", apart=60),
    "contour": ContourBand(),
    "contour, seam and tab": ContourBand(back="seam", overlap=45, depth=50),
}
OTHER_LAP = draft.FlyFront(lap="right_over_left")


def sewn(pattern: draft.Pattern) -> None:
    assert [finding for finding in pattern.check() if finding.code != "fit"] == []


def drafted_or_refused(body: draft.Body, style: draft.Style) -> tuple[draft.Pattern | None, draft.DraftError | None]:
    """Pattern and None, or None and the error that says what this body has no room for."""
    try:
        return draft.shorts(body, style), None
    except draft.DraftError as refusal:
        return None, refusal


def top_length(pattern: draft.Pattern) -> float:
    """Upper edge of a contour band from centre front to centre front, without what overlaps there."""
    band, pieces = pattern.style.band, pattern.pieces
    laps = band.overlap + (pattern.pieces["fly_shield"].edge("waist").length / 2 if band.underlap is None else 0)
    fronts = sum(pieces[f"waistband_{side}"].edge("top").length for side in ("left", "right"))
    return fronts - laps + 2 * pieces["waistband_back"].edge("top").length


def polygon(path) -> Polygon:
    return Polygon([(p.real, p.imag) for p in path.points(0.01)])


def line(path) -> LineString:
    return LineString([(p.real, p.imag) for p in path.points(0.005)])


# All kinds


@pytest.mark.parametrize("band", NAMED)
@pytest.mark.parametrize("body", ZOO)
@pytest.mark.parametrize("garment", GARMENTS)
def test_zoo_of_bodies_sews_with_every_band(body, band, garment):
    sewn(GARMENTS[garment](ZOO[body], draft.Style(band=NAMED[band])))


@pytest.mark.parametrize("band", NAMED)
@pytest.mark.parametrize("body", ["woman", "stout", "toddler"])
def test_low_waist_other_lap_and_loose_pocket_sew_with_every_band(body, band):
    pocket = draft.CurvedPocket(mouth_ease=4)
    style = draft.Style(band=NAMED[band], waist_drop=30, closing=OTHER_LAP, pocket=pocket, darts=draft.Darts(front=1))
    sewn(draft.shorts(ZOO[body], style))


@pytest.mark.parametrize("band", NAMED)
def test_waist_seam_is_walked_all_round(band):
    """The runs on the band add up to the whole waist seam (geometry)."""
    pattern = draft.shorts(ZOO["woman"], draft.Style(band=NAMED[band]))
    runs = [seam for seam in pattern.seams if seam.name.startswith("waist, ")]
    assert len(runs) == 6
    assert sum(seam.length_b for seam in runs) == pytest.approx(pattern.measure()["waist"], abs=0.01)


@pytest.mark.parametrize("band", NAMED)
@pytest.mark.parametrize("closing", [draft.FlyFront(), OTHER_LAP])
def test_centre_front_notch_of_either_half_of_the_band_meets_that_of_the_front(band, closing):
    """Walked along the seam, it lies where the front begins: at the centre front."""
    pattern = draft.shorts(ZOO["woman"], draft.Style(band=NAMED[band], closing=closing))
    for seam in (s for s in pattern.seams if s.name in ("waist, left front", "waist, right front")):
        notches = pattern.pieces[seam.b.piece].notches
        own = [seam.b.walked(n.along, pattern.pieces) for n in notches if n.match.endswith("centre front")]
        there = seam.a.walked(0.0, pattern.pieces)
        assert min(abs(along - there) for along in own) == pytest.approx(0, abs=0.01)


# A waist that does not open


@pytest.fixture
def sewn_shut():
    return NoClosing()


FLAT = draft.Darts(front=0, back=0)


@pytest.mark.parametrize("band", NAMED)
@pytest.mark.parametrize("body", ["woman", "man", "stout", "ten years", "toddler"])
def test_ring_sews_where_it_passes_the_hip(band, body, sewn_shut):
    figure = ZOO[body]
    ease = draft.Ease(waist=max(20.0, figure.hip - figure.waist + 10))
    style = draft.Style(band=NAMED[band], closing=sewn_shut, ease=ease, darts=FLAT, pocket=None)
    if band == "elastic at the back" and body == "woman":
        with pytest.raises(draft.DraftError, match=r"style\.band\.elastic .* mm or more"):
            draft.shorts(figure, style)
        return
    pattern = draft.shorts(figure, style)
    sewn(pattern)
    assert pattern.measure()["waist"] >= figure.hip - 0.5


@pytest.mark.parametrize("band", NAMED)
def test_ring_narrower_than_the_hip_is_refused_with_the_ease_that_works(band, sewn_shut):
    """Waist edge no shorter than the hip without an opening (read)."""
    body = ZOO["man"]
    style = draft.Style(band=NAMED[band], closing=sewn_shut, darts=FLAT, pocket=None)
    with pytest.raises(draft.DraftError, match=r"style\.ease\.waist .* at least (\d+) mm") as told:
        draft.shorts(body, style)
    least = float(told.value.expected.split()[2])
    assert least == pytest.approx(body.hip - body.waist, abs=1)
    if band == "elastic at the back":
        return
    sewn(draft.shorts(body, draft.Style(**{**vars(style), "ease": draft.Ease(waist=least)})))
    with pytest.raises(draft.DraftError, match=r"style\.ease\.waist"):
        draft.shorts(body, draft.Style(**{**vars(style), "ease": draft.Ease(waist=least - 3)}))


def test_hip_too_large_for_any_ease_asks_for_a_closing(sewn_shut):
    body = draft.Body(waist=650, hip=1050, crotch_depth=262, waist_to_hip=205, inside_leg=760)
    with pytest.raises(draft.DraftError, match=r"style\.closing .* 1050 mm"):
        draft.shorts(body, draft.Style(band=ElasticCasing(), closing=sewn_shut, darts=FLAT, pocket=None))


def test_ring_is_joined_at_the_centre_back(sewn_shut):
    body = ZOO["stout"]
    pattern = draft.shorts(body, draft.Style(band=ElasticCasing(), closing=sewn_shut, pocket=None))
    casing = pattern.pieces["casing"]
    assert casing.edge("waist").length == pytest.approx(pattern.measure()["waist"], abs=0.01)
    front = next(n for n in casing.notches if n.match == "centre front")
    assert front.along == pytest.approx(casing.edge("waist").length / 2)
    assert any(seam.name == "casing, centre back" for seam in pattern.seams)


# Facing


@pytest.mark.parametrize("body", ["woman", "stout", "toddler"])
def test_front_facing_lies_on_the_front(body):
    """A facing has the garment's own shape (common practice): it covers nothing beside the panel, within 0.02 mm."""
    pattern = draft.shorts(ZOO[body], draft.Style(band=FacedWaist()))
    facing = polygon(pattern.pieces["waist_facing_left"].sew_line)
    assert polygon(pattern.shell.front.outline).buffer(0.02).covers(facing)


@pytest.mark.parametrize("body", ["woman", "man", "small"])
def test_back_facing_is_the_back_with_its_darts_closed(body):
    """Sectors of the waist turned about the dart points by shapely (geometry)."""
    pattern = draft.shorts(ZOO[body], draft.Style(band=FacedWaist()))
    waist = pattern.shell.back.waist
    assert waist.darts
    runs = [line(part) for part in waist.parts]
    for index in reversed(range(len(waist.darts))):  # from the side: everything beyond a dart turns onto its centre leg
        dart = waist.darts[index]
        turn = angle_deg(dart.side_leg - dart.point, dart.centre_leg - dart.point)
        origin = (dart.point.real, dart.point.imag)
        runs[index + 1 :] = [affinity.rotate(run, turn, origin=origin) for run in runs[index + 1 :]]
    closed = LineString([place for run in runs for place in run.coords])
    assert closed.hausdorff_distance(line(pattern.pieces["waist_facing_back"].edge("waist").path)) < 0.05


@pytest.mark.parametrize("body", ["woman", "man", "stout", "ten years"])
@pytest.mark.parametrize("deep", [30.0, 60.0])
def test_lower_edge_of_facing_is_parallel(body, deep):
    """Within 1.5 mm, where it is led onto the side seam; elsewhere within 0.05 mm (geometry)."""
    pattern = draft.shorts(ZOO[body], draft.Style(band=FacedWaist(depth=deep)))
    for name in ("waist_facing_left", "waist_facing_back"):
        piece = pattern.pieces[name]
        waist, lower = line(piece.edge("waist").path), piece.edge("lower").path
        gaps = [waist.distance(LineString([(p.real, p.imag)] * 2)) for p in lower.points(0.05)]
        assert max(abs(gap - deep) for gap in gaps) < 1.5
        far = lower.between(61, lower.length).points(0.05)
        gaps = [waist.distance(LineString([(p.real, p.imag)] * 2)) for p in far]
        assert max(abs(gap - deep) for gap in gaps) < 0.05


def test_facing_flows_over_the_side_seam_and_the_centre_back():
    pattern = draft.shorts(ZOO["woman"], draft.Style(band=FacedWaist()))
    pieces = pattern.pieces
    joints = [
        Joint("upper side", ("waist_facing_left", "waist"), ("waist_facing_back", "waist")),
        Joint("lower side", ("waist_facing_left", "side"), ("waist_facing_back", "side")),
        Joint("upper centre", ("waist_facing_back", "centre"), ("waist_facing_back", "centre")),
        Joint("lower centre", ("waist_facing_back", "lower"), ("waist_facing_back", "lower")),
    ]
    for joint in joints:
        assert joint.angle(pieces) == pytest.approx(180, abs=0.5), joint.name


@pytest.mark.parametrize("lap", ["left_over_right", "right_over_left"])
def test_underlapping_facing_runs_on_over_the_shield(lap):
    """Band end and shield edge are flush (geometry, as for a straight band)."""
    pattern = draft.shorts(ZOO["woman"], draft.Style(band=FacedWaist(), closing=draft.FlyFront(lap=lap)))
    over, under = ("left", "right") if lap == "left_over_right" else ("right", "left")
    long = pattern.pieces[f"waist_facing_{under}"].edge("waist").length
    short = pattern.pieces[f"waist_facing_{over}"].edge("waist").length
    assert short == pytest.approx(pattern.shell.front.waist.length, abs=0.01)
    assert long - short == pytest.approx(pattern.pieces["fly_shield"].edge("waist").length / 2, abs=0.01)


def test_facing_deeper_than_a_dart_is_refused_with_the_depth_that_works():
    style = draft.Style(band=FacedWaist(depth=60), darts=draft.Darts(back_side_length=50))
    with pytest.raises(draft.DraftError, match=r"style\.band\.depth .* at most (\d+) mm") as told:
        draft.shorts(ZOO["woman"], style)
    most = float(told.value.expected.split()[2])
    sewn(draft.shorts(ZOO["woman"], draft.Style(band=FacedWaist(depth=most), darts=style.darts)))


# Elastic


@pytest.mark.parametrize("where", ["all_round", "back"])
@pytest.mark.parametrize("body", ["woman", "man", "ten years"])
def test_relaxed_waist_is_shorter_than_the_body_by_the_share(where, body):
    """Elastic and flat front together: the body's waist less 5 to 10 % (read) at the default."""
    figure = ZOO[body]
    pattern = draft.shorts(figure, draft.Style(band=ElasticCasing(elastic=where)))
    told = next(note for note in pattern.garment.notes if note.startswith("elastic"))
    elastic = float(told.split("cut ")[1].split(" mm")[0]) - 20
    flat = 2 * pattern.shell.front.waist.length if where == "back" else 20
    girth = figure.girth_at(-(25 + 4) / 2)  # it lies above the waist seam, in the middle of the casing
    assert 0.90 * girth - 1 <= elastic + flat <= 0.95 * girth + 1
    assert elastic + flat == pytest.approx(0.93 * girth, abs=1)


def test_casing_is_a_little_deeper_than_its_elastic():
    """By 3 to 5 mm (read)."""
    pattern = draft.shorts(ZOO["woman"], draft.Style(band=ElasticCasing(width=30)))
    ys = pattern.pieces["casing"].sew_line.points(1.0).imag
    assert 33 <= (ys.max() - ys.min()) / 2 <= 35


def test_elastic_of_the_back_ends_at_the_side_seams():
    pattern = draft.shorts(ZOO["woman"], draft.Style(band=ElasticCasing(elastic="back")))
    casing = pattern.pieces["casing"]
    sides = sorted(n.along for n in casing.notches if n.match.endswith("side seam"))
    ends = sorted(e.path.start.real for e in casing.lines if e.note == "end of the elastic")
    assert ends == pytest.approx(sides)


def test_elastic_longer_than_its_casing_is_refused_with_the_share_that_works():
    body, ease = ZOO["man"], draft.Ease(waist=-60)
    with pytest.raises(draft.DraftError, match=r"style\.band\.shorter .* at least 0\.\d+") as told:
        draft.shorts(body, draft.Style(band=ElasticCasing(shorter=0.0), ease=ease))
    least = float(told.value.expected.split()[2].rstrip(","))
    sewn(draft.shorts(body, draft.Style(band=ElasticCasing(shorter=least), ease=ease)))


# Drawstring


@pytest.mark.parametrize("closing", [draft.FlyFront(), OTHER_LAP])
@pytest.mark.parametrize("openings", ["buttonholes", "eyelets"])
def test_openings_lie_in_the_outer_half_evenly_beside_the_centre_front(openings, closing):
    style = draft.Style(band=DrawstringBand(openings=openings, apart=60), closing=closing)
    casing = draft.shorts(ZOO["woman"], style).pieces["casing"]
    fronts = sorted(n.along for n in casing.notches if n.match.endswith("centre front"))
    holes = [hole.at for hole in casing.holes] + [
        (mark.path.start + mark.path.end) / 2 for mark in casing.lines if mark.kind == "buttonhole"
    ]
    assert sorted(p.real for p in holes) == pytest.approx([fronts[0] + 30, fronts[1] - 30])
    assert [p.imag for p in holes] == pytest.approx([15, 15])


def test_cord_note_carries_the_caution_and_default_ends_stay_within_the_read_limit():
    """Free ends of at most 140 mm with the garment fully open (read, in a summary of EN 14682:2007)."""
    pattern = draft.shorts(ZOO["ten years"], draft.Style(band=DrawstringBand()))
    assert DrawstringBand().ends <= 140
    said = " ".join(pattern.garment.notes)
    assert "children" in said
    assert "rules of your country" in said
    assert said in " ".join(pattern.report().split("\n\n"))


def test_cord_goes_round_once_and_hangs_out():
    pattern = draft.shorts(ZOO["woman"], draft.Style(band=DrawstringBand(apart=60, ends=100)))
    told = next(note for note in pattern.garment.notes if note.startswith("cord"))
    assert f"cut {pattern.measure()['waist'] - 60 + 200:.0f} mm" in told


def test_cord_too_thick_for_its_casing_is_refused_with_the_depth_that_works():
    with pytest.raises(draft.DraftError, match=r"style\.band\.depth .* at least 18 mm"):
        draft.shorts(ZOO["woman"], draft.Style(band=DrawstringBand(depth=16, cord=10)))


# Contour


@pytest.mark.parametrize("body", ZOO)
@pytest.mark.parametrize("drop", [0.0, 20.0, 40.0])
def test_upper_edge_is_the_body_there_and_its_ease(body, drop):
    """Upper edge: girth at its level plus ease, within 1 mm (read); at drop = depth that is the natural waist's."""
    figure = ZOO[body]
    style = draft.Style(band=ContourBand(depth=40), waist_drop=drop, ease=draft.Ease(waist=12, hip=70))
    pattern = draft.shorts(figure, style)
    assert top_length(pattern) == pytest.approx(figure.waist + 12, abs=1.0)


def test_upper_edge_below_the_waist_is_the_body_there_and_its_ease():
    figure = ZOO["woman"]
    style = draft.Style(band=ContourBand(depth=30), waist_drop=70, ease=draft.Ease(waist=12, hip=70))
    u = 40 / figure.waist_to_hip
    near = u * (2 - u)  # girth between waist and hip: a parabola level at the hip, as Body.girth_at says
    expected = figure.waist + 12 + near * (figure.hip + 70 - figure.waist - 12)
    assert top_length(draft.shorts(figure, style)) == pytest.approx(expected, abs=1.0)


@pytest.mark.parametrize("body", ["woman", "man", "stout", "toddler"])
def test_lower_less_upper_edge_is_depth_times_angle(body):
    """|lower - upper| = height x total turning angle in radians (geometry, for a strip with parallel edges)."""
    pattern = draft.shorts(ZOO[body], draft.Style(band=ContourBand(depth=30), waist_drop=30))
    for name in ("waistband_left", "waistband_right", "waistband_back"):
        lower, upper = (line(pattern.pieces[name].edge(n).path) for n in ("waist", "top"))
        first, last = (np.diff(np.array(lower.coords), axis=0) @ [1, 1j])[[0, -1]]
        turn = np.angle(last / first)
        assert lower.length - upper.length == pytest.approx(30 * turn, abs=0.6)


@pytest.mark.parametrize("style", ["fold", "seam"])
@pytest.mark.parametrize("body", ["woman", "stout", "toddler"])
def test_contour_sections_meet_in_180_degrees_and_stand_square_at_the_centres(style, body):
    """Centre front 90 degrees, sections meet at 180 in all (read)."""
    pattern = draft.shorts(ZOO[body], draft.Style(band=ContourBand(back=style), waist_drop=30))
    pieces = pattern.pieces
    centre = "fold" if style == "fold" else "centre"
    joints = [
        Joint("lower", ("waistband_left", "waist"), ("waistband_back", "side")),
        Joint("upper", ("waistband_left", "side"), ("waistband_back", "top")),
        Joint("front, lower", ("waistband_left", "end"), ("waistband_left", "end")),
        Joint("front, upper", ("waistband_right", "end"), ("waistband_right", "end")),
        Joint("back, lower", ("waistband_back", "waist"), ("waistband_back", "waist")),
        Joint("back, upper", ("waistband_back", centre), ("waistband_back", centre)),
    ]
    for joint in joints:
        assert joint.angle(pieces) == pytest.approx(180, abs=0.1), joint.name


def test_contour_goes_straight_up_above_the_natural_waist():
    pattern = draft.shorts(ZOO["woman"], draft.Style(band=ContourBand()))
    for piece in (pattern.pieces[n] for n in ("waistband_left", "waistband_back")):
        assert piece.edge("top").length == pytest.approx(piece.edge("waist").length, abs=0.01)
        assert abs(angle_deg(piece.edge("waist").start_dir, piece.edge("waist").end_dir)) < 0.01
    assert any("above the natural waist" in note for note in pattern.garment.notes)


def test_contour_band_has_its_inner_layer_and_interfaced_outer():
    pieces = draft.shorts(ZOO["woman"], draft.Style(band=ContourBand(), waist_drop=40)).pieces
    for name in ("waistband_left", "waistband_right", "waistband_back"):
        assert pieces[f"{name}_inner"].sew_line.area == pytest.approx(pieces[name].sew_line.area)
        assert f"{name}_interfacing" in pieces
        assert f"{name}_inner_interfacing" not in pieces


@pytest.mark.parametrize("closing", [draft.FlyFront(), OTHER_LAP])
@pytest.mark.parametrize("overlap", [0.0, 45.0])
def test_button_meets_buttonhole_when_centre_front_meets_centre_front(closing, overlap):
    """Outer end of the hole 3 beyond the button's centre, towards the band's end (read)."""
    style = draft.Style(band=ContourBand(overlap=overlap), closing=closing, waist_drop=40)
    pieces = draft.shorts(ZOO["woman"], style).pieces
    over, under = ("left", "right") if closing.lap == "left_over_right" else ("right", "left")

    def off_centre(name: str, at: complex) -> float:
        """Distance inside (positive) the centre front of a mark, along the band."""
        piece = pieces[name]
        notch = next(p[0].on_seam for n, p in piece.notch_places if n.match == "centre front")
        return (at - notch).real * (1 if name.endswith("left") else -1)

    hole = next(mark.path for mark in pieces[f"waistband_{over}"].lines if mark.kind == "buttonhole")
    button = next(mark.path for mark in pieces[f"waistband_{under}"].lines if mark.kind == "button")
    outer_end = min(off_centre(f"waistband_{over}", p) for p in (hole.start, hole.end))
    centre = -off_centre(f"waistband_{under}", (button.start + button.end) / 2)
    assert outer_end + 3 == pytest.approx(centre, abs=1.0)  # the band curves a little on the way


def test_contour_underlap_without_room_for_the_button_is_refused():
    with pytest.raises(draft.DraftError, match=r"style\.band\.underlap .* at least 24 mm"):
        draft.shorts(ZOO["woman"], draft.Style(band=ContourBand(underlap=10)))


# Any choice


def _mm(low: float, high: float) -> st.SearchStrategy[float]:
    return st.integers(int(low), int(high)).map(float)


BANDS = st.one_of(
    st.builds(FacedWaist, depth=st.none() | _mm(20, 80)),
    st.builds(
        ElasticCasing,
        elastic=st.sampled_from(["all_round", "back"]),
        width=_mm(6, 60),
        clearance=_mm(2, 8),
        shorter=st.integers(0, 25).map(lambda n: n / 100),
    ),
    st.builds(
        DrawstringBand,
        depth=_mm(15, 60),
        openings=st.sampled_from(["buttonholes", "eyelets"]),
        apart=_mm(30, 120),
        cord=_mm(2, 12),
        ends=_mm(60, 400),
    ),
    st.builds(
        ContourBand,
        depth=_mm(20, 100),
        back=st.sampled_from(["fold", "seam"]),
        overlap=_mm(0, 120),
        underlap=st.none() | _mm(0, 120),
        button=_mm(8, 40),
        button_thickness=_mm(1, 10),
    ),
)


@settings(
    max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.function_scoped_fixture]
)
@given(
    body=st.sampled_from(["woman", "man", "stout", "very large", "toddler"]),
    band=BANDS,
    drop=_mm(0, 80),
    lap=st.sampled_from(["left_over_right", "right_over_left"]),
    pocket=st.sampled_from([None, draft.CurvedPocket(), draft.CurvedPocket(mouth_ease=5)]),
    darts=st.builds(draft.Darts, front=st.integers(0, 1), back=st.integers(0, 2)),
    waist=st.none() | _mm(-20, 120),
)
def test_any_band_sews_or_is_refused_with_a_limit(body, band, drop, lap, pocket, darts, waist):
    style = draft.Style(
        band=band,
        waist_drop=drop,
        closing=draft.FlyFront(lap=lap),
        pocket=pocket,
        darts=darts,
        ease=draft.Ease(waist=waist),
    )
    pattern, refusal = drafted_or_refused(ZOO[body], style)
    if pattern is not None:
        sewn(pattern)
        return
    assert refusal is not None
    assert refusal.field.startswith("style.")
    assert any(c.isdigit() for c in refusal.expected), f"no limit told: {refusal}"


def test_angle_of_the_whole_band_is_what_the_girths_ask_for():
    """A cone's strip: total angle = (lower - upper girth) / depth (geometry)."""
    pattern = draft.shorts(ZOO["woman"], draft.Style(band=ContourBand(depth=50), waist_drop=50))
    turns = [
        angle_deg(pattern.pieces[n].edge("waist").start_dir, pattern.pieces[n].edge("waist").end_dir)
        for n in ("waistband_left", "waistband_back")
    ]
    expected = (pattern.measure()["waist"] - top_length(pattern)) / 50
    assert 2 * sum(turns) / 180 * pi == pytest.approx(expected, abs=0.01)


@pytest.mark.parametrize("closing", [draft.FlyFront(), OTHER_LAP])
@pytest.mark.parametrize("band", [ElasticCasing(), DrawstringBand()])
def test_casing_runs_on_over_the_shield_on_the_side_that_lies_underneath(band, closing):
    """Seen from outside, the wearer's left is the strip's left end (geometry)."""
    pieces = draft.shorts(ZOO["woman"], draft.Style(band=band, closing=closing)).pieces
    casing, shield = pieces["casing"], pieces["fly_shield"].edge("waist").length / 2
    left, right = sorted(n.along for n in casing.notches if n.match.endswith("centre front"))
    beyond = (left, casing.edge("waist").length - right)
    expected = (0.0, shield) if closing.lap == "left_over_right" else (shield, 0.0)
    assert beyond == pytest.approx(expected, abs=0.01)


@pytest.mark.parametrize("band", NAMED)
@pytest.mark.parametrize("count", [1, 2])
def test_every_band_sews_on_a_pleated_front(band, count):
    style = draft.Style(band=NAMED[band], pleats=draft.Pleats(count=count), waist_drop=30, pocket=None)
    pattern = draft.trousers(ZOO["man"], style)
    sewn(pattern)


def test_pleats_leave_the_upper_edge_of_a_contour_band_alone():
    """They are folded at the waist: the band knows nothing of them (geometry)."""
    style = draft.Style(band=ContourBand(depth=30), waist_drop=30, ease=draft.Ease(waist=12, hip=70), pocket=None)
    pleated = draft.Style(**{**vars(style), "pleats": draft.Pleats(count=2)})
    assert top_length(draft.trousers(ZOO["man"], pleated)) == pytest.approx(ZOO["man"].waist + 12, abs=1.0)


@pytest.mark.parametrize(
    ("elastic", "closing", "words"),
    [
        ("all_round", NoClosing(), "lay one 20 over the other"),
        ("all_round", draft.FlyFront(), "lay the marks on the lines of the casing"),
        ("back", draft.FlyFront(), "lay the marks on the lines of the casing"),
    ],
)
def test_ends_of_the_elastic_are_told_how_to_be_joined(elastic, closing, words):
    """An overlap of 15 to 20 in a zigzag box (common practice, no source); where they end apart, lines mark them."""
    style = draft.Style(band=ElasticCasing(elastic=elastic), closing=closing, pocket=None, darts=FLAT)
    pattern = draft.shorts(ZOO["stout"], style)
    (told,) = [note for note in pattern.garment.notes if note.startswith("elastic ends: ")]
    assert words in told
    assert "zigzag box" in told
    marks = [line for line in pattern.pieces["casing"].lines if line.note == "end of the elastic"]
    assert len(marks) == (0 if "over the other" in words else 2)
