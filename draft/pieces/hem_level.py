"""How far above the bottom edge the chosen hem reaches: pockets end above it."""

from __future__ import annotations

from draft.pieces import hems
from draft.pieces.plan import Plan


def hem_above(plan: Plan) -> float:
    """Height of the finished hem above the bottom edge as its own kind tells it, mm; 0 for one that hangs below."""
    kind = hems.KINDS.get(type(plan.style.hem))
    return 0.0 if kind is None else kind.above(plan)
