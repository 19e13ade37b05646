"""Waist without a band: a shaped facing inside, whose upper edge is the waist seam with its darts closed.

The front of the shell is drawn as the wearer's right front seen from outside. A facing turns its right side to the
body, so the facing of the left front looks as that front is drawn, and that of the right front is its image. At a
closing both follow the straight band: one ends at the centre front, the other runs on over what lies underneath.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import lru_cache

from draft.choices.bands import FacedWaist
from draft.edge import Corner, Edge, mirrored_outline
from draft.errors import DraftError
from draft.geometry.construct import smooth
from draft.geometry.offset import parallel
from draft.geometry.path import Path
from draft.geometry.segments import Line, Motion
from draft.piece import Cut, Notch, Piece
from draft.pieces.bands.around import (
    check_not_at_side,
    check_passes_hip,
    half_of,
    left_over_right,
    opens,
    stretches,
    turned,
)
from draft.pieces.bands.closed import ClosedWaist, closed_waist
from draft.pieces.plan import Plan, WaistEdges
from draft.seams import Run, Seam
from draft.shape.shell import Panel
from draft.units import HAIR, at_most

USUAL_DEPTH = 50.0  # common practice, no source
SMALLEST_DEPTH = 20.0
CLEAR_OF_POINT = 1.0  # above a dart point and the end of the straight crotch seam
FAIRED = 60.0  # of the lower edge is led onto the side seam
FAIRED_SHARE = 0.45
GRAIN_SHARE = 0.3  # from the centre, of the waist
GRAIN_INSIDE = 0.2  # of the depth, at either end


def _choice(plan: Plan) -> FacedWaist:
    band = plan.style.band
    assert isinstance(band, FacedWaist)
    return band


@lru_cache(maxsize=4)
def depth(plan: Plan) -> float:
    """Finished depth, the same all round.

    Raises
    ------
    DraftError
        When a dart or the straight of the crotch seam is shorter, with the largest depth that works.
    """
    panels = (plan.shell.front, plan.shell.back)
    room = [panel.straight for panel in panels] + [d.length for panel in panels for d in panel.waist.darts]
    most = min(room) - CLEAR_OF_POINT
    wanted = min(USUAL_DEPTH, most) if _choice(plan).depth is None else _choice(plan).depth
    assert wanted is not None
    if most < SMALLEST_DEPTH:
        raise DraftError(
            "style.band",
            _choice(plan),
            f"{SMALLEST_DEPTH:g} mm above dart points and crotch curve (there are {at_most(most)})",
            "choose longer darts, a smaller waist_drop or another band",
        )
    if wanted > most + HAIR:
        raise DraftError(
            "style.band.depth",
            wanted,
            f"at most {at_most(most)} mm: a facing ends above the dart points and the crotch curve",
            "make it shallower or the darts longer",
        )
    return wanted


def _lower(closed: ClosedWaist, panel: Panel, deep: float) -> tuple[Path, Path]:
    """Lower edge from centre to side, parallel to the waist and led square onto the side seam; and that side seam."""
    side = panel.side.between(0, deep).moved(closed.last)
    try:
        beside = parallel(closed.path, deep)
    except DraftError as error:
        bends = [closed.path.curvature_at(closed.path.length * i / 200) for i in range(201)]
        most = at_most(1 / max(1e-9, *bends) - 1)
        raise DraftError(
            "style.band.depth", deep, f"at most {most} mm on this waist", "make the facing shallower"
        ) from error
    reach = min(FAIRED, FAIRED_SHARE * beside.length)
    head, _ = beside.split_at(beside.length - reach)
    arrive = -1j * side.end_dir  # square to the side seam, as the waist is
    return Path.join(head, smooth(head.end, head.end_dir, side.end, arrive)), side


def _edges(plan: Plan, panel: Panel, beyond: float = 0.0) -> tuple[Edge, ...]:
    """Facing of one panel as drawn; `beyond` is what it runs on past the centre, straight."""
    a, deep = plan.style.allowances, depth(plan)
    closed = closed_waist(panel.waist)
    lower, side = _lower(closed, panel, deep)
    waist, centre = closed.path, panel.crotch.between(panel.crotch.length - deep, panel.crotch.length)
    if beyond:
        on = -beyond * waist.start_dir
        waist = Path.join(Line(waist.start + on, waist.start), waist)
        lower = Path.join(Line(lower.start + on, lower.start), lower)
        centre = centre.moved(Motion(shift=on))
    flush = Corner("squared", "next")
    ends = a.band if opens(plan) and panel is plan.shell.front else a.crotch
    return (
        Edge("side", (side,), allowance=a.side, corner=Corner("squared")),
        Edge("lower", (lower.reversed(),), allowance=0.0, corner=flush),
        Edge("centre", (centre,), allowance=ends, corner=Corner("mirrored")),
        Edge("waist", (waist,), allowance=a.waist, corner=Corner("mirrored", "next")),
    )


def _grain(edges: tuple[Edge, ...], deep: float) -> Line:
    """Upright line in the middle of the facing, as the grain of the panel it lies on."""
    waist = edges[3]
    along = GRAIN_SHARE * waist.length
    middle = waist.point_at(along) + 1j * waist.direction_at(along) * deep / 2
    reach = 1j * deep * (0.5 - GRAIN_INSIDE)
    return Line(middle - reach, middle + reach)


def _piece(plan: Plan, name: str, title: str, edges: tuple[Edge, ...], notches: tuple[Notch, ...], cut: Cut) -> Piece:
    return Piece(
        name=name,
        title=title,
        edges=edges,
        cut=cut,
        grainline=_grain(edges, depth(plan)),
        notches=notches,
        made_for=plan.made_for,
        notes=("neaten the lower edge",),
    )


def _mirrored(piece: Piece) -> Piece:
    """Image of a facing, its notches kept with their places."""
    x = piece.edge("waist").start.real
    motion = Motion.mirror(x + 0j, x + 1j)
    notches = tuple(Notch(n.edge, piece.edge(n.edge).length - n.along, n.match, n.count) for n in piece.notches)
    return Piece(
        name=piece.name,
        title=piece.title,
        edges=mirrored_outline(piece.edges, motion),
        cut=piece.cut,
        grainline=piece.grainline.moved(motion).reversed(),
        notches=notches,
        made_for=piece.made_for,
        notes=piece.notes,
    )


def _over_under(plan: Plan) -> tuple[str, str]:
    return ("left", "right") if left_over_right(plan) else ("right", "left")


def pieces(plan: Plan, waist: WaistEdges) -> list[Piece]:
    """Front facing (one pair, or left and right at a closing) and back facing."""
    check_not_at_side(plan, waist)
    check_passes_hip(plan, girth(plan, waist))
    pair = Cut(2, "self", mirrored=True)
    back_edges = _edges(plan, plan.shell.back)
    back = _piece(plan, "waist_facing_back", "Waist facing, back", back_edges, _dart_notches(plan), pair)
    if not opens(plan):
        edges = _edges(plan, plan.shell.front)
        return [
            _piece(plan, "waist_facing_front", "Waist facing, front", edges, _front_notches(waist, 0.0), pair),
            back,
        ]
    found = []
    for side, beyond in zip(_over_under(plan), (0.0, waist.underlap), strict=True):
        edges, notches = _edges(plan, plan.shell.front, beyond), _front_notches(waist, beyond)
        made = _piece(plan, f"waist_facing_{side}", f"Waist facing, {side} front", edges, notches, Cut(1, "self"))
        found.append(made if side == "left" else _mirrored(made))
    return [*found, back]


def _front_notches(waist: WaistEdges, beyond: float) -> tuple[Notch, ...]:
    """Centre front and pocket mouth."""
    places = half_of(waist).places
    return tuple(
        Notch("waist", beyond + places[name], name) for name in ("centre front", "pocket mouth") if name in places
    )


def _dart_notches(plan: Plan) -> tuple[Notch, ...]:
    """Where the closed darts of the back meet the facing."""
    found, along = [], 0.0
    for index, part in enumerate(plan.shell.back.waist.parts[:-1]):
        along += part.length
        found.append(Notch("waist", along, f"dart {index + 1}"))
    return tuple(found)


def _front_runs(plan: Plan, waist: WaistEdges, side: str) -> tuple[Run, Callable[[float, float], Run]]:
    """Side edge of the front facing of one half, and its waist edge by distances from the centre front."""
    if not opens(plan):
        name = "waist_facing_front"
        return Run(name, "side"), lambda a, b: Run(name, "waist", a, b)
    name, long = f"waist_facing_{side}", half_of(waist).side
    if side == "left":
        beyond = 0.0 if left_over_right(plan) else waist.underlap
        return Run(name, "side"), lambda a, b: Run(name, "waist", a + beyond, b + beyond)
    return Run(name, "side", back=True), lambda a, b: Run(name, "waist", long - b, long - a, back=True)


def seams(plan: Plan, waist: WaistEdges, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Waist seam, both halves; side seams and centre seams of the facing."""
    found = []
    for half in ("left", "right"):
        side, placed = _front_runs(plan, waist, half)
        for part in stretches(waist, pieces):
            run, on = part.run, Run("waist_facing_back", "waist")
            if part.name == "back":
                run = turned(run)
            else:
                on = placed(part.start, part.stop)
            found.append(Seam.of(f"waist, {half} {part.name}", run, on, pieces, part.ease))
        found.append(Seam.of(f"waist facing, {half} side", side, Run("waist_facing_back", "side"), pieces))
    joins = [("centre back", "waist_facing_back")]
    if not opens(plan):
        joins.append(("centre front", "waist_facing_front"))
    ends = [(where, Run(name, "centre")) for where, name in joins]
    return [*found, *(Seam.of(f"waist facing, {where}", end, end, pieces) for where, end in ends)]


def girth(plan: Plan, waist: WaistEdges) -> float:
    """Girth of the waist seam, centre front on centre front."""
    return 2 * half_of(waist).back


def notes(plan: Plan) -> list[str]:
    """What keeps a waist without a band in shape."""
    told = [
        "waist facing: sew a tape of 6 to 10 mm into the waist seam, cut to the length of the pattern's seam; a waist "
        "without a band stretches"
    ]
    if opens(plan):
        told.append("waist facing: turn its ends in at the closing, and sew a hook and eye at the top")
    return told
