"""DXF for cutters: what ezdxf reads back from the file is what the pattern says, and a cutter can run it.

Outside the project: ezdxf reads and audits the file, shapely measures distances and overlaps, the curves are evaluated
here from their control points by the Bernstein form.
"""

from __future__ import annotations

import io
import logging
from dataclasses import dataclass, replace
from functools import cache
from itertools import combinations

import ezdxf
import numpy as np
import pytest
import shapely
from ezdxf import recover
from zoo import ONLY_REQUIRED, STOUT, TODDLER, VERY_LARGE, WOMAN

import draft
from draft.drawing.sheet import arrange
from draft.export import dxf_plain
from draft.export.dxf_common import CURVE, PLAIN, TURN, ascii_text, vertices
from draft.geometry.path import Path
from draft.geometry.segments import Cubic, Line
from draft.piece import Hole, InnerLine

NAMED = replace(ONLY_REQUIRED, name="Ünal <& Co> – «Größe» 38")
CASES = {
    "shorts": (draft.shorts, WOMAN, draft.Style()),
    "trousers": (draft.trousers, NAMED, draft.Style()),
    "stout, plain hem, no pocket": (draft.shorts, STOUT, draft.Style(hem=draft.PlainHem(), pocket=None)),
    "toddler, sections": (
        draft.trousers,
        TODDLER,
        draft.Style(band=draft.StraightBand(sections="side_seams"), closing=draft.FlyFront(lap="right_over_left")),
    ),
    "very large": (draft.shorts, VERY_LARGE, draft.Style(hem=draft.PlainHem())),
}
READ_BACK_MM = 0.01
CURVE_MM = 0.1


@cache
def pattern_of(case: str) -> draft.Pattern:
    make, body, style = CASES[case]
    return make(body, style)


@cache
def text(case: str) -> str:
    return dxf_plain.text_of(pattern_of(case))


@cache
def read(case: str):
    return ezdxf.read(io.StringIO(text(case)))


@pytest.fixture(params=list(CASES))
def case(request) -> str:
    return request.param


@cache
def true_points(path: Path, count: int = 200) -> np.ndarray:
    """Points of a path, dense enough to stand for it (chords stray by two thousandths of a mm at most)."""
    t = np.linspace(0, 1, count)
    found = []
    for segment in path:
        c = segment.controls
        weights = (1 - t, t) if len(c) == 2 else ((1 - t) ** 3, 3 * t * (1 - t) ** 2, 3 * t**2 * (1 - t), t**3)
        found.append(sum(w * p for w, p in zip(weights, c, strict=True)))
    return np.concatenate(found)


def line_string(points) -> shapely.LineString:
    points = np.asarray(points)
    return shapely.LineString(np.column_stack([points.real, points.imag]))


def farthest(points, shape) -> float:
    """Largest distance of any of the points from a shape."""
    points = np.atleast_1d(np.asarray(points))
    return float(shapely.distance(shapely.points(points.real, points.imag), shape).max())


def corners(entity) -> np.ndarray:
    """Vertices of a LINE or POLYLINE as complex numbers, the first repeated at the end of a closed one."""
    if entity.dxftype() == "LINE":
        return np.array([complex(*entity.dxf.start.vec2), complex(*entity.dxf.end.vec2)])
    points = [complex(*v.dxf.location.vec2) for v in entity.vertices]
    return np.array([*points, points[0]] if entity.is_closed else points)


def on(document, layer: str, kinds: str = "*") -> list:
    return list(document.modelspace().query(f'{kinds}[layer=="{layer}"]'))


def matched(found, expected, within: float = READ_BACK_MM) -> bool:
    """Whether two lists hold the same places, in any order, each once."""
    left = list(expected)
    for p in found:
        nearest = min(left, key=lambda q: np.max(np.abs(np.subtract(p, q))), default=None)
        if nearest is None or np.max(np.abs(np.subtract(p, nearest))) > within:
            return False
        left.remove(nearest)
    return not left


# ---- the same geometry


def test_cut_lines_are_those_of_the_pieces(case):
    places = arrange(pattern_of(case).pieces.values()).places
    entities = on(read(case), "CUT")
    assert len(entities) == len(pattern_of(case).pieces)
    for place, entity in zip(places, entities, strict=True):
        wanted = true_points(place.piece.cut_line) + place.shift
        assert farthest(corners(entity), line_string(wanted)) <= READ_BACK_MM, place.piece.name
        assert farthest(wanted, line_string(corners(entity))) <= CURVE_MM, place.piece.name


def test_every_sew_line_inner_line_and_grainline_is_drawn(case):
    document = read(case)
    drawn = shapely.MultiLineString([line_string(corners(e)) for e in on(document, "DRAW")])
    lines = shapely.union(drawn, shapely.MultiLineString([line_string(corners(e)) for e in on(document, "CUT")]))
    for place in arrange(pattern_of(case).pieces.values()).places:
        piece, shift = place.piece, place.shift
        sewn = np.concatenate([true_points(e.path) for e in piece.edges if e.allowance] or [np.empty(0, complex)])
        if len(sewn):
            assert farthest(sewn + shift, drawn) <= CURVE_MM, piece.name
        assert farthest(true_points(piece.sew_line) + shift, lines) <= CURVE_MM, piece.name
        for line in piece.lines:
            assert farthest(true_points(line.path) + shift, drawn) <= CURVE_MM, (piece.name, line.note)


def test_nothing_is_drawn_that_is_not_in_the_pieces(case):
    places = arrange(pattern_of(case).pieces.values()).places
    grains = [p + place.shift for place in places for p in place.piece.grainline.controls]
    wanted = [
        true_points(path) + q.shift for q in places for path in (q.piece.sew_line, *(i.path for i in q.piece.lines))
    ]
    wanted += [np.array(q.piece.grainline.controls) + q.shift for q in places]
    wanted = shapely.MultiLineString([line_string(points) for points in wanted])
    arrows = 0
    for entity in on(read(case), "DRAW"):
        points = corners(entity)
        if farthest(points, wanted) > READ_BACK_MM:
            # the only other thing drawn is the head of an arrow, its tip on an end of a grainline
            assert len(points) == 3
            assert min(abs(points[1] - p) for p in grains) <= READ_BACK_MM
            arrows += 1
    assert arrows == 2 * len(places)


def test_sew_lines_are_not_drawn_where_they_are_cut(case):
    """A cutter that runs twice over an edge spoils it."""
    cut = shapely.MultiLineString([line_string(corners(e)) for e in on(read(case), "CUT")]).buffer(0.05)
    for entity in on(read(case), "DRAW"):
        assert line_string(corners(entity)).intersection(cut).length < 1


def test_grainlines_notches_and_holes_are_where_the_pieces_have_them(case):
    document = read(case)
    places = arrange(pattern_of(case).pieces.values()).places
    straight = [tuple(corners(e)) for e in on(document, "DRAW", "LINE")]
    for place in places:
        grain = tuple(p + place.shift for p in place.piece.grainline.controls)
        assert any(matched([grain], [line]) for line in straight), place.piece.name

    slits = [
        (slit.on_cut + place.shift, slit.on_cut + slit.inward * slit.depth + place.shift)
        for place in places
        for _, both in place.piece.notch_places
        for slit in both
    ]
    assert len(slits) > 10
    assert matched([tuple(corners(e)) for e in on(document, "NOTCH")], slits)

    holes = [(hole.at + place.shift, hole.diameter / 2) for place in places for hole in place.piece.holes]
    assert matched([(complex(*e.dxf.center.vec2), e.dxf.radius) for e in on(document, "DRILL")], holes)


def test_labels_lie_on_their_pieces(case):
    document = read(case)
    words = on(document, "TEXT")
    for place, cut in zip(arrange(pattern_of(case).pieces.values()).places, on(document, "CUT"), strict=True):
        outline = shapely.Polygon(line_string(corners(cut)))
        inside = [e.dxf.text for e in words if outline.contains(shapely.Point(e.dxf.insert.vec2))]
        assert ascii_text(place.piece.title).split()[0] in " ".join(inside), place.piece.name


# ---- lines as vertices


def bent(*turns_deg: float) -> Path:
    """Straight stretches of 20 mm, each turned against the one before."""
    headings = np.deg2rad(np.cumsum([0, *turns_deg]))
    return Path.line(*np.concatenate([[0], np.cumsum(20 * np.exp(1j * headings))]))


def test_vertices_closer_than_a_hundredth_are_one_and_keep_the_stronger_mark():
    corner = 50 + 0.0001j  # where a bridge too short to see turns the line
    line = vertices(Path.line(0j, 50 + 0j, corner, 50 + 50j, 0.004j, 0j), "line", 3)
    assert line.closed
    assert line.points == [0j, 50 + 0j, 50 + 50j]
    assert line.marks == [TURN] * 3


def test_vertices_that_rounding_puts_on_one_place_are_one():
    a, b, c, d = -0.004 - 0.004j, 0.004 + 0.004j, 50 + 0j, 50 + 50j
    for ring in ((a, b, c, d, a), (b, c, d, a, b)):
        line = vertices(Path.line(*ring), "line", 2)
        assert line.points == [0j, c, d]
        assert line.marks == [TURN] * 3


def test_a_bend_of_more_than_three_degrees_is_a_corner():
    assert vertices(bent(2.5, 3.5, -2.5), "line", 3).marks == [TURN, CURVE, TURN, CURVE, TURN]


def test_a_curve_has_curve_points_and_a_straight_stretch_beside_it_ends_in_turn_points():
    arc = Cubic(0j, 55 + 0j, 100 + 45j, 100 + 100j)
    line = vertices(Path.join(Line(-80 + 0j, 0j), arc, Line(100 + 100j, 100 + 180j)), "line", 3)
    turns = [p for p, mark in zip(line.points, line.marks, strict=True) if mark == TURN]
    assert turns == [-80, 0, 100 + 100j, 100 + 180j]
    assert set(line.marks[2:-2]) == {CURVE, PLAIN}
    assert farthest(true_points(Path((arc,))), line_string(line.points)) <= 0.05 + 0.001


# ---- what a cutter needs


def test_contours_are_closed_once_and_simple(case):
    for entity in on(read(case), "CUT"):
        assert entity.dxftype() == "POLYLINE"
        assert entity.is_closed
        points = corners(entity)
        assert np.abs(np.diff(points)).min() >= READ_BACK_MM - 1e-6  # closer ones make a cutter stutter
        ring = shapely.LinearRing(line_string(points))
        assert ring.is_simple
        assert ring.is_ccw


def test_pieces_and_test_squares_lie_apart(case):
    document = read(case)
    shapes = [shapely.Polygon(line_string(corners(e))) for e in on(document, "CUT") + on(document, "REF", "POLYLINE")]
    assert min(a.distance(b) for a, b in combinations(shapes, 2)) > 10


def test_test_squares_measure_100_mm_and_4_inches(case):
    """25.4 mm to the inch exactly: international inch of 1959, from memory."""
    squares = [line_string(corners(e)) for e in on(read(case), "REF", "POLYLINE")]
    sizes = [(s.bounds[2] - s.bounds[0], s.bounds[3] - s.bounds[1], s.length) for s in squares]
    assert sizes == [pytest.approx((100, 100, 400)), pytest.approx((4 * 25.4, 4 * 25.4, 16 * 25.4))]
    words = " ".join(e.dxf.text for e in on(read(case), "REF", "TEXT"))
    assert "100 mm" in words
    assert "4 in" in words


def test_all_marks_come_before_the_first_cut(case):
    layers = [entity.dxf.layer for entity in read(case).modelspace()]
    first = layers.index("CUT")
    assert set(layers[first:]) == {"CUT"}
    assert set(layers[:first]) >= {"REF", "TEXT", "DRAW", "NOTCH"}


def test_only_plain_entities_on_declared_layers_with_a_colour_each(case):
    document = read(case)
    kinds = {"CUT": {"POLYLINE"}, "DRAW": {"POLYLINE", "LINE"}, "NOTCH": {"LINE"}, "DRILL": {"CIRCLE"}}
    kinds |= {"TEXT": {"TEXT"}, "REF": {"POLYLINE", "TEXT"}}
    for entity in document.modelspace():
        assert entity.dxftype() in kinds[entity.dxf.layer]
    colours = {layer.dxf.name: layer.dxf.color for layer in document.layers}
    assert colours.keys() == {*kinds, "0", "Defpoints"}
    assert len({colours[name] for name in kinds}) == len(kinds)


def test_release_12_in_ascii_with_text_of_some_height(case):
    """Release 12 is AC1009 (DXF reference, read); it has no code page that all readers share, so only ASCII is safe."""
    document = read(case)
    assert document.dxfversion == "AC1009"
    assert text(case).isascii()
    for entity in document.modelspace().query("TEXT"):
        assert entity.dxf.height > 0.5
        assert entity.dxf.text.strip()


def test_extents_in_the_header_hold_the_drawing(case):
    document = read(case)
    low, high = document.header["$EXTMIN"], document.header["$EXTMAX"]
    everything = np.concatenate([corners(e) for e in document.modelspace().query("POLYLINE LINE")])
    assert low[0] <= everything.real.min()
    assert low[1] <= everything.imag.min()
    assert high[0] >= everything.real.max()
    assert high[1] >= everything.imag.max()


def test_readers_find_nothing_to_repair(case, tmp_path):
    path = dxf_plain.save(pattern_of(case), tmp_path / "a.dxf")
    assert path == tmp_path / "a.dxf"
    for document, auditor in (recover.readfile(path), (ezdxf.readfile(path), None)):
        found = auditor or document.audit()
        assert (found.errors, found.fixes) == ([], [])


def test_same_pattern_gives_the_same_file(case):
    make, body, style = CASES[case]
    assert dxf_plain.text_of(make(body, style)) == text(case)


def test_writing_is_silent_and_leaves_the_options_of_ezdxf_alone(caplog):
    before = ezdxf.options.write_fixed_meta_data_for_testing
    with caplog.at_level(logging.WARNING):
        dxf_plain.text_of(pattern_of("shorts"))
    assert not caplog.records
    assert ezdxf.options.write_fixed_meta_data_for_testing == before


# ---- text


@pytest.mark.parametrize(
    ("given", "written"),
    [
        ("Ünal <& Co>", "Unal <& Co>"),
        ("Größe Łódź, smørrebrød", "Grosse Lodz, smorrebrod"),
        ("„a“ – b × c½", '"a" - b x c1/2'),
        ("two\nlines\tand \x00\x1b\x07 bells", "two lines and bells"),
        ("100 %%d %%%%u", "100 %d %u"),  # %%d would be shown as a degree sign
        (r"\U+00DC ^J", "/U+00DC -J"),  # a code for a letter, and one for a line feed
        ("裤子 👖", "?? ?"),
        ("x\u200bx\u00adx", "xxx"),
    ],
)
def test_text_becomes_readable_ascii(given, written):
    assert ascii_text(given) == written


def test_long_text_is_cut_to_what_the_format_holds():
    """At most 255 characters in a string of release 12 (DXF reference, from memory)."""
    assert len(ascii_text("ä" * 1000)) <= 255


def test_names_of_bodies_arrive_readable():
    words = [e.dxf.text for e in on(read("trousers"), "TEXT")]
    assert any("Unal <& Co>" in w for w in words)
    assert any("Grosse" in w for w in words)


# ---- faults


@dataclass
class Made:
    """A pattern of hand-made pieces."""

    pieces: dict
    name: str = "made"


def changed(**changes) -> Made:
    piece = pattern_of("shorts").pieces["front"]
    return Made({"front": replace(piece, **changes)})


def edges_with(place: complex) -> tuple:
    """Edges of the front, the start of its hem moved."""
    edges = list(pattern_of("shorts").pieces["front"].edges)
    hem = edges[1]
    edges[1] = replace(hem, parts=(Path.line(place, hem.end),))
    return tuple(edges)


def cut_along(*places: complex) -> Made:
    """The front with another cut line, which no allowance could give."""
    made = changed()
    made.pieces["front"].__dict__["cut_line"] = Path.line(*places)
    return made


FAULTS = {
    "edge with nan": (lambda: changed(edges=edges_with(complex("nan+0j"))), "front, edge hem is .*finite coordinates"),
    "open outline": (lambda: changed(edges=edges_with(-100 - 100j)), "front, outline is .*a closed line"),
    "endless grainline": (lambda: changed(grainline=Line(0j, complex("inf"))), "front, grainline is .*finite"),
    "hole with nan": (lambda: changed(holes=(Hole(complex("nanj"), "dart"),)), "front, drill hole is .*finite"),
    "inner line with nan": (
        lambda: changed(lines=(InnerLine("fold", Path.line(0j, complex("nan"))),)),
        "front, fold line is .*finite",
    ),
    "inner line of no length": (
        lambda: changed(lines=(InnerLine("fold", Path.line(5j, 5j)),)),
        "front, fold line is .*a line with a length",
    ),
    "cut line that touches itself": (
        lambda: cut_along(0j, 60 - 100j, 60 + 100j, 0j, -60 + 100j, -60 - 100j, 0j),
        "front, cut line is .*comes to no place twice",
    ),
    "cut line that runs clockwise": (
        lambda: cut_along(0j, 100j, 100 + 100j, 100 + 0j, 0j),
        "front, cut line, area in mm2 is -10000.*counter-clockwise",
    ),
    "open cut line": (lambda: cut_along(0j, 100 + 0j, 100 + 100j), "front, cut line .*a closed line"),
    "empty cut line": (lambda: cut_along(0j, 1e-9j, 0j), "front, cut line .*a line with a length"),
    "no edges": (lambda: changed(edges=()), "front.* is missing"),
}


@pytest.mark.parametrize("fault", list(FAULTS))
def test_faulty_pieces_are_refused_by_name_and_nothing_is_written(fault, tmp_path):
    make, message = FAULTS[fault]
    with pytest.raises(draft.DraftError, match=message):
        dxf_plain.save(make(), tmp_path / "a.dxf")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("name", ["missing/a.dxf", "", ".", "a\0.dxf"])
def test_a_bad_path_is_told_and_leaves_nothing(name, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    with pytest.raises(draft.DraftError, match=r"^path is "):
        pattern_of("shorts").save_dxf(name)
    assert list(tmp_path.iterdir()) == []


def test_a_fault_leaves_the_file_that_was_there(tmp_path):
    path = tmp_path / "a.dxf"
    path.write_text("kept", encoding="ascii")
    with pytest.raises(draft.DraftError):
        dxf_plain.save(changed(grainline=Line(0j, complex("inf"))), path)
    assert path.read_text(encoding="ascii") == "kept"


def test_plain_is_the_usual_dialect_and_others_are_refused(tmp_path):
    path = pattern_of("shorts").save_dxf(tmp_path / "a.dxf")
    assert path.read_text(encoding="ascii") == text("shorts")
    with pytest.raises(draft.DraftError, match=r"dialect is 'aama', expected 'plain' or 'astm'"):
        pattern_of("shorts").save_dxf(tmp_path / "b.dxf", dialect="aama")
    assert not (tmp_path / "b.dxf").exists()
