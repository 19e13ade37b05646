"""Cut lines: true parallels of the seam lines, and corners that lie flush when sewn.

Parallels, insides and crossings are checked with shapely, a general library. The forms of corners follow a
construction sheet of common practice (no published source); its numeric check of the mirrored corner is worked there
by geometry.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
import shapely
from hypothesis import given, reject, settings
from hypothesis import strategies as st
from shapes import as_points
from zoo import ZOO

import draft
from draft.allowance import SMOOTH_DEG, cut_line, ended_on, started_on
from draft.edge import Corner, Edge, mirrored_outline
from draft.geometry.path import Path
from draft.geometry.points import angle_deg, cross_lines, dot, mirror, unit
from draft.geometry.segments import Cubic, Line, Motion

PARALLEL_TOL_MM = 0.05
CORNER_TOL_MM = 0.1  # of the sheet: a mirrored vertex reflected in its seam lies on the other cut line
LONGEST_POINT = 2.0  # of the sheet: an extended corner is cut off at twice the wider allowance
STEEPEST_END = 0.7  # cosine: an end slanted more than 45 degrees to its seam is squared
EXACT_MM = 1e-6
EXACT_MM2 = 1e-4
FLAT_MM = 0.002  # flattening for shapely
STEP_MM = 3.0
FEW = settings(max_examples=60, deadline=None)
GARMENTS = {"shorts": draft.shorts, "trousers": draft.trousers}
WIDE = draft.Allowances(side=25, inseam=20, crotch=14, waist=8, fly=12, mouth=7, bag=6, band=14, cuff=7)
STYLES = {
    "cuffs": draft.Style(),
    "turned hem, wide allowances": draft.Style(
        hem=draft.PlainHem(), darts=draft.Darts(front=1), pocket=None, allowances=WIDE
    ),
    "sections, other lap, tab": draft.Style(
        closing=draft.FlyFront(lap="right_over_left"),
        band=draft.StraightBand(sections="side_seams", overlap=45),
        allowances=draft.Allowances(side=6, inseam=18, crotch=8, waist=14, fly=7, bag=15, band=8),
        pocket=draft.CurvedPocket(mouth_ease=4),
    ),
}


def closed(corners: list[complex], widths: list[float], kinds: list[Corner] | None = None) -> list[Edge]:
    """Straight edges around a polygon."""
    ends, kinds = [*corners[1:], corners[0]], kinds or [Corner()] * len(corners)
    return [
        Edge(f"e{k}", (Path.line(complex(a), complex(b)),), allowance=w, corner=c)
        for k, (a, b, w, c) in enumerate(zip(corners, ends, widths, kinds, strict=True))
    ]


def polygon(path: Path) -> shapely.Polygon:
    points = path.points(FLAT_MM)
    return shapely.Polygon(np.column_stack([points.real, points.imag]))


def around(path: Path, step: float = STEP_MM) -> np.ndarray:
    """Points every few mm along a path, as shapely walks it."""
    points = path.points(FLAT_MM)
    line = shapely.LineString(np.column_stack([points.real, points.imag]))
    line = shapely.LinearRing(line.coords) if path.closed else line
    places = shapely.line_interpolate_point(line, np.arange(0, line.length, step))
    return shapely.get_x(places) + 1j * shapely.get_y(places)


def gaps(points: np.ndarray, to: shapely.Geometry) -> np.ndarray:
    return np.atleast_1d(shapely.distance(as_points(np.atleast_1d(points)), to))


def corner_points(path: Path) -> list[complex]:
    """Places where a closed path turns by more than a degree."""
    pairs = pairwise([path.segments[-1], *path.segments])
    return [two.controls[0] for one, two in pairs if abs(angle_deg(one.end_dir, two.start_dir)) > 1]


def vertex_beside(cut: Path, seam: Edge, corner: complex) -> complex:
    """Corner of a cut line on the parallel of a seam, the one nearest to the seam's end at `corner`."""
    seam_dir = seam.end_dir if abs(seam.end - corner) < abs(seam.start - corner) else seam.start_dir
    flank = corner - 1j * seam_dir * seam.allowance
    on_parallel = [p for p in corner_points(cut) if abs(dot(p - flank, 1j * seam_dir)) < 0.5]
    return min(on_parallel, key=lambda p: abs(p - flank))


# The sheet's numbers


@pytest.mark.parametrize(("kind", "above_q"), [("extended", 2.64), ("mirrored", -2.64), ("squared", 0.0)])
def test_corner_of_a_slanted_edge_is_the_sheets(kind, above_q):
    """Seam vertical, edge 2 at a slope of 10 degrees, a1 15: extended +2.64, mirrored -2.64 from Q, 5.3 apart.

    Source: construction sheet, worked there by geometry (15 tan 10 degrees = 2.645), derived. Squared is level with Q
    by definition.
    """
    p, slope = 300j, np.exp(1j * np.deg2rad(180 + 10))
    left = p + 200 * slope
    edges = closed([0j, p, left, left.real + 0j], [15.0, 10.0, 10.0, 10.0], [Corner(kind), *[Corner()] * 3])
    q = 300 + 10 / np.cos(np.deg2rad(10))  # where the seam line meets the cut line of edge 2
    vertex = vertex_beside(cut_line(edges), edges[0], p)
    assert vertex.real == pytest.approx(15, abs=EXACT_MM)
    assert vertex.imag - q == pytest.approx(above_q, abs=0.006)


# Flush corners


@st.composite
def corners_between(draw: st.DrawFn, low: float, high: float) -> tuple[list[complex], list[float]]:
    """A corner at the origin with an inside angle between two limits and long arms, and four allowances."""
    inside, turn = draw(st.floats(low, high)), draw(st.floats(0, 360))
    arms = [draw(st.floats(250, 400)) * np.exp(1j * np.deg2rad(turn + a)) for a in (inside, 0.0)]
    widths = [draw(st.floats(4, 25)) for _ in range(4)]
    return [complex(arms[0]), 0j, complex(arms[1]), complex(arms[0] + arms[1])], widths


def at_the_corner(drawn: tuple[list[complex], list[float]], kind: str, first: str) -> tuple[list[Edge], Edge, Edge]:
    """Edges, the one that is sewn first, and the other."""
    edges = closed(*drawn, [Corner(kind, first), *[Corner()] * 3])
    return (edges, edges[0], edges[1]) if first == "this" else (edges, edges[1], edges[0])


@FEW
@given(corners_between(50, 130), st.sampled_from(["this", "next"]))
def test_mirrored_vertex_reflected_in_its_seam_lies_on_the_other_cut_line(drawn, first):
    """Within 0.1 (construction sheet); an end slanted more than 45 degrees to its seam is squared instead."""
    edges, seam, other = at_the_corner(drawn, "mirrored", first)
    vertex = vertex_beside(cut_line(edges), seam, 0j)
    flank = -1j * other.start_dir * other.allowance
    q = cross_lines(0j, seam.start_dir, flank, other.start_dir)
    if abs(dot(other.start_dir, seam.start_dir)) > STEEPEST_END:
        assert abs(dot(vertex - q, seam.start_dir)) <= EXACT_MM
        return
    image = mirror(vertex, seam.start, seam.end)
    assert abs(dot(image - flank, 1j * other.start_dir)) <= EXACT_MM < CORNER_TOL_MM


@FEW
@given(corners_between(50, 130), st.sampled_from(["this", "next"]))
def test_squared_end_is_square_to_its_seam_and_as_wide_as_its_allowance(drawn, first):
    edges, seam, other = at_the_corner(drawn, "squared", first)
    vertex = vertex_beside(cut_line(edges), seam, 0j)
    q = cross_lines(0j, seam.start_dir, -1j * other.start_dir * other.allowance, other.start_dir)
    assert abs(dot(vertex - q, seam.start_dir)) <= EXACT_MM
    assert abs(vertex - q) == pytest.approx(seam.allowance, abs=EXACT_MM)
    assert polygon(cut_line(edges)).exterior.distance(as_points(np.array([(vertex + q) / 2]))[0]) <= EXACT_MM


@pytest.mark.parametrize("body", ["woman", "very large", "toddler"])
@pytest.mark.parametrize("style", STYLES)
def test_mirrored_corners_of_whole_patterns_fold_onto_the_other_cut_line(body, style):
    """The end of the allowance reflected in its seam, vertex and all, lies on the other cut line within 0.1."""
    checked = 0
    for piece in draft.shorts(ZOO[body], STYLES[style]).pieces.values():
        outline = polygon(piece.cut_line).exterior
        points = around(piece.cut_line, 0.5)
        for one, two in pairwise([*piece.edges, piece.edges[0]]):
            if one.corner.kind != "mirrored" or not one.allowance * two.allowance:
                continue
            seam, heading = (one, one.end_dir) if one.corner.first == "this" else (two, -two.start_dir)
            other = two if seam is one else one
            other_dir = two.start_dir if seam is one else one.end_dir
            if abs(dot(other_dir, heading)) > STEEPEST_END - 0.1:
                continue
            flank = -1j * (heading if seam is one else -heading)
            # Points beyond the seam's end within its allowance, not on its own parallel: its end, as cut.
            aside, ahead = dot(points - one.end, flank), dot(points - one.end, heading)
            reach = other.allowance + seam.allowance
            end = points[(aside > 0.3) & (aside < seam.allowance - 0.3) & (ahead > 0) & (ahead < 2 * reach)]
            assert len(end) >= seam.allowance, (piece.name, one.name)
            image = mirror(end, one.end, one.end + heading)
            assert gaps(image, outline).max() <= CORNER_TOL_MM, (piece.name, one.name)
            checked += 1
    assert checked >= 4


# Points


@FEW
@given(corners_between(8, 150), st.sampled_from(["extended", "mitred"]))
def test_points_of_extended_and_mitred_corners_are_cut_off(drawn, kind):
    """Both cut lines run on until they meet; an overlong point is cut off square to the corner's middle.

    Extended at twice the wider allowance (construction sheet), mitred at the wider allowance.
    """
    edges = closed(*drawn, [Corner(kind), *[Corner()] * 3])
    one, two = edges[0], edges[1]
    limit = max(one.allowance, two.allowance) * (LONGEST_POINT if kind == "extended" else 1.0)
    tip = cross_lines(-1j * one.start_dir * one.allowance, one.start_dir, -1j * two.start_dir * two.allowance,
                      two.start_dir)  # fmt: skip
    cut, middle = corner_points(cut_line(edges)), unit(tip)
    farthest = max(dot(p, middle) for p in cut if abs(p) < 1.5 * abs(tip) + 30)
    assert farthest == pytest.approx(min(limit, abs(tip)), abs=EXACT_MM)
    if abs(tip) <= limit:
        assert min(abs(p - tip) for p in cut) <= EXACT_MM
    else:
        assert sum(abs(dot(p, middle) - limit) <= EXACT_MM for p in cut) == 2


def test_equal_allowances_are_shapelys_mitred_buffer():
    corners = [0j, 300 + 20j, 340 + 260j, 180 + 330j, -40 + 240j]
    expected = shapely.Polygon([(p.real, p.imag) for p in corners]).buffer(14, join_style="mitre", mitre_limit=10)
    cut = polygon(cut_line(closed(corners, [14.0] * 5)))
    assert cut.symmetric_difference(expected).area <= EXACT_MM2


@pytest.mark.parametrize("widths", [(10.0,) * 6, (10, 10, 22, 5, 10, 10), (10, 10, 5, 22, 10, 10)])
def test_inward_corner_is_where_the_parallels_cross(widths):
    """An L: the cut line of its inward corner is the crossing of both parallels, whatever the allowances."""
    corners = [0j, 200 + 0j, 200 + 100j, 100 + 100j, 100 + 200j, 200j]
    cut = cut_line(closed(corners, list(widths)))
    expected = complex(100 + widths[3], 100 + widths[2])
    assert min(abs(p - expected) for p in corner_points(cut)) <= EXACT_MM
    assert polygon(cut).is_valid
    if len(set(widths)) == 1:
        whole = shapely.Polygon([(p.real, p.imag) for p in corners]).buffer(10, join_style="mitre")
        assert polygon(cut).symmetric_difference(whole).area <= EXACT_MM2


@pytest.mark.parametrize("widths", [(0, 0), (0, 10), (10, 0)])
def test_inward_corner_beside_an_edge_without_allowance(widths):
    corners = [0j, 200 + 0j, 200 + 100j, 100 + 100j, 100 + 200j, 200j]
    cut = cut_line(closed(corners, [10.0, 10.0, float(widths[0]), float(widths[1]), 10.0, 10.0]))
    assert min(abs(p - complex(100 + widths[1], 100 + widths[0])) for p in corner_points(cut)) <= EXACT_MM
    assert polygon(cut).is_valid


@pytest.mark.parametrize("turn", [-2.9, -0.5, -1e-3, -1e-8, 0.0, 1e-8, 0.5, SMOOTH_DEG])
@pytest.mark.parametrize("widths", [(10.0, 10.0), (25.0, 6.0), (6.0, 25.0), (0.0, 12.0)])
def test_slight_bend_between_edges_makes_no_loop(turn, widths):
    bend = 100 * np.exp(1j * np.deg2rad(turn))
    edges = closed([0j, 100 + 0j, 100 + bend, 150 + 200j, 200j], [*widths, 10.0, 10.0, 10.0])
    cut = polygon(cut_line(edges))
    assert cut.is_valid
    assert cut.buffer(EXACT_MM).covers(polygon(Path.join(*(e.path for e in edges))))


# No allowance, too much allowance


def test_edge_without_allowance_is_cut_on_its_line():
    piece = draft.shorts(ZOO["woman"], STYLES["sections, other lap, tab"]).pieces["waistband_back"]
    fold = piece.edge("fold")
    assert fold.allowance == 0
    assert piece.cut.on_fold
    side = [p.real for p in piece.cut_line.points(0.1)]
    at_fold = fold.start.real
    assert min(abs(max(side) - at_fold), abs(min(side) - at_fold)) <= EXACT_MM
    assert gaps(around(fold.path), polygon(piece.cut_line).exterior).max() <= EXACT_MM


@pytest.mark.parametrize("kind", ["extended", "mitred", "squared", "mirrored", "folded"])
@pytest.mark.parametrize("first", ["this", "next"])
def test_no_allowance_at_all_cuts_on_the_seam_line(kind, first):
    corners = [0j, 200 + 10j, 180 + 150j, -20 + 120j]
    cut = cut_line(closed(corners, [0.0] * 4, [Corner(kind, first)] * 4))
    assert polygon(cut).symmetric_difference(shapely.Polygon([(p.real, p.imag) for p in corners])).area <= EXACT_MM2


def scooped(width: float, radius: float = 40.0) -> list[Edge]:
    """A square with a quarter of a circle taken out of one corner."""
    handle = 4 / 3 * (2**0.5 - 1) * radius
    a, b = 100 + (100 - radius) * 1j, (100 - radius) + 100j
    scoop = Path((Cubic(a, a - handle, b - handle * 1j, b),))
    straight = closed([0j, 100 + 0j, a, b, 100j], [10.0] * 5)
    return [*straight[:2], Edge("scoop", (scoop,), allowance=width), *straight[3:]]


def test_allowance_wider_than_an_inward_radius_is_refused_with_the_limit():
    with pytest.raises(
        draft.DraftError, match=r"style\.allowances is 41\.0, .*smallest radius.* at scoop: .*narrower"
    ) as e:
        cut_line(scooped(41.0))
    assert e.value.value == 41.0
    limit = float(e.value.expected.split()[2])
    assert limit == pytest.approx(40, rel=0.02)  # a cubic is a circle within a few tenths of a per cent
    assert polygon(cut_line(scooped(limit - 1))).is_valid


@pytest.mark.parametrize("radius", [20.0, 60.0])
def test_allowance_just_inside_an_inward_radius_is_a_true_parallel(radius):
    width = 0.9 * radius
    cut = cut_line(scooped(width, radius))
    points = around(cut, 0.2)
    beside = np.abs(points[(points.real < 100) & (points.imag < 100)] - (100 + 100j))
    arc = beside[beside < 0.5 * radius]
    assert len(arc) > 10
    assert np.abs(arc - (radius - width)).max() <= 0.01 + 3e-4 * radius  # the cubic strays 0.03 % from the circle


def test_pattern_names_piece_and_edge_of_an_allowance_without_room():
    body = ZOO["small"]
    with pytest.raises(draft.DraftError, match=r"style\.allowances\.crotch.* is 25\.0, .*narrower") as caught:
        draft.shorts(body, draft.Style(allowances=draft.Allowances(crotch=25)), fit="formula")
    limit = float(caught.value.expected.split()[2])
    narrower = draft.Style(allowances=draft.Allowances(crotch=limit - 0.5))
    assert draft.shorts(body, narrower, fit="formula").check() == []


def test_edge_that_its_corners_use_up_is_refused():
    with pytest.raises(draft.DraftError, match=r"style\.allowances is .* more than 0 mm left"):
        ended_on(Path.line(0j, 10 + 0j), -5 + 0j, 1j)


# Lines brought to an end


def test_line_is_run_on_or_cut_to_end_on_another():
    line = Path.line(0j, 100 + 0j)
    assert ended_on(line, 130 + 5j, 1 + 1j).end == pytest.approx(125)
    assert ended_on(line, 60 + 5j, 1 + 1j).end == pytest.approx(55)
    assert started_on(line, 60 + 5j, 1 + 1j).start == pytest.approx(55)
    assert started_on(line, -30 + 0j, 1j).start == pytest.approx(-30)
    assert ended_on(line, 100 - 7j, 1j) is line


def test_curve_is_cut_where_it_last_crosses_the_line():
    wave = Path((Cubic(0j, 40 + 120j, 60 - 120j, 100 + 0j),))
    ended = ended_on(Path.join(wave, Line(100 + 0j, 100 + 50j)), 0j, 1 + 0j)
    assert ended.end == pytest.approx(100)


# Turned hems


def leg_with_hem(allowance: float, side: Path, inseam: Path, kinds: tuple[Corner, Corner]) -> list[Edge]:
    """A leg: side seam down, hem from left to right, inseam up, top."""
    return [
        Edge("side", (side,), allowance=12, corner=kinds[0]),
        Edge("hem", (Path.line(side.end, inseam.start),), allowance=allowance, corner=kinds[1]),
        Edge("inseam", (inseam,), allowance=9),
        Edge("top", (Path.line(inseam.end, side.start),), allowance=10),
    ]


def widths_at(cut: shapely.Polygon, heights: np.ndarray) -> np.ndarray:
    levels = [shapely.LineString([(-2000, y), (2000, y)]) for y in heights]
    return np.array([cut.intersection(level).length for level in levels])


@pytest.mark.parametrize("shape", ["tapered", "flared", "curved"])
def test_turning_of_a_straight_hem_is_as_wide_as_the_leg_at_the_same_height(shape):
    """Folded up it lies on the leg, allowances and all: exact (construction sheet: the mirror of the leg)."""
    out = {"tapered": -30.0, "flared": 30.0, "curved": 0.0}[shape]
    side, inseam = Path.line(-100 + 300j, -100 - out + 0j), Path.line(100 + out + 0j, 120 + 300j)
    if shape == "curved":
        side = Path((Cubic(-130 + 300j, -80 + 200j, -90 + 70j, -110 + 0j),))
    edges = leg_with_hem(45, side, inseam, (Corner("folded"), Corner("folded", "next")))
    cut = polygon(cut_line(edges))
    assert cut.is_valid
    depths = np.arange(0.5, 44.6, 1.0)
    assert np.abs(widths_at(cut, -depths) - widths_at(cut, depths)).max() <= 4 * FLAT_MM


FLARED = draft.Leg(inside_leg=160, hem=850)


@pytest.mark.parametrize("leg", [draft.Leg(), draft.Leg(inside_leg=300), FLARED], ids=["own", "longer", "flared"])
@pytest.mark.parametrize("body", ["woman", "stout", "very large"])
@pytest.mark.parametrize("part", ["front", "back"])
def test_turning_of_a_curved_hem_lies_on_the_leg_when_folded_along_its_chord(body, leg, part):
    """The ends of the turning, reflected in the chord of the hem, lie on the cut lines of the leg's seams."""
    piece = draft.shorts(ZOO[body], draft.Style(hem=draft.PlainHem(), leg=leg), fit="formula").pieces[part]
    hem, cut = piece.edge("hem"), polygon(piece.cut_line)
    assert cut.is_valid
    points, along = around(piece.cut_line, 1.0), unit(hem.end - hem.start)
    below = dot(points - hem.start, -1j * along)
    beyond = [(dot(points - hem.start, -along), "side"), (dot(points - hem.end, along), "inseam")]
    raw = shapely.LineString([(p.real, p.imag) for p in around(hem.path, 1.0)])
    turning = points[(below > 0.5) & (gaps(points, raw) < hem.allowance - 0.5)]
    ends = [turning[dot(turning - (hem.start + hem.end) / 2, along) * sign > 0] for sign in (-1, 1)]
    for end, (_, name) in zip(ends, beyond, strict=True):
        assert len(end) > 20, name
        assert gaps(mirror(end, hem.start, hem.end), cut.exterior).max() <= PARALLEL_TOL_MM, name


# Whole patterns


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("body", ZOO)
@pytest.mark.parametrize("garment", GARMENTS)
def test_cut_lines_are_simple_and_hold_their_seam_lines(garment, body, style):
    for piece in GARMENTS[garment](ZOO[body], STYLES[style]).pieces.values():
        cut, sew = polygon(piece.cut_line), polygon(piece.sew_line)
        assert cut.is_valid, piece.name
        assert sew.is_valid, piece.name
        assert cut.buffer(2 * FLAT_MM).covers(sew), piece.name
        assert cut.area > sew.area


def mouths(edge: Edge) -> list[complex]:
    return [p for d in edge.darts for p in (d.centre_leg, d.side_leg, (d.centre_leg + d.side_leg) / 2)]


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("body", ZOO)
@pytest.mark.parametrize("garment", GARMENTS)
def test_cut_lines_are_true_parallels_away_from_corners(garment, body, style):
    """Further than two allowances from a corner (or a dart) the distance to the seam line is the allowance +- 0.05.

    Both ways: from the cut line to the nearest seam line, and square out from the seam line to the cut line.
    """
    for piece in GARMENTS[garment](ZOO[body], STYLES[style]).pieces.values():
        points, outline = around(piece.cut_line), polygon(piece.cut_line).exterior
        lines = [shapely.LineString([(p.real, p.imag) for p in e.path.points(FLAT_MM)]) for e in piece.edges]
        far = np.array([gaps(points, line) for line in lines])
        nearest = far.argmin(axis=0)
        free = np.ones(len(points), dtype=bool)
        for one, two in pairwise([*piece.edges, piece.edges[0]]):
            reach = 2.3 * max(one.allowance, two.allowance)
            for p, r in ((one.end, reach), *((m, 2.3 * one.allowance) for m in mouths(one))):
                free &= np.abs(points - p) > r
        wanted = np.array([e.allowance for e in piece.edges])[nearest]
        off = np.abs(far.min(axis=0) - wanted)[free]
        assert len(off) == 0 or off.max() <= PARALLEL_TOL_MM, piece.name
        for edge in piece.edges:
            for part in edge.parts:
                walk = np.arange(2 * edge.allowance, part.length - 2 * edge.allowance, 10 * STEP_MM)
                out = np.array([part.point_at(s) - 1j * part.direction_at(s) * edge.allowance for s in walk])
                clear = [p for p in out if min(abs(p - c.end) for c in piece.edges) > 2.3 * max(wanted)]
                if clear:
                    assert gaps(np.array(clear), outline).max() <= PARALLEL_TOL_MM, (piece.name, edge.name)


@pytest.mark.parametrize("body", ["woman", "small", "stout", "very large"])
def test_cap_of_a_dart_is_cut_as_the_image_of_the_edge_beside_it(body):
    """Its half towards the centre, reflected in the centre leg, is the waist's cut line (construction sheet)."""
    style = draft.Style(darts=draft.Darts(front=1), pocket=None, allowances=draft.Allowances(waist=20))
    for name in ("front", "back"):
        piece = draft.shorts(ZOO[body], style).pieces[name]
        outline, points = polygon(piece.cut_line).exterior, around(piece.cut_line, 0.25)
        for dart in piece.darts:
            leg, rel = unit(dart.centre_leg - dart.point), points - dart.point
            turned = np.angle(rel / leg) * np.sign(np.angle(dart.fold_dir / leg))
            half = points[(turned > 0) & (turned < abs(np.angle(dart.fold_dir / leg)))]
            assert len(half) > dart.intake
            assert gaps(mirror(half, dart.point, dart.centre_leg), outline).max() <= CORNER_TOL_MM
            fold = mirror(half, dart.point, dart.point + dart.fold_dir)
            assert gaps(fold, outline).max() <= CORNER_TOL_MM


def off_the_mirrored_cut_line(piece: draft.Piece) -> float:
    """Area between the cut line of the mirrored outline and the mirrored cut line."""
    motion = Motion.mirror(10 + 0j, 10 + 1j)
    images = mirrored_outline(piece.edges, motion)
    assert [e.name for e in images] == [e.name for e in reversed(piece.edges)]
    assert [e.allowance for e in images] == [e.allowance for e in reversed(piece.edges)]
    return polygon(cut_line(images)).symmetric_difference(polygon(piece.cut_line.moved(motion))).area


@pytest.mark.parametrize("style", STYLES)
def test_mirrored_outline_is_cut_as_the_mirror_of_the_cut_line(style):
    """Corners keep their shape and the seam that was sewn first stays first, whichever way round they are walked."""
    for piece in draft.shorts(ZOO["woman"], STYLES[style]).pieces.values():
        if not piece.darts:
            assert off_the_mirrored_cut_line(piece) <= 0.02, piece.name


def test_mirrored_outline_keeps_the_caps_of_its_darts():
    assert off_the_mirrored_cut_line(draft.shorts(ZOO["woman"]).pieces["back"]) <= 0.02


# Any convex shape


@st.composite
def convex_edges(draw: st.DrawFn) -> list[Edge]:
    """Convex quadrilaterals of 150 to 800 mm with any corners, and any allowances, some of them none."""
    quarter = [draw(st.floats(12, 78)) for _ in range(4)]
    corners = [complex(draw(st.floats(150, 400)) * np.exp(1j * np.deg2rad(90 * k + a))) for k, a in enumerate(quarter)]
    hull = shapely.Polygon([(p.real, p.imag) for p in corners]).convex_hull
    hull = shapely.geometry.polygon.orient(hull)
    points = [complex(x, y) for x, y in list(hull.exterior.coords)[:-1]]
    widths = [draw(st.just(0.0) | st.floats(4, 25)) for _ in points]
    kinds = [
        Corner(draw(st.sampled_from(["extended", "mitred", "squared", "mirrored", "folded"])), first)
        for first in draw(st.lists(st.sampled_from(["this", "next"]), min_size=len(points), max_size=len(points)))
    ]
    return closed(points, widths, kinds)


def drawn_or_rejected(edges: list[Edge]) -> Path:
    """Cut line; an edge so short that its corners use it up must be refused, and is not looked at further."""
    try:
        return cut_line(edges)
    except draft.DraftError as error:
        if error.field == "style.allowances" and "mm left" in error.expected and min(e.length for e in edges) < 160:
            reject()
        raise


@FEW
@given(convex_edges())
def test_any_convex_piece_gets_a_simple_cut_line_around_its_seam_line(edges):
    sew = shapely.Polygon([(e.start.real, e.start.imag) for e in edges])
    cut = polygon(drawn_or_rejected(edges))
    assert cut.is_valid
    assert cut.buffer(EXACT_MM).covers(sew)
    for edge in edges:
        middle = (edge.start + edge.end) / 2
        if abs(edge.end - edge.start) > 160:  # corners may take 2 allowances and more from either end
            out = middle - 1j * edge.start_dir * edge.allowance
            assert gaps(np.array([out]), cut.exterior)[0] <= EXACT_MM


@settings(max_examples=40, deadline=None)
@given(convex_edges(), st.floats(0, 180))
def test_any_convex_piece_mirrors_with_its_cut_line(edges, turn):
    motion = Motion.mirror(5 + 3j, 5 + 3j + complex(np.exp(1j * np.deg2rad(turn))))
    expected = polygon(drawn_or_rejected(edges).moved(motion))
    assert polygon(cut_line(mirrored_outline(tuple(edges), motion))).symmetric_difference(expected).area <= EXACT_MM2


def test_allowance_is_told_by_its_field_where_one_field_gives_it():
    edges = scooped(41.0)
    for name, piece, field in (
        ("crotch", "front", "style.allowances.crotch"),
        ("contour", "pocket_bag_front", "style.allowances.bag"),
        ("side", "cuff_front", "style.allowances"),
        ("scoop", "front", "style.allowances"),
    ):
        renamed = [replace(edge, name=name) if edge.name == "scoop" else edge for edge in edges]
        with pytest.raises(draft.DraftError, match=f"inward curve at {name} of {piece}:") as caught:
            cut_line(renamed, piece)
        assert caught.value.field == field
