"""Casing with a drawstring: a folded strip as long as the waist seam, two openings beside the centre front.

Places and sizes of the openings are common practice without a source. The limits for children's clothes that the note
tells are read, in a summary of the 2007 edition of EN 14682; a later edition is in force.
"""

from __future__ import annotations

from collections.abc import Mapping

from draft.choices.bands import DrawstringBand
from draft.errors import DraftError
from draft.geometry.path import Path
from draft.piece import Hole, InnerLine, Piece
from draft.pieces.bands.around import check_passes_hip, opens, seam_length
from draft.pieces.bands.strip import Strip, strip_of, strip_piece, strip_seams
from draft.pieces.children import check_cord_ends
from draft.pieces.plan import Plan, WaistEdges
from draft.seams import Seam
from draft.units import HAIR, at_least, at_most, fmt

OPENING_OVER_CORD = 2.0
CLEAR_OF_EDGE = 3.0  # of an opening to fold and seam
CLEAR_OF_PLACE = 5.0  # and to the side seam


def _choice(plan: Plan) -> DrawstringBand:
    band = plan.style.band
    assert isinstance(band, DrawstringBand)
    return band


def opening_length(plan: Plan) -> float:
    """Length of a buttonhole, or diameter of an eyelet.

    Raises
    ------
    DraftError
        When the casing is not deep enough for it, with the least depth.
    """
    band = _choice(plan)
    size = band.cord + OPENING_OVER_CORD
    least = size + 2 * CLEAR_OF_EDGE
    if band.depth < least - HAIR:
        raise DraftError(
            "style.band.depth",
            band.depth,
            f"at least {at_least(least)} mm for this cord",
            "make the casing deeper or the cord thinner",
        )
    return size


def pieces(plan: Plan, waist: WaistEdges) -> list[Piece]:
    """One strip with its two openings.

    Raises
    ------
    DraftError
        When the openings lie further apart than the fronts are wide, or when the ends are too long for a child.
    """
    s = strip_of(plan, waist, _choice(plan).depth)
    check_passes_hip(plan, 2 * s.half.back)
    check_cord_ends(plan, _choice(plan).ends, drawn_in(plan))
    most = 2 * (s.half.side - CLEAR_OF_PLACE)
    if _choice(plan).apart > most + HAIR:
        raise DraftError(
            "style.band.apart", _choice(plan).apart, f"at most {at_most(most)} mm on this front", "set them closer"
        )
    lines, holes = _openings(plan, s)
    return [strip_piece(plan, s, "Drawstring casing", lines, holes, ("make the openings before folding",))]


def _openings(plan: Plan, s: Strip) -> tuple[tuple[InnerLine, ...], tuple[Hole, ...]]:
    """Openings in the outer half, one each side of the centre front."""
    band, size = _choice(plan), opening_length(plan)
    y = s.depth / 2
    places = [complex(place(band.apart / 2), y) for place in (s.left, s.right)]
    if band.openings == "eyelets":
        return (), tuple(Hole(at, f"eyelet {fmt(size, 0)}", size) for at in places)
    half = 0.5j * size
    words = f"buttonhole {fmt(size, 0)}"
    return tuple(InnerLine("buttonhole", Path.line(at - half, at + half), words) for at in places), ()


def seams(plan: Plan, waist: WaistEdges, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Casing on the waist, and its own join."""
    return strip_seams(waist, strip_of(plan, waist, _choice(plan).depth), pieces)


def girth(plan: Plan, waist: WaistEdges) -> float:
    """Girth of the waist seam, the cord let out."""
    return 2 * strip_of(plan, waist, _choice(plan).depth).half.back


def cord_length(plan: Plan) -> float:
    """Cord to cut: once around from opening to opening with the waist let out flat, and both ends, mm."""
    band = _choice(plan)
    return seam_length(plan) - band.apart + 2 * band.ends


def drawn_in(plan: Plan) -> float:
    """How much longer the waist let out flat is than the body at the middle of the casing, mm."""
    return seam_length(plan) - plan.body.girth_at(plan.style.waist_drop - _choice(plan).depth / 2)


def notes(plan: Plan) -> list[str]:
    """Cord to cut, and the cautions."""
    band = _choice(plan)
    told = [
        f"cord: {fmt(band.cord, 0)} mm wide, cut {fmt(cord_length(plan), 0)} mm, each end hangs out "
        f"{fmt(band.ends, 0)} mm; sew it fast at the centre back so that it cannot be pulled out",
        "caution: a cord at the waist can catch and strangle or drag a child. On clothes for children leave the "
        "cord out and take an elastic; the rules of your country come first "
        "(e.g. EN 14682: free ends of 140 mm at most, no knots or toggles at the ends, fixed at the middle)",
    ]
    if band.openings == "eyelets":
        told.append("caution: wear eye protection when you set eyelets with a hammer, and work on a solid base")
    if opens(plan):
        told.append("drawstring casing: the cord runs from opening to opening behind the closing, not across it")
    return told
