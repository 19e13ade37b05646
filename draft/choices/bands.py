"""More ways to finish the waist: a facing without a band, two casings, and a band curved to the body.

Glossary
--------
facing   a shaped strip on the inside whose upper edge is the waist seam
casing   a folded strip that holds an elastic or a cord
contour  curved, so that the upper edge is as long as the body is round there
"""

from __future__ import annotations

from dataclasses import field
from typing import Any, Literal

from draft.choice import choice, mm, one_of
from draft.style import Band, Fastener

Elastic = Literal["all_round", "back"]
CordOpening = Literal["buttonholes", "eyelets"]
CentreBack = Literal["fold", "seam"]

LARGEST_SHORTENING = 0.25  # of the body's girth; common practice, no source


def _part(default: float, high: float) -> Any:
    """Share from 0 to a limit."""
    return field(default=default, metadata={"low": 0.0, "high": high, "share": True})


@choice
class FacedWaist(Band):
    """No band: a shaped facing inside, front and back, whose upper edge is the waist seam.

    depth : finished depth; None: 50, less where a dart or the straight of the crotch seam is shorter (common practice,
        no source).

    Examples
    --------
    >>> FacedWaist(depth="6 cm").depth
    60.0
    """

    depth: float | None = mm(None, 20, 80)


@choice
class ElasticCasing(Band):
    """Separate folded casing with an elastic inside; its joining edge is as long as the waist seam.

    elastic : ``"all_round"``, or ``"back"``: from side seam to side seam, the front stays flat.
    width : width of the elastic.
    clearance : how much deeper the finished casing is than the elastic is wide (read: 3 to 5).
    shorter : the part of the body's girth by which the relaxed elastic is shorter (read: 0.05 to 0.10).

    Without a closing the waist seam must be as long as the hip is round: put the ease in with ``Ease(waist=...)``.

    Examples
    --------
    >>> ElasticCasing(shorter=0.4)
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: style.band.shorter is 0.4, expected 0 to 0.25: choose a value inside these limits.
    """

    elastic: Elastic = one_of("all_round", "all_round", "back")
    width: float = mm(25.0, 6, 60)
    clearance: float = mm(4.0, 2, 8)
    shorter: float = _part(0.07, LARGEST_SHORTENING)


@choice
class DrawstringBand(Band):
    """Separate folded casing with a cord that comes out through two openings at the centre front.

    depth : finished depth.
    openings : two upright ``"buttonholes"``, or ``"eyelets"``.
    apart : distance between the two openings, centre front in the middle.
    cord : width of the cord; an opening is 2 longer (common practice, no source).
    ends : how far each end of the cord hangs out when the waist lies flat. Keep cords off clothes for children;
        on a body that may be a child's they are refused when they are too long.

    Examples
    --------
    >>> DrawstringBand(openings="eyelets").apart
    50.0
    """

    depth: float = mm(30.0, 15, 60)
    openings: CordOpening = one_of("buttonholes", "buttonholes", "eyelets")
    apart: float = mm(50.0, 30, 120)
    cord: float = mm(6.0, 2, 12)
    ends: float = mm(140.0, 60, 400)


@choice
class ContourBand(Band):
    """Band curved to the body above the waist seam, outer and inner layer, in sections joined at the side seams.

    depth : finished depth. With a waist drop of as much its upper edge lies at the natural waist.
    back : ``"fold"``, the back in one, or ``"seam"``, with a centre back seam.
    overlap : how far the band runs past the centre front on the side that lies on top.
    underlap : the same underneath; None: the width of what lies under the closing.
    button : diameter; the buttonhole follows from it.
    fastener : ``"button"``, or ``"hook"``: a flat hook and bar inside the lap, nothing seen outside.

    With a zip in the side seam the front and the back are each cut in one, and the band opens at the left side.

    Examples
    --------
    >>> ContourBand(depth=50, back="seam").depth
    50.0
    """

    depth: float = mm(40.0, 20, 100)
    back: CentreBack = one_of("fold", "fold", "seam")
    overlap: float = mm(0.0, 0, 120)
    underlap: float | None = mm(None, 0, 120)
    button: float = mm(18.0, 8, 40)
    button_thickness: float = mm(3.0, 0.5, 10)
    fastener: Fastener = one_of("button", "button", "hook")
