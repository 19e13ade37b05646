"""Patch pocket on the back: the patch, its marks on the back, and a flap with its lining."""

from __future__ import annotations

from collections.abc import Mapping

from draft.edge import Corner, Edge
from draft.geometry.path import Path
from draft.geometry.points import unit
from draft.geometry.segments import Line
from draft.piece import Cut, Hole, InnerLine, Notch, Piece
from draft.pieces.back_pockets.flap_button import button_lines, button_notes, hole_lines
from draft.pieces.back_pockets.mouth import (
    HOLE_INSIDE,
    dart_notes,
    placement,
)
from draft.pieces.back_pockets.patch_place import (
    FLAP_ABOVE,
    FLAP_WIDER,
    Sizes,
    chosen,
    flap_outline,
    frame_of,
    marks_of,
    outline_of,
    sizes,
)
from draft.pieces.interfacing import interfacing_of
from draft.pieces.plan import Plan
from draft.seams import Run, Seam

GRAIN_ASIDE = 0.25  # of the width, beside a button


def back_marks(plan: Plan) -> tuple[list[InnerLine], list[Hole]]:
    """Outline of the patch, seam of the flap, and holes inside the corners."""
    s = sizes(plan)
    marks, frame = marks_of(plan, s), frame_of(plan, s)
    lines = placement([marks.outline, *marks.mouth], "back pocket")
    if s.flap:
        half = s.width / 2 + FLAP_WIDER
        lines += placement(frame.line(-half, half, FLAP_ABOVE), "seam of the flap")
    (top_a, top_b), (foot_a, foot_b) = marks.tops, marks.feet
    holes = [
        Hole(_inside(top_a, foot_a, marks.mouth[0].end), "back pocket"),
        Hole(_inside(top_b, foot_b, marks.mouth[-1].start), "back pocket"),
    ]
    if chosen(plan).shape != "rounded":
        holes += [
            Hole(_inside(foot_a, top_a, foot_b), "back pocket"),
            Hole(_inside(foot_b, top_b, foot_a), "back pocket"),
        ]
    return lines, holes


def _inside(corner: complex, one: complex, two: complex) -> complex:
    """Place of a hole inside a corner whose lines run towards `one` and `two`."""
    return corner + HOLE_INSIDE * (unit(one - corner) + unit(two - corner))


def pieces(plan: Plan) -> list[Piece]:
    """Patch, and the flap with its lining."""
    s = sizes(plan)
    found = [_patch(plan, s)]
    if s.flap:
        flap = _flap_piece(plan, s, "back_pocket_flap", "Back patch pocket, flap", Cut(2, "self", mirrored=True))
        title = "Back patch pocket, flap lining"
        found += [flap, _flap_piece(plan, s, "back_pocket_flap_lining", title, Cut(2, "lining", mirrored=True))]
        if plan.style.interfacing:
            found.append(interfacing_of(flap))
    return found


def _patch(plan: Plan, s: Sizes) -> Piece:
    pocket, frame, a = chosen(plan), frame_of(plan, s), plan.style.allowances.bag
    drawn = outline_of(plan, s)
    made = drawn.moved(frame.place)
    lean = unit(drawn.side.start - drawn.side.end).real * pocket.hem  # the turned hem is the image of the sides
    fold = Line(frame.closed(-s.width / 2 - lean + 1j * pocket.hem), frame.closed(s.width / 2 + lean + 1j * pocket.hem))
    lines = [InnerLine("fold", made.top, "mouth, hem fold")]
    if pocket.turn:
        lines.append(InnerLine("fold", Path((fold,)), "fold under"))
    if pocket.flap_button is not None:
        lines += button_lines(plan, s)
    aside = _aside(plan, s)
    lower = [
        Edge(name, (part,), allowance=a, corner=Corner("mitred"))
        for name, part in zip(made.lower_names, made.lower, strict=True)
    ]
    return Piece(
        name="back_pocket",
        title="Back patch pocket",
        edges=(
            Edge("side", (made.side,), allowance=a, corner=Corner("mitred")),
            *lower,
            Edge("centre", (made.centre,), allowance=a, corner=Corner("folded")),
            Edge("mouth", (made.top,), allowance=pocket.hem + pocket.turn, corner=Corner("folded", "next")),
        ),
        cut=Cut(2, "self", mirrored=True),
        grainline=_upright(frame.closed(aside - 0.12j * s.height), frame.closed(aside - 0.8j * s.height)),
        notches=(Notch("side", 0.0, "mouth fold"), Notch("centre", made.centre.length, "mouth fold")),
        lines=tuple(lines),
        made_for=plan.made_for,
        notes=("hem the mouth first", "edgestitch at 2, and at 8 beside it"),
    )


def _upright(high: complex, low: complex) -> Line:
    """Upright line, the grain of the back, through the middle of a pocket between two heights."""
    middle = (high + low) / 2
    half = 0.5 * (high.imag - low.imag)
    return Line(middle - 1j * half, middle + 1j * half)


def _aside(plan: Plan, s: Sizes) -> float:
    """How far from the middle the grainline is drawn: clear of a button and its hole."""
    return 0.0 if chosen(plan).flap_button is None else GRAIN_ASIDE * s.width


def _flap_piece(plan: Plan, s: Sizes, name: str, title: str, cut: Cut) -> Piece:
    frame, a = frame_of(plan, s), plan.style.allowances
    made = flap_outline(plan, s).moved(frame.place)
    lower = [
        Edge(n, (part,), allowance=a.mouth, corner=Corner("extended"))
        for n, part in zip(made.lower_names, made.lower, strict=True)
    ]
    middle, aside = FLAP_ABOVE - s.flap / 2, _aside(plan, s)
    return Piece(
        name=name,
        title=title,
        edges=(
            Edge("side", (made.side,), allowance=a.mouth, corner=Corner("extended")),
            *lower,
            Edge("centre", (made.centre,), allowance=a.mouth, corner=Corner("extended")),
            Edge("top", (made.top,), allowance=a.mouth, corner=Corner("extended")),
        ),
        cut=cut,
        grainline=_upright(
            frame.closed(aside + 1j * (middle + 0.3 * s.flap)), frame.closed(aside + 1j * (middle - 0.2 * s.flap))
        ),
        notches=(Notch("top", made.top.length / 2, "middle of the flap"),),
        lines=tuple(hole_lines(plan, s)) if chosen(plan).flap_button is not None else (),
        made_for=plan.made_for,
    )


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Flap on its lining; the patch is sewn flat onto the back."""
    if not chosen(plan).flap:
        return []
    flap = pieces["back_pocket_flap"]
    return [
        Seam.of(f"flap, {e.name.replace('_', ' ')}", Run(flap.name, e.name), Run(f"{flap.name}_lining", e.name), pieces)
        for e in flap.edges
    ]


def notes(plan: Plan) -> list[str]:
    """Darts under the pocket, and the button of its flap."""
    s = sizes(plan)
    half = s.width / 2
    told = dart_notes(frame_of(plan, s), -half, half, 0.0, "back pocket")
    return told if chosen(plan).flap_button is None else [*told, *button_notes(plan, s)]
