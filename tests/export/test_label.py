"""Labels and notes: shapely says where the text lies; its width is the library's estimate, which a font must fit."""

from dataclasses import replace
from itertools import pairwise, product

import numpy as np
import pytest
import shapely
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from shapes import sampled
from styles import NAMED
from zoo import ZOO, bodies

import draft
from draft.drawing.label import HEIGHTS, advance, clean, place_label, place_notes, wrap
from draft.errors import DraftError
from draft.geometry.path import Path
from draft.geometry.segments import Line
from draft.piece import Piece

SINK = 0.25  # of the height, below a baseline; capitals and strokes reach 0.76 above it (DejaVu Sans, measured)
RISE = 0.76

CASES = [
    *((f"shorts of {name}", draft.shorts, body, None) for name, body in ZOO.items()),
    *((f"trousers of {name}", draft.trousers, body, None) for name, body in ZOO.items()),
    *((f"shorts, {name}", draft.shorts, ZOO["woman"], style) for name, style in NAMED.items()),
]


def box(at, angle_deg, wide, height):
    """Corners of a line of text, as a polygon."""
    along = np.exp(1j * np.deg2rad(angle_deg))
    low, high = -SINK * height, RISE * height
    corners = [at + along * complex(x, y) for x, y in ((0, low), (wide, low), (wide, high), (0, high))]
    return shapely.Polygon([(p.real, p.imag) for p in corners])


def block(label):
    """All lines of a label, each as wide as 0.62 of the height per character."""
    return shapely.union_all(
        [
            box(at, label.angle_deg, 0.62 * label.height * len(line), label.height)
            for line, at in zip(label.lines, baselines(label), strict=True)
        ]
    )


def baselines(label):
    """Starts of the lines, counted out here: each lies below the one before it."""
    down = -1j * np.exp(1j * np.deg2rad(label.angle_deg))
    return [label.at + i * label.leading * down for i in range(len(label.lines))]


def area(path):
    points = sampled(path, 100)
    return shapely.Polygon(np.column_stack([points.real, points.imag]))


def drawn_inside(piece):
    paths = [Path((piece.grainline,)), *(line.path for line in piece.lines)]
    return shapely.union_all([shapely.LineString([(p.real, p.imag) for p in sampled(path, 50)]) for path in paths])


def pieces_of(make, body, style):
    return (make(body) if style is None else make(body, style)).pieces.values()


@pytest.mark.parametrize(("make", "body", "style"), [c[1:] for c in CASES], ids=[c[0] for c in CASES])
def test_labels_lie_inside_the_sew_line(make, body, style):
    for piece in pieces_of(make, body, style):
        label = place_label(piece)
        assert area(piece.sew_line).contains(block(label)), piece.name
        assert " ".join(label.lines).replace(" ", "") == "".join(map(clean, piece.label)).replace(" ", "")
        assert label.height in HEIGHTS
        assert label.angle_deg in (0, 90, -90)
        assert label.leading >= 1.2 * label.height
        assert label.baselines == pytest.approx(baselines(label))


STRIPS = {
    "pocket_welt": draft.Style(back_pocket=draft.WeltPocket(welts=2), darts=draft.Darts(back=0)),
    "pocket_stay": draft.Style(pocket=draft.SlantedPocket(stay=15)),
}


@pytest.mark.parametrize("style", STRIPS.values(), ids=list(STRIPS))
def test_strips_too_narrow_for_the_whole_label_carry_its_beginning_inside(style):
    """A known limit: on strips under 20 mm the last lines are left out, never the title, and nothing lies outside."""
    short = []
    for piece in draft.shorts(ZOO["woman"], style).pieces.values():
        label = place_label(piece)
        told, whole = ("".join(lines).replace(" ", "") for lines in (label.lines, map(clean, piece.label)))
        assert whole.startswith(told), piece.name
        assert told.startswith(clean(piece.title).replace(" ", "")), piece.name
        assert area(piece.sew_line).contains(block(label)), piece.name
        if told != whole:
            short.append(piece)
    assert short
    for piece in short:
        corners = shapely.get_coordinates(area(piece.sew_line).minimum_rotated_rectangle)
        assert min(np.hypot(*(corners[1] - corners[0])), np.hypot(*(corners[2] - corners[1]))) < 20, piece.name


def test_labels_keep_clear_of_grainline_and_inner_lines_in_readable_lettering():
    crossing, small, count = [], [], 0
    for _, make, body, style in CASES:
        for piece in pieces_of(make, body, style):
            label = place_label(piece)
            count += 1
            if block(label).intersects(drawn_inside(piece)):
                crossing.append(f"{piece.name} of {body.name}")
            if label.height < 2.5:
                small.append(f"{piece.name} of {body.name}")
    assert count > 300
    assert len(crossing) <= 0.03 * count, crossing
    assert len(small) <= 0.15 * count, small


@settings(max_examples=12, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(bodies(), st.sampled_from([draft.shorts, draft.trousers]))
def test_labels_lie_inside_for_any_body(body, make):
    try:
        pattern = make(body)
    except DraftError:
        assume(False)
    for piece in pattern.pieces.values():
        assert area(piece.sew_line).contains(block(place_label(piece))), piece.name


def test_notes_lie_inside_the_cut_line_and_clear_of_all_lines():
    crossing, count = [], 0
    for _, make, body, style in CASES:
        for piece in pieces_of(make, body, style):
            lines = shapely.union_all([drawn_inside(piece), area(piece.sew_line).exterior])
            label = block(place_label(piece))
            notes = [box(n.at, n.angle_deg, 0.62 * n.height * len(n.text), n.height) for n in place_notes(piece)]
            assert {n.text for n in place_notes(piece)} == {clean(line.note) for line in piece.lines if line.note}
            for note in notes:
                count += 1
                assert area(piece.cut_line).contains(note), piece.name
                if note.intersects(lines) or sum(note.intersects(other) for other in (label, *notes)) > 1:
                    crossing.append(f"{piece.name} of {body.name}")
    assert count > 200
    assert len(crossing) <= 0.03 * count, crossing


def test_notes_stand_beside_their_line():
    piece = draft.shorts(ZOO["woman"]).pieces["front"]
    for note in place_notes(piece):
        (line,) = (line for line in piece.lines if line.note == note.text)
        near = box(note.at, note.angle_deg, 0.62 * note.height * len(note.text), note.height)
        along = shapely.LineString([(p.real, p.imag) for p in sampled(line.path, 50)])
        assert 0.5 <= near.distance(along) <= 3


def strip(width, height, title="Strip", **other):
    """Rectangle with an allowance of nothing and a short grainline in its middle."""
    corners = (0j, width + 0j, width + 1j * height, 1j * height, 0j)
    edges = tuple(draft.edge.Edge(f"e{i}", (Path.line(a, b),)) for i, (a, b) in enumerate(pairwise(corners)))
    grain = Line(complex(width / 2, 0.4 * height), complex(width / 2, 0.6 * height))
    return Piece("strip", title, edges, draft.piece.Cut(2, "self"), grain, **other)


def test_lettering_shrinks_with_the_piece_and_words_go_last():
    labels = [place_label(strip(size, size)) for size in (400, 60, 40, 30, 24, 20, 16, 12)]
    words = [len("".join(label.lines).replace(" ", "")) for label in labels]
    assert words == sorted(words, reverse=True)
    assert words[0] == words[2] > words[-1]
    assert labels[0].height == 5 > 2.5 >= labels[-1].height
    assert labels[-1].lines[0] == "Strip"
    assert all(
        area(strip(size, size).sew_line).contains(block(place_label(strip(size, size)))) for size in (60, 24, 16)
    )


def test_a_piece_too_small_for_any_text_keeps_its_name():
    label = place_label(strip(2, 1))
    assert (label.lines, label.height) == (("Strip",), 1.5)


def test_narrow_pieces_are_written_along():
    assert place_label(strip(30, 400)).angle_deg == 90
    assert place_label(strip(400, 30)).angle_deg == 0


def test_a_mirrored_piece_is_not_written_mirrored():
    one = place_label(strip(400, 30))
    assert one.at.real < 400
    assert block(one).bounds[2] > one.at.real, "text runs to the right"


@pytest.mark.parametrize("name", ["x" * 4000, "W" * 90, "日本語" * 20, "a\nb\x00c\ud800d", "é" * 50])
def test_awkward_names_stay_inside(name):
    piece = replace(draft.shorts(ZOO["woman"]).pieces["fly_facing"], made_for=name, title=name)
    label = place_label(piece)
    assert area(piece.sew_line).contains(block(label))
    assert all(line.isprintable() for line in label.lines)


WORDS = ("", "one", "side 12, hem 10, inseam 12", "x" * 70)


@pytest.mark.parametrize(("most", "line"), list(product((15, 26, 60), WORDS)))
def test_wrapping_keeps_every_character(most, line):
    rows = wrap(line, most)
    assert all(len(row) <= most for row in rows)
    assert "".join(rows).replace(" ", "") == line.replace(" ", "")
    assert not any(row[:1].isdigit() for row in rows), "a number stays with its word"


def test_advance_is_wider_than_a_wide_font():
    """Against the widths of DejaVu Sans, one of the widest text fonts, as matplotlib's copy of it has them."""
    font_manager = pytest.importorskip("matplotlib.font_manager")
    from matplotlib.ft2font import FT2Font

    font = FT2Font(font_manager.findfont("DejaVu Sans"))
    font.set_size(1000, 72)
    texts = {line for piece in draft.shorts(ZOO["man"]).pieces.values() for line in piece.label}
    for text in sorted(texts):
        font.set_text(text)
        assert font.get_width_height()[0] / 64 <= 1000 * advance(text), text
