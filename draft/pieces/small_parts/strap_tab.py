"""Strap tabs with a ring: a folded strap with a point and the short loop that holds the ring (common practice)."""

from __future__ import annotations

from draft.choices.small_parts import StrapTab
from draft.piece import Cut, Piece
from draft.pieces.plan import Plan
from draft.pieces.small_parts.strips import strip
from draft.style import SmallPart
from draft.units import fmt

SEAM, BASE, RING_LOOP = 6.0, 30.0, 20.0  # allowance inside; what is sewn down; of the loop, each half
RING_THICK = 5.0


def _choice(part: SmallPart) -> StrapTab:
    assert isinstance(part, StrapTab)
    return part


def pieces(plan: Plan, part: SmallPart) -> list[Piece]:
    """Two straps, and two loops for the rings."""
    tab = _choice(part)
    long, short = tab.length + BASE, 2 * RING_LOOP + RING_THICK
    made = plan.made_for
    return [
        strip(
            "strap", "Strap", complex(long, 2 * tab.width), Cut(2, "self"), SEAM, made, folds=(tab.width,),
            notes=("turn one end to a point of 90 degrees",),
        ),
        strip("ring_loop", "Ring loop", complex(short, 2 * tab.width), Cut(2, "self"), SEAM, made, folds=(tab.width,)),
    ]  # fmt: skip


def notes(plan: Plan, part: SmallPart) -> list[str]:
    """What to buy."""
    return [f"rings: 2, {fmt(_choice(part).ring, 0)} mm wide inside"]
