"""Strap tabs with a ring: a folded strap with a point and the short loop that holds the ring (common practice).

The ring hangs in front of the side seam and looks back; the strap begins behind the seam and runs forward to it. How
far apart they are set, so that the waist can be drawn in, is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping

from draft.choices.small_parts import StrapTab
from draft.piece import Cut, InnerLine, Piece
from draft.pieces.plan import Plan
from draft.pieces.small_parts.strips import strip
from draft.pieces.small_parts.waist_places import half_waist, marked, side_seam, spots
from draft.style import SmallPart
from draft.units import fmt

SEAM, BASE, RING_LOOP = 6.0, 30.0, 20.0  # allowance inside; what is sewn down; of the loop, each half
RING_THICK = 5.0
DRAWN_IN = 40.0  # from the ring to where the strap comes free
LARGEST_SHARE = 0.8  # of front and back waist, on small bodies
BELOW_SEAM = 10.0  # from the waist seam to the strap, on a waist without a band


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


def places(plan: Plan) -> tuple[float, float]:
    """Places along half the waist, from the centre front, of the sewn-down ends of ring loop and strap, mm."""
    side = side_seam(plan)
    front, back = side, half_waist(plan) - side
    return side - min(RING_LOOP, LARGEST_SHARE * front), side + min(DRAWN_IN + BASE, LARGEST_SHARE * back)


def marks(plan: Plan, part: SmallPart, pieces: Mapping[str, Piece]) -> dict[str, list[InnerLine]]:
    """The sewn-down ends of ring loop and strap, in the middle of the band, as long as the strap is wide."""
    wide = _choice(part).width
    found: dict[str, list[InnerLine]] = {}
    for place, note in zip(places(plan), ("ring loop, end", "strap, end"), strict=True):
        for spot in spots(plan, pieces, place, "outside", wide + 2 * BELOW_SEAM):
            margin = max(0.0, (spot.depth - wide) / 2)
            found = marked(found, spot, InnerLine("placement", spot.line(margin, spot.depth - margin), note))
    return found


def notes(plan: Plan, part: SmallPart) -> list[str]:
    """What to buy, and where ring and strap are set."""
    ring, strap = places(plan)
    side = side_seam(plan)
    return [
        f"rings: 2, {fmt(_choice(part).ring, 0)} mm wide inside",
        f"strap tabs: end of the ring loop {fmt(side - ring, 0)} mm in front of the side seam, the ring looking back; "
        f"end of the strap {fmt(strap - side, 0)} mm behind it, {fmt(BASE, 0)} sewn down, the point looking forward",
    ]
