"""Welt pocket in the back: a mouth cut open between two seams, with one welt or two, a facing and two bags.

The inner bag hangs from the waist seam; its upper edge is the waist seam of the back with the darts closed.
"""

from __future__ import annotations

from collections.abc import Mapping

from draft.edge import Corner, Edge
from draft.geometry.path import Path
from draft.geometry.segments import Line
from draft.piece import Cut, Hole, InnerLine, Notch, Piece
from draft.pieces.back_pockets.mouth import (
    HOLE_INSIDE,
    Frame,
    dart_notes,
    placement,
)
from draft.pieces.back_pockets.welt_place import (
    Bag,
    Sizes,
    box_of,
    chosen,
    contour,
    facing_span,
    frame_of,
    level_at,
    sizes,
)
from draft.pieces.interfacing import interfacing_of
from draft.pieces.plan import Plan
from draft.seams import Run, Seam
from draft.units import fmt

WELT_ENDS = 20.0  # of the welt past each end of the mouth, sewn to the cut triangles (common practice, no source)


def back_marks(plan: Plan) -> tuple[list[InnerLine], list[Hole]]:
    """Box of the mouth, and a hole inside each of its ends."""
    s = sizes(plan)
    frame, half = frame_of(plan, s), s.width / 2
    parts = frame.stretches(-half, half, -s.opening / 2)
    middle = -0.5j * s.opening
    holes = [
        Hole(parts[0].to_flat(-half + HOLE_INSIDE + middle), "pocket mouth"),
        Hole(parts[-1].to_flat(half - HOLE_INSIDE + middle), "pocket mouth"),
    ]
    return placement(box_of(plan, s), "mouth of the back pocket"), holes


def pieces(plan: Plan) -> list[Piece]:
    """Welt, facing, outer and inner bag, and the welt's interfacing."""
    s = sizes(plan)
    bag = contour(plan, s)
    welt = _welt(plan, s)
    found = [welt, _facing(plan, s, bag), _outer(plan, s, bag), _inner(plan, s, bag)]
    if plan.style.interfacing:
        found.append(interfacing_of(welt))
    return found


def _welt(plan: Plan, s: Sizes) -> Piece:
    """Folded strip: both long edges are sewn to the mouth; its grain is the back's, of two welts along the mouth."""
    pocket, frame, a = chosen(plan), frame_of(plan, s), plan.style.allowances.mouth
    half, low, high = s.width / 2, -s.opening, -s.opening + 2 * pocket.each
    p, q, r, t = (frame.closed(x + 1j * y) for x, y in ((-half, high), (-half, low), (half, low), (half, high)))
    fold_y = 1j * (low + pocket.each)
    middle = frame.closed(fold_y)
    along, up = 0.35 * s.width * frame.place.turn, 0.7j * pocket.each
    grain = Line(middle - up, middle + up) if pocket.welts == 1 else Line(middle - along, middle + along)
    return Piece(
        name="back_pocket_welt",
        title="Back welt pocket, welt",
        edges=(
            Edge("side", (Path.line(p, q),), allowance=WELT_ENDS),
            Edge("lower", (Path.line(q, r),), allowance=a),
            Edge("centre", (Path.line(r, t),), allowance=WELT_ENDS),
            Edge("upper", (Path.line(t, p),), allowance=a),
        ),
        cut=Cut(2 * pocket.welts, "self", mirrored=pocket.welts == 1),
        grainline=grain,
        notches=tuple(
            Notch(edge, along, f"mouth end at the {end}")
            for edge, ends in (("lower", ("side", "centre")), ("upper", ("centre", "side")))
            for along, end in zip((0.0, s.width), ends, strict=True)
        ),
        lines=(InnerLine("fold", Path.line(frame.closed(-half + fold_y), frame.closed(half + fold_y)), "fold"),),
        made_for=plan.made_for,
        notes=("folded lengthwise",),
    )


def _facing(plan: Plan, s: Sizes, bag: Bag) -> Piece:
    high, low = facing_span(s)
    (a, d), (b, c) = level_at(plan, s, bag, high), level_at(plan, s, bag, low)
    side, centre = bag.around.between(a, b), bag.around.between(c, d)
    allowance = plan.style.allowances.bag
    frame = frame_of(plan, s)
    squared, neatened = Corner("squared"), Corner("squared", "next")
    return Piece(
        name="back_pocket_facing",
        title="Back welt pocket, facing",
        edges=(
            Edge("side", (side,), allowance=allowance, corner=squared),
            Edge("lower", (Path.line(side.end, centre.start),), corner=neatened),
            Edge("centre", (centre,), allowance=allowance, corner=squared),
            Edge("upper", (Path.line(centre.end, side.start),), corner=neatened),
        ),
        cut=Cut(2, "self", mirrored=True),
        grainline=_upright(frame, high, low, 0.7),
        lines=tuple(placement([_mouth_line(frame, s, 0.0), _mouth_line(frame, s, -s.opening)], "mouth")),
        made_for=plan.made_for,
        notes=("neaten both long edges",),
    )


def _mouth_line(frame: Frame, s: Sizes, y: float) -> Path:
    return Path.line(frame.closed(-s.width / 2 + 1j * y), frame.closed(s.width / 2 + 1j * y))


def _upright(frame: Frame, high: float, low: float, share: float) -> Line:
    """Upright line through the middle of the pocket, the grain of the back."""
    middle, half = frame.closed(0.5j * (high + low)), 0.5 * share * (high - low)
    return Line(middle - 1j * half, middle + 1j * half)


def _outer(plan: Plan, s: Sizes, bag: Bag) -> Piece:
    """Bag sewn to the lower edge of the mouth; it lies next to the back."""
    start, stop = level_at(plan, s, bag, -s.opening)
    around = bag.around.between(start, stop)
    top = Path.line(around.end, around.start)
    a, at = plan.style.allowances, _beside_mouth(plan, s, top)
    return Piece(
        name="back_pocket_bag_outer",
        title="Back welt pocket, outer bag",
        edges=(
            Edge("around", (around,), allowance=a.bag, corner=Corner("extended")),
            Edge("top", (top,), allowance=a.mouth, corner=Corner("extended")),
        ),
        cut=Cut(2, "lining", mirrored=True),
        grainline=_upright(frame_of(plan, s), -s.opening, -s.opening - s.bag, 0.7),
        notches=(
            Notch("top", at, "mouth end at the centre"),
            Notch("top", at + s.width, "mouth end at the side"),
            Notch("around", around.length / 2, "bottom of the bag"),
        ),
        made_for=plan.made_for,
    )


def _beside_mouth(plan: Plan, s: Sizes, top: Path) -> float:
    """How far the bag's upper edge runs before the mouth begins, from its centre end."""
    return abs(top.start - frame_of(plan, s).closed(s.width / 2 - 1j * s.opening))


def _inner(plan: Plan, s: Sizes, bag: Bag) -> Piece:
    """Bag with the facing on it, up to the waist seam."""
    a, frame = plan.style.allowances, frame_of(plan, s)
    start, stop = level_at(plan, s, bag, -s.opening)
    edges = (level_at(plan, s, bag, y) for y in facing_span(s))
    facing = [Path.line(bag.around.point_at(one), bag.around.point_at(two)) for one, two in edges]
    return Piece(
        name="back_pocket_bag_inner",
        title="Back welt pocket, inner bag",
        edges=(
            Edge("around", (bag.around,), allowance=a.bag, corner=Corner("extended")),
            Edge("waist", (bag.waist,), allowance=a.waist, corner=Corner("extended")),
        ),
        cut=Cut(2, "lining", mirrored=True),
        grainline=_upright(frame, s.below, -s.opening - s.bag, 0.7),
        notches=(*_dart_notches(plan, bag), Notch("around", (start + stop) / 2, "bottom of the bag")),
        lines=tuple(placement(facing, "edge of the facing")),
        made_for=plan.made_for,
    )


def _dart_notches(plan: Plan, bag: Bag) -> list[Notch]:
    """Where the darts of the back come to lie on the bag's upper edge."""
    found, along = [], -bag.starts
    for index, part in enumerate(plan.shell.back.waist.parts[:-1]):
        along += part.length
        if 0 < along < bag.waist.length:
            found.append(Notch("waist", along, f"dart {index + 1}"))
    return found


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Welt on itself and on the bag, facing on the bag, both bags, and the inner bag in the waist seam."""
    s = sizes(plan)
    bag = contour(plan, s)
    inner, outer = "back_pocket_bag_inner", "back_pocket_bag_outer"
    welt, facing = "back_pocket_welt", "back_pocket_facing"
    start, stop = level_at(plan, s, bag, -s.opening)
    (a, d), (b, c) = (level_at(plan, s, bag, y) for y in facing_span(s))
    at = _beside_mouth(plan, s, pieces[outer].edge("top").path)
    waist = Run("back", "waist", bag.starts, bag.starts + bag.waist.length)
    runs = [
        ("welt, long edges", Run(welt, "lower"), Run(welt, "upper", back=True)),
        ("welt on the outer bag", Run(welt, "lower"), Run(outer, "top", at, at + s.width, back=True)),
        ("facing on the inner bag, side", Run(facing, "side"), Run(inner, "around", a, b)),
        ("facing on the inner bag, centre", Run(facing, "centre"), Run(inner, "around", c, d)),
        ("back pocket bag", Run(outer, "around"), Run(inner, "around", start, stop)),
        ("back pocket bag in the waist seam", Run(inner, "waist"), waist),
    ]
    return [Seam.of(name, one, two, pieces) for name, one, two in runs]


def notes(plan: Plan) -> list[str]:
    """Darts in the mouth, and when to cut."""
    s = sizes(plan)
    half = s.width / 2
    found = dart_notes(frame_of(plan, s), -half, half, -s.opening / 2, "back pocket")
    size = f"{fmt(s.width, 0)} x {fmt(s.opening, 0)} mm"
    return [
        *found,
        f"back pocket: mouth {size}; cut it open only when both seams lie parallel and end at the marks",
    ]
