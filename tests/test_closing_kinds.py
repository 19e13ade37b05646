"""Closings beyond the zip fly: what they promise, measured on the pieces; geometry is checked with shapely.

The numbers of the buttonhole rules were read in sewing manuals; those of the fly (F-1 to F-5) are common practice, as
in the tests of the zip fly.
"""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Point, Polygon
from zoo import ZOO

import draft
from draft.choices.bands import ContourBand, DrawstringBand, ElasticCasing, FacedWaist
from draft.choices.closings import ButtonFly, GrownOnFly, NoClosing, SideZip
from draft.style import Pleats

LAPS = ("left_over_right", "right_over_left")
BODIES = ("woman", "toddler", "very large", "stout")


def styled(closing, **more) -> draft.Style:
    return draft.Style(closing=closing, **more)


def shorts(body: str, closing, **more) -> draft.Pattern:
    return draft.shorts(ZOO[body], styled(closing, **more))


def line(path) -> LineString:
    return LineString([(p.real, p.imag) for p in path.points(0.01)])


def marks(piece, kind):
    return [item for item in piece.lines if item.kind == kind]


def findings(pattern):
    """Findings but those that speak of the body's measures."""
    return [f for f in pattern.check() if f.code != "fit"]


def limit(error: draft.DraftError) -> int:
    return int(re.search(r"at (?:most|least) (\d+)", str(error)).group(1))


@pytest.mark.parametrize("lap", LAPS)
@pytest.mark.parametrize("garment", [draft.shorts, draft.trousers])
@pytest.mark.parametrize("body", ZOO)
def test_button_fly_sews_together_on_every_body(body, garment, lap):
    assert findings(garment(ZOO[body], styled(ButtonFly(lap=lap)))) == []


def maybe(low: int, high: int, often: tuple[int, int]) -> st.SearchStrategy[float | None]:
    """Nothing, a size that most fronts have room for, or any in the limits of the field."""
    return st.none() | st.integers(*often).map(float) | st.integers(low, high).map(float)


button_flies = st.builds(
    ButtonFly,
    lap=st.sampled_from(LAPS),
    width=maybe(20, 60, (34, 46)),
    length=maybe(40, 260, (50, 160)),
    shield_width=maybe(20, 70, (45, 60)),
    topstitch=maybe(12, 50, (24, 30)),
    facing_beyond=st.integers(10, 30),
    shield_beyond=st.integers(10, 40),
    button=maybe(8, 25, (8, 14)),
    button_thickness=st.sampled_from([0.5, 3.0, 10.0]),
    spacing=st.integers(20, 80),
)


@settings(max_examples=60, deadline=None)
@given(button_flies, st.sampled_from(BODIES), st.sampled_from([15.0, 40.0, 60.0]))
def test_any_button_fly_sews_together_or_says_what_is_wrong(closing, body, depth):
    try:
        pattern = shorts(body, closing, band=draft.StraightBand(depth=depth))
    except draft.DraftError:
        return
    assert findings(pattern) == []
    assert_buttons_meet_their_holes(pattern)


@pytest.fixture(params=[(body, lap) for body in BODIES for lap in LAPS], scope="module", ids="-".join)
def button_fly(request) -> draft.Pattern:
    body, lap = request.param
    return shorts(body, ButtonFly(lap=lap))


def assert_buttons_meet_their_holes(pattern):
    """Centre front on centre front, each button lies 3 from the outer end of its buttonhole (read in two manuals)."""
    stand, shield, front = (pattern.pieces[n] for n in ("fly_buttonholes", "fly_shield", "front"))
    fold = line(stand.edge("fold").path)
    holes = [item.path for item in marks(stand, "buttonhole")]
    crosses = [item.path for item in marks(shield, "button")][::2]
    assert len(holes) == len(crosses) >= 1
    top = "under" if pattern.style.closing.lap == "left_over_right" else "fly"
    edge = line(shield.edge(top).path)
    waist_level = line(shield.edge("waist").path)
    set_back = pattern.pieces["fly_facing"].edge("waist").length - stand.edge("waist").length
    for hole, cross in zip(holes, crosses, strict=True):
        ends = sorted(fold.distance(Point(p.real, p.imag)) + set_back for p in (hole.start, hole.end))
        centre = (cross.start + cross.end) / 2
        at = Point(centre.real, centre.imag)
        assert edge.distance(at) - ends[0] == pytest.approx(3.0, abs=0.05)
        # Height: the button below the shield's waist edge, the hole below the waist corner of the front.
        corner, along = front.edge("fly").end, -front.edge("fly").end_dir
        sign = 1 if pattern.style.closing.lap == "left_over_right" else -1
        middle = (hole.start + hole.end) / 2
        middle = middle if sign == 1 else complex(2 * corner.real - middle.real, middle.imag)
        down = ((middle - corner) / along).real
        assert waist_level.distance(at) == pytest.approx(down, abs=0.05)


def test_buttons_lie_under_their_buttonholes(button_fly):
    assert_buttons_meet_their_holes(button_fly)


def test_buttonhole_is_as_long_as_diameter_and_thickness():
    """Length of a buttonhole: diameter plus thickness (read in a sewing manual)."""
    pattern = shorts("woman", ButtonFly(button=14, button_thickness=4, topstitch=34))
    for item in marks(pattern.pieces["fly_buttonholes"], "buttonhole"):
        assert item.path.length == pytest.approx(18.0)


def test_overlap_reaches_half_a_button_and_six_beyond_its_centre(button_fly):
    """Lap beyond the centre of the button: half the diameter and 6 at least (read in a sewing manual)."""
    level = marks(button_fly.pieces["fly_shield"], "button")[0].path
    top = "under" if button_fly.style.closing.lap == "left_over_right" else "fly"
    centre = (level.start + level.end) / 2
    lap = line(button_fly.pieces["fly_shield"].edge(top).path).distance(Point(centre.real, centre.imag))
    assert lap >= level.length / 2 + 6 - 0.01


def test_buttonholes_keep_clear_of_the_topstitching(button_fly):
    """3 mm (common practice, no source), measured in the frame of the front."""
    front, stand = button_fly.pieces["front"], button_fly.pieces["fly_buttonholes"]
    (topstitch,) = marks(front, "topstitch")
    corner, mirrored = front.edge("fly").end, button_fly.style.closing.lap == "right_over_left"
    for item in marks(stand, "buttonhole"):
        ends = [complex(2 * corner.real - p.real, p.imag) if mirrored else p for p in item.path.points(0.1)]
        hole = LineString([(p.real, p.imag) for p in ends])
        # Square across the fly it is 3; towards the curve below the nearest place lies a little aside.
        assert line(topstitch.path).distance(hole) >= 2.0


def test_buttons_are_spread_evenly_from_the_button_of_the_band():
    pattern = shorts("woman", ButtonFly(spacing=35), band=draft.StraightBand(depth=30))
    places = [(i.path.start + i.path.end) / 2 for i in marks(pattern.pieces["fly_shield"], "button")[::2]]
    steps = [abs(b - a) for a, b in pairwise(places)]
    waist = line(pattern.pieces["fly_shield"].edge("waist").path)
    first = waist.distance(Point(places[0].real, places[0].imag))
    assert [first + 15.0, *steps] == pytest.approx([steps[0]] * (len(steps) + 1), abs=0.05)
    assert steps[0] == pytest.approx(35, abs=35 / 2 / len(steps))


def test_without_a_button_on_the_band_the_row_begins_below_the_waist_seam():
    """Its edge 6 below the seam (common practice, no source)."""
    pattern = shorts("woman", ButtonFly(), band=FacedWaist())
    cross = marks(pattern.pieces["fly_shield"], "button")[0].path
    waist = line(pattern.pieces["fly_shield"].edge("waist").path)
    centre = (cross.start + cross.end) / 2
    assert waist.distance(Point(centre.real, centre.imag)) == pytest.approx(cross.length / 2 + 6, abs=0.05)
    assert not any("besides" in note for note in pattern.garment.notes)
    assert findings(pattern) == []


def test_more_buttons_when_they_lie_closer():
    counts = [
        len(marks(shorts("woman", ButtonFly(spacing=s)).pieces["fly_buttonholes"], "buttonhole")) for s in (60, 30)
    ]
    assert counts[0] < counts[1]


def test_stand_is_the_facing_from_its_fold_outwards(button_fly):
    stand, facing = (button_fly.pieces[n] for n in ("fly_buttonholes", "fly_facing"))
    inner, outer = (Polygon([(p.real, p.imag) for p in piece.sew_line.points(0.01)]) for piece in (stand, facing))
    assert outer.buffer(0.05).covers(inner)
    assert stand.cut.on_fold


def test_shield_covers_the_buttonholes_from_behind(button_fly):
    """F-4: at least the length of the facing, and 5 wider than the topstitching."""
    shield, facing = button_fly.pieces["fly_shield"], button_fly.pieces["fly_facing"]
    assert shield.edge("fly").length >= facing.edge("fly").length + facing.edge("tail").length
    (topstitch,) = marks(button_fly.pieces["front"], "topstitch")
    across = abs(topstitch.path.start - button_fly.pieces["front"].edge("waist").start)
    assert shield.edge("waist").length / 2 >= across + 5


def test_underlapping_front_of_a_button_fly_has_no_fold():
    front = shorts("woman", ButtonFly(), hem=draft.TurnedCuff()).pieces["front"]
    assert not [item for item in front.lines if "fold" in item.note]
    assert {n.match for n in front.notches if n.edge == "fly"} == {"fly stop"}


def test_stand_is_interfaced_when_the_style_asks_for_it():
    assert "fly_buttonholes_interfacing" in shorts("woman", ButtonFly()).pieces
    assert "fly_buttonholes_interfacing" not in shorts("woman", ButtonFly(), interfacing=False).pieces


def test_notes_name_number_and_size_of_the_buttons(button_fly):
    count = len(marks(button_fly.pieces["fly_buttonholes"], "buttonhole"))
    (note,) = [n for n in button_fly.garment.notes if n.startswith("fly buttons: ") and "besides" in n]
    assert note.split()[2] == str(count)
    assert any("choke" in n for n in button_fly.garment.notes)


@pytest.mark.parametrize("body", BODIES)
def test_largest_button_named_in_the_error_works(body):
    with pytest.raises(draft.DraftError, match=r"style.closing.button is .* at most \d+ mm") as caught:
        shorts(body, ButtonFly(button=25))
    assert findings(shorts(body, ButtonFly(button=limit(caught.value)))) == []


@pytest.mark.parametrize("body", BODIES)
def test_narrowest_topstitching_named_in_the_error_works(body):
    with pytest.raises(draft.DraftError, match=r"style.closing.topstitch is .* at least \d+ mm") as caught:
        shorts(body, ButtonFly(topstitch=12))
    assert findings(shorts(body, ButtonFly(topstitch=limit(caught.value)))) == []


# Grown-on fly


@pytest.mark.parametrize("lap", LAPS)
@pytest.mark.parametrize("garment", [draft.shorts, draft.trousers])
@pytest.mark.parametrize("body", ZOO)
def test_grown_on_fly_sews_together_on_every_body(body, garment, lap):
    assert findings(garment(ZOO[body], styled(GrownOnFly(lap=lap)))) == []


@settings(max_examples=60, deadline=None)
@given(
    st.builds(
        GrownOnFly,
        lap=st.sampled_from(LAPS),
        width=maybe(20, 60, (34, 46)),
        length=maybe(40, 260, (50, 160)),
        shield_width=maybe(20, 70, (45, 60)),
        topstitch=maybe(12, 50, (24, 30)),
        facing_beyond=st.integers(10, 30),
        shield_beyond=st.integers(10, 40),
        under=st.integers(10, 20),
    ),
    st.sampled_from(BODIES),
    st.booleans(),
)
def test_any_grown_on_fly_sews_together_or_says_what_is_wrong(closing, body, pocket):
    try:
        pattern = shorts(body, closing, pocket=draft.CurvedPocket() if pocket else None)
    except draft.DraftError:
        return
    assert findings(pattern) == []


def mirrored_in(points, a, b):
    way = (b - a) / abs(b - a)
    return [a + way * ((p - a) / way).conjugate() for p in points]


@pytest.mark.parametrize("body", BODIES)
def test_f5_extension_folded_back_lies_on_the_front(body):
    """F-5: reflected in the centre front, the top of the extension lands on the waist, and the rest on the front."""
    pattern = shorts(body, GrownOnFly(), pocket=None)
    front = pattern.pieces["front"]
    fold, cut = front.edge("fly").path, Polygon([(p.real, p.imag) for p in front.cut_line.points(0.01)])
    a, b = fold.start, fold.end
    way = (b - a) / abs(b - a)
    placed = [(p, (p - a) / way) for p in front.cut_line.points(0.01)]  # along the fold upwards, front to the left
    beyond = [p for p, at in placed if at.imag < -1 and at.real > -0.01]
    assert max(-((p - a) / way).imag for p in beyond) == pytest.approx(front.edge("fly").allowance, abs=0.05)
    images = mirrored_in(beyond, a, b)
    assert max(cut.distance(Point(p.real, p.imag)) for p in images) <= 0.05
    top = [p for p in images if ((p - b) / way).real > -1]
    assert max(cut.exterior.distance(Point(p.real, p.imag)) for p in top) <= 0.1


@pytest.mark.parametrize("body", BODIES)
def test_f1_fold_of_the_extension_is_straight(body):
    """F-1: within 2 of its chord, from the waist to the end of the extension."""
    fold = shorts(body, GrownOnFly()).pieces["front"].edge("fly").path
    chord = LineString([(fold.start.real, fold.start.imag), (fold.end.real, fold.end.imag)])
    assert max(chord.distance(Point(p.real, p.imag)) for p in fold.points(0.05)) <= 2.0


@pytest.mark.parametrize("body", BODIES)
def test_f2_forty_of_crotch_seam_remain_below_the_stop_of_a_grown_on_fly(body):
    assert shorts(body, GrownOnFly()).pieces["front"].edge("crotch").length >= 40


def test_extension_runs_on_below_the_stop_and_past_the_topstitching():
    pattern = shorts("woman", GrownOnFly(facing_beyond=18))
    front = pattern.pieces["front"]
    (stop,) = [n for n in front.notches if n.edge == "fly"]
    assert (stop.match, stop.along) == ("zip stop", 18)
    (topstitch,) = marks(front, "topstitch")
    across = abs(topstitch.path.start - front.edge("waist").start)
    assert front.edge("fly").allowance >= across + 5


def test_grown_on_fly_needs_no_facing_but_its_interfacing():
    pattern = shorts("woman", GrownOnFly())
    assert "fly_facing" not in pattern.pieces
    assert pattern.pieces["fly_extension_interfacing"].cut.cloth == "interfacing"
    assert "fly_extension_interfacing" not in shorts("woman", GrownOnFly(), interfacing=False).pieces


@pytest.mark.parametrize(("lap", "kept", "cut"), [(LAPS[0], "left", "right"), (LAPS[1], "right", "left")])
def test_underlapping_front_is_cut_off_past_the_centre_front(lap, kept, cut):
    pattern = shorts("woman", GrownOnFly(lap=lap, under=12))
    front = pattern.pieces["front"]
    (guide,) = [item for item in front.lines if item.note == f"cut off, {cut} front only"]
    fly = line(front.edge("fly").path)
    assert fly.distance(line(guide.path)) == pytest.approx(12, abs=0.01)
    (note,) = [n for n in pattern.garment.notes if n.startswith("fly:")]
    assert f"the {kept} front keeps" in note
    assert "12 mm" in note


def test_front_crotch_of_a_grown_on_fly_is_that_of_the_zip_fly():
    sizes = [shorts("woman", closing).measure()["front_crotch"] for closing in (draft.FlyFront(), GrownOnFly())]
    assert sizes[0] == pytest.approx(sizes[1], abs=1e-6)


@pytest.mark.parametrize("body", BODIES)
def test_longest_grown_on_fly_named_in_the_error_works(body):
    with pytest.raises(draft.DraftError, match=r"style.closing.length is 260.0, expected at most \d+ mm") as caught:
        shorts(body, GrownOnFly(length=260))
    assert findings(shorts(body, GrownOnFly(length=limit(caught.value)))) == []


# Zip at the side

SIDE_BAND = draft.StraightBand(underlap=30)


@pytest.mark.parametrize("insertion", ["concealed", "lapped"])
@pytest.mark.parametrize("garment", [draft.shorts, draft.trousers])
@pytest.mark.parametrize("body", ZOO)
def test_side_zip_sews_together_on_every_body(body, garment, insertion):
    style = styled(SideZip(insertion=insertion), pocket=None, band=SIDE_BAND)
    assert findings(garment(ZOO[body], style)) == []


@settings(max_examples=60, deadline=None)
@given(
    st.builds(SideZip, length=maybe(60, 300, (60, 160)), insertion=st.sampled_from(["concealed", "lapped"])),
    st.sampled_from(BODIES),
    st.builds(
        draft.StraightBand,
        underlap=st.integers(24, 60),
        overlap=st.integers(0, 60),
        eased=st.integers(0, 20),
        depth=st.integers(20, 60),
    ),
)
def test_any_side_zip_sews_together_or_says_what_is_wrong(closing, body, band):
    try:
        pattern = shorts(body, closing, pocket=None, band=band)
    except draft.DraftError:
        return
    assert findings(pattern) == []


@pytest.mark.parametrize("body", BODIES)
def test_zip_stop_lies_at_one_distance_on_front_and_back(body):
    pattern = shorts(body, SideZip(), pocket=None, band=SIDE_BAND)
    stops = [n for part in ("front", "back") for n in pattern.pieces[part].notches if n.match == "zip stop"]
    assert len(stops) == 2
    assert stops[0].along == stops[1].along
    (note,) = [n for n in pattern.garment.notes if n.startswith("zip: concealed")]
    assert stops[0].along - 15 <= float(note.split()[2]) <= stops[0].along - 5


def test_front_of_a_side_zip_is_sewn_up_to_the_waist():
    pattern = shorts("woman", SideZip(), pocket=None, band=SIDE_BAND)
    front = pattern.pieces["front"]
    assert "fly" not in [e.name for e in front.edges]
    assert front.edge("crotch").length == pytest.approx(pattern.shell.front.crotch.length)
    assert pattern.measure()["front_crotch"] == pytest.approx(pattern.shell.front.crotch.length)


def test_band_of_a_side_zip_begins_and_ends_at_the_left_side_seam():
    """From the underlapping back end: underlap, two backs, two fronts, overlap; the waist as with a fly."""
    pattern = shorts("woman", SideZip(), pocket=None, band=draft.StraightBand(underlap=30, overlap=10))
    band, front, back = (pattern.pieces[n] for n in ("waistband", "front", "back"))
    places = {n.match: p[0].on_seam.real for n, p in band.notch_places if n.count == 1}
    start = band.edge("waist").start.real
    f, b = front.edge("waist").length, back.edge("waist").length
    assert places["side seam of the back"] - start == pytest.approx(30)
    assert places["other side seam"] - start == pytest.approx(30 + 2 * b)
    assert places["centre front"] - start == pytest.approx(30 + 2 * b + f)
    assert places["side seam"] - start == pytest.approx(30 + 2 * b + 2 * f)
    assert band.edge("waist").length == pytest.approx(40 + 2 * b + 2 * f)
    fly = shorts("woman", draft.FlyFront(), pocket=None)
    assert pattern.measure()["waist"] == pytest.approx(fly.measure()["waist"])


def test_lapped_zip_is_topstitched_beside_the_seam():
    pattern = shorts("woman", SideZip(insertion="lapped"), pocket=None, band=SIDE_BAND)
    front = pattern.pieces["front"]
    (topstitch,) = marks(front, "topstitch")
    side = line(front.edge("side").path)
    assert [side.distance(Point(p.real, p.imag)) for p in topstitch.path.points(1)] == pytest.approx(
        [10.0] * len(topstitch.path.points(1)), abs=0.05
    )


def test_side_zip_beside_a_pocket_in_the_side_seam_is_refused():
    with pytest.raises(draft.DraftError, match=r"style.pocket .* leaves the side seam whole"):
        shorts("woman", SideZip(), band=SIDE_BAND)


@pytest.mark.parametrize("band", [FacedWaist(), ElasticCasing(), DrawstringBand()])
def test_bands_that_do_not_open_at_the_side_refuse_a_side_zip(band):
    with pytest.raises(draft.DraftError, match=rf"style.band is '{type(band).__name__}', expected a StraightBand"):
        shorts("stout", SideZip(), band=band, pocket=None, darts=draft.Darts(back=0))


SIDE_SECTIONS = {
    "straight": draft.StraightBand(underlap=30, overlap=10, sections="side_seams"),
    "contour": ContourBand(underlap=35, overlap=10),
}


@pytest.mark.parametrize("lap", ["left_over_right", "right_over_left"])
@pytest.mark.parametrize("garment", [draft.shorts, draft.trousers])
@pytest.mark.parametrize("band", SIDE_SECTIONS)
def test_bands_in_sections_open_at_the_left_side_on_every_body(band, garment, lap):
    for body in ZOO.values():
        for drop in (0.0, 20.0):
            style = draft.Style(closing=SideZip(lap=lap), band=SIDE_SECTIONS[band], pocket=None, waist_drop=drop)
            pattern = garment(body, style)
            assert findings(pattern) == []
            runs = [seam for seam in pattern.seams if seam.name.startswith("waist, ")]
            assert len(runs) == 4
            assert sum(seam.length_b for seam in runs) == pytest.approx(pattern.measure()["waist"], abs=0.01)


@pytest.mark.parametrize(("lap", "front", "back"), [("left_over_right", 10, 35), ("right_over_left", 35, 10)])
def test_lap_says_which_end_of_the_band_lies_on_top_at_the_side(lap, front, back):
    """What runs past the side seam: the overlap on the part on top, the underlap on the other (geometry)."""
    for band in (
        draft.StraightBand(underlap=35, overlap=10, sections="side_seams"),
        ContourBand(underlap=35, overlap=10),
    ):
        pattern = shorts("woman", SideZip(lap=lap), band=band, pocket=None)
        for part, past in (("front", front), ("back", back)):
            on_leg = 2 * pattern.pieces[part].edge("waist").length
            assert pattern.pieces[f"waistband_{part}"].edge("waist").length - on_leg == pytest.approx(past, abs=0.01)
        over = "front" if front < back else "back"
        kinds = {p.name: {line.kind for line in p.lines} for p in pattern.pieces.values() if p.cut.cloth == "self"}
        under = "back" if over == "front" else "front"
        assert "buttonhole" in kinds[f"waistband_{over}"]
        assert "button" in kinds[f"waistband_{under}"]
        assert any(f"the {over} over the {under}" in note for note in pattern.garment.notes)


def test_sections_at_the_side_lie_flat_on_each_other_when_closed():
    """Button and buttonhole of a band in sections are as far from the left side seam as each other, within 3."""
    pattern = shorts("woman", SideZip(), band=SIDE_SECTIONS["straight"], pocket=None)
    front, back = (pattern.pieces[f"waistband_{part}"] for part in ("front", "back"))
    hole = next(item.path for item in front.lines if item.kind == "buttonhole")
    button = next(item.path for item in back.lines if item.kind == "button")
    seam_front = front.edge("waist").point_at(next(n.along for n in front.notches if n.match == "side seam"))
    seam_back = back.edge("waist").point_at(next(n.along for n in back.notches if n.match == "side seam of the back"))
    outer_end = max(hole.start.real, hole.end.real)
    centre = (button.start + button.end) / 2
    assert (outer_end - seam_front.real) - (centre.real - seam_back.real) == pytest.approx(3, abs=0.01)


def test_back_of_a_contour_band_has_no_seam_with_a_zip_at_the_side():
    with pytest.raises(draft.DraftError, match=r"style.band.back is 'seam', expected 'fold'"):
        shorts("woman", SideZip(), band=ContourBand(underlap=35, back="seam"), pocket=None)


def test_lapped_zip_lies_under_the_front_only():
    with pytest.raises(draft.DraftError, match=r"style.closing.lap .* expected 'left_over_right'"):
        shorts("woman", SideZip(insertion="lapped", lap="right_over_left"), band=SIDE_BAND, pocket=None)


@pytest.mark.parametrize("body", ["woman", "toddler", "stout"])
def test_longest_side_zip_named_in_the_error_works(body):
    with pytest.raises(draft.DraftError, match=r"style.closing.length is 300.0, expected at most \d+ mm") as caught:
        shorts(body, SideZip(length=300), pocket=None, band=SIDE_BAND)
    longest = limit(caught.value)
    assert findings(shorts(body, SideZip(length=longest), pocket=None, band=SIDE_BAND)) == []


# No closing


@pytest.mark.parametrize("garment", [draft.shorts, draft.trousers])
@pytest.mark.parametrize("body", ZOO)
def test_garment_without_closing_sews_together_on_every_body(body, garment):
    """With an elastic waist as wide as the hip, where the body's waist is narrower."""
    b = ZOO[body]
    room = draft.Ease(waist=min(300, max(0, b.hip - b.waist + 10)))
    style = styled(NoClosing(), band=ElasticCasing(), ease=room, darts=draft.Darts(front=0, back=0))
    pattern = garment(b, style)
    assert findings(pattern) == []
    assert pattern.measure()["front_crotch"] == pytest.approx(pattern.shell.front.crotch.length)


def test_nothing_lies_under_a_waist_without_closing():
    pattern = shorts("stout", NoClosing(), band=ElasticCasing(), darts=draft.Darts(back=0))
    assert not [name for name in pattern.pieces if name.startswith("fly")]
    assert pattern.pieces["front"].lines == tuple(i for i in pattern.pieces["front"].lines if i.kind != "topstitch")
    assert [j.a for j in pattern.joints if j.name == "waist at the centre front"] == [("front", "crotch")]
    assert any("hip of 1120 mm" in n for n in pattern.garment.notes)


def test_band_with_a_button_refuses_a_waist_without_closing():
    with pytest.raises(draft.DraftError, match=r"style.closing .* expected one that opens"):
        shorts("woman", NoClosing())


@pytest.mark.parametrize(
    ("closing", "more"),
    [
        (ButtonFly(), {}),
        (GrownOnFly(), {}),
        (SideZip(), {"pocket": None, "band": SIDE_BAND}),
        (NoClosing(), {"band": ElasticCasing(), "ease": draft.Ease(waist=280)}),
    ],
    ids=lambda value: type(value).__name__,
)
def test_pleats_are_marked_with_every_closing(closing, more):
    pleated = shorts("woman", closing, pleats=Pleats(), darts=draft.Darts(front=0, back=0), **more)
    plain = shorts("woman", closing, darts=draft.Darts(front=0, back=0), **more)
    assert findings(pleated) == []
    assert len(pleated.pieces["front"].lines) > len(plain.pieces["front"].lines)


def test_side_zip_beside_a_pocket_mouth_in_the_side_seam_is_refused():
    """Both would open the left side seam at the same place."""
    style = draft.Style(closing=SideZip(), pocket=draft.InSeamPocket(), band=draft.StraightBand(underlap=30))
    with pytest.raises(draft.DraftError, match=r"style\.pocket is InSeamPocket.*leaves the side seam whole"):
        draft.shorts(ZOO["woman"], style)


@pytest.mark.parametrize("band", [draft.StraightBand(), ContourBand()])
@pytest.mark.parametrize("body", BODIES)
def test_side_zip_brings_an_underlap_for_the_band(band, body):
    """30 mm carry the usual button: common practice, no source."""
    style = draft.Style(closing=SideZip(), pocket=None, band=band)
    assert draft.trousers(ZOO[body], style).check() == []
