"""Bias binding: how long the edges are, how many strips that takes, and the square that yields them in one strip.

Derived, to be checked by area: a square of side `a`, parted along its diagonal and joined on two straight sides, is a
slanted tube; lines parallel to its bias edges turn it into one strip. Its edges are a * sqrt 2 long and a / sqrt 2
apart, which gives the whole number of rows. Each of the two seams takes its allowance off every row twice, slantwise.
Strips cut singly run across the cloth at 45 degrees, from selvedge to selvedge: sqrt 2 times its width.
"""

from __future__ import annotations

from math import ceil, floor, sqrt

from draft.choices.small_parts import BiasBinding
from draft.errors import DraftError
from draft.piece import Piece
from draft.pieces.plan import Plan
from draft.pieces.small_parts.front_room import pocket_pieces
from draft.shape.shell import Panel
from draft.style import SmallPart
from draft.units import at_least, at_most, fmt

JOIN = 6.0  # seam allowance between strips (common practice)
ENDS = 25.0  # more for every edge that is bound, to turn or join the ends (common practice)
SQUARE_STEP = 10.0


def _choice(part: SmallPart) -> BiasBinding:
    assert isinstance(part, BiasBinding)
    return part


def bound(plan: Plan, part: SmallPart) -> dict[str, list[float]]:
    """Lengths of all edges that are bound, both halves of the garment, darts closed, mm.

    Raises
    ------
    DraftError
        When pocket bags are asked for and the front pocket has none.
    """
    front, back = plan.shell.front, plan.shell.back
    both = [front, back]
    found: dict[str, list[float]] = {}
    for name in _choice(part).edges:
        if name == "waist":
            found[name] = [2 * (front.waist.length + back.waist.length)]
        elif name == "hem":
            found[name] = [front.hem.length + back.hem.length] * 2
        elif name == "seams":
            found[name] = [length for panel in both for length in _raw(panel)] * 2
        else:
            found[name] = [_bag(plan)] * 2
    return found


def _raw(panel: Panel) -> tuple[float, float, float]:
    return panel.side.length, panel.inseam.length, panel.crotch.length


def _bag(plan: Plan) -> float:
    """Length of the seam that closes a bag of the front pocket."""
    bag = pocket_pieces(plan).get("pocket_bag_front")
    if bag is None:
        raise DraftError(
            "style.small_parts.edges", "pocket bags", "a front pocket with bags", "choose one, or bind other edges"
        )
    return bag.edge("contour").length


def length(plan: Plan, part: SmallPart) -> float:
    """Bias strip that is needed, mm: all edges, and what their ends take."""
    return sum(each + ENDS for edges in bound(plan, part).values() for each in edges)


def strips(needed: float, cloth: float) -> int:
    """How many strips, cut singly across a cloth of that width, are joined to that length.

    >>> strips(3900, 1412), strips(4000, 1412)
    (2, 3)
    """
    return ceil(needed / (sqrt(2) * (cloth - 2 * JOIN)))


def continuous(square: float, cut_width: float) -> float:
    """Length of the one strip that a square yields, mm.

    >>> round(continuous(500, 32), 1)
    7404.8
    """
    rows = floor(square / sqrt(2) / cut_width)
    return max(0.0, rows * sqrt(2) * (square - 4 * JOIN))


def square_for(needed: float, cut_width: float) -> float:
    """Side of the smallest square, in whole centimetres, that yields that length as one strip, mm.

    >>> square_for(7000, 32)
    500.0
    """
    by_area = 2 * JOIN + sqrt(4 * JOIN**2 + needed * cut_width)  # a^2 - 4 a JOIN = length x width
    side = SQUARE_STEP * ceil(by_area / SQUARE_STEP)
    while continuous(side, cut_width) < needed:
        side += SQUARE_STEP
    return side


def pieces(plan: Plan, part: SmallPart) -> list[Piece]:
    """No piece: strips are ruled on the cloth."""
    return []


def notes(plan: Plan, part: SmallPart) -> list[str]:
    """How much binding, and two ways to cut it."""
    binding, needed = _choice(part), length(plan, part)
    wide, edges = binding.cut_width, bound(plan, part)
    each = "; ".join(f"{name} {fmt(sum(lengths), 0)}" for name, lengths in edges.items())
    many = strips(needed, binding.cloth)
    square = square_for(needed, wide)
    return [
        f"bias binding, {fmt(binding.width, 0)} mm wide finished: {each}; with {fmt(ENDS, 0)} more for the ends of "
        f"each edge, {at_least(needed)} mm in all",
        f"bias strips: cut {many} at 45 degrees, {fmt(wide, 0)} mm wide, across a cloth of {fmt(binding.cloth, 0)}; "
        f"joined along the thread with {fmt(JOIN, 0)} allowance, joins: {many - 1}; or one strip of "
        f"{at_most(continuous(square, wide))} from a square of {fmt(square, 0)}, cut round and round",
    ]
