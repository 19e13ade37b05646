"""Braces: two folded straps, as long as the body over the shoulder says (common practice, no source)."""

from __future__ import annotations

from collections.abc import Mapping

from draft.choices.small_parts import Braces
from draft.piece import Cut, InnerLine, Piece
from draft.pieces.plan import Plan
from draft.pieces.small_parts.strips import strip
from draft.pieces.small_parts.waist_places import crease_place, half_waist, inner_depth, marked, spots
from draft.style import SmallPart
from draft.units import fmt

SEAM, BUTTONS_FROM_EDGE = 8.0, 15.0
FROM_CENTRE_BACK, BACK_SHARE = 40.0, 0.4  # of the back waist, on small bodies
BUTTON = 16.0


def _choice(part: SmallPart) -> Braces:
    assert isinstance(part, Braces)
    return part


def pieces(plan: Plan, part: SmallPart) -> list[Piece]:
    """One strap, cut twice."""
    straps = _choice(part)
    size = complex(straps.over_shoulder + straps.adjust, 2 * straps.width)
    return [strip("brace", "Brace", size, Cut(2, "self"), SEAM, plan.made_for, folds=(straps.width,))]


def places(plan: Plan) -> tuple[float, float]:
    """Places of the buttons along half the waist, from the centre front: over the crease, beside the centre back."""
    whole, back = half_waist(plan), plan.shell.back.waist.length
    return crease_place(plan), whole - min(FROM_CENTRE_BACK, BACK_SHARE * back)


def marks(plan: Plan, part: SmallPart, pieces: Mapping[str, Piece]) -> dict[str, list[InnerLine]]:
    """The buttons, inside the band below its upper edge."""
    found: dict[str, list[InnerLine]] = {}
    for place in places(plan):
        for spot in spots(plan, pieces, place, "inside", 2 * BUTTONS_FROM_EDGE):
            half = min(BUTTON / 2, spot.depth / 3)
            across, along = spot.cross(inner_depth(spot, BUTTONS_FROM_EDGE), half)
            found = marked(found, spot, InnerLine("button", across, "button of the braces, inside"))
            found = marked(found, spot, InnerLine("button", along))
    return found


def notes(plan: Plan, part: SmallPart) -> list[str]:
    """Buttons, and the caution for children."""
    straps = _choice(part)
    front, back = places(plan)
    return [
        f"braces: {fmt(straps.over_shoulder + straps.adjust, 0)} mm long, 4 buttons inside the band, "
        f"{fmt(BUTTONS_FROM_EDGE, 0)} mm below its edge, {fmt(front, 0)} mm from the centre front "
        f"and {fmt(half_waist(plan) - back, 0)} from the centre back; cross them at the back",
        "braces on children: sew them to the back, so that no loop hangs free; the rules of your country come first",
    ]
