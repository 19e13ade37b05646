"""Plain turned hem, cut on: the allowance is the turning, shaped as the image of the leg above it."""

from __future__ import annotations

from collections.abc import Mapping

from draft.edge import Corner
from draft.errors import DraftError
from draft.geometry.meet import meet
from draft.geometry.offset import parallel
from draft.geometry.path import Path
from draft.geometry.segments import Line, Motion
from draft.piece import InnerLine, Piece
from draft.pieces.plan import Plan
from draft.seams import Joint, Seam
from draft.shape.shell import Panel
from draft.style import PlainHem
from draft.units import HAIR, at_most

FAR = 200.0  # further than any turning flares, mm
LARGEST_SHARE = 0.6  # of the inseam; above it the leg is shaped for the fork


def _choice(plan: Plan) -> PlainHem:
    hem = plan.style.hem
    assert isinstance(hem, PlainHem)
    most = LARGEST_SHARE * plan.shell.back.inseam.length
    if hem.depth + hem.turn > most + HAIR:
        raise DraftError(
            "style.hem.depth",
            hem.depth,
            f"at most {at_most(most - hem.turn, 1)} mm on this leg",
            "make the hem shallower",
        )
    return hem


def allowance(plan: Plan) -> float:
    """Depth of the hem and what is folded under."""
    hem = _choice(plan)
    return hem.depth + hem.turn


def corner() -> Corner:
    """Corner of a turning that is folded onto the leg."""
    return Corner("folded")


def above(plan: Plan) -> float:
    """Depth of the hem."""
    return _choice(plan).depth


def leg_lines(plan: Plan, name: str) -> list[InnerLine]:
    """Fold of the hem is the seam line itself; the inner fold lies `depth` beyond it."""
    hem = _choice(plan)
    panel = plan.shell.front if name == "front" else plan.shell.back
    lines = [InnerLine("fold", panel.hem, "hem fold")]
    if hem.turn:
        lines.append(InnerLine("fold", _inner_fold(panel, hem.depth), "fold under"))
    return lines


def _inner_fold(panel: Panel, depth: float) -> Path:
    """Second fold, `depth` beyond the first; it ends where the seams, folded over with the turning, come to lie."""
    fold = Motion.mirror(panel.hem.start, panel.hem.end)
    beyond = parallel(panel.hem, -depth)
    longer = Path.join(
        Line(beyond.start - beyond.start_dir * FAR, beyond.start),
        beyond,
        Line(beyond.end, beyond.end + beyond.end_dir * FAR),
    )
    at_side = meet(longer, panel.side.reversed().moved(fold))
    at_inseam = meet(longer, panel.inseam.moved(fold))
    start = at_side[0].along_a if at_side else FAR
    stop = at_inseam[-1].along_a if at_inseam else longer.length - FAR
    return longer.between(start, stop)


def pieces(plan: Plan) -> list[Piece]:
    """No pieces of its own."""
    return []


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> tuple[list[Seam], list[Joint]]:
    """No seam with another piece."""
    return [], []
