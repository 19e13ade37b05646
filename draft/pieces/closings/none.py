"""No closing: the front crotch seam is sewn up to the waist, and the waist passes over the hip."""

from __future__ import annotations

from collections.abc import Mapping

from draft.edge import Corner, Edge
from draft.piece import InnerLine, Notch, Piece
from draft.pieces.fly import side_marks
from draft.pieces.plan import Opens, Plan
from draft.seams import Run, Seam
from draft.units import fmt

__all__ = ["crotch_edges", "front_marks", "notes", "opens", "pieces", "seams", "side_marks", "underlap"]


def opens() -> Opens:
    """Nowhere."""
    return "nowhere"


def crotch_edges(plan: Plan) -> tuple[Edge, ...]:
    """Whole crotch seam of the front; at the waist its allowance lies flush, as at the centre back."""
    whole = plan.shell.front.crotch
    return (Edge("crotch", (whole,), allowance=plan.style.allowances.crotch, corner=Corner("mirrored")),)


def front_marks(plan: Plan) -> tuple[list[InnerLine], list[Notch]]:
    """Notch of the centre front."""
    return [], [Notch("waist", 0.0, "centre front")]


def underlap(plan: Plan) -> float:
    """Nothing lies underneath."""
    return 0.0


def pieces(plan: Plan) -> list[Piece]:
    """No pieces of its own."""
    return []


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Front crotch seam, from inseam to waist."""
    return [Seam.of("front crotch", Run("front", "crotch"), Run("front", "crotch"), pieces)]


def notes(plan: Plan) -> list[str]:
    """What has to pass the hip."""
    return [f"no opening: the finished waist has to stretch to the hip of {fmt(plan.body.hip, 0)} mm"]
