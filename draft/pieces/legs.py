"""Front and back: the panels of the shell with their allowances, notches and marks."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TypeAlias

from draft.edge import Corner, Edge
from draft.geometry.meet import along_at_height
from draft.geometry.path import Path
from draft.geometry.segments import Line
from draft.piece import Cut, Hole, InnerLine, Notch, Piece, dart_marks, pleat_marks
from draft.pieces.plan import BackPocketKind, ClosingKind, FrontOpening, HemKind, Plan, PocketKind
from draft.shape.shell import Panel

FORK_BALANCE_SHARE = 0.45  # balance notch on a shorts inseam, share of the inseam from the fork
CROTCH_BALANCE_SHARE = 0.5
GRAIN_MARGIN = 0.12
CLEAR_OF_DART = 12.0
CLEAR_OF_MOUTH = 15.0  # side notches from the ends of a pocket mouth (common practice, read)

CLEAR = 5.0
GATHERED_REACH = 1.5  # gathers are spread over this much of the seam to either side, per mm that they draw up
BESIDE_GATHERS = 12.0
CREASE_ABOVE_HEM, SHORTEST_CREASE = 1.0, 60.0
GRAIN_BESIDE_CREASE = 0.16  # of the hem

Places: TypeAlias = tuple[tuple[str, float], ...]
"""Names and places along the side seam, from the waist, mm."""


def front_piece(
    plan: Plan, opening: FrontOpening, closing: ClosingKind, hem: HemKind, pocket: PocketKind | None = None
) -> Piece:
    """Front, cut away at the pocket and parted at the fly stop, if it has one."""
    a, panel = plan.style.allowances, plan.shell.front
    corner = Corner("mirrored" if opening.mouth is None else "squared", "next")
    waist = Edge("waist", opening.waist.parts, opening.waist.darts, a.waist, corner)
    edges = [
        Edge("side", (opening.side,), allowance=a.side, corner=hem.corner()),
        _hem_edge(plan, panel, hem, "front"),
        Edge("inseam", (panel.inseam,), allowance=a.inseam, corner=Corner("mirrored")),
        *closing.crotch_edges(plan),
        waist,
    ]
    if opening.mouth is not None:
        edges.append(Edge("mouth", (opening.mouth,), allowance=a.mouth, corner=Corner("squared")))
    lines, fly_notches = closing.front_marks(plan)
    dart_lines, holes = dart_marks(waist)
    dart_lines += fold_lines(plan, waist, "front")
    pocket_lines, pocket_holes = _front_marks(plan, pocket)
    lines = [*lines, *dart_lines, *crease_line(plan, panel, hem), *hem.leg_lines(plan, "front"), *pocket_lines]
    return Piece(
        name="front",
        title="Front",
        edges=tuple(edges),
        cut=Cut(2, "self", mirrored=True),
        grainline=_grain(panel, plan, hem),
        notches=(
            *side_notches(plan, opening, 1, side_places(plan, pocket)),
            *_leg_notches(plan, panel, 1),
            *_hem_notches(plan, hem, "front", opening.on_side),
            *fly_notches,
            *closing.side_marks(plan, opening),
            *_dart_notches(waist),
            *_mouth_notches(opening),
        ),
        lines=tuple(lines),
        holes=(*holes, *pocket_holes),
        made_for=plan.made_for,
    )


def back_piece(
    plan: Plan,
    opening: FrontOpening,
    closing: ClosingKind,
    hem: HemKind,
    pocket: BackPocketKind | None,
    places: Places = (),
) -> Piece:
    """Back, with its waist darts and the marks of its pocket."""
    a, panel = plan.style.allowances, plan.shell.back
    waist = Edge("waist", panel.waist.parts, panel.waist.darts, a.waist, Corner("mirrored", "next"))
    edges = (
        Edge("side", (panel.side,), allowance=a.side, corner=hem.corner()),
        _hem_edge(plan, panel, hem, "back"),
        Edge("inseam", (panel.inseam,), allowance=a.inseam, corner=Corner("mirrored")),
        Edge("crotch", (panel.crotch,), allowance=a.crotch, corner=Corner("mirrored")),
        waist,
    )
    dart_lines, holes = dart_marks(waist)
    dart_lines += fold_lines(plan, waist, "back")
    pocket_lines, pocket_holes = ([], []) if pocket is None else pocket.back_marks(plan)
    mouth = (Notch("side", opening.on_side, "pocket mouth at the side", 2),) if opening.mouth is not None else ()
    return Piece(
        name="back",
        title="Back",
        edges=edges,
        cut=Cut(2, "self", mirrored=True),
        grainline=_grain(panel, plan, hem),
        notches=(
            *mouth,
            *side_notches(plan, None, 2, places),
            *closing.side_marks(plan, opening),
            *_leg_notches(plan, panel, 2),
            *_hem_notches(plan, hem, "back"),
            *_dart_notches(waist),
        ),
        lines=(*dart_lines, *crease_line(plan, panel, hem), *hem.leg_lines(plan, "back"), *pocket_lines),
        holes=(*holes, *pocket_holes),
        made_for=plan.made_for,
    )


def _hem_edge(plan: Plan, panel: Panel, hem: HemKind, part: str) -> Edge:
    """Bottom edge; a hem that is folded more than once says where its seam lines run."""
    told = getattr(hem, "turning", None)
    turning = None if told is None else told(plan, part)
    corner = hem.corner().swapped()
    return Edge("hem", (panel.hem,), allowance=hem.allowance(plan), corner=corner, turning=turning)


def _hem_notches(plan: Plan, hem: HemKind, part: str, cut_off: float = 0.0) -> list[Notch]:
    """Notches of the hem on the leg, counted along the whole side seam; `cut_off`: what a pocket took from its top."""
    told = getattr(hem, "leg_notches", None)
    found: list[Notch] = [] if told is None else told(plan, part)
    return [replace(n, along=n.along - cut_off) if n.edge == "side" else n for n in found]


def _grain(panel: Panel, plan: Plan, hem: HemKind) -> Line:
    top = min(panel.waist.parts[-1].end.imag, panel.waist.parts[0].start.imag)
    bottom = panel.hem.point_at(panel.hem.length / 2).imag + hem.above(plan)
    margin = GRAIN_MARGIN * (top - bottom)
    near = [dart.point.imag - CLEAR_OF_DART for dart in panel.waist.darts if not dart.pleat]  # not into a dart
    x = plan.shell.crease + (GRAIN_BESIDE_CREASE * panel.hem.length if plan.style.leg.pressed else 0.0)
    return Line(x + 1j * (bottom + margin), x + 1j * min(top - 2 * margin, *near, top))


def _front_marks(plan: Plan, pocket: PocketKind | None) -> tuple[list[InnerLine], list[Hole]]:
    """Lines and drill holes of a pocket that lies on the front: not every kind has them."""
    told = getattr(pocket, "front_marks", None)
    return ([], []) if told is None else told(plan)


def side_places(plan: Plan, pocket: PocketKind | None) -> Places:
    """Names and places, from the waist, where a pocket opens the side seam: not every kind does."""
    told = getattr(pocket, "side_marks", None)
    return () if told is None else tuple(told(plan))


def side_notches(plan: Plan, opening: FrontOpening | None, count: int, places: Places = ()) -> list[Notch]:
    """Hip, crotch and (on long legs) knee notches of a side seam, at the same arc lengths front and back."""
    begins = opening.on_side if opening else 0.0
    front, levels = plan.shell.front, plan.shell.levels
    found = [Notch("side", along, name, 1) for name, along in places]
    for name in ("hip", "crotch", "knee"):
        if levels[name] < levels["hem"] + 40:
            continue
        along = along_at_height(front.side, levels[name]) - begins
        if along > CLEAR_OF_MOUTH and all(abs(along - at) > CLEAR_OF_MOUTH for _, at in places):
            found.append(Notch("side", along, name, count))
    return found


def _leg_notches(plan: Plan, panel: Panel, count: int) -> list[Notch]:
    """Balance notches of inseam and crotch seam, by share of each seam so that a stretched back still meets."""
    inseam = panel.inseam.length
    shares = [1 - FORK_BALANCE_SHARE]
    levels = plan.shell.levels
    if levels["knee"] > levels["hem"] + 40:
        shares = [1 - 0.2, (levels["knee"] - levels["hem"]) / -levels["hem"]]
    names = ("inseam balance", "knee")
    found = [Notch("inseam", share * inseam, name, count) for share, name in zip(shares, names, strict=False)]
    curve = panel.crotch.length - panel.straight
    if count == 2 or curve > 60:
        found.append(
            Notch("crotch", curve * CROTCH_BALANCE_SHARE, f"{'back' if count == 2 else 'front'} crotch balance", count)
        )
    return found


def _dart_notches(waist: Edge) -> list[Notch]:
    """One notch at each leg of a dart or fold: two places in the open piece, one place of the sewn edge.

    Gathers have a notch where they begin and one where they end, on the sewn edge as far to either side.
    """
    found, along = [], 0.0
    for index, (part, after) in enumerate(pairwise(waist.parts)):
        along += part.length
        fold = waist.darts[index].pleat
        if fold == "gathers":
            reach = min(GATHERED_REACH * waist.darts[index].intake, part.length - CLEAR, after.length - CLEAR)
            found += [Notch("waist", along - reach, "gathers"), Notch("waist", along + reach, "end of the gathers")]
            continue
        name = f"{'pleat' if fold else 'dart'} {index + 1}"
        found += [Notch("waist", along, name), Notch("waist", along + 1e-6, name)]
    return found


def fold_lines(plan: Plan, waist: Edge, name: str) -> tuple[InnerLine, ...]:
    """Lines of the pleats or tucks of a panel."""
    style = plan.style
    if name == "front" and style.pleats is not None:
        return pleat_marks(waist, style.pleats.sewn)
    kind = getattr(style.darts, f"{name}_as")
    if kind == "gathers":
        return tuple(_gathered(waist))
    return pleat_marks(waist, style.darts.sewn if kind == "tucks" else 0.0, kind.removesuffix("s"))


def _gathered(waist: Edge) -> list[InnerLine]:
    """Lines beside the stretches that are gathered, with the length they are drawn up to."""
    places = {n.match: n.along for n in _dart_notches(waist)}
    if "gathers" not in places:
        return []
    begins, ends = places["gathers"], places["end of the gathers"]
    inside = [waist.point_at(at) + 1j * waist.direction_at(at) * BESIDE_GATHERS for at in (begins, ends)]
    return [InnerLine("guide", Path.line(*inside), f"gather to {ends - begins:.0f} mm")]


def crease_line(plan: Plan, panel: Panel, hem: HemKind) -> list[InnerLine]:
    """Pressed crease: in front from the first pleat or the crotch line, at the back from below the seat, to the hem."""
    if not plan.style.leg.pressed:
        return []
    top = plan.shell.levels["crotch"]
    if panel is plan.shell.front and plan.style.pleats is not None:
        top = panel.waist.parts[0].end.imag - plan.style.pleats.sewn - CLEAR
    bottom = panel.hem.point_at(panel.hem.length / 2).imag + CREASE_ABOVE_HEM
    if top - bottom < SHORTEST_CREASE:
        return []
    return [
        InnerLine("fold", Path.line(plan.shell.crease + 1j * top, plan.shell.crease + 1j * bottom), "press the crease")
    ]


def _mouth_notches(opening: FrontOpening) -> list[Notch]:
    return [] if opening.mouth is None else [Notch("mouth", opening.mouth.length / 2, "middle of the mouth")]
