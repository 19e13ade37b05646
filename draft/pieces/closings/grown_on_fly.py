"""Zip fly with the facing grown on: the front runs on past the centre front as the image of itself, and is folded back.

In the piece the extension is a wide allowance beyond the fold, as the turning of a hem is: its top ends as the image of
the waist's cut line, so that it lies flush when it is folded.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache

from draft.choices.closings import GrownOnFly
from draft.edge import Corner, Edge
from draft.errors import DraftError
from draft.geometry.segments import Motion
from draft.piece import InnerLine, Notch, Piece
from draft.pieces import fly
from draft.pieces.closings.shield import shield_runs
from draft.pieces.fly import opens, side_marks, underlap
from draft.pieces.interfacing import interfacing_of
from draft.pieces.plan import Plan
from draft.seams import Run, Seam
from draft.units import HAIR, at_most

__all__ = ["crotch_edges", "front_marks", "notes", "opens", "pieces", "seams", "side_marks", "underlap"]

SHORTEST = 40.0  # opening, mm, as of the zip fly


def _choice(plan: Plan) -> GrownOnFly:
    closing = plan.style.closing
    assert isinstance(closing, GrownOnFly)
    return closing


@lru_cache(maxsize=4)
def settled(plan: Plan) -> Plan:
    """Plan whose fly has a length: the extension, which runs on below the stop, ends on the straight of the seam.

    Raises
    ------
    DraftError
        When the length asked for is longer, or the straight too short for any; with the largest that works.
    """
    chosen, straight = _choice(plan), plan.shell.front.straight
    most = straight - chosen.facing_beyond
    if most < SHORTEST:
        raise DraftError(
            "style.closing.facing_beyond",
            chosen.facing_beyond,
            f"at most {at_most(straight - SHORTEST)} mm: the extension is folded along the straight of the crotch seam",
            "let the extension end higher, or take a fly with separate facing",
        )
    if chosen.length is not None and chosen.length > most + HAIR:
        raise DraftError(
            "style.closing.length",
            chosen.length,
            f"at most {at_most(most)} mm: the extension is folded along the straight of the crotch seam",
            "shorten it",
        )
    stop = max(SHORTEST, min(fly.sizes(plan).stop, most))
    return replace(plan, style=replace(plan.style, closing=replace(chosen, length=stop)))


def _end(plan: Plan) -> float:
    """Lower end of the extension, from the waist seam down the centre front."""
    return fly.sizes(settled(plan)).stop + _choice(plan).facing_beyond


def crotch_edges(plan: Plan) -> tuple[Edge, ...]:
    """Crotch seam up to the end of the extension, and the fold of the extension."""
    whole = plan.shell.front.crotch
    crotch, fold = whole.split_at(whole.length - _end(plan))
    width = fly.sizes(settled(plan)).width
    return (
        Edge("crotch", (crotch,), allowance=plan.style.allowances.crotch),
        Edge("fly", (fold,), allowance=width, corner=Corner("mirrored")),
    )


def front_marks(plan: Plan) -> tuple[list[InnerLine], list[Notch]]:
    """Marks of the zip fly, the fold of the overlapping front, and where the other is cut off."""
    chosen = _choice(plan)
    lines, notches = fly.front_marks(settled(plan))
    over, under = ("left", "right") if chosen.lap == "left_over_right" else ("right", "left")
    fold = plan.front_crotch.between(0, _end(plan))
    shift = 1j * fold.start_dir * chosen.under
    more = [
        InnerLine("fold", fold, f"fold, {over} front only"),
        InnerLine("guide", fold.moved(Motion(shift=shift)), f"cut off, {under} front only"),
    ]
    lifted = [replace(n, along=chosen.facing_beyond) if n.match == "zip stop" else n for n in notches]
    return [*lines, *more], lifted


def pieces(plan: Plan) -> list[Piece]:
    """Shield, and the interfacing of the extension: it has the shape of the facing that a separate one would be."""
    facing, shield = fly.pieces(settled(plan))
    if not plan.style.interfacing:
        return [shield]
    fused = interfacing_of(replace(facing, name="fly_extension", title="Fly extension"))
    return [shield, replace(fused, notes=(*fused.notes, "cut the extension to its curve"))]


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Shield beside the fold, the shield on itself, and the centre front below the stop."""
    chosen = _choice(plan)
    below = Run("front", "fly", 0, chosen.facing_beyond)
    runs = [
        ("zip on shield", Run("front", "fly", chosen.facing_beyond), Run("fly_shield", "zip", chosen.shield_beyond)),
        *shield_runs(pieces, "zip"),
        ("front crotch beside the extension", below, below),
        ("front crotch", Run("front", "crotch"), Run("front", "crotch")),
    ]
    return [Seam.of(name, one, two, pieces) for name, one, two in runs]


def notes(plan: Plan) -> list[str]:
    """Zip to buy, and which front keeps its extension."""
    chosen = _choice(plan)
    over, under = ("left", "right") if chosen.lap == "left_over_right" else ("right", "left")
    return [
        *fly.notes(settled(plan)),
        f"fly: the {over} front keeps its extension; cut the {under} front off {chosen.under:g} mm past centre front",
    ]
