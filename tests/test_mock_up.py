"""Mock-up: the same sizes, fewer pieces, wide allowances; and the sheet to write on."""

from __future__ import annotations

from xml.etree import ElementTree

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from styles import NAMED, styles
from zoo import MAN, TODDLER, WOMAN, ZOO

import draft
from draft.advice.symptoms import SHORT_LIST, SYMPTOMS
from draft.drawing.label import advance
from draft.export import svg
from draft.geometry.polygon import inside

SIZE_TOL_MM = 0.1
BOLD_WIDER = 1.15
MARKED = {
    "curved": draft.Style(),
    "slanted": draft.Style(pocket=draft.SlantedPocket()),
    "in the seam": draft.Style(pocket=draft.InSeamPocket()),
    "patch": draft.Style(pocket=draft.FrontPatchPocket()),
}


def drafted(make, body, style):
    try:
        return make(body, style)
    except draft.DraftError:
        pytest.skip("this body has no room for that style")


def assert_same_sizes(mock_up, pattern):
    sizes = pattern.measure()
    assert list(mock_up.measure()) == list(sizes)
    for name, value in sizes.items():
        assert abs(mock_up.measure()[name] - value) < SIZE_TOL_MM, name


@pytest.mark.parametrize("make", [draft.shorts, draft.trousers], ids=["shorts", "trousers"])
@pytest.mark.parametrize("style", NAMED)
def test_every_style_has_a_mock_up_of_its_own_sizes(make, style):
    pattern = drafted(make, WOMAN, NAMED[style])
    mock_up = pattern.mock_up()
    assert_same_sizes(mock_up, pattern)
    assert mock_up.check() == []


@pytest.mark.parametrize("body", ZOO)
def test_every_body_has_a_mock_up_of_its_own_sizes(body):
    for make in (draft.shorts, draft.trousers):
        pattern = drafted(make, ZOO[body], draft.Style(yoke=draft.Yoke(centre=60, side=35)) if body == "man" else None)
        mock_up = pattern.mock_up()
        assert_same_sizes(mock_up, pattern)
        assert [f for f in mock_up.check() if f.code != "fit"] == []


@settings(max_examples=40, deadline=None)
@given(st.sampled_from(sorted(ZOO)), styles())
def test_any_style_has_a_mock_up_without_findings(body, style):
    try:
        pattern = draft.shorts(ZOO[body], style)
    except draft.DraftError:
        return
    if [f for f in pattern.check() if f.code != "fit"]:
        return
    mock_up = pattern.mock_up()
    assert_same_sizes(mock_up, pattern)
    assert [f for f in mock_up.check() if f.code != "fit"] == []


def test_only_what_is_worth_sewing_is_cut():
    style = draft.Style(
        yoke=draft.Yoke(), band=draft.ContourBand(), small_parts=(draft.BeltLoops(),), closing=draft.ButtonFly()
    )
    pieces = draft.shorts(WOMAN, style).mock_up().pieces
    assert list(pieces) == ["front", "back", "back_yoke", "waistband_left", "waistband_right", "waistband_back"]
    assert {piece.cut.cloth for piece in pieces.values()} == {"self"}


def test_a_faced_waist_is_left_without_its_facing():
    assert list(draft.shorts(WOMAN, draft.Style(band=draft.FacedWaist())).mock_up().pieces) == ["front", "back"]


# Widths: common practice, no source.
def test_allowances_are_wide_where_notes_let_out():
    pieces = draft.shorts(WOMAN).mock_up().pieces
    front = {edge.name: edge.allowance for edge in pieces["front"].edges}
    back = {edge.name: edge.allowance for edge in pieces["back"].edges}
    assert front == {"side": 25, "hem": 50, "inseam": 20, "crotch": 10, "fly": 25, "waist": 25}
    assert back == {"side": 25, "hem": 50, "inseam": 20, "crotch": 10, "seat": 30, "waist": 25}


def test_allowances_can_be_chosen():
    pieces = draft.shorts(WOMAN).mock_up(side="2 cm", inseam=15, waist=20, seat=40, hem="3 cm").pieces
    back = {edge.name: edge.allowance for edge in pieces["back"].edges}
    assert back == {"side": 20, "hem": 30, "inseam": 15, "crotch": 10, "seat": 40, "waist": 20}


def test_the_yoke_carries_the_outlet_of_the_seat():
    pieces = draft.shorts(WOMAN, draft.Style(yoke=draft.Yoke())).mock_up().pieces
    assert pieces["back_yoke"].edge("crotch").allowance == 30
    assert pieces["back"].edge("crotch").allowance == 10


def test_the_hem_is_shallow_on_a_very_short_leg():
    shorts = draft.shorts(WOMAN, draft.Style(leg=draft.Leg(inside_leg=61), pocket=None, hem=draft.PlainHem(depth=15)))
    assert shorts.mock_up().pieces["back"].edge("hem").allowance == 36
    assert shorts.mock_up().check() == []


@pytest.mark.parametrize("wrong", [{"side": 90}, {"seat": 90}, {"hem": 5}, {"waist": "wide"}, {"hem": "1 ell"}])
def test_allowances_outside_their_limits_are_refused(wrong):
    (name,) = wrong
    with pytest.raises(draft.DraftError, match=rf"mock_up\.{name} is .*expected"):
        draft.shorts(WOMAN).mock_up(**wrong)


@pytest.mark.parametrize("body", ZOO)
def test_the_widest_allowances_leave_no_findings(body):
    mock_up = drafted(draft.shorts, ZOO[body], None).mock_up(side=40, inseam=40, waist=25, seat=50, hem=80)
    assert [f for f in mock_up.check() if f.code != "fit"] == []


@pytest.mark.parametrize("name", MARKED)
def test_the_front_is_whole_and_says_where_the_pocket_will_be(name):
    pattern = draft.shorts(WOMAN, MARKED[name])
    front = pattern.mock_up().pieces["front"]
    assert "mouth" not in [edge.name for edge in front.edges]
    assert abs(front.edge("waist").length - pattern.shell.front.waist.length) < 1e-6
    assert any(line.kind == "placement" for line in front.lines)


def test_the_mouth_line_is_the_mouth_of_the_garment():
    pattern = draft.shorts(WOMAN)
    lines = [line for line in pattern.mock_up().pieces["front"].lines if line.note == "pocket mouth"]
    (mouth,) = (edge.path for edge in pattern.pieces["front"].edges if edge.name == "mouth")
    assert np.abs(lines[0].path.points(0.5) - mouth.points(0.5)).max() < 1e-6


def test_back_pockets_are_marked():
    pattern = draft.shorts(WOMAN, draft.Style(back_pocket=draft.PatchPocket()))
    kinds = [line.kind for line in pattern.mock_up().pieces["back"].lines]
    assert "placement" in kinds


@pytest.mark.parametrize(("make", "knee"), [(draft.shorts, False), (draft.trousers, True)], ids=["shorts", "trousers"])
def test_level_lines_lie_on_the_levels_of_front_and_back(make, knee):
    pattern = make(WOMAN)
    for name in ("front", "back"):
        piece = pattern.mock_up().pieces[name]
        notes = {line.note: line.path for line in piece.lines if line.kind == "guide"}
        assert set(notes) == {"hip line", "crotch line", "crease, on the grain"} | ({"knee line"} if knee else set())
        for note, path in notes.items():
            if note.endswith(" line"):
                level = pattern.shell.levels[note.removesuffix(" line")]
                assert path.start.imag == path.end.imag == level
            points = path.points(1.0)
            assert inside(points[1:-1], piece.cut_line.points(0.5)).all()
        assert notes["crease, on the grain"].start.real == pattern.shell.crease


def test_level_lines_front_and_back_make_the_girth():
    pattern = draft.trousers(WOMAN)
    for name in ("hip", "knee"):
        lines = [
            line.path
            for piece in ("front", "back")
            for line in pattern.mock_up().pieces[piece].lines
            if line.note == f"{name} line"
        ]
        girth = sum(line.length for line in lines) * (2 if name == "hip" else 1)
        assert abs(girth - pattern.measure()[name]) < SIZE_TOL_MM


def test_notches_of_the_seams_are_kept():
    pattern = draft.trousers(WOMAN)
    for name in ("front", "back"):
        kept = {n.match for n in pattern.mock_up().pieces[name].notches}
        assert {"hip", "crotch", "knee", "inseam balance", f"{name} crotch balance"} <= kept


def test_every_label_says_mock_up():
    mock_up = draft.shorts(WOMAN).mock_up()
    assert all(piece.label[0].endswith("mock-up") for piece in mock_up.pieces.values())
    assert mock_up.name == "Shorts for woman, mock-up"
    assert "mock-up" in repr(mock_up)


def test_report_keeps_its_cautions():
    child = draft.shorts(TODDLER)
    report = child.mock_up().report()
    assert "Cutters, irons and needles hurt" in report
    assert "caution: pins" in report
    for note in child.garment.notes:
        if note.startswith(("child", "caution")):
            assert note in report


def test_a_mock_up_of_a_mock_up_is_that_of_its_pattern():
    pattern = draft.shorts(WOMAN)
    again = pattern.mock_up().mock_up(hem=30)
    assert again.source is pattern
    assert again.pieces["front"].edge("hem").allowance == 30
    assert any(line.note == "pocket mouth" for line in again.pieces["front"].lines)


def test_an_altered_garment_has_a_mock_up_of_its_own_sizes():
    pytest.importorskip("draft.alter")
    done = [draft.alteration("sway_back", by=10), draft.alteration("hip_ease", by=16), draft.alteration("contour_band")]
    pattern = draft.shorts(WOMAN, alterations=done)
    assert_same_sizes(pattern.mock_up(), pattern)
    assert pattern.mock_up().check() == []


def test_a_garment_with_unlike_sides_is_refused():
    pytest.importorskip("draft.alter")
    with pytest.raises(draft.DraftError, match="alike on both sides"):
        draft.shorts(WOMAN, alterations=[draft.alteration("high_hip", side="left", by=10)]).mock_up()


def test_the_pattern_itself_is_left_alone():
    pattern = draft.shorts(WOMAN)
    before = svg.text_of(pattern)
    pattern.mock_up()
    assert svg.text_of(pattern) == before


def test_a_mock_up_is_saved_as_any_pattern(tmp_path):
    mock_up = draft.shorts(WOMAN).mock_up()
    for path in (mock_up.save_svg(tmp_path / "a.svg"), mock_up.save_sheet(tmp_path / "b.svg")):
        ElementTree.parse(path)
    assert mock_up.save_dxf(tmp_path / "a.dxf", "astm").stat().st_size > 1000
    assert (tmp_path / "b.svg").read_text("utf-8") == mock_up.sheet()


SHEETS = {
    "shorts": draft.shorts(MAN),
    "trousers": draft.trousers(WOMAN),
    "long names": draft.trousers(
        draft.Body(waist=720, hip=980, crotch_depth=262, waist_to_hip=205, inside_leg=760, name="W <&> W" * 12),
        draft.Style(name="Wide working trousers " * 5),
    ),
}


def texts(sheet):
    root = ElementTree.fromstring(sheet)
    found = []
    for element in root.iter("{http://www.w3.org/2000/svg}text"):
        size, x, y = (float(element.get(name)) for name in ("font-size", "x", "y"))
        wide = advance(element.text) * size * (BOLD_WIDER if element.get("font-weight") else 1)
        left = x - wide if element.get("text-anchor") == "end" else x
        found.append((left, y - 0.8 * size, left + wide, y + 0.2 * size, element.text))
    return found


@pytest.mark.parametrize("name", SHEETS)
def test_texts_of_the_sheet_lie_on_the_page_and_not_on_each_other(name):
    placed = texts(SHEETS[name].mock_up().sheet())
    for i, (left, top, right, bottom, words) in enumerate(placed):
        assert left >= 5, words
        assert right <= 205, words
        assert 5 <= top < bottom <= 292, words
        for other in placed[i + 1 :]:
            assert right <= other[0] or other[2] <= left or bottom <= other[1] or other[3] <= top, (words, other[4])


@pytest.mark.parametrize("name", SHEETS)
def test_the_sheet_is_a4_in_mm_and_holds_the_drafted_sizes(name):
    pattern = SHEETS[name]
    sheet = pattern.mock_up().sheet()
    root = ElementTree.fromstring(sheet)
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("210mm", "297mm", "0 0 210 297")
    words = [text[4] for text in texts(sheet)]
    for size, value in pattern.measure().items():
        assert words[words.index(size.replace("_", " ")) + 1] == f"{value:.0f}"
    assert set(SHORT_LIST) <= set(words)
    assert {"date", "front", "back"} <= set(words)


def test_the_short_list_is_of_the_vocabulary():
    assert set(SHORT_LIST) <= set(SYMPTOMS)
    assert len(SHORT_LIST) >= 30


def test_the_sheet_is_the_same_every_time():
    assert draft.shorts(MAN).mock_up().sheet() == SHEETS["shorts"].mock_up().sheet()
