"""Turned hem with a faced vent at the side seam.

The facings are copies of the leg beside its side seam. Each is sewn to the side edge from the stop of the side seam
down, and along the fold of the hem, then turned inside. Widths of 30 and a run of 15 past the stop are common practice,
no source.
"""

from __future__ import annotations

from collections.abc import Mapping

from draft.choices.hems import VentedHem
from draft.errors import DraftError
from draft.piece import InnerLine, Notch, Piece
from draft.pieces.hems import turned
from draft.pieces.hems.strip import LARGEST_SHARE, PARTS, clear_of_pockets, edge_facing, panel_of, side_mark
from draft.pieces.hems.turned import above, allowance, corner
from draft.pieces.plan import Plan
from draft.seams import Joint, Run, Seam
from draft.units import HAIR, at_least, at_most, fmt

__all__ = ["above", "allowance", "corner", "leg_lines", "leg_notches", "notes", "pieces", "seams"]

SHORTEST_VENT = 20.0  # least of the choice
PAST_STOP = 15.0  # the facing runs on past the stop, mm
WIDEST_SHARE = 0.4  # of a part's hem that one facing takes
STOP = "vent stop"


def _choice(plan: Plan) -> VentedHem:
    """Choice, refused when vent or facing has no room on the leg."""
    hem = plan.style.hem
    assert isinstance(hem, VentedHem)
    most = LARGEST_SHARE * plan.shell.back.inseam.length - PAST_STOP
    if most < SHORTEST_VENT - HAIR:
        inside_leg = (max(hem.depth, SHORTEST_VENT) + PAST_STOP) / LARGEST_SHARE + plan.shell.stretch
        expected = f"{at_least(inside_leg)} mm or more for a vent above this hem"
        raise DraftError("style.leg.inside_leg", plan.style.leg.inside_leg, expected, "take a longer leg or no vent")
    if hem.depth > most + HAIR:
        expected = f"at most {at_most(most)} mm on this leg: the vent is no shorter"
        raise DraftError("style.hem.depth", hem.depth, expected, "make the hem shallower or the leg longer")
    if hem.vent > most + HAIR:
        raise DraftError("style.hem.vent", hem.vent, f"at most {at_most(most)} mm on this leg", "make the vent shorter")
    if hem.vent < hem.depth:
        expected = f"at least {hem.depth:g} mm, the depth of the hem"
        raise DraftError("style.hem.vent", hem.vent, expected, "make the vent longer or the hem shallower")
    widest = WIDEST_SHARE * min(panel_of(plan, part).hem.length for part in PARTS)
    if hem.facing > widest + HAIR:
        expected = f"at most {at_most(widest)} mm on this leg"
        raise DraftError("style.hem.facing", hem.facing, expected, "make the facing narrower")
    return hem


def leg_lines(plan: Plan, name: str) -> list[InnerLine]:
    """Folds of the hem, and the stop of the side seam, as far from the bottom edge on the front as on the back."""
    return [*turned.leg_lines(plan, name), side_mark(panel_of(plan, name), _choice(plan).vent, STOP)]


def leg_notches(plan: Plan, name: str) -> list[Notch]:
    """Stop of the side seam, single in front, double behind."""
    along = panel_of(plan, name).side.length - _choice(plan).vent
    return [Notch("side", along, STOP, 1 if name == "front" else 2)]


def pieces(plan: Plan) -> list[Piece]:
    """Facing of the vent for front and back."""
    return [_facing(plan, part) for part in PARTS]


def _facing(plan: Plan, part: str) -> Piece:
    """Strip of the leg beside its side seam, from the fold of the hem to past the stop."""
    hem = _choice(plan)
    return edge_facing(plan, part, hem.vent + PAST_STOP, hem.facing, ("vent_facing", "Vent facing"), (PAST_STOP, STOP))


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> tuple[list[Seam], list[Joint]]:
    """Facing to the side edge below the stop, and to the fold of the hem."""
    hem, found = _choice(plan), []
    clear_of_pockets(plan, "vent", hem.vent, pieces)
    for part in PARTS:
        facing, leg = f"vent_facing_{part}", pieces[part].edge("side").length
        wide = pieces[facing].edge("hem").length
        below = Run(part, "side", leg - hem.vent), Run(facing, "side", PAST_STOP)
        found.append(Seam.of(f"vent, {part}", *below, pieces))
        found.append(Seam.of(f"vent, {part} hem", Run(part, "hem", 0, wide), Run(facing, "hem"), pieces))
    return found, []


def notes(plan: Plan) -> list[str]:
    """How the vent is made."""
    hem = _choice(plan)
    return [
        f"vent: end the side seam with a backstitch {fmt(hem.vent, 0)} above the bottom edge; sew each facing to the "
        "side edge and along the hem fold, trim the turning behind it, turn it inside; a bar tack at the stop"
    ]
