"""DXF for pattern systems: what ezdxf reads back is what the pattern says, in the form that D 6673 asks for.

The standard's own text was read only in its opening pages; layers, keys and codes are known second hand, from public
notes on the 2010 edition. Where the standard leaves something open, a test says so. Tags are also parsed here, by hand.
"""

from __future__ import annotations

import io
import re
from dataclasses import replace
from functools import cache
from itertools import pairwise

import ezdxf
import numpy as np
import pytest
import shapely
from ezdxf import recover
from hypothesis import given
from hypothesis import strategies as st
from scipy.interpolate import CubicSpline
from test_dxf_plain import (
    CASES,
    CURVE_MM,
    FAULTS,
    READ_BACK_MM,
    corners,
    cut_along,
    farthest,
    line_string,
    matched,
    pattern_of,
    true_points,
)

import draft
from draft.export import dxf_astm
from draft.export.dxf_astm import block_names, quantity
from draft.piece import Cut, Piece

# Layer: what it holds, and the entities that may stand on it (overview of D6673-10, second hand).
LAYERS = {
    "1": {"POLYLINE", "TEXT"},  # boundary and system text
    "2": {"POINT"},  # turn points
    "3": {"POINT"},  # curve points
    "4": {"POINT"},  # notches: slit and V
    "6": {"LINE"},  # mirror line
    "7": {"LINE"},  # grain line
    "8": {"POLYLINE", "LINE"},  # internal lines
    "13": {"POINT"},  # drill holes
    "14": {"POLYLINE"},  # sew lines
    "15": {"TEXT"},  # annotation
}


@cache
def text(case: str) -> str:
    return dxf_astm.text_of(pattern_of(case))


@cache
def read(case: str):
    return ezdxf.read(io.StringIO(text(case)))


def tags(case: str) -> list[tuple[int, str]]:
    lines = text(case).splitlines()
    assert len(lines) % 2 == 0
    return [(int(code), value) for code, value in zip(lines[::2], lines[1::2], strict=True)]


@pytest.fixture(params=list(CASES))
def case(request) -> str:
    return request.param


def blocks(case: str) -> list:
    """Every piece with the block of the same rank."""
    found = [block for block in read(case).blocks if not block.name.startswith("*")]
    return list(zip(pattern_of(case).pieces.values(), found, strict=True))


def on(block, layer: str) -> list:
    return [entity for entity in block if entity.dxf.layer == layer]


def places(block, layer: str) -> list[complex]:
    return [complex(*entity.dxf.location.vec2) for entity in on(block, layer)]


def boundary(block) -> np.ndarray:
    (outline,) = (entity for entity in on(block, "1") if entity.dxftype() == "POLYLINE")
    return corners(outline)


def system_text(layout) -> dict[str, str]:
    lines = [entity.dxf.text for entity in on(layout, "1") if entity.dxftype() == "TEXT"]
    return dict(line.split(":", 1) for line in lines)


# ---- the form of the file


def test_only_the_sections_and_tags_that_strict_readers_take(case):
    """Empty header, no tables, no handles: what the documentation of ezdxf says of one reader (read)."""
    found = tags(case)
    starts = [index for index, tag in enumerate(found) if tag == (0, "SECTION")]
    assert [found[index + 1] for index in starts] == [(2, "HEADER"), (2, "BLOCKS"), (2, "ENTITIES")]
    assert found[starts[0] + 2] == (0, "ENDSEC")
    assert found[-1] == (0, "EOF")
    assert not {5, 100, 102, 330, 360} & {code for code, _ in found}
    kinds = {value for code, value in found if code == 0}
    assert kinds <= {
        "SECTION", "ENDSEC", "EOF", "BLOCK", "ENDBLK", "INSERT",
        "POLYLINE", "VERTEX", "SEQEND", "POINT", "LINE", "TEXT",
    }  # fmt: skip


def test_one_block_for_every_piece_and_no_other(case):
    found = tags(case)
    kinds = [index for index, (code, value) in enumerate(found) if (code, value) == (0, "BLOCK")]
    names = [next(value for code, value in found[index:] if code == 2) for index in kinds]
    assert len(names) == len(pattern_of(case).pieces)
    for name in names:
        assert re.fullmatch(r"[A-Z0-9_$-]{1,31}", name)  # names of release 12 (ezdxf's documentation, read)
    assert len({name[:20] for name in names}) == len(names)  # one reader cuts them there (second hand)
    inserts = read(case).modelspace().query("INSERT")
    inserted = [(e.dxf.name, tuple(e.dxf.insert), e.dxf.xscale, e.dxf.rotation) for e in inserts]
    assert inserted == [(name, (0, 0, 0), 1, 0) for name in names]


def test_every_entity_stands_on_a_layer_that_is_meant_for_it(case):
    for _, block in blocks(case):
        assert block.block.dxf.layer == "1"
        for entity in block:
            assert entity.dxftype() in LAYERS[entity.dxf.layer]
            if entity.dxftype() == "POLYLINE":
                assert {v.dxf.layer for v in entity.vertices} == {entity.dxf.layer}
    for entity in read(case).modelspace():
        assert (entity.dxftype(), entity.dxf.layer) in {("INSERT", "1"), ("TEXT", "1")}


def test_ascii_and_coordinates_of_two_decimals(case):
    """Millimetres with two decimals, 7-bit text (public notes on the standard, second hand)."""
    assert text(case).isascii()
    for code, value in tags(case):
        if code in (10, 20, 30, 11, 21, 31, 39):
            assert re.fullmatch(r"-?\d+\.\d{1,2}", value), (code, value)
            assert not re.fullmatch(r"-0\.0+", value)


def test_readers_find_nothing_to_repair(case, tmp_path):
    path = pattern_of(case).save_dxf(tmp_path / "a.dxf", dialect="astm")
    assert path == tmp_path / "a.dxf"
    document, auditor = recover.readfile(path)
    assert (auditor.errors, auditor.fixes) == ([], [])
    assert document.dxfversion == "AC1009"
    auditor = ezdxf.readfile(path).audit()
    assert (auditor.errors, auditor.fixes) == ([], [])


def test_same_pattern_gives_the_same_file(case):
    make, body, style = CASES[case]
    assert dxf_astm.text_of(make(body, style)) == text(case)


# ---- the same geometry


def test_boundaries_are_the_cut_lines(case):
    for piece, block in blocks(case):
        points, wanted = boundary(block), true_points(piece.cut_line)
        assert farthest(points, line_string(wanted)) <= READ_BACK_MM, piece.name
        assert farthest(wanted, line_string(points)) <= CURVE_MM, piece.name


def test_boundaries_are_closed_by_their_first_vertex_and_start_at_a_turn_point(case):
    """A closed polygon is required (second hand); how is left open: here the first vertex again, and no flag."""
    for _, block in blocks(case):
        (outline,) = (entity for entity in on(block, "1") if entity.dxftype() == "POLYLINE")
        points = boundary(block)
        assert outline.dxf.flags == 0
        assert points[0] == points[-1]
        assert points[0] in places(block, "2")
        assert np.abs(np.diff(points)).min() >= READ_BACK_MM - 1e-6
        ring = shapely.LinearRing(line_string(points))
        assert ring.is_simple
        assert ring.is_ccw


def test_a_boundary_starts_at_a_turn_point_also_where_the_cut_line_does_not():
    made = cut_along(50j, 0j, 200 + 0j, 200 + 300j, 300j, 50j)
    document = ezdxf.read(io.StringIO(dxf_astm.text_of(made)))
    points = boundary(document.blocks.get("FRONT"))
    assert points[0] == points[-1] == 0


def test_sew_lines_are_those_of_the_pieces_and_stop_at_a_fold(case):
    """A sew line along the fold would be a seam in the middle of the unfolded piece."""
    for piece, block in blocks(case):
        (sewn,) = on(block, "14")
        kept = [edge for edge in piece.edges if not (piece.cut.on_fold and edge.name == "fold")]
        wanted = np.concatenate([true_points(edge.path) for edge in kept])
        assert farthest(corners(sewn), line_string(true_points(piece.sew_line))) <= READ_BACK_MM, piece.name
        assert farthest(wanted, line_string(corners(sewn))) <= CURVE_MM, piece.name
        assert (corners(sewn)[0] == corners(sewn)[-1]) == (len(kept) == len(piece.edges))


def test_inner_lines_are_those_of_the_pieces(case):
    for piece, block in blocks(case):
        drawn = on(block, "8")
        assert len(drawn) == len(piece.lines)
        for entity, line in zip(drawn, piece.lines, strict=True):
            wanted = true_points(line.path)
            assert farthest(corners(entity), line_string(wanted)) <= READ_BACK_MM
            assert farthest(wanted, line_string(corners(entity))) <= CURVE_MM


def test_grainlines_and_drill_holes_are_those_of_the_pieces(case):
    for piece, block in blocks(case):
        (grain,) = on(block, "7")
        assert matched([tuple(corners(grain))], [piece.grainline.controls])
        assert matched(places(block, "13"), [hole.at for hole in piece.holes])
        assert [e.dxf.location.z for e in on(block, "13")] == [hole.diameter for hole in piece.holes]


def test_notches_are_those_of_the_pieces_and_point_into_them(case):
    """Depth in z, width as thickness, direction as angle (overview of D6673-10, second hand); both sizes are equal."""
    for piece, block in blocks(case):
        slits = [slit for _, both in piece.notch_places for slit in both]
        assert len(slits) == sum(notch.count for notch in piece.notches)
        found = [
            (complex(*e.dxf.location.vec2), np.exp(1j * np.deg2rad(e.dxf.angle)), e.dxf.location.z, e.dxf.thickness)
            for e in on(block, "4")
        ]
        assert matched(found, [(s.on_cut, s.inward, s.depth, s.depth) for s in slits])
        outline = shapely.Polygon(line_string(boundary(block)))
        for at, direction, _, _ in found:
            assert at in boundary(block)
            assert outline.buffer(0.02).contains(shapely.Point((at + direction).real, (at + direction).imag))


# ---- turn points and curve points


def test_turn_and_curve_points_lie_on_vertices_exactly(case):
    for _, block in blocks(case):
        vertices = {p for entity in on(block, "14") + on(block, "8") for p in corners(entity)} | set(boundary(block))
        turns, curves = places(block, "2"), places(block, "3")
        assert set(turns) | set(curves) <= vertices
        assert len({*turns, *curves}) == len(turns) + len(curves)


def test_every_corner_is_a_turn_point(case):
    """Turn points are the corners of layers 1, 8, 11 and 14 (second hand)."""
    for piece, block in blocks(case):
        turns = set(places(block, "2"))
        for entity in [e for layer in ("1", "8", "14") for e in on(block, layer) if e.dxftype() != "TEXT"]:
            points = corners(entity)
            if points[0] == points[-1]:
                points = np.append(points, points[1])
            else:
                assert {points[0], points[-1]} <= turns, piece.name
            steps = np.diff(points)
            bend = np.abs(np.angle(steps[1:] / steps[:-1], deg=True))
            long = np.minimum(np.abs(steps[1:]), np.abs(steps[:-1])) > 0.3  # shorter ones are turned by rounding
            assert set(points[1:-1][(bend > 12) & long]) <= turns, piece.name


def test_smooth_places_within_curves_are_no_turn_points(case):
    """Where a straight stretch runs into a curve stands one too: nothing else keeps it straight (our choice)."""
    for piece, block in blocks(case):
        allowed = []
        for path in (piece.cut_line, piece.sew_line, *(line.path for line in piece.lines)):
            pairs = pairwise((*path.segments, path.segments[0]))
            for one, two in pairs:
                p, q = one.controls, two.controls
                bend = np.angle((q[1] - q[0]) / (p[-1] - p[-2]), deg=True) if q[1] != q[0] and p[-1] != p[-2] else 90
                if abs(bend) > 2 or len(p) != len(q):
                    allowed.append(p[-1])
            allowed += [path.start, path.end]
        allowed += [p for e in on(block, "14") for p in corners(e)[[0, -1]]] if piece.cut.on_fold else []
        assert all(np.abs(np.array(allowed) - p).min() < 0.02 for p in places(block, "2")), piece.name


def test_a_spline_through_the_curve_points_stays_near_the_cut_line(case):
    """The standard leaves open how a reader rebuilds a curve; the plainest way, a natural spline, must do no harm."""
    for piece, block in blocks(case):
        turns, curves = set(places(block, "2")), set(places(block, "3"))
        marked = [p for p in boundary(block) if p in turns or p in curves]
        stops = [k for k, p in enumerate(marked) if p in turns]
        assert stops[0] == 0
        assert stops[-1] == len(marked) - 1
        wanted = line_string(true_points(piece.cut_line))
        for run in (np.array(marked[a : b + 1]) for a, b in pairwise(stops)):
            along = np.concatenate([[0], np.cumsum(np.abs(np.diff(run)))])
            spline = CubicSpline(along, np.column_stack([run.real, run.imag]), bc_type="natural")
            x, y = spline(np.linspace(0, along[-1], 8 * len(run))).T
            assert farthest(x + 1j * y, wanted) < 0.2, piece.name


def test_most_vertices_of_a_curve_only_fill_it(case):
    """Points in between are not marked (term read in the standard): an operator edits a curve by few points."""
    for piece, block in blocks(case):
        if piece.name in ("front", "back"):
            marked = {*places(block, "2"), *places(block, "3")}
            plain = [p for p in boundary(block) if p not in marked]
            assert len(plain) > len(boundary(block)) / 4


# ---- pieces cut on the fold


def folded(case: str) -> list:
    return [(piece, block) for piece, block in blocks(case) if piece.cut.on_fold]


def test_a_piece_on_the_fold_has_a_mirror_line_that_unfolds_it(case):
    """A line on layer 6 along the fold of a half piece lets a reader unfold it (overview, second hand)."""
    for piece, block in blocks(case):
        assert len(on(block, "6")) == piece.cut.on_fold
    for _, block in folded(case):
        a, b = corners(on(block, "6")[0])
        points = boundary(block)
        assert {a, b} <= set(points)
        away = ((points - a) / (b - a)).imag
        assert max(away.min(), -away.max()) >= -1e-9  # all of it lies on one side
        image = a + (b - a) * ((points - a) / (b - a)).conjugate()
        half, other = (shapely.Polygon(line_string(p)) for p in (points, image))
        whole = half.union(other)
        assert whole.geom_type == "Polygon"
        assert whole.area == pytest.approx(2 * half.area, rel=1e-9)


def test_sections_of_a_waistband_are_tested_on_the_fold():
    assert [piece.name for piece, _ in folded("toddler, sections")] == ["waistband_back", "waistband_back_interfacing"]


def test_a_fold_that_no_edge_is_named_after_is_refused():
    piece = replace(pattern_of("shorts").pieces["waistband"], cut=Cut(1, "self", on_fold=True))
    with pytest.raises(draft.DraftError, match="edge of waistband is 'fold'"):
        dxf_astm.text_of(Made({"waistband": piece}))


class Made:
    """A pattern of hand-made pieces."""

    name = "made"

    def __init__(self, pieces: dict[str, Piece]):
        self.pieces = pieces


# ---- text


def test_piece_text_says_name_quantity_and_material(case):
    """Keys as restated second hand; the name is the only one required."""
    for piece, block in blocks(case):
        keys = system_text(block)
        assert list(keys) == ["Piece Name", "Quantity", "Material"]
        assert keys["Piece Name"] == block.name
        assert keys["Material"] == piece.cut.cloth
        right, left = map(int, keys["Quantity"].split(","))
        assert right + left == piece.cut.count
        assert right == left if piece.cut.mirrored else left == 0


@pytest.mark.parametrize(
    ("cut", "written"),
    [
        (Cut(2, "self", mirrored=True), "1,1"),
        (Cut(4, "self", mirrored=True), "2,2"),
        (Cut(3, "self", mirrored=True), "2,1"),
        (Cut(2, "self"), "2,0"),
        (Cut(1, "self", on_fold=True), "1,0"),
    ],
)
def test_quantity_counts_pieces_as_drawn_and_mirrored(cut, written):
    """`1,1` is a mirrored pair, `2,0` two alike (public notes on the standard, second hand)."""
    assert quantity(cut) == written


def test_style_text_says_name_units_and_that_nothing_is_graded(case):
    """Sample size and rule table must appear even when blank (second hand)."""
    keys = system_text(read(case).modelspace())
    assert list(keys) == ["Style Name", "Author", "Sample Size", "Grade Rule Table", "Units"]
    assert keys["Units"] == "METRIC"
    assert keys["Sample Size"] == keys["Grade Rule Table"] == ""
    assert len(keys["Author"].split(";")) == 3  # vendor; application; release
    assert keys["Style Name"]


def test_names_of_bodies_arrive_readable():
    assert system_text(read("trousers").modelspace())["Style Name"] == 'Trousers for Unal <& Co> - "Grosse" 38'


def test_a_date_is_written_only_when_given(tmp_path):
    path = dxf_astm.save(pattern_of("shorts"), tmp_path / "a.dxf", date="17-05-2025")
    assert system_text(ezdxf.readfile(path).modelspace())["Creation Date"] == "17-05-2025"


def test_labels_are_annotation_of_some_height(case):
    for piece, block in blocks(case):
        words = [e.dxf.text for e in on(block, "15")]
        assert piece.title.split()[0] in " ".join(words)
        for entity in block.query("TEXT"):
            assert entity.dxf.height > 0.5


@given(st.lists(st.text(max_size=45), max_size=12, unique=True))
def test_block_names_are_valid_and_told_apart_whatever_the_pieces_are_called(names):
    found = block_names(names)
    assert list(found) == names
    for name in found.values():
        assert re.fullmatch(r"[A-Z0-9_$-]{1,31}", name)
    assert len({name[:20] for name in found.values()}) == len(names)


def test_names_that_start_alike_are_told_apart():
    names = [f"a name of more than twenty letters, {n}" for n in range(12)]
    assert len({name[:20] for name in block_names(names).values()}) == 12


# ---- faults


@pytest.mark.parametrize("fault", list(FAULTS))
def test_faulty_pieces_are_refused_by_name_and_nothing_is_written(fault, tmp_path):
    make, message = FAULTS[fault]
    with pytest.raises(draft.DraftError, match=message):
        dxf_astm.save(make(), tmp_path / "a.dxf")
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("name", ["missing/a.dxf", "", "."])
def test_a_bad_path_is_told_and_leaves_nothing(name, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    with pytest.raises(draft.DraftError, match=r"^path is "):
        pattern_of("shorts").save_dxf(name, dialect="astm")
    assert list(tmp_path.iterdir()) == []
