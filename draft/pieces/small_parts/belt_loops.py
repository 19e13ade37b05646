"""Belt loops: one strip, folded in three and cut apart; where each is set.

Count by girth: 7 in navy trousers of a middle size (read), 5 on small and 8 on large waists, width, height and places:
common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping

from draft.choices.small_parts import BeltLoops
from draft.piece import Cut, InnerLine, Piece
from draft.pieces.plan import Plan
from draft.pieces.small_parts.strips import strip
from draft.pieces.small_parts.waist_places import half_waist, marked, spots
from draft.style import SmallPart
from draft.units import fmt

SMALL_WAIST, LARGE_WAIST = 760.0, 1000.0
COUNTS = (5, 7, 8)
HIGHER_THAN_BELT, TURNED_UNDER = 10.0, 12.0  # each end
LAYERS = 3


def _choice(part: SmallPart) -> BeltLoops:
    assert isinstance(part, BeltLoops)
    return part


def count(plan: Plan, part: SmallPart) -> int:
    """How many loops: as asked, else by the girth of the waist."""
    asked = _choice(part).count
    if asked:
        return asked
    girth = plan.shell.targets["waist"]
    return COUNTS[(girth > SMALL_WAIST) + (girth > LARGE_WAIST)]


def length(part: SmallPart) -> float:
    """Length that each loop is cut, ends included."""
    return _choice(part).belt + HIGHER_THAN_BELT + 2 * TURNED_UNDER


def pieces(plan: Plan, part: SmallPart) -> list[Piece]:
    """The strip for all loops."""
    loops, each = _choice(part), length(part)
    many = count(plan, part)
    size = complex(many * each, LAYERS * loops.width)
    return [
        strip(
            "belt_loops", "Belt loops", size, Cut(1, "self"), 0.0, plan.made_for,
            folds=tuple(loops.width * layer for layer in range(1, LAYERS)),
            marks=tuple(each * place for place in range(1, many)),
            notes=("one long edge on the selvedge or neatened",),
        )
    ]  # fmt: skip


def places(plan: Plan, part: SmallPart) -> list[float]:
    """Distances from the centre front round half the waist to the centre back: the loops of one half, mm.

    An odd count has one loop on the centre back.
    """
    half = half_waist(plan)
    many = count(plan, part)
    step = 2 * half / (many + 1) if many % 2 == 0 else 2 * half / many
    first = step if many % 2 == 0 else step / 2
    return [first + step * loop for loop in range((many + 1) // 2)]


def marks(plan: Plan, part: SmallPart, pieces: Mapping[str, Piece]) -> dict[str, list[InnerLine]]:
    """Both edges of every loop, on the outside of the band; on a waist without a band, on front and back below it."""
    half, wide, below = half_waist(plan), _choice(part).width / 2, _choice(part).belt + HIGHER_THAN_BELT
    found: dict[str, list[InnerLine]] = {}
    for place in places(plan, part):
        edges = [place - wide, place + wide]
        for edge in edges:
            if not 0 <= edge <= half:  # its other half lies beyond the centre back
                continue
            for spot in spots(plan, pieces, edge, "outside", below):
                note = "belt loop" if edge == edges[0] else ""
                found = marked(found, spot, InnerLine("placement", spot.line(0.0, spot.depth), note))
    return found


def notes(plan: Plan, part: SmallPart) -> list[str]:
    """Where the loops are set."""
    told = ", ".join(fmt(place, 0) for place in places(plan, part))
    return [
        f"belt loops: {count(plan, part)}, {fmt(length(part), 0)} mm long cut; from the centre front at {told} mm "
        "along the waist, the same on the other half"
    ]
