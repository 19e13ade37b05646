"""Flat hook and bar instead of a button: they lie on each other when the band is closed, nothing is seen outside.

"Read": a construction sheet of the trade. Geometry needs no source.
"""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from zoo import ZOO

import draft

LAPS = ("left_over_right", "right_over_left")
STRAIGHT = draft.StraightBand(fastener="hook")
SECTIONS = draft.StraightBand(fastener="hook", sections="side_seams", overlap=20)
CONTOUR = draft.ContourBand(fastener="hook")
TAB = draft.ContourBand(fastener="hook", overlap=45, depth=50)
BANDS = {"straight": STRAIGHT, "sections": SECTIONS, "contour": CONTOUR, "contour, tab": TAB}
CLOSINGS = {"fly": draft.FlyFront, "side zip": draft.SideZip}


def drafted(band, closing: str = "fly", lap: str = LAPS[0], body: str = "woman", garment=draft.shorts):
    if closing == "side zip":
        band = replace(band, underlap=40)
    return garment(ZOO[body], draft.Style(band=band, closing=CLOSINGS[closing](lap=lap), pocket=None))


def marks(pattern, note):
    """Name of the piece and middle of the mark."""
    ((name, path),) = [
        (piece.name, line.path) for piece in pattern.pieces.values() for line in piece.lines if line.note == note
    ]
    return name, (path.start + path.end) / 2


def across_opening(pattern, name, at, what: str) -> float:
    """Distance of a mark from the end of its piece that is given by an edge, mm."""
    edge = pattern.pieces[name].edge(what).path
    way = edge.end - edge.start
    return abs(((at - edge.start) / way).imag * abs(way))


@pytest.mark.parametrize("closing", CLOSINGS)
@pytest.mark.parametrize("lap", LAPS)
@pytest.mark.parametrize("band", BANDS)
@pytest.mark.parametrize("body", ZOO)
def test_hooked_bands_sew_on_every_body(body, band, lap, closing):
    pattern = drafted(BANDS[band], closing, lap, body)
    assert [f for f in pattern.check() if f.code != "fit"] == []
    kinds = {line.kind for piece in pattern.pieces.values() for line in piece.lines}
    assert not kinds & {"button", "buttonhole"}
    assert any(note.startswith("hook and bar: 1 flat hook") for note in pattern.garment.notes)


@pytest.mark.parametrize("closing", CLOSINGS)
@pytest.mark.parametrize("lap", LAPS)
@pytest.mark.parametrize("overlap", [0.0, 20.0])
def test_hook_and_bar_of_a_straight_band_meet_on_its_strip(lap, closing, overlap):
    """Closed, the overlap's end lies one waist seam further on: hook and bar are that far apart, at one height."""
    pattern = drafted(replace(STRAIGHT, overlap=overlap), closing, lap)
    (hook_on, hook), (bar_on, bar) = marks(pattern, "hook, inside"), marks(pattern, "bar")
    assert hook_on == bar_on == "waistband"
    assert abs(hook.real - bar.real) == pytest.approx(pattern.measure()["waist"], abs=0.01)
    depth = pattern.style.band.depth
    assert hook.imag == pytest.approx(2 * depth - bar.imag)  # the inner half, folded, comes to lie there


@pytest.mark.parametrize("band", BANDS)
@pytest.mark.parametrize("closing", CLOSINGS)
@pytest.mark.parametrize("lap", LAPS)
def test_hook_is_centred_10_from_the_end_that_lies_on_top(band, closing, lap):
    """Centred 10 from the end of the overlap (read)."""
    pattern = drafted(BANDS[band], closing, lap)
    name, at = marks(pattern, "hook, inside")
    ends = [edge.name for edge in pattern.pieces[name].edges if edge.name.endswith("end")]
    assert min(across_opening(pattern, name, at, end) for end in ends) == pytest.approx(10, abs=0.01)


@pytest.mark.parametrize(("lap", "over", "under"), [(LAPS[0], "left", "right"), (LAPS[1], "right", "left")])
def test_hook_lies_on_the_inner_layer_of_the_overlap_and_the_bar_on_the_outer_of_the_underlap(lap, over, under):
    pattern = drafted(CONTOUR, lap=lap)
    assert marks(pattern, "hook, inside")[0] == f"waistband_{over}_inner"
    assert marks(pattern, "bar")[0] == f"waistband_{under}"
    pattern = drafted(CONTOUR, "side zip", lap)
    over, under = ("front", "back") if over == "left" else ("back", "front")
    assert marks(pattern, "hook, inside")[0] == f"waistband_{over}_inner"
    assert marks(pattern, "bar")[0] == f"waistband_{under}"


@pytest.mark.parametrize("overlap", [0.0, 15.0, 45.0])
def test_bar_of_a_contour_band_lies_as_far_from_the_centre_front_as_the_hook(overlap):
    """Hook: overlap less 10 beyond the centre front. Bar: as far on its own side of it, seen the other way."""
    pattern = drafted(replace(CONTOUR, overlap=overlap))
    for note, way in (("hook, inside", 1), ("bar", -1)):
        name, at = marks(pattern, note)
        piece = pattern.pieces[name]
        (notch,) = [n for n in piece.notches if n.match == "centre front"]
        waist = piece.edge("waist")
        foot, along = waist.point_at(notch.along), waist.direction_at(notch.along)
        beyond = ((at - foot) / along).real
        inwards = 1 if notch.along < waist.length / 2 else -1
        assert -way * inwards * beyond == pytest.approx(overlap - 10, abs=0.6)


@pytest.mark.parametrize(
    ("band", "field", "value", "least"),
    [
        (draft.StraightBand, "depth", 15.0, 19),
        (draft.StraightBand, "underlap", 8.0, 16),
        (draft.ContourBand, "underlap", 8.0, 16),
    ],
)
def test_band_without_room_for_hook_or_bar_is_refused_with_a_limit(band, field, value, least):
    with pytest.raises(draft.DraftError, match=rf"style\.band\.{field} .* at least {least} mm") as told:
        drafted(band(fastener="hook", **{field: value}))
    limit = float(re.search(r"[\d.]+", told.value.expected)[0])
    assert drafted(band(fastener="hook", **{field: limit})).check() == []


def test_row_of_a_button_fly_begins_below_the_seam_under_a_hooked_band():
    style = draft.Style(closing=draft.ButtonFly(), band=STRAIGHT)
    pattern = draft.shorts(ZOO["woman"], style)
    assert pattern.check() == []
    assert not any("besides the button of the band" in note for note in pattern.garment.notes)
    assert any(
        "besides the button of the band" in n
        for n in draft.shorts(ZOO["woman"], replace(style, band=draft.StraightBand())).garment.notes
    )
