"""Turned hem with a faced vent at the side seam.

The facings are copies of the leg beside its side seam. Each is sewn to the side edge from the stop of the side seam
down, and along the fold of the hem, then turned inside. Widths of 30 and a run of 15 past the stop are common practice,
no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from math import floor

from draft.choices.hems import VentedHem
from draft.edge import Corner, Edge
from draft.errors import DraftError
from draft.geometry.meet import meet, meet_line
from draft.geometry.offset import parallel
from draft.geometry.path import Path
from draft.geometry.polygon import longest_upright
from draft.geometry.segments import Line
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces import plain_hem
from draft.pieces.hems.strip import LARGEST_SHARE, PARTS, panel_of, side_mark
from draft.pieces.plan import Plan
from draft.seams import Joint, Run, Seam
from draft.style import PlainHem
from draft.units import fmt

PAST_STOP = 15.0  # the facing runs on past the stop, mm
BAG_CLEAR = 10.0  # of a pocket bag above the stop, mm (common practice, no source)
WIDEST_SHARE = 0.4  # of a part's hem that one facing takes
STOP = "vent stop"


def _choice(plan: Plan) -> VentedHem:
    """Choice, refused when vent or facing has no room on the leg."""
    hem = plan.style.hem
    assert isinstance(hem, VentedHem)
    most = LARGEST_SHARE * plan.shell.back.inseam.length - PAST_STOP
    if hem.vent > most:
        raise DraftError("style.hem.vent", hem.vent, f"at most {floor(most)} mm on this leg", "make the vent shorter")
    if hem.vent < hem.depth:
        expected = f"at least {hem.depth:g} mm, the depth of the hem"
        raise DraftError("style.hem.vent", hem.vent, expected, "make the vent longer or the hem shallower")
    widest = WIDEST_SHARE * min(panel_of(plan, part).hem.length for part in PARTS)
    if hem.facing > widest:
        expected = f"at most {floor(widest)} mm on this leg"
        raise DraftError("style.hem.facing", hem.facing, expected, "make the facing narrower")
    return hem


def _plain(plan: Plan) -> Plan:
    """Same garment with a plain hem of the same depth and turn."""
    hem = _choice(plan)
    return replace(plan, style=replace(plan.style, hem=PlainHem(depth=hem.depth, turn=hem.turn)))


def allowance(plan: Plan) -> float:
    """Depth of the hem and what is folded under."""
    return plain_hem.allowance(_plain(plan))


def corner() -> Corner:
    """Corner of a turning that is folded onto the leg."""
    return plain_hem.corner()


def above(plan: Plan) -> float:
    """Depth of the hem."""
    return _choice(plan).depth


def leg_lines(plan: Plan, name: str) -> list[InnerLine]:
    """Folds of the hem, and the stop of the side seam, as far from the bottom edge on the front as on the back."""
    return [*plain_hem.leg_lines(_plain(plan), name), side_mark(panel_of(plan, name), _choice(plan).vent, STOP)]


def leg_notches(plan: Plan, name: str) -> list[Notch]:
    """Stop of the side seam, single in front, double behind."""
    along = panel_of(plan, name).side.length - _choice(plan).vent
    return [Notch("side", along, STOP, 1 if name == "front" else 2)]


def pieces(plan: Plan) -> list[Piece]:
    """Facing of the vent for front and back."""
    return [_facing(plan, part) for part in PARTS]


def _facing(plan: Plan, part: str) -> Piece:
    """Strip of the leg beside its side seam, from the fold of the hem to past the stop."""
    hem, panel, a = _choice(plan), panel_of(plan, part), plan.style.allowances
    long = hem.vent + PAST_STOP
    side = panel.side.between(panel.side.length - long, panel.side.length)
    inner, foot = _inner(panel.hem, side, hem.facing)
    top = Path.line(inner.end, side.start)
    edges = (
        Edge("side", (side,), allowance=a.side),
        Edge("hem", (panel.hem.between(0, foot),), allowance=a.cuff),
        Edge("inner", (inner,)),
        Edge("top", (top,)),
    )
    low, high = longest_upright(Path.join(*(edge.path for edge in edges)).points(0.5))
    return Piece(
        name=f"vent_facing_{part}",
        title=f"Vent facing, {part}",
        edges=edges,
        cut=Cut(2, "self", mirrored=True),
        grainline=Line(low + 0.15 * (high - low), high - 0.15 * (high - low)),
        notches=(Notch("side", PAST_STOP, STOP, 1 if part == "front" else 2),),
        made_for=plan.made_for,
        notes=("neaten the inner edge and the top",),
    )


def _inner(hem: Path, side: Path, width: float) -> tuple[Path, float]:
    """Inner edge of the facing, upwards from the hem, and where on the hem it starts."""
    beside = parallel(side, width)
    longer = Path.join(beside, Line(beside.end, beside.end + beside.end_dir * width))
    at = min(meet(longer, hem), key=lambda m: abs(m.along_b - width))
    return longer.between(0, at.along_a).reversed().tidy(), at.along_b


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> tuple[list[Seam], list[Joint]]:
    """Facing to the side edge below the stop, and to the fold of the hem."""
    hem, found = _choice(plan), []
    _clear_of_pockets(plan, hem.vent, pieces)
    for part in PARTS:
        facing, leg = f"vent_facing_{part}", pieces[part].edge("side").length
        wide = pieces[facing].edge("hem").length
        below = Run(part, "side", leg - hem.vent), Run(facing, "side", PAST_STOP)
        found.append(Seam.of(f"vent, {part}", *below, pieces))
        found.append(Seam.of(f"vent, {part} hem", Run(part, "hem", 0, wide), Run(facing, "hem"), pieces))
    return found, []


def _clear_of_pockets(plan: Plan, vent: float, pieces: Mapping[str, Piece]) -> None:
    """Refuse a vent that reaches up to a pocket bag in the side seam."""
    side = plan.shell.front.side
    for piece in pieces.values():
        if not piece.name.startswith("pocket") or "side" not in [edge.name for edge in piece.edges]:
            continue
        ends = meet_line(side, piece.edge("side").end, 1 + 0j)
        most = side.length - max(ends, default=0.0) - BAG_CLEAR
        if vent > most:
            expected = f"at most {floor(most)} mm below the pocket bag"
            raise DraftError("style.hem.vent", vent, expected, "make the vent shorter or the bag shallower")


def notes(plan: Plan) -> list[str]:
    """How the vent is made."""
    hem = _choice(plan)
    return [
        f"vent: end the side seam with a backstitch {fmt(hem.vent, 0)} above the bottom edge; sew each facing to the "
        "side edge and along the hem fold, trim the turning behind it, turn it inside; a bar tack at the stop"
    ]
