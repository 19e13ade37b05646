"""Small parts to choose from: belt loops, strap tabs with a ring, braces, a lining."""

from __future__ import annotations

from typing import Literal

from draft.errors import DraftError
from draft.style import SmallPart, choice, mm, one_of, whole


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
