"""More ways to finish the bottom edge of the leg.

Glossary
--------
facing   a strip cut to the shape of the leg, sewn to its bottom edge and turned inside
ruffle   a strip longer than the edge it is gathered to
turn-up  the bottom of the leg folded up outside
vent     a stretch of the side seam left open above the hem
"""

from __future__ import annotations

from typing import Literal

from draft.choice import choice, mm, one_of, whole
from draft.style import Hem

At = Literal["knee", "calf"]
Placket = Literal["faced", "turned"]


@choice
class CutOnTurnUp(Hem):
    """Turn-up cut in one with the leg, whose seams are turned square to the bottom edge above it.

    depth : finished depth.
    inside : hem inside the leg, above the bottom edge; None: 6 less than the depth, at least 20.
    clearance : how much further out each seam of the turn-up stands at its top, for the thickness of the leg.
    """

    depth: float = mm(40.0, 20, 80)
    inside: float | None = mm(None, 15, 80)
    clearance: float = mm(1.0, 0, 3)

    @property
    def straight_over(self) -> float:
        """Turn-up and as much again: folds are straight, so the bottom edge has to be."""
        return 2 * self.depth


@choice
class FacedHem(Hem):
    """Separate facing, front and back, sewn to the bottom edge and turned inside.

    depth : finished depth of the facing (common practice: 40 to 60).
    turn : folded under at its upper edge; 0: that edge is neatened flat.
    """

    depth: float = mm(50.0, 15, 120)
    turn: float = mm(8.0, 0, 15)


@choice
class BlindHem(Hem):
    """Deep turned hem, cut on, its upper edge caught to the leg by stitches that do not show outside.

    depth : finished depth (two sources read: 32 and 52).
    turn : small first fold at the raw edge; 0: that edge is neatened flat.
    """

    depth: float = mm(50.0, 20, 80)
    turn: float = mm(6.0, 0, 12)


@choice
class RuffledHem(Hem):
    """Ruffle, front and back, gathered to the bottom edge of the leg; it hangs below the inside leg of the style.

    depth : finished depth of the ruffle.
    fullness : length of the ruffle in percent of the edge it is gathered to (common practice: 150 to 250).
    turn : the free edge is turned twice by this much.
    """

    depth: float = mm(60.0, 20, 300)
    fullness: int = whole(160, 110, 300)
    turn: float = mm(8.0, 4, 25)


@choice
class KneeBand(Hem):
    """Buttoned band for breeches, folded; the leg is eased or gathered to it, and opens at the side seam.

    at : the girth of the body that the band goes around.
    ease : how much longer the closed band is than that girth.
    depth : finished depth; the band hangs below the inside leg of the style.
    underlap : how far the band runs on under its buttoned end.
    opening : how far the side seam is left open above the band.
    placket : ``"faced"``: a facing on the front edge of the opening and a folded underlap on the back edge, as
        pieces; ``"turned"``: both allowances are turned under, nothing lies behind the opening.
    button : diameter; the buttonhole follows from it and from `button_thickness`.
    """

    at: At = one_of("knee", "knee", "calf")
    ease: float = mm(20.0, 0, 120)
    depth: float = mm(35.0, 18, 80)
    underlap: float = mm(30.0, 15, 60)
    opening: float = mm(70.0, 30, 160)
    placket: Placket = one_of("faced", "faced", "turned")
    button: float = mm(15.0, 8, 30)
    button_thickness: float = mm(3.0, 0.5, 10)


@choice
class VentedHem(Hem):
    """Turned hem, cut on, with a faced vent at the side seam.

    depth, turn : as for a plain hem.
    vent : how far the side seam is left open above the bottom edge.
    facing : finished width of the vent's facings.
    """

    depth: float = mm(30.0, 10, 80)
    turn: float = mm(10.0, 0, 20)
    vent: float = mm(60.0, 20, 250)
    facing: float = mm(30.0, 20, 60)


@choice
class GatheredHem(Hem):
    """Leg gathered into a folded band without an opening: for legs wider at the hem than the band, as of balloon legs.

    girth : finished girth of the band; None: what it has to pass when it is pulled on, and the ease.
    ease : how much longer than that; without effect on a girth that is given.
    depth : finished depth; the band hangs below the inside leg of the style.
    clear : what stays flat on either side of side seam and inseam.

    The leg's bottom edge between the flat stretches must be 1.2 to 3 times as long as the band there.

    Examples
    --------
    >>> GatheredHem(depth="4 cm").depth
    40.0
    """

    girth: float | None = mm(None, 120, 1000)
    ease: float = mm(15.0, 0, 150)
    depth: float = mm(30.0, 12, 80)
    clear: float = mm(20.0, 12, 40)


@choice
class ElasticHem(Hem):
    """Turned hem that is the casing of an elastic, which draws the leg in.

    width : width of the elastic.
    clearance : how much deeper the casing is than the elastic is wide.
    turn : folded under its raw edge.
    shorter : by how many percent the relaxed elastic is shorter than the leg of the body there.

    Examples
    --------
    >>> ElasticHem(width=12).depth
    15.0
    """

    width: float = mm(15.0, 6, 40)
    clearance: float = mm(3.0, 2, 8)
    turn: float = mm(8.0, 0, 15)
    shorter: int = whole(8, 0, 25)

    @property
    def depth(self) -> float:
        """Finished depth of the casing, mm."""
        return self.width + self.clearance
