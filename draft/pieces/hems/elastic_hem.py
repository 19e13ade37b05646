"""Elastic hem: a plain turning that is the casing of an elastic.

Casing 3 to 5 deeper than the elastic: read. An elastic 5 to 15 % shorter than the leg of the body, and a leg of at most
three times the elastic: common practice, no source. An elastic is stretched to twice its length at most; that holds
around the foot, which is one and a half times the ankle, with an elastic at most a quarter shorter than the leg.
"""

from __future__ import annotations

from draft.choices.hems import ElasticHem
from draft.errors import DraftError
from draft.pieces.bands.elastic_casing import ELASTIC_JOIN
from draft.pieces.hems import turned
from draft.pieces.hems.gathered_hem import MOST_FULLNESS, ROUNDING
from draft.pieces.hems.girths import girth_to_pass, leg_girth
from draft.pieces.hems.strip import PARTS, panel_of
from draft.pieces.hems.turned import above, corner, leg_lines, pieces, seams
from draft.pieces.plan import Plan
from draft.units import at_least, at_most, fmt

__all__ = ["above", "allowance", "corner", "elastic_length", "leg_lines", "notes", "pieces", "seams"]

LEFT_OPEN = 40.0  # of the casing's edge, to thread the elastic (common practice, no source)


def _choice(plan: Plan) -> ElasticHem:
    hem = plan.style.hem
    assert isinstance(hem, ElasticHem)
    return hem


def _height(plan: Plan) -> float:
    """Of the elastic above the floor."""
    return plan.body.inside_leg - plan.shell.front.inseam.length + _choice(plan).depth / 2


def elastic_length(plan: Plan) -> float:
    """Length of the relaxed elastic, closed, mm.

    Raises
    ------
    DraftError
        When the leg's bottom edge does not pass the foot, is shorter than the elastic, or is too long to be drawn in to
        it; with the limits.
    """
    girth, shorter = leg_girth(plan.body, _height(plan)), _choice(plan).shorter
    length, passes = girth * (1 - shorter / 100), girth_to_pass(plan.body, _height(plan))
    leg = sum(panel_of(plan, part).hem.length for part in PARTS)
    least, most = max(length, passes), MOST_FULLNESS * length
    if not least - ROUNDING <= leg <= most + ROUNDING:
        expected = f"{at_least(least)} to {at_most(most)} mm for an elastic of {length:.0f}"
        raise DraftError("style.leg.hem", round(leg, 1), expected, "set a hem inside these limits")
    return length


def allowance(plan: Plan) -> float:
    """Depth of the casing and what is folded under."""
    elastic_length(plan)
    return turned.allowance(plan)


def notes(plan: Plan) -> list[str]:
    """Elastic to cut, how its ends are joined, and what to mind."""
    hem, length = _choice(plan), elastic_length(plan)
    passes = girth_to_pass(plan.body, _height(plan))
    join = 2 * ELASTIC_JOIN
    return [
        f"elastic at the hem: 2 of {fmt(hem.width, 0)} mm wide, cut {fmt(length + join, 0)} mm ({fmt(length, 0)} and "
        f"{fmt(join, 0)} to lay one end over the other); it must stretch to {fmt(100 * passes / length, 0)} % to "
        f"pass the foot; leave {fmt(LEFT_OPEN, 0)} of the casing open beside the inseam, join the ends with a zigzag "
        "box, sewn twice",
        "caution: an elastic too tight around the leg hinders the blood; try it on, sit and bend the knee before its "
        "ends are joined",
    ]
