"""Blind hem: a deep plain turning, its upper edge caught to the leg by stitches that do not show outside.

The turning is that of a plain hem; what is added is the line along which it is caught, and the larger default depth.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from draft.choices.hems import BlindHem
from draft.edge import Corner
from draft.piece import InnerLine, Piece
from draft.pieces import plain_hem
from draft.pieces.cuff import top_of
from draft.pieces.hems.strip import panel_of, room_for
from draft.pieces.plan import Plan
from draft.seams import Joint, Seam
from draft.style import PlainHem
from draft.units import fmt

BELOW_EDGE = 6.0  # the stitches catch the turning this far below its upper edge (common practice, no source)


def _choice(plan: Plan) -> BlindHem:
    hem = plan.style.hem
    assert isinstance(hem, BlindHem)
    room_for(plan, hem.depth, hem.turn)
    return hem


def _plain(plan: Plan) -> Plan:
    """Same garment with a plain hem of the same depth and fold."""
    hem = _choice(plan)
    return replace(plan, style=replace(plan.style, hem=PlainHem(depth=hem.depth, turn=hem.turn)))


def allowance(plan: Plan) -> float:
    """Depth of the hem and its first fold."""
    return plain_hem.allowance(_plain(plan))


def corner() -> Corner:
    """Corner of a turning that is folded onto the leg."""
    return plain_hem.corner()


def above(plan: Plan) -> float:
    """Depth of the hem."""
    return _choice(plan).depth


def leg_lines(plan: Plan, name: str) -> list[InnerLine]:
    """Both folds, and where the turning is caught to the leg."""
    caught = top_of(panel_of(plan, name), _choice(plan).depth - BELOW_EDGE)
    return [*plain_hem.leg_lines(_plain(plan), name), InnerLine("guide", caught, "blind stitching")]


def pieces(plan: Plan) -> list[Piece]:
    """No pieces of its own."""
    return []


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> tuple[list[Seam], list[Joint]]:
    """No seam with another piece."""
    return [], []


def notes(plan: Plan) -> list[str]:
    """How the turning is caught."""
    edge = "its folded edge" if _choice(plan).turn else "its neatened edge"
    return [
        f"blind hem: fold the turning back to {fmt(BELOW_EDGE, 0)} below {edge}, catch single threads of the leg, "
        "stitch loosely"
    ]
