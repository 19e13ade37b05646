"""Zip in the left side seam: a stop on front and back, nothing at the centre front."""

from __future__ import annotations

from draft.choices.closings import SideZip
from draft.choices.front_pockets import InSeamPocket
from draft.errors import DraftError
from draft.geometry.meet import along_at_height
from draft.geometry.offset import parallel
from draft.piece import InnerLine, Notch
from draft.pieces.closings import none
from draft.pieces.closings.none import crotch_edges, pieces, seams
from draft.pieces.fly import STOCK_STEP, ZIP_BELOW_WAIST
from draft.pieces.plan import FrontOpening, Opens, Plan
from draft.units import HAIR, at_most, fmt

__all__ = ["crotch_edges", "front_marks", "notes", "opens", "pieces", "seams", "side_marks", "stop", "underlap"]

ABOVE_HIP = 25.0  # the zip ends near the hip line, its notch clear of the hip's (common practice, no source)
ABOVE_HEM = 40.0  # side seam below the stop, at least (common practice, no source)
UNDERLAP = 30.0  # of a band that names none, to carry its fastener (common practice, no source)
LAP_STITCH = 10.0  # topstitching of a lapped zip beside the seam (common practice, no source)


def _choice(plan: Plan) -> SideZip:
    closing = plan.style.closing
    assert isinstance(closing, SideZip)
    return closing


def opens() -> Opens:
    """In the left side seam."""
    return "left side"


def underlap(plan: Plan) -> float:
    """Only the band runs on under the opening."""
    return UNDERLAP


def stop(plan: Plan) -> float:
    """Length of the opening from the waist seam down the side seam.

    Raises
    ------
    DraftError
        When it reaches below the crotch line, or too near to the hem, with the largest that works; or when the back
        is to lie over a lapped zip.
    """
    if _choice(plan).insertion == "lapped" and _choice(plan).lap != "left_over_right":
        expected = "'left_over_right' for a lapped zip, whose front lies over it"
        raise DraftError("style.closing.lap", _choice(plan).lap, expected, "take insertion='concealed'")
    side, levels, length = plan.shell.front.side, plan.shell.levels, _choice(plan).length
    to_crotch = along_at_height(side, levels["crotch"]) if levels["crotch"] > side.end.imag else side.length
    most = min(to_crotch, side.length - ABOVE_HEM)
    if length is not None and length > most + HAIR:
        raise DraftError(
            "style.closing.length", length, f"at most {at_most(most)} mm on this side seam", "shorten the opening"
        )
    return min(along_at_height(side, levels["hip"]) - ABOVE_HIP, most) if length is None else length


def front_marks(plan: Plan) -> tuple[list[InnerLine], list[Notch]]:
    """Notch of the centre front; for a lapped zip the topstitching."""
    lines, notches = none.front_marks(plan)
    if _choice(plan).insertion == "lapped":
        beside = parallel(plan.shell.front.side.between(0, stop(plan)), LAP_STITCH)
        lines.append(InnerLine("topstitch", beside, "topstitch, left front only"))
    return lines, notches


def side_marks(plan: Plan, opening: FrontOpening) -> list[Notch]:
    """Stop of the zip, on front and back.

    Raises
    ------
    DraftError
        When the pocket opens in the side seam.
    """
    if opening.on_side > 0 or isinstance(plan.style.pocket, InSeamPocket):
        raise DraftError(
            "style.pocket",
            plan.style.pocket,
            "none, or one that leaves the side seam whole, beside a zip in the side seam",
            "leave the pocket out, or take a fly",
        )
    return [Notch("side", stop(plan), "zip stop")]


def notes(plan: Plan) -> list[str]:
    """Zip to buy, and where it goes."""
    opening = stop(plan)
    long = STOCK_STEP * ((opening - ZIP_BELOW_WAIST) // STOCK_STEP)
    kind = _choice(plan).insertion
    over, under = ("front", "back") if _choice(plan).lap == "left_over_right" else ("back", "front")
    return [
        f"zip: {kind}, {fmt(long, 0)} mm from stop to stop (opening {fmt(opening, 0)} mm), in the left side seam only",
        f"waist: it opens at the left side too, the {over} over the {under}",
    ]
