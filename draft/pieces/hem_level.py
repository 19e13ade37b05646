"""How far above the bottom edge the chosen hem reaches: pockets end above it."""

from __future__ import annotations

from draft.pieces import cuff, hems, plain_hem
from draft.pieces.plan import HemKind, Plan
from draft.style import Choice, PlainHem, TurnedCuff


def hem_above(plan: Plan) -> float:
    """Height of the finished hem above the bottom edge as its own kind tells it, mm; 0 for one that hangs below."""
    kinds: dict[type[Choice], HemKind] = {TurnedCuff: cuff, PlainHem: plain_hem, **hems.KINDS}
    kind = kinds.get(type(plan.style.hem))
    return 0.0 if kind is None else kind.above(plan)
