"""Blind hem: a deep plain turning, its upper edge caught to the leg by stitches that do not show outside.

The turning is that of a plain hem; what is added is the line along which it is caught, and the larger default depth.
"""

from __future__ import annotations

from draft.choices.hems import BlindHem
from draft.piece import InnerLine
from draft.pieces.cuff import top_of
from draft.pieces.hems import turned
from draft.pieces.hems.strip import panel_of
from draft.pieces.hems.turned import above, allowance, corner, pieces, seams
from draft.pieces.plan import Plan
from draft.units import fmt

__all__ = ["above", "allowance", "corner", "leg_lines", "notes", "pieces", "seams"]

BELOW_EDGE = 6.0  # the stitches catch the turning this far below its upper edge (common practice, no source)


def _choice(plan: Plan) -> BlindHem:
    hem = plan.style.hem
    assert isinstance(hem, BlindHem)
    return hem


def leg_lines(plan: Plan, name: str) -> list[InnerLine]:
    """Both folds, and where the turning is caught to the leg."""
    folds = turned.leg_lines(plan, name)
    caught = top_of(panel_of(plan, name), _choice(plan).depth - BELOW_EDGE)
    return [*folds, InnerLine("guide", caught, "blind stitching")]


def notes(plan: Plan) -> list[str]:
    """How the turning is caught."""
    edge = "its folded edge" if _choice(plan).turn else "its neatened edge"
    return [
        f"blind hem: fold the turning back to {fmt(BELOW_EDGE, 0)} below {edge}, catch single threads of the leg, "
        "stitch loosely"
    ]
