"""What several hems share: the panel of a part, how deep a strip of the leg may be, and slits in the side seam."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial

from draft.edge import Edge
from draft.errors import DraftError
from draft.geometry.meet import meet, meet_line
from draft.geometry.offset import parallel
from draft.geometry.path import Path
from draft.geometry.polygon import inside, longest_upright
from draft.geometry.segments import Line
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces.cuff import top_of
from draft.pieces.plan import Plan
from draft.shape.leg import largest
from draft.shape.shell import Panel
from draft.units import HAIR, at_most

PARTS = ("front", "back")
LARGEST_SHARE = 0.6  # of the inseam; above it the leg is shaped for the fork
MARK = 12.0  # length of a mark square to a seam, mm
LENGTH_SLACK = 0.01  # a seam is cut to its length within less than this, mm
CLEAR_OF_FLOOR = 5.0  # between the free edge and the floor, barefoot, mm (common practice, no source)
BAG_CLEAR = 10.0  # of a pocket bag above the stop of a slit, mm (common practice, no source)


def panel_of(plan: Plan, part: str) -> Panel:
    """Front or back panel."""
    return plan.shell.front if part == "front" else plan.shell.back


def lies_on_leg(panel: Panel, depth: float) -> bool:
    """Whether a line across the leg at `depth` mm above its bottom edge stays inside it."""
    return depth <= 0 or bool(inside(top_of(panel, depth).points(0.5)[1:-1], panel.outline.points(0.5)).all())


def room_for(plan: Plan, depth: float, more: float = 0.0) -> None:
    """Refuse a hem that is deeper than the leg has room for.

    ``more`` is what is turned under besides.

    Raises
    ------
    DraftError
        With the largest depth in mm that works.
    """
    most = LARGEST_SHARE * min(plan.shell.front.inseam.length, plan.shell.back.inseam.length) - more
    panels = (plan.shell.front, plan.shell.back)
    if depth > most + HAIR or not all(lies_on_leg(panel, depth) for panel in panels):
        most = min(largest(partial(lies_on_leg, panel), most) for panel in panels)
        expected = f"at most {at_most(most, 1)} mm on this leg"
        raise DraftError("style.hem.depth", depth, expected, "make the hem shallower or the leg longer")


def clear_of_floor(plan: Plan, depth: float) -> None:
    """Refuse what hangs `depth` mm below the leg and would be trodden on.

    Raises
    ------
    DraftError
        With the largest depth, and the inside leg that the asked one wants, in mm.
    """
    most = plan.body.inside_leg - plan.shell.front.inseam.length - CLEAR_OF_FLOOR
    if depth > most + LENGTH_SLACK:
        leg = at_most(plan.body.inside_leg - CLEAR_OF_FLOOR - depth)
        expected = (
            f"at most {at_most(max(0.0, most))} mm above the floor; {depth:g} want an inside leg of {leg} or less"
        )
        raise DraftError("style.hem.depth", depth, expected, "set a shorter style.leg.inside_leg")


def side_mark(panel: Panel, above_hem: float, note: str) -> InnerLine:
    """Short mark square to the side seam, `above_hem` mm along it from its lower end: there the seam stops."""
    along = panel.side.length - above_hem
    at = panel.side.point_at(along)
    inward = 1j * panel.side.direction_at(along)
    return InnerLine("placement", Path.line(at, at + MARK * inward), note)


def edge_facing(
    plan: Plan, part: str, long: float, width: float, names: tuple[str, str], stop: tuple[float, str]
) -> Piece:
    """Facing of the side edge above the hem: the strip of the leg beside it, copied.

    Parameters
    ----------
    plan : Plan
    part : str
        ``"front"`` or ``"back"``.
    long, width : float
        Length along the side seam, and finished width, mm.
    names : tuple
        Name and title, without the part.
    stop : tuple
        Where the side seam stops, mm from the upper end of the facing, and the name of that notch.
    """
    panel, a = panel_of(plan, part), plan.style.allowances
    side = panel.side.between(panel.side.length - long, panel.side.length)
    inner, foot = _inner(panel.hem, side, width)
    edges = (
        Edge("side", (side,), allowance=a.side),
        Edge("hem", (panel.hem.between(0, foot),), allowance=a.cuff),
        Edge("inner", (inner,)),
        Edge("top", (Path.line(inner.end, side.start),)),
    )
    low, high = longest_upright(Path.join(*(edge.path for edge in edges)).points(0.5))
    return Piece(
        name=f"{names[0]}_{part}",
        title=f"{names[1]}, {part}",
        edges=edges,
        cut=Cut(2, "self", mirrored=True),
        grainline=Line(low + 0.15 * (high - low), high - 0.15 * (high - low)),
        notches=(Notch("side", stop[0], stop[1], 1 if part == "front" else 2),),
        made_for=plan.made_for,
        notes=("neaten the inner edge and the top",),
    )


def _inner(hem: Path, side: Path, width: float) -> tuple[Path, float]:
    """Inner edge of the facing, upwards from the hem, and where on the hem it starts."""
    beside = parallel(side, width)
    longer = Path.join(beside, Line(beside.end, beside.end + beside.end_dir * width))
    at = min(meet(longer, hem), key=lambda m: abs(m.along_b - width))
    return longer.between(0, at.along_a).reversed().tidy(), at.along_b


def clear_of_pockets(plan: Plan, field: str, reach: float, pieces: Mapping[str, Piece]) -> None:
    """Refuse a slit in the side seam that reaches up to a pocket bag there; ``field`` of the hem says how long it is.

    Raises
    ------
    DraftError
        With the longest slit in mm.
    """
    side = plan.shell.front.side
    for piece in pieces.values():
        if not piece.name.startswith("pocket") or "side" not in [edge.name for edge in piece.edges]:
            continue
        ends = meet_line(side, piece.edge("side").end, 1 + 0j)
        most = side.length - max(ends, default=0.0) - BAG_CLEAR
        if reach > most + HAIR:
            expected = f"at most {at_most(most)} mm below the pocket bag"
            raise DraftError(f"style.hem.{field}", reach, expected, "make it shorter or the bag shallower")
