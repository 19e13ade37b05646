"""Braces: two folded straps, as long as the body over the shoulder says (common practice, no source)."""

from __future__ import annotations

from draft.choices.small_parts import Braces
from draft.piece import Cut, Piece
from draft.pieces.plan import Plan
from draft.pieces.small_parts.strips import strip
from draft.style import SmallPart
from draft.units import fmt

SEAM, BUTTONS_FROM_EDGE = 8.0, 15.0


def _choice(part: SmallPart) -> Braces:
    assert isinstance(part, Braces)
    return part


def pieces(plan: Plan, part: SmallPart) -> list[Piece]:
    """One strap, cut twice."""
    straps = _choice(part)
    size = complex(straps.over_shoulder + straps.adjust, 2 * straps.width)
    return [strip("brace", "Brace", size, Cut(2, "self"), SEAM, plan.made_for, folds=(straps.width,))]


def notes(plan: Plan, part: SmallPart) -> list[str]:
    """Buttons, and the caution for children."""
    straps = _choice(part)
    return [
        f"braces: {fmt(straps.over_shoulder + straps.adjust, 0)} mm long, 4 buttons inside the band, "
        f"{fmt(BUTTONS_FROM_EDGE, 0)} mm below its edge; cross them at the back",
        "braces on children: sew them to the back, so that no loop hangs free; the rules of your country come first",
    ]
