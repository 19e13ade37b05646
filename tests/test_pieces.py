"""Pieces agree with each other because they come from the same edges: the rules of the trade, measured.

The numbers of the rules (P pocket, C cuff, F fly) follow a construction sheet of common practice; each test says what
the rule asks. Where a rule is geometry it is checked on the curves with shapely, a general library.
"""

from __future__ import annotations

import numpy as np
import pytest
from shapely.geometry import LineString, Point, Polygon
from styles import NAMED
from zoo import ZOO

import draft
from draft.geometry.meet import meet_line
from draft.geometry.points import angle_deg

BODIES = ("woman", "man", "stout", "very large", "ten years")
TOL = 0.5


def polygon(path) -> Polygon:
    return Polygon([(p.real, p.imag) for p in path.points(0.01)])


def line(path) -> LineString:
    return LineString([(p.real, p.imag) for p in path.points(0.01)])


@pytest.fixture(params=BODIES, scope="module")
def shorts(request) -> draft.Pattern:
    return draft.shorts(ZOO[request.param])


def edge(pattern, piece, name):
    return pattern.pieces[piece].edge(name)


# Pocket


def test_p1_waist_of_front_and_facing_is_the_waist_of_the_uncut_front(shorts):
    visible = next(s for s in shorts.seams if s.name == "waist, left pocket")
    assert edge(shorts, "front", "waist").length + visible.length_a == pytest.approx(
        shorts.shell.front.waist.length, abs=TOL
    )


def test_p2_side_of_front_and_facing_is_the_side_of_the_uncut_front(shorts):
    above = next(s for s in shorts.seams if s.name == "side seam above the pocket")
    assert edge(shorts, "front", "side").length + above.length_a == pytest.approx(
        shorts.shell.front.side.length, abs=TOL
    )


def test_p3_mouth_of_front_and_bag_is_one_curve(shorts):
    front, bag = line(edge(shorts, "front", "mouth").path), line(edge(shorts, "pocket_bag_front", "mouth").path)
    assert front.hausdorff_distance(bag) <= TOL


def test_p4_lower_contour_of_both_bags_is_one_curve(shorts):
    one, two = (line(edge(shorts, f"pocket_bag_{n}", "contour").path) for n in ("front", "back"))
    assert one.hausdorff_distance(two) <= TOL


def test_p5_placement_notches_stand_where_the_mouth_ends(shorts):
    facing, front = shorts.pieces["pocket_facing"], shorts.pieces["front"]
    places = {n.match: p[0].on_seam for n, p in facing.notch_places}
    assert abs(places["pocket mouth at the waist"] - front.edge("mouth").start) <= TOL
    assert abs(places["pocket mouth at the side"] - front.edge("mouth").end) <= TOL


def test_p6_facing_and_back_bag_share_waist_and_side(shorts):
    for name in ("waist", "side"):
        facing, bag = line(edge(shorts, "pocket_facing", name).path), line(edge(shorts, "pocket_bag_back", name).path)
        assert max(bag.distance(Point(c)) for c in facing.coords) <= 0.05


def test_p7_front_and_facing_together_are_the_uncut_front(shorts):
    whole = polygon(shorts.shell.front.outline)
    union = (
        polygon(shorts.pieces["front"].sew_line)
        .buffer(0.02)
        .union(polygon(shorts.pieces["pocket_facing"].sew_line).buffer(0.02))
    )
    assert union.symmetric_difference(whole.buffer(0.02)).area <= 1.0 * 0.05 * whole.length
    assert whole.buffer(0.1).covers(polygon(shorts.pieces["pocket_facing"].sew_line))


def test_p8_bag_stays_inside_the_leg(shorts):
    """Bottom above the top of the cuff by 30, inner edge not past the centre front."""
    bag = polygon(shorts.pieces["pocket_bag_back"].sew_line)
    cuff_top = edge(shorts, "cuff_front", "top").path.points(0.1).imag.max()
    assert bag.bounds[1] >= cuff_top
    assert shorts.shell.front.outline.points(0.1).real.max() > bag.bounds[2]
    assert polygon(shorts.shell.front.outline).buffer(0.1).covers(bag)


def test_p9_grain_of_the_facing_is_the_grain_of_the_front(shorts):
    one, two = (shorts.pieces[n].grainline for n in ("front", "pocket_facing"))
    assert abs(angle_deg(one.start_dir, two.start_dir)) < 1e-9


def test_mouth_curve_is_wide_enough_to_turn(shorts):
    """Radius 20 or more on adults (common practice), ends at 45 degrees or more to waist and side."""
    mouth = edge(shorts, "front", "mouth").path
    smallest = min(1 / abs(mouth.curvature_at(s)) for s in np.linspace(0.1, mouth.length - 0.1, 200))
    assert smallest >= (20 if shorts.body.hip > 850 else 15)
    front = shorts.pieces["front"]
    for name in ("waist", "mouth"):
        e = front.edge(name)
        after = front.edges[(front.edges.index(e) + 1) % len(front.edges)]
        assert 45 <= 180 - abs(angle_deg(e.end_dir, after.start_dir)) <= 135


# Fly


def test_f1_fly_ends_within_the_straight_of_the_seam(shorts):
    fly = edge(shorts, "front", "fly").path
    chord = LineString([(fly.start.real, fly.start.imag), (fly.end.real, fly.end.imag)])
    assert max(chord.distance(Point(p.real, p.imag)) for p in fly.points(0.05)) <= 2.0


def test_f2_forty_of_crotch_seam_remain_below_the_stop(shorts):
    assert edge(shorts, "front", "crotch").length >= 40


def test_f3_facing_follows_the_centre_front(shorts):
    assert edge(shorts, "fly_facing", "fly").length == pytest.approx(edge(shorts, "front", "fly").length, abs=0.01)
    crotch = line(shorts.shell.front.crotch)
    for name in ("fly", "tail"):
        assert max(crotch.distance(Point(c)) for c in line(edge(shorts, "fly_facing", name).path).coords) <= 0.05


def test_f4_shield_covers_facing_and_topstitching(shorts):
    shield, facing = shorts.pieces["fly_shield"], shorts.pieces["fly_facing"]
    assert shield.edge("zip").length >= facing.edge("fly").length + facing.edge("tail").length
    topstitch = next(item for item in shorts.pieces["front"].lines if item.kind == "topstitch")
    across = abs(topstitch.path.start - shorts.pieces["front"].edge("waist").start)
    assert shield.edge("waist").length / 2 >= across + 5


def test_topstitching_ends_on_the_seam_below_the_stop(shorts):
    topstitch = next(item for item in shorts.pieces["front"].lines if item.kind == "topstitch")
    crotch = edge(shorts, "front", "crotch")
    gap = LineString([(p.real, p.imag) for p in crotch.path.points(0.01)]).distance(
        Point(topstitch.path.end.real, topstitch.path.end.imag)
    )
    assert gap <= 0.05
    assert 5 <= abs(topstitch.path.end - crotch.end) <= 10


def test_zip_is_named_and_shorter_than_the_opening(shorts):
    (note,) = [n for n in shorts.garment.notes if n.startswith("zip")]
    length = float(note.split()[1])
    assert length <= edge(shorts, "front", "fly").length - 5
    assert length % 10 == 0


# Cuff


def test_c1_cuff_bottom_is_the_leg_bottom(shorts):
    for part in ("front", "back"):
        assert edge(shorts, f"cuff_{part}", "hem").length == pytest.approx(edge(shorts, part, "hem").length, abs=0.01)


def test_c2_cuff_top_is_the_leg_at_that_height_plus_clearance(shorts):
    clearance, depth = shorts.style.hem.clearance, shorts.style.hem.depth
    for part in ("front", "back"):
        panel = getattr(shorts.shell, part)
        inseam, side = panel.inseam.point_at(depth), panel.side.point_at(panel.side.length - depth)
        top = edge(shorts, f"cuff_{part}", "top").path
        assert abs(top.end - top.start) == pytest.approx(abs(inseam - side) + 2 * clearance, abs=0.2)


def test_c3_cuff_seams_lie_on_the_leg_seams(shorts):
    for part in ("front", "back"):
        for name in ("side", "inseam"):
            leg = line(getattr(getattr(shorts.shell, part), name))
            cuff = line(edge(shorts, f"cuff_{part}", name).path)
            assert max(leg.distance(Point(c)) for c in cuff.coords) <= shorts.style.hem.clearance + 0.1


def test_c4_cuff_corners_flow(shorts):
    joints = [j for j in shorts.joints if j.name.startswith("cuff")]
    assert len(joints) == 8
    for joint in joints:
        assert joint.angle(shorts.pieces) == pytest.approx(180, abs=2)


def test_c5_cuff_has_the_grain_of_the_leg(shorts):
    assert shorts.pieces["cuff_front"].grainline.start_dir == shorts.pieces["front"].grainline.start_dir


# Band


def test_band_is_the_waist_seam_after_darts_plus_its_ends(shorts):
    waist = 2 * (shorts.shell.front.waist.length + shorts.shell.back.waist.length)
    underlap = shorts.pieces["fly_shield"].edge("waist").length / 2
    assert edge(shorts, "waistband", "waist").length == pytest.approx(waist + underlap, abs=TOL)


@pytest.mark.parametrize("name", ["left over right, sections, tab", "right over left, sections"])
def test_band_sections_are_the_waist_edges_they_meet(name):
    pattern = draft.shorts(ZOO["woman"], NAMED[name])
    back = pattern.pieces["waistband_back"]
    assert back.cut.on_fold
    assert back.edge("waist").length == pytest.approx(pattern.shell.back.waist.length, abs=TOL)
    ends = {n: pattern.pieces[f"waistband_{n}"].edge("waist").length for n in ("left", "right")}
    over = "left" if pattern.style.closing.lap == "left_over_right" else "right"
    front = pattern.shell.front.waist.length
    assert ends.pop(over) == pytest.approx(front + pattern.style.band.overlap, abs=TOL)
    (under,) = ends.values()
    assert under == pytest.approx(front + pattern.pieces["fly_shield"].edge("waist").length / 2, abs=TOL)


@pytest.mark.parametrize("lap", ["left_over_right", "right_over_left"])
@pytest.mark.parametrize("overlap", [0.0, 45.0])
def test_button_lies_under_the_buttonhole_when_centre_fronts_meet(lap, overlap):
    style = draft.Style(closing=draft.FlyFront(lap=lap), band=draft.StraightBand(overlap=overlap))
    band = draft.shorts(ZOO["woman"], style).pieces["waistband"]
    hole = next(item.path for item in band.lines if item.kind == "buttonhole")
    cross = [item.path for item in band.lines if item.kind == "button"]
    button = (cross[0].start + cross[0].end) / 2
    centres = sorted(p[0].on_seam.real for n, p in band.notch_places if n.match.endswith("centre front"))
    shift = centres[1] - centres[0]
    moved = button.real - shift if lap == "left_over_right" else button.real + shift
    ends = sorted((hole.start.real, hole.end.real))
    # The button sits 3 from the end of the hole towards the end of the band (common practice, read in two manuals).
    assert min(moved - ends[0], ends[1] - moved) == pytest.approx(3.0, abs=0.01)
    assert hole.length == pytest.approx(18 + 3)
    assert button.imag == pytest.approx(20)


def test_ease_onto_the_band_lengthens_the_trousers_not_the_band():
    plain, eased = (draft.shorts(ZOO["woman"], draft.Style(band=draft.StraightBand(eased=e))) for e in (0.0, 12.0))
    assert edge(plain, "waistband", "waist").length == pytest.approx(edge(eased, "waistband", "waist").length, abs=0.1)
    grown = [2 * (p.shell.front.waist.length + p.shell.back.waist.length) for p in (plain, eased)]
    assert grown[1] - grown[0] == pytest.approx(12.0, abs=0.1)
    assert eased.measure()["waist"] == pytest.approx(plain.measure()["waist"], abs=0.1)


# Darts and waist


def test_darts_close_into_one_line(shorts):
    """Legs equal within 0.5; cap's halves are images of the neighbouring edge in the leg (W-9 and the cap rule)."""
    waist = shorts.pieces["back"].edge("waist")
    for dart, before in zip(waist.darts, waist.parts, strict=False):
        assert abs(dart.centre_leg - dart.point) == pytest.approx(abs(dart.side_leg - dart.point), abs=TOL)
        cap = dart.cap(before)
        half = cap.point_at(0.25 * cap.length)
        leg_dir = (dart.centre_leg - dart.point) / abs(dart.centre_leg - dart.point)
        image = dart.point + leg_dir * ((half - dart.point) / leg_dir).conjugate()
        assert line(before).distance(Point(image.real, image.imag)) <= 0.1


def test_dart_points_stay_above_the_hip(shorts):
    for part in ("front", "back"):
        for dart in shorts.pieces[part].darts:
            assert dart.point.imag >= shorts.shell.levels["hip"] + 10


# All pieces


@pytest.mark.parametrize("style", NAMED)
def test_pieces_carry_what_a_cutter_needs(style):
    pattern = draft.shorts(ZOO["woman"], NAMED[style])
    for piece in pattern.pieces.values():
        text = " ".join(piece.label)
        assert piece.title in text
        assert str(piece.cut.count) in text
        assert piece.cut.cloth in text
        assert "woman" in text
        assert "allowance" in text
        assert "1:1" in text
        assert abs(piece.grainline.p1 - piece.grainline.p0) > 10
    assert {p.cut.cloth for p in pattern.pieces.values()} >= {"self"}


def test_interfacing_follows_its_outer_piece():
    for style in (draft.Style(), draft.Style(band=draft.StraightBand(depth=30))):
        pattern = draft.shorts(ZOO["woman"], style)
        for name in ("waistband", "fly_facing"):
            outer, inner = pattern.pieces[name], pattern.pieces[f"{name}_interfacing"]
            assert inner.cut.cloth == "interfacing"
            assert polygon(inner.sew_line).symmetric_difference(polygon(outer.sew_line)).area < 1e-6


def test_right_over_left_mirrors_the_facing_and_nothing_else():
    left = draft.shorts(ZOO["woman"])
    right = draft.shorts(ZOO["woman"], draft.Style(closing=draft.FlyFront(lap="right_over_left")))
    assert right.pieces["fly_facing"].sew_line.area == pytest.approx(left.pieces["fly_facing"].sew_line.area)
    outer = [p.pieces["fly_facing"].edge("outer").path.points(1).real.mean() for p in (left, right)]
    centre = left.pieces["front"].edge("fly").end.real
    assert outer[0] < centre < outer[1]
    assert right.pieces["front"].edge("fly").length == left.pieces["front"].edge("fly").length


def test_every_sewn_edge_has_a_partner(shorts):
    """Each edge with an allowance is in a seam, is turned, or is one of the free ends named here."""
    free = {
        ("waistband", "inner"), ("waistband", "left_end"), ("waistband", "right_end"), ("fly_facing", "tail"),
        ("fly_facing", "waist"), ("fly_shield", "waist"),
    }  # fmt: skip
    sewn = {(run.piece, run.edge) for seam in shorts.seams for run in (seam.a, seam.b)}
    for piece in shorts.pieces.values():
        if piece.cut.cloth == "interfacing":
            continue
        for e in piece.edges:
            if e.allowance:
                assert (piece.name, e.name) in sewn | free, f"{piece.name}.{e.name}"


def test_hem_is_square_to_both_seams(shorts):
    for part in ("front", "back"):
        piece = shorts.pieces[part]
        for one, two in (("side", "hem"), ("hem", "inseam")):
            assert angle_deg(piece.edge(one).end_dir, piece.edge(two).start_dir) == pytest.approx(90, abs=1e-6)


def test_crotch_seam_flows_through_the_inseam(shorts):
    (joint,) = [j for j in shorts.joints if j.name == "crotch seam at the inseam"]
    assert joint.angle(shorts.pieces) == pytest.approx(180, abs=0.01)
    assert shorts.shell.front.crotch.start == shorts.block.front.points["9"]
    assert shorts.shell.back.crotch.start == shorts.block.back.points["24"]


def test_trueing_moves_no_construction_point():
    pattern = draft.trousers(ZOO["woman"], draft.Style(darts=draft.Darts(front=1), pocket=None))
    front, back = pattern.shell.front, pattern.shell.back
    for path, numbers, block in (
        (front.outline, ("8", "9", "10", "11", "13"), pattern.block.front),
        (back.outline, ("21", "22", "24", "25", "27"), pattern.block.back),
    ):
        on = line(path)
        for number in numbers:
            p = block.points[number]
            assert on.distance(Point(p.real, p.imag)) <= 0.5, number


def test_sizes_are_widths_of_the_cut_pieces(shorts):
    """The hip from shapely's intersection with a level line, against measure()."""
    y = shorts.shell.levels["hip"]
    total = 0.0
    for part in ("front", "back"):
        cut = polygon(shorts.pieces[part].sew_line).intersection(LineString([(-2000, y), (2000, y)]))
        total += cut.length
    assert shorts.measure()["hip"] == pytest.approx(2 * total, abs=0.1)


def test_level_crossings_of_the_side_are_single(shorts):
    for part in ("front", "back"):
        side = getattr(shorts.shell, part).side
        for y in np.linspace(side.end.imag + 1, side.start.imag - 1, 40):
            assert len(meet_line(side, 1j * y, 1 + 0j)) == 1
