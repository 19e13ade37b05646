"""The checks can fail: for each code a sound pattern is spoilt in one way, and that code alone is found."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
from zoo import ZOO

import draft
from draft.checks import (
    Finding,
    Findings,
    check_joints,
    check_notches,
    check_piece,
    check_seams,
    check_sizes,
)
from draft.edge import Edge
from draft.geometry.path import Path
from draft.geometry.segments import Cubic, Line
from draft.piece import Hole, InnerLine, Notch, Piece
from draft.seams import Joint, Run, Seam

# What the library promises: seams within 0.5 mm, sizes within 1 mm, joined corners within 2 degrees.
SEAM_TOL_MM = NOTCH_TOL_MM = LEG_TOL_MM = 0.5
SIZE_TOL_MM = 1.0
ANGLE_TOL_DEG = 2.0
KINK_TOL_DEG = 1.0
CODES = ("seam", "notch", "corner", "kink", "dart", "outline", "mark", "size", "fit")


@pytest.fixture(scope="module")
def sound() -> draft.Pattern:
    return draft.shorts(ZOO["woman"], draft.Style(leg=draft.Leg(stretch=2)))


def with_piece(pattern: draft.Pattern, name: str, change: Callable[[Piece], Piece]) -> draft.Pattern:
    """Pattern with one piece changed and every seam walked anew on the pieces as they are."""
    pieces = dict(pattern.pieces) | {name: change(pattern.pieces[name])}
    seams = tuple(Seam.of(s.name, s.a, s.b, pieces, s.ease) for s in pattern.seams)
    return replace(pattern, garment=replace(pattern.garment, pieces=pieces, seams=seams))


def with_seam(pattern: draft.Pattern, name: str, **change: float) -> draft.Pattern:
    seams = tuple(replace(s, **change) if s.name == name else s for s in pattern.seams)
    return replace(pattern, garment=replace(pattern.garment, seams=seams))


def with_edge(piece: Piece, name: str, change: Callable[[Edge], Edge]) -> Piece:
    return replace(piece, edges=tuple(change(e) if e.name == name else e for e in piece.edges))


def turned(vector: complex, degrees: float) -> complex:
    return vector * complex(np.exp(1j * np.deg2rad(degrees)))


def only(pattern: draft.Pattern) -> Finding:
    """The one finding."""
    found = pattern.check()
    assert len(found) == 1, str(found)
    return found[0]


def test_sound_pattern_has_no_findings(sound):
    assert sound.check() == []
    assert [*check_seams(sound.seams), *check_notches(sound.seams, sound.pieces)] == []
    assert [*check_joints(sound.joints, sound.pieces)] == []
    assert [f for piece in sound.pieces.values() for f in check_piece(piece)] == []


def test_walking_seams_anew_changes_nothing(sound):
    assert with_piece(sound, "front", lambda piece: piece).check() == []


# seam


@pytest.mark.parametrize("off", [SEAM_TOL_MM + 0.1, -SEAM_TOL_MM - 0.1])
def test_seam_that_is_left_over_is_found(sound, off):
    planned = next(s for s in sound.seams if s.name == "inseam")
    found = only(with_seam(sound, "inseam", ease=planned.ease - off))
    assert (found.code, found.where) == ("seam", "inseam")
    assert found.amount == pytest.approx(off, abs=0.01)
    for words in ("front.inseam is 160.0", "back.inseam", f"planned ease {planned.ease - off:.1f}"):
        assert words in found.message


def test_seam_within_its_tolerance_is_not_found(sound):
    planned = next(s for s in sound.seams if s.name == "inseam").ease
    assert with_seam(sound, "inseam", ease=planned + SEAM_TOL_MM - 0.05).check() == []


def test_piece_that_was_lengthened_is_found_in_every_seam_it_is_sewn_with(sound):
    """A cuff drawn 3 mm longer at its top edge misses its lining there, and at no other seam."""

    def longer(edge: Edge) -> Edge:
        (cubic,) = edge.parts[0].segments
        return replace(edge, parts=(Path((replace(cubic, p3=cubic.p3 + 3 * cubic.end_dir),)),))

    def change(piece: Piece) -> Piece:
        longer_top = with_edge(piece, "top", longer)
        (side,) = longer_top.edge("side").parts
        moved = Path.join(Line(longer_top.edge("top").end, side.start), side)
        return replace(longer_top, edges=tuple(replace(e, parts=(moved,)) if e.name == "side" else e
                                               for e in longer_top.edges))  # fmt: skip

    found = {(f.code, f.where): f for f in with_piece(sound, "cuff_front", change).check()}
    assert found["seam", "cuff top, front"].amount == pytest.approx(3.0, abs=0.1)
    assert ("seam", "cuff, side") in found
    assert ("seam", "cuff to leg, front") not in found


@pytest.mark.parametrize("length", [float("nan"), float("inf")])
def test_length_that_is_no_number_is_found_not_raised(sound, length):
    found = [f for f in with_seam(sound, "seat seam", length_a=length).check() if f.code == "seam"]
    assert [f.where for f in found] == ["seat seam"]
    assert str(length) in found[0].message


# notch


def shifted(piece: Piece, match: str, by: float) -> Piece:
    return replace(piece, notches=tuple(replace(n, along=n.along + by) if n.match == match else n
                                        for n in piece.notches))  # fmt: skip


@pytest.mark.parametrize(
    ("piece", "match", "seam", "sign"),
    [
        ("front", "hip", "side seam", 1),
        ("back", "hip", "side seam", -1),
        ("back", "inseam balance", "inseam", -1),
        ("pocket_bag_back", "bag contour", "pocket bag", -1),
        ("cuff_front", "front hem", None, -1),
        ("pocket_facing", "pocket mouth at the side", "facing on bag, side", 1),
    ],
)
def test_notch_that_misses_its_partner_is_found(sound, piece, match, seam, sign):
    found = with_piece(sound, piece, lambda p: shifted(p, match, 2.0)).check()
    if seam is None:  # the leg carries no partner of this notch
        assert found == []
        return
    assert {f.code for f in found} == {"notch"}
    first = next(f for f in found if f.where == seam)
    assert first.amount == pytest.approx(sign * 2.0, abs=0.1)
    assert f"{match} misses its partner by" in first.message


def test_notch_on_the_band_is_found_at_the_waist_seam(sound):
    found = with_piece(sound, "waistband", lambda p: shifted(p, "centre back", -1.0)).check()
    assert {f.code for f in found} <= {"notch"}


def test_notch_within_its_tolerance_is_not_found(sound):
    assert with_piece(sound, "front", lambda p: shifted(p, "hip", NOTCH_TOL_MM - 0.05)).check() == []


def test_notches_of_a_stretched_seam_are_compared_in_proportion(sound):
    """The back inseam is shorter on purpose: halfway along it meets halfway along the front, though the mm differ."""
    one, two = (next(n for n in sound.pieces[p].notches if n.match == "inseam balance") for p in ("front", "back"))
    assert abs(one.along - two.along) > NOTCH_TOL_MM
    assert list(check_notches(sound.seams, sound.pieces)) == []


def test_seam_without_length_does_not_stop_the_check(sound):
    seam = Seam("none", Run("front", "side", 0.0, 0.0), Run("back", "side", 0.0, 0.0), 0.0, 0.0, 0.0)
    assert list(check_seams((seam,))) == []
    assert isinstance(list(check_notches((seam,), sound.pieces)), list)


# corner


def test_corner_that_does_not_flow_is_found(sound):
    """The end of the back's waist seam turned by 5 degrees."""

    def bent(edge: Edge) -> Edge:
        *parts, last = edge.parts
        (c,) = last.segments
        return replace(edge, parts=(*parts, Path((Cubic(c.p0, c.p1, c.p3 + turned(c.p2 - c.p3, 5.0), c.p3),))))

    spoilt = replace(sound, garment=replace(sound.garment, pieces=dict(sound.pieces) | {
        "back": with_edge(sound.pieces["back"], "waist", bent)}))  # fmt: skip
    found = only(spoilt)
    assert (found.code, found.where) == ("corner", "waist at the side seam")
    assert abs(found.amount) == pytest.approx(5.0, abs=0.2)
    assert "degrees instead of 180" in found.message


@pytest.mark.parametrize(("off", "found"), [(ANGLE_TOL_DEG - 0.1, 0), (ANGLE_TOL_DEG + 0.1, 1)])
def test_corner_tolerance(sound, off, found):
    joint = Joint("hem at the side seam", ("front", "side"), ("back", "side"), total=180 - off)
    assert len(list(check_joints((joint,), sound.pieces))) == found


# kink


@pytest.mark.parametrize(("turn", "found"), [(KINK_TOL_DEG - 0.2, 0), (KINK_TOL_DEG + 0.5, 1)])
def test_kink_within_a_seam_line_is_found(sound, turn, found):
    def kinked(edge: Edge) -> Edge:
        (path,) = edge.parts
        one, two = path.split_at(path.length / 2)
        first = two.segments[0]
        bent = replace(first, p1=first.p0 + turned(first.p1 - first.p0, turn))
        return replace(edge, parts=(Path((*one.segments, bent, *two.segments[1:])),))

    spoilt = with_piece(sound, "pocket_bag_front", lambda p: with_edge(p, "contour", kinked))
    assert len(spoilt.check()) == found
    if found:
        finding = only(spoilt)
        assert (finding.code, finding.where) == ("kink", "pocket_bag_front.contour")
        assert finding.amount == pytest.approx(turn, abs=0.01)
        assert f"turns by {turn:.1f} degrees" in finding.message


# dart


def test_dart_whose_edge_does_not_close_into_one_line_is_found(sound):
    """The edge after the first dart starts 4 degrees off."""

    def bent(edge: Edge) -> Edge:
        first, second, *others = edge.parts
        (c,) = second.segments
        return replace(edge, parts=(first, Path((replace(c, p1=c.p0 + turned(c.p1 - c.p0, 4.0)),)), *others))

    found = only(with_piece(sound, "back", lambda p: with_edge(p, "waist", bent)))
    assert (found.code, found.where) == ("dart", "back.waist")
    assert found.amount == pytest.approx(4.0, abs=0.1)
    assert "closed, the edge turns by 4.0 degrees" in found.message


def test_dart_with_unequal_legs_is_found_with_the_line_it_breaks(sound):
    """With one leg 1 mm longer the cap cannot reach the other side of the mouth, so the outline is open too."""

    def longer(edge: Edge) -> Edge:
        dart, *others = edge.darts
        leg = (dart.side_leg - dart.point) / abs(dart.side_leg - dart.point)
        return replace(edge, darts=(replace(dart, side_leg=dart.side_leg + leg * 1.0), *others))

    found = list(check_piece(with_edge(sound.pieces["back"], "waist", longer)))
    by_code = {f.code: f for f in found}
    assert set(by_code) == {"dart", "outline"}
    assert by_code["dart"].amount == pytest.approx(-2 * LEG_TOL_MM, abs=1e-6)
    assert "legs differ by -1.00 mm" in by_code["dart"].message
    assert by_code["outline"].where == "back"


# outline


def spiked(piece: Piece) -> Piece:
    """Strip with its inner edge drawn out through the waist edge and back."""
    waist, right, inner, left = piece.edges
    out, back = complex(waist.end.real - 15, -40), inner.start - 30
    spike = tuple(
        replace(inner, name=f"inner {k}", parts=(Path.line(a, b),), allowance=0.0)
        for k, (a, b) in enumerate(((inner.start, out), (out, back), (back, inner.end)))
    )
    return replace(piece, edges=(waist, right, *spike, left), lines=(), notches=())


def test_outline_that_crosses_itself_is_found(sound):
    found = with_piece(sound, "waistband_interfacing", spiked).check()
    assert {f.code for f in found} == {"outline"}
    assert {f.where for f in found} == {"waistband_interfacing, sew line", "waistband_interfacing, cut line"}
    assert all("crosses itself near" in f.message for f in found)


def test_outline_that_runs_clockwise_is_found(sound):
    def backwards(piece: Piece) -> Piece:
        edges = tuple(replace(e, parts=(e.path.reversed(),)) for e in reversed(piece.edges))
        return replace(piece, edges=edges, lines=(), notches=())

    found = with_piece(sound, "waistband_interfacing", backwards).check()
    assert {f.code for f in found} == {"outline"}
    assert [f.message for f in found] == ["runs clockwise or encloses nothing"] * 2
    assert all(f.amount < 0 for f in found)


def test_outline_that_is_open_is_found_not_raised(sound):
    def gaping(edge: Edge) -> Edge:
        return replace(edge, parts=(Path.line(edge.start + 2, edge.end),))

    found = only(with_piece(sound, "waistband_interfacing", lambda p: with_edge(p, "left_end", gaping)))
    assert (found.code, found.where) == ("outline", "waistband_interfacing")
    assert "cannot be drawn" in found.message
    assert "close the gap" in found.message


# mark


OUTSIDE = 3000 + 3000j
MARKS = {
    "grainline": lambda p: replace(p, grainline=Line(p.grainline.p0, p.grainline.p1 + OUTSIDE)),
    "guide line": lambda p: replace(p, lines=(*p.lines, InnerLine("guide", Path.line(OUTSIDE, OUTSIDE + 10)))),
    "hole (pocket)": lambda p: replace(p, holes=(*p.holes, Hole(OUTSIDE, "pocket"))),
}


@pytest.mark.parametrize("name", MARKS)
@pytest.mark.parametrize("piece", ["front", "waistband", "cuff_lining_back"])
def test_mark_outside_its_piece_is_found(sound, name, piece):
    found = only(with_piece(sound, piece, MARKS[name]))
    assert (found.code, found.where) == ("mark", piece)
    assert found.message == f"{name} lies outside the cut line"


def test_notch_off_the_cut_line_is_found(sound):
    """The cut line of a wider piece is put round the back: its notches no longer reach it."""
    wide = draft.Style(allowances=draft.Allowances(side=16))
    wider = draft.shorts(ZOO["woman"], wide).pieces["back"].cut_line

    def change(piece: Piece) -> Piece:
        spoilt = replace(piece)
        object.__setattr__(spoilt, "cut_line", wider)
        return spoilt

    found = [f for f in with_piece(sound, "back", change).check() if f.code == "mark"]
    assert found
    assert {f.where for f in found} == {"back.side"}
    middle = next(f for f in found if "hip" in f.message)
    assert middle.message == "notch hip lies off the cut line"
    assert middle.amount == pytest.approx(4.0, abs=0.1)


def test_notch_beyond_its_edge_is_found_not_raised(sound):
    def change(piece: Piece) -> Piece:
        return replace(piece, notches=(*piece.notches, Notch("inseam", 5000.0, "lost")))

    found = only(with_piece(sound, "front", change))
    assert (found.code, found.where) == ("mark", "front")
    assert "5000" in found.message


# size


@pytest.mark.parametrize("name", ["waist", "hip", "inside_leg"])
@pytest.mark.parametrize("off", [SIZE_TOL_MM + 0.2, -SIZE_TOL_MM - 0.2])
def test_size_that_misses_its_target_is_found(sound, name, off):
    target = sound.measure()[name] - off
    spoilt = replace(sound, shell=replace(sound.shell, targets=dict(sound.shell.targets) | {name: target}))
    found = only(spoilt)
    assert (found.code, found.where) == ("size", name)
    assert found.amount == pytest.approx(off, abs=1e-6)
    assert found.message == f"{sound.measure()[name]:.1f} instead of {target:.1f} mm"


def test_size_of_a_changed_piece_is_measured_on_the_piece(sound):
    """The front of another body in this pattern: its hip is not this body's, and the check says so."""
    other = draft.shorts(ZOO["man"]).pieces["front"]
    found = {(f.code, f.where) for f in with_piece(sound, "front", lambda _: other).check()}
    assert ("size", "hip") in found


@pytest.mark.parametrize(("off", "found"), [(SIZE_TOL_MM - 0.05, 0), (SIZE_TOL_MM + 0.05, 1), (float("nan"), 1)])
def test_size_tolerance(off, found):
    assert len(list(check_sizes({"hip": 1000.0 + off}, {"hip": 1000.0}, {}))) == found


def test_length_that_no_block_inside_the_bounds_has_is_told_with_the_measure_to_take_again():
    body = replace(ZOO["woman"], front_crotch=ZOO["woman"].front_crotch - 95, hip_depth=None)
    pattern = draft.shorts(body)
    found = {finding.where: finding for finding in pattern.check()}
    assert {finding.code for finding in found.values()} == {"fit"}
    assert "take front_crotch again" in found["front_crotch"].message
    sizes, aims = pattern.measure(), pattern.targets()
    assert found["front_crotch"].amount == pytest.approx(sizes["front_crotch"] - aims["front_crotch"])
    assert found["front_crotch"].amount > SIZE_TOL_MM
    assert sizes["crotch"] == pytest.approx(aims["crotch"], abs=SIZE_TOL_MM)


# Printing


def test_no_findings_print_as_one_sentence():
    assert str(Findings()) == "Findings: none. Every seam, notch, corner and size fits."
    assert Findings()._repr_html_() == f"<p>{Findings()}</p>"


def test_findings_print_as_a_table():
    found = Findings([Finding("seam", "side seam", "a is 3.0, b 4.0", -1.0), Finding("size", "hip", "off", 2.0)])
    lines = str(found).splitlines()
    assert lines[0] == "Findings: 2"
    assert lines[1].split() == ["code", "where", "what"]
    assert [line.split("  ")[0] for line in lines[3:]] == ["seam", "size"]
    column = lines[1].index("where")
    assert lines[3][column:].startswith("side seam")
    assert lines[4][column:].startswith("hip")


def test_findings_as_html_are_escaped():
    html = Findings([Finding("mark", "a < b", "<b>&", 0.0)])._repr_html_()
    assert html.startswith("<table><caption>Findings: 1</caption>")
    assert "a &lt; b" in html
    assert "&lt;b&gt;&amp;" in html
    assert "<b>" not in html


def test_report_and_repr_tell_the_number_of_findings(sound):
    spoilt = with_seam(sound, "inseam", ease=9.0)
    assert "1 findings" in repr(spoilt)
    assert "0 findings" in repr(sound)
    assert "Findings: 1" in spoilt.report()


def test_every_code_is_spoilt_here():
    """The codes that the module documents are those tested above."""
    import draft.checks

    documented = [line.split()[0] for line in draft.checks.__doc__.split("-----\n")[1].splitlines() if line[:1].strip()]
    assert tuple(documented) == CODES
