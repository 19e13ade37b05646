"""Notebook pictures: read with xml.etree, and made of pieces that cannot be drawn."""

import re
from dataclasses import replace
from types import SimpleNamespace
from xml.etree import ElementTree

import numpy as np
import pytest
from styles import NAMED
from zoo import ZOO

import draft
from draft.drawing import view
from draft.edge import Edge
from draft.geometry.path import Path
from draft.geometry.segments import Line
from draft.piece import Cut, InnerLine, Notch, Piece

SHORTS = draft.shorts(ZOO["woman"])
SECTIONS = draft.trousers(ZOO["man"], NAMED["right over left, sections"])
PICTURES = {
    "shorts": (view.pattern_svg(SHORTS), 900),
    "trousers in sections": (view.pattern_svg(SECTIONS), 900),
    **{name: (view.piece_svg(piece), 480) for name, piece in (SHORTS.pieces | SECTIONS.pieces).items()},
}


def tag(element):
    return element.tag.rpartition("}")[2]


def words(text):
    return " ".join(e.text for e in ElementTree.fromstring(text).iter() if tag(e) == "text")


@pytest.fixture(params=PICTURES)
def picture(request):
    return PICTURES[request.param]


def test_pictures_fit_the_screen_and_keep_their_shape(picture):
    text, pixels = picture
    root = ElementTree.fromstring(text)
    width, height = float(root.get("width")), float(root.get("height"))
    left, top, wide, high = (float(v) for v in root.get("viewBox").split())
    assert (left, top, width) == (0, 0, pixels)
    assert height <= 1.5 * pixels
    assert width / height == pytest.approx(wide / high, rel=0.01)


def test_two_pictures_can_share_a_page(picture):
    for element in ElementTree.fromstring(picture[0]).iter():
        assert not {"id", "class", "href"} & set(element.keys())
        assert tag(element) in {"svg", "g", "title", "path", "rect", "text"}, "no script, no style sheet, no image"
        assert "url(" not in " ".join(element.attrib.values())


def test_everything_lies_in_the_picture(picture):
    root = ElementTree.fromstring(picture[0])
    wide, high = (float(v) for v in root.get("viewBox").split()[2:])
    for path in (e for e in root.iter() if tag(e) == "path"):
        numbers = [float(n) for n in re.findall(r"-?\d+\.\d+", re.sub(r"A[\d.,]+ 0 1 0", "", path.get("d")))]
        assert min(numbers) >= 0
        assert max(numbers[::2]) <= wide
        assert max(numbers[1::2]) <= high


def luminance(colour):
    """Relative luminance of WCAG 2.1 (from memory)."""
    parts = np.array([int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)])
    linear = np.where(parts <= 0.03928, parts / 12.92, ((parts + 0.055) / 1.055) ** 2.4)
    return float(linear @ (0.2126, 0.7152, 0.0722))


def test_every_colour_stands_out_on_white_and_on_dark():
    """WCAG 2.1 asks for 3 between a graphic and its ground (from memory); the pictures keep 4."""
    text = PICTURES["shorts"][0] + view.pattern_svg(None)
    colours = set(re.findall(r"#[0-9a-f]{6}", text))
    assert len(colours) >= 5
    for colour in colours:
        here, dark = luminance(colour), luminance("#111111")
        assert 1.05 / (here + 0.05) >= 4, colour
        assert (here + 0.05) / (dark + 0.05) >= 4, colour


def test_nothing_paints_the_background_and_hairlines_stay_hairlines(picture):
    for element in ElementTree.fromstring(picture[0]).iter():
        if tag(element) in ("path", "rect"):
            assert element.get("fill") == "none"
            assert element.get("vector-effect") == "non-scaling-stroke"


def test_every_piece_is_drawn_and_named():
    root = ElementTree.fromstring(PICTURES["shorts"][0])
    groups = [e for e in root if tag(e) == "g"]
    assert len(groups) == len(SHORTS.pieces)
    for piece in SHORTS.pieces.values():
        (group,) = (g for g in groups if g[0].text.startswith(f"{piece.title};"))
        assert " ".join(e.text for e in group if tag(e) == "text") == piece.title
        kinds = 3 + bool(piece.notches) + len({line.kind for line in piece.lines}) + bool(piece.holes)
        assert sum(tag(e) == "path" for e in group) == kinds


def test_a_piece_on_the_fold_shows_its_fold():
    root = ElementTree.fromstring(view.piece_svg(SECTIONS.pieces["waistband_back"]))
    assert view.LOOKS["fold-edge"][0] in {e.get("stroke") for e in root.iter()}


# Faults

FRONT = SHORTS.pieces["front"]
NAN = complex("nan")


def with_edge(piece, name, **changes):
    return replace(piece, edges=tuple(replace(e, **changes) if e.name == name else e for e in piece.edges))


FAULTY = {
    "allowance without room": (with_edge(FRONT, "mouth", allowance=400.0), "front cannot be drawn in full: .*400"),
    "no number in the outline": (
        with_edge(FRONT, "hem", parts=(Path.line(NAN, FRONT.edge("hem").end),)),
        "front cannot be drawn in full: ",
    ),
    "no number in a line": (
        replace(FRONT, lines=(InnerLine("fold", Path.line(NAN, 0j)),)),
        "front cannot be drawn in full: .*finite",
    ),
    "notch on no edge": (replace(FRONT, notches=(Notch("nowhere", 3, "x"),)), "is 'nowhere', expected one of side"),
    "notch past the end": (replace(FRONT, notches=(Notch("side", 9e9, "x"),)), "edge side .*expected 0 to"),
    "a number as title": (replace(FRONT, title=3), "front cannot be drawn in full|this piece cannot be drawn"),
    "open outline": (replace(FRONT, edges=FRONT.edges[:2]), "front cannot be drawn in full: "),
    "no edges": (replace(FRONT, edges=()), "front cannot be drawn in full: "),
    "no length": (
        Piece("dot", "Dot", (Edge("e", (Path.line(0j, 0j),)),), Cut(1, "self"), Line(0j, 0j)),
        "dot cannot be drawn in full: ",
    ),
    "nothing": (None, "this piece cannot be drawn in full: |gone cannot be drawn in full: "),
}


@pytest.mark.parametrize("fault", FAULTY)
def test_a_faulty_piece_is_told_in_its_picture(fault):
    piece, message = FAULTY[fault]
    text = view.piece_svg(piece)
    assert re.search(message, words(text)), words(text)
    assert "nan" not in re.sub(r">[^<]*<", "><", text)


@pytest.mark.parametrize("fault", FAULTY)
def test_a_faulty_piece_spoils_no_other(fault):
    piece, message = FAULTY[fault]
    pieces = {"gone": piece, "back": SHORTS.pieces["back"], "waistband": SHORTS.pieces["waistband"]}
    text = view.pattern_svg(SimpleNamespace(name="demo", pieces=pieces))
    assert re.search(message.replace("front", "(front|gone)").replace("dot", "(dot|gone)"), words(text)), words(text)
    assert {"Back", "Waistband"} <= set(words(text).split())


def test_a_piece_without_room_for_its_allowance_still_shows_its_seams():
    root = ElementTree.fromstring(view.piece_svg(FAULTY["allowance without room"][0]))
    assert view.LOOKS["sew"][0] in {e.get("stroke") for e in root.iter()}


class Breaks:
    """Stands for a pattern whose pieces cannot be made."""

    name = "demo"

    @property
    def pieces(self):
        raise RuntimeError("the <draft> & all")


@pytest.mark.parametrize("pattern", [None, 3, Breaks(), SimpleNamespace(name="empty", pieces={})])
def test_what_is_no_pattern_never_raises(pattern):
    ElementTree.fromstring(view.pattern_svg(pattern))


def test_messages_are_escaped():
    assert "the <draft> & all" in words(view.pattern_svg(Breaks()))


def test_awkward_names_survive():
    name = "<b>&\"']]>\x07"
    piece = replace(FRONT, title=name)
    root = ElementTree.fromstring(view.pattern_svg(SimpleNamespace(name=name, pieces={name: piece})))
    assert root.get("aria-label") == "<b>&\"']]>: 1 piece"
    assert words(view.piece_svg(piece)) == "<b>&\"']]>"
