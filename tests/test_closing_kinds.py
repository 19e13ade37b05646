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
from draft.choices.bands import FacedWaist
from draft.choices.closings import ButtonFly

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
