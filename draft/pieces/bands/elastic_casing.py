"""Elastic casing: a folded strip as long as the waist seam, drawn in by an elastic all round or at the back only.

Sources: depth of the casing over the elastic 3 to 5 mm, relaxed elastic 5 to 10 % shorter than the waist, and a waist
edge no shorter than the hip where nothing opens (all read, in notes on pattern practice without a named author).
"""

from __future__ import annotations

from collections.abc import Mapping

from draft.choices.bands import LARGEST_SHORTENING, ElasticCasing
from draft.errors import DraftError
from draft.geometry.path import Path
from draft.piece import InnerLine, Piece
from draft.pieces.bands.around import check_passes_hip, opens, seam_length
from draft.pieces.bands.strip import Strip, strip_of, strip_piece, strip_seams
from draft.pieces.plan import Plan, WaistEdges
from draft.seams import Seam
from draft.units import HAIR, at_least, at_most, fmt

ELASTIC_JOIN = 10.0  # what either end of the elastic is sewn over; common practice, no source
LEFT_OPEN = 50.0  # of the inner edge, to thread the elastic; common practice, no source
MOST_STRETCH = 2.0  # an elastic is stretched to twice its length at most; common practice, no source


def _choice(plan: Plan) -> ElasticCasing:
    band = plan.style.band
    assert isinstance(band, ElasticCasing)
    return band


def depth(plan: Plan) -> float:
    """Finished depth of the casing."""
    return _choice(plan).width + _choice(plan).clearance


def body_girth(plan: Plan) -> float:
    """Girth of the body at the middle of the casing, which lies above the waist seam."""
    return plan.body.girth_at(plan.style.waist_drop - depth(plan) / 2)


def held_flat(plan: Plan) -> float:
    """Length of the waist seam that no elastic draws in: the front, or what it is sewn down on beside an opening."""
    if _choice(plan).elastic == "back":
        return 2 * plan.shell.front.waist.length
    return 2 * ELASTIC_JOIN if opens(plan) else 0.0


def elastic_length(plan: Plan) -> float:
    """Length of the relaxed elastic between its ends, mm.

    Raises
    ------
    DraftError
        When it would be longer than the casing it lies in, or would have to stretch to more than twice its length.
    """
    shorter = _choice(plan).shorter
    girth, flat = body_girth(plan), held_flat(plan)
    length = (1 - shorter) * girth - flat
    room = seam_length(plan) - flat
    if length > room + HAIR * girth:
        least = 1 - (room + flat) / girth
        if least > LARGEST_SHORTENING:
            raise _too_tight(plan, room + flat)
        raise DraftError(
            "style.band.shorter",
            shorter,
            f"at least {at_least(least, 3)}, so that the elastic is no longer than its casing",
            "make the elastic shorter, or give the waist more ease",
        )
    if length * MOST_STRETCH < room - HAIR * girth:
        raise _too_short(plan, length, room)
    return length


def _too_tight(plan: Plan, seam: float) -> DraftError:
    return DraftError(
        "style.ease.waist",
        plan.style.ease.waist,
        f"a waist seam of {at_least((1 - LARGEST_SHORTENING) * body_girth(plan))} mm or more (it is {seam:.0f})",
        "give the waist more ease",
    )


def _too_short(plan: Plan, length: float, room: float) -> DraftError:
    band, girth, flat = _choice(plan), body_girth(plan), held_flat(plan)
    most = 1 - (room / MOST_STRETCH + flat) / girth
    if most >= 0:
        return DraftError(
            "style.band.shorter",
            band.shorter,
            f"at most {at_most(most, 3)}, so that the elastic stretches to twice its length at most",
            "make the elastic longer",
        )
    return DraftError(
        "style.band.elastic",
        band.elastic,
        f"an elastic of {at_least(room / MOST_STRETCH)} mm or more in this casing (it would be {max(0.0, length):.0f})",
        "take less waist ease, or the elastic all round",
    )


def pieces(plan: Plan, waist: WaistEdges) -> list[Piece]:
    """One strip."""
    s = strip_of(plan, waist, depth(plan))
    check_passes_hip(plan, 2 * s.half.back)
    elastic_length(plan)
    words = f"leave {fmt(LEFT_OPEN, 0)} of the inner edge open for the elastic"
    return [strip_piece(plan, s, "Elastic casing", _ends(plan, s), notes=(words,))]


def _ends(plan: Plan, s: Strip) -> tuple[InnerLine, ...]:
    """Where the elastic is sewn down: at the side seams, or at the ends of a waist that opens."""
    if _choice(plan).elastic == "back":
        places = [s.left(s.half.side), s.right(s.half.side)]
    elif s.open:
        places = [s.left(ELASTIC_JOIN), s.right(ELASTIC_JOIN)]
    else:
        return ()
    return tuple(
        InnerLine("guide", Path.line(complex(x, 0), complex(x, s.depth)), "end of the elastic") for x in places
    )


def seams(plan: Plan, waist: WaistEdges, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Casing on the waist, and its own join."""
    return strip_seams(waist, strip_of(plan, waist, depth(plan)), pieces)


def girth(plan: Plan, waist: WaistEdges) -> float:
    """Girth of the waist seam, the elastic stretched flat."""
    return 2 * strip_of(plan, waist, depth(plan)).half.back


def notes(plan: Plan) -> list[str]:
    """Elastic to cut, and what it has to bear."""
    band, length = _choice(plan), elastic_length(plan)
    room = seam_length(plan) - held_flat(plan)
    told = [
        f"elastic: {fmt(band.width, 0)} mm wide, cut {fmt(length + 2 * ELASTIC_JOIN, 0)} mm "
        f"({fmt(length, 0)} and {fmt(ELASTIC_JOIN, 0)} at each end to sew over); "
        f"it must stretch to {fmt(100 * room / length, 0)} % of its length to lie flat",
        _joined(plan),
    ]
    if opens(plan):
        told.append("elastic casing: fasten the ends at the centre front, e.g. with a hook and bar")
    return told


def _joined(plan: Plan) -> str:
    """How the ends of the elastic are sewn (common practice, no source: an overlap of 15 to 20 in a zigzag box)."""
    box = "with a zigzag box, sewn twice; pull hard at it before the casing is closed"
    if _choice(plan).elastic == "back" or opens(plan):
        return (
            f"elastic ends: mark both {fmt(ELASTIC_JOIN, 0)} from the cut, lay the marks on the lines of the casing "
            f"and sew each end down {box}"
        )
    return f"elastic ends: lay one {fmt(2 * ELASTIC_JOIN, 0)} over the other, untwisted, and join them {box}"
