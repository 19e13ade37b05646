"""Small parts to choose from: loops, tabs, braces, a lining, a coin pocket, tape sewn onto the cloth, bias binding."""

from __future__ import annotations

from typing import Literal

from draft.choice import choice, mm, one_of, whole
from draft.errors import DraftError
from draft.style import SmallPart

BindingEdge = Literal["waist", "hem", "seams", "pocket bags"]
BINDING_EDGES = ("waist", "hem", "seams", "pocket bags")


@choice
class BeltLoops(SmallPart):
    """Belt loops, cut as one strip.

    count : how many; 0: by the girth of the waist, 5 to 8.
    width : finished width, folded in three.
    belt : width of the belt; the loop is 10 higher inside.
    """

    count: int = whole(0, 0, 12)
    width: float = mm(10.0, 6, 25)
    belt: float = mm(36.0, 15, 80)


@choice
class StrapTab(SmallPart):
    """Straps with a pointed end that close through a ring, one on either side of the waist.

    width : finished width, as wide as the inside of the ring or at most 2 narrower.
    ring : inside width of the ring.
    length : of the free strap beyond the ring.
    """

    width: float = mm(25.0, 10, 50)
    ring: float = mm(26.0, 10, 52)
    length: float = mm(120.0, 60, 250)

    def __post_init__(self) -> None:
        super().__post_init__()
        if not 0 <= self.ring - self.width <= LARGEST_PLAY:
            raise DraftError(
                f"{self.where}.ring",
                self.ring,
                f"{self.width:g} to {self.width + LARGEST_PLAY:g} mm for a strap of {self.width:g}",
                "take a ring that fits the strap, or a strap that fits the ring",
            )


LARGEST_PLAY = 2.0


@choice
class Braces(SmallPart):
    """A pair of braces, crossed at the back.

    over_shoulder : measured from the front of the waist over one shoulder to the back of the waist, crossing.
    width : finished width, two layers.
    adjust : extra length for buttons to be moved.
    """

    over_shoulder: float = mm(1000.0, 300, 1600)
    width: float = mm(30.0, 15, 60)
    adjust: float = mm(80.0, 0, 200)


@choice
class Lining(SmallPart):
    """Lining, front and back.

    length : ``"full"``, or ``"half"``: to a hand below the fork.
    shorter : of a full lining, how much shorter than the garment.
    below_fork : of a half lining, how far it reaches down the inseam.
    """

    length: Literal["full", "half"] = one_of("full", "full", "half")
    shorter: float = mm(25.0, 0, 100)
    below_fork: float = mm(80.0, 30, 300)


@choice
class CoinPocket(SmallPart):
    """Small patch on the facing of the right front pocket; its outer edge is caught in the side seam.

    Sizes in mm; sizes and place are common practice, no source.

    width : from the side seam to the inner edge; None: 65, less on a small facing.
    depth : from its mouth down the side seam; None: 75, less on a small facing.
    below : from the waist seam down the side seam to its mouth; None: 25, less where the pocket mouth is short.
    hem : turned to the inside along its mouth.
    turn : folded under along the other two edges, and under the raw edge of the hem.

    Examples
    --------
    >>> CoinPocket(width="6 cm").width
    60.0
    """

    width: float | None = mm(None, 25, 120)
    depth: float | None = mm(None, 25, 140)
    below: float | None = mm(None, 8, 120)
    hem: float = mm(15.0, 8, 25)
    turn: float = mm(8.0, 5, 12)


@choice
class AppliedTape(SmallPart):
    """Tape, braid or zip sewn flat onto front or back as decoration: two lines show where its edges lie.

    on : ``"front"`` or ``"back"``, both legs alike.
    along : what it runs parallel to: ``"side"`` seam, ``"inseam"``, ``"crease"``, ``"hem"``, or ``"across"`` the leg,
        square to the grain.
    distance : from that line to the nearer edge of the tape; from the crease towards the side; across: from the level
        of the waist seam at the side down to the upper edge.
    width : of the tape.
    start, stop : where it begins and ends, mm along that line from its upper end, across and along the hem from the
        side seam; None: where the line enters and leaves the piece.
    turned : what is turned under or caught in a seam at each end.

    Examples
    --------
    >>> AppliedTape(along="crease", width="3 cm").width
    30.0
    """

    on: Literal["front", "back"] = one_of("front", "front", "back")
    along: Literal["side", "inseam", "crease", "hem", "across"] = one_of(
        "side", "side", "inseam", "crease", "hem", "across"
    )
    distance: float = mm(20.0, 0, 900)
    width: float = mm(20.0, 3, 120)
    start: float | None = mm(None, 0, 1300)
    stop: float | None = mm(None, 10, 1400)
    turned: float = mm(10.0, 0, 40)


@choice
class BiasBinding(SmallPart):
    """Binding of raw edges with strips cut on the bias: how much it takes.

    edges : which edges are bound: any of ``"waist"``, ``"hem"``, ``"seams"`` (both raw edges of side seam, inseam and
        crotch seam) and ``"pocket bags"`` (both bags bound together).
    width : finished width on each side of the edge; the strip is cut four times as wide.
    cloth : width of the cloth that the strips are cut from.

    Examples
    --------
    >>> BiasBinding(edges=("hem",)).cut_width
    32.0
    >>> BiasBinding(edges=("cuff",))
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: style.small_parts.edges is ('cuff',), expected a tuple of 'waist', 'hem', 'seams' or \
'pocket bags', each once: write edges=('waist', 'hem').
    """

    edges: tuple[BindingEdge, ...] = ("seams",)
    width: float = mm(8.0, 3, 30)
    cloth: float = mm(1400.0, 200, 3200)

    def __post_init__(self) -> None:
        super().__post_init__()
        named = self.edges if isinstance(self.edges, tuple) else ()
        if not named or any(edge not in BINDING_EDGES for edge in named) or len(set(named)) < len(named):
            names = ", ".join(repr(edge) for edge in BINDING_EDGES[:-1]) + f" or {BINDING_EDGES[-1]!r}"
            raise DraftError(
                f"{self.where}.edges", self.edges, f"a tuple of {names}, each once", "write edges=('waist', 'hem')"
            )

    @property
    def cut_width(self) -> float:
        """Width of the strip as cut, mm: both sides and both turnings."""
        return 4 * self.width
