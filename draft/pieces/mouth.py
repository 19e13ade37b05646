"""What every pocket mouth asks for: room for the hand, and a stay against stretching.

The breadth of hands was read in a table of British adults of 19 to 65 (95 in 100 men have at most 95 mm across the
knuckles, 95 in 100 women at most 85); what the thumb adds is from memory. The stay's width, and that it is cut to the
length of the pattern's mouth, were read as common practice.
"""

from __future__ import annotations

import numpy as np

from draft.edge import Corner, Edge
from draft.geometry.offset import parallel
from draft.geometry.path import Path
from draft.geometry.points import unit
from draft.geometry.polygon import inside
from draft.geometry.segments import Line, Motion
from draft.piece import Cut, Notch, Piece
from draft.pieces.interfacing import MARGIN
from draft.pieces.plan import Plan

HAND = 95.0  # across the knuckles, 95 in 100 men
THUMB = 20.0  # more with the thumb laid beside
STAY_GRAIN = 0.3  # length of the grainline, as a share of the mouth


def hand_notes(clear: float) -> list[str]:
    """Note for a mouth that the hand of an adult does not pass; `clear` is its straight width in mm.

    >>> hand_notes(130)
    []
    >>> hand_notes(90)[0].split(":")[0]
    'pocket mouth 90 mm wide'
    """
    if clear >= HAND + THUMB:
        return []
    return [
        f"pocket mouth {clear:.0f} mm wide: a large adult hand is {HAND:g} mm across the knuckles and about "
        f"{HAND + THUMB:g} with the thumb; enough for a child only"
    ]


def stay_piece(plan: Plan, mouth: Path, width: float) -> Piece:
    """Strip of interfacing inside the front along its mouth, `width` mm wide, cut to the mouth's own length.

    It is drawn lying, so that its label fits: the mouth runs from the waist on the left to the side seam on the right.

    Raises
    ------
    DraftError
        When the mouth bends away from the front more sharply than the strip is wide.
    """
    mouth = mouth.moved(Motion(turn=unit(mouth.end - mouth.start).conjugate()))
    inner = parallel(mouth, width).reversed()
    square = Corner("squared")
    edges = (
        Edge("mouth", (mouth,), allowance=MARGIN, corner=square),
        Edge("side_end", (Path.line(mouth.end, inner.start),)),
        Edge("inner", (inner,)),
        Edge("waist_end", (Path.line(inner.end, mouth.start),), corner=Corner("squared", "next")),
    )
    return Piece(
        name="pocket_stay",
        title="Stay of the pocket mouth",
        edges=edges,
        cut=Cut(2, "interfacing", mirrored=True),
        grainline=_along(mouth, width, edges),
        notches=(Notch("mouth", mouth.length / 2, "middle of the mouth"),),
        made_for=plan.made_for,
        notes=("on the wrong side of the front",),
    )


def _along(mouth: Path, width: float, edges: tuple[Edge, ...]) -> Line:
    """Grainline along the middle of the strip, as long as its bend allows."""
    outline = Path.join(*(edge.path for edge in edges)).points(0.2)
    half = mouth.length / 2
    along = mouth.direction_at(half)
    centre = mouth.point_at(half) + 1j * along * width / 2
    reach = STAY_GRAIN * half
    line = Line(centre - along * reach, centre + along * reach)
    while reach > 1 and not inside(line.points(np.linspace(0, 1, 9)), outline).all():
        reach *= 0.9
        line = Line(centre - along * reach, centre + along * reach)
    return line
