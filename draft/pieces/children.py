"""What has to be minded when a garment may be a child's, judged from the body alone.

Who is a child: a hip below 860 and an inside leg below 740 may be those of a child up to 14 years, an inside leg below
600 those of one to about 1340 mm of height (common practice, no source). Small adults fall inside these limits too, so
the words say "may be".

Cords: free ends of at most 140 with the garment fully open and of at most 280 at fitted size, fixed at the middle,
without knots or toggles, none behind, none that hang at a hem: read, in a summary of the 2007 edition of EN 14682; a
later edition is in force. Buttons through two layers, the pull at each, and the rule for nightwear: read.
"""

from __future__ import annotations

from draft.body import Body
from draft.choices.bands import DrawstringBand
from draft.errors import DraftError
from draft.pieces.plan import Plan
from draft.units import HAIR, at_most, fmt

CHILD_HIP, CHILD_LEG, YOUNG_LEG = 860.0, 740.0, 600.0
LONGEST_END_OPEN, LONGEST_END_FITTED = 140.0, 280.0


def may_be_child(body: Body) -> bool:
    """Whether the body may be that of a child up to 14 years.

    >>> may_be_child(Body(waist=590, hip=720, crotch_depth=225, waist_to_hip=160, inside_leg=630))
    True
    >>> may_be_child(Body(waist=720, hip=980, crotch_depth=262, waist_to_hip=205, inside_leg=730))
    False
    """
    return body.hip < CHILD_HIP and body.inside_leg < CHILD_LEG


def may_be_young(body: Body) -> bool:
    """Whether it may be that of a young child, to about 1340 mm of height.

    >>> may_be_young(Body(waist=590, hip=720, crotch_depth=225, waist_to_hip=160, inside_leg=630))
    False
    """
    return may_be_child(body) and body.inside_leg < YOUNG_LEG


def check_cord_ends(plan: Plan, ends: float, drawn_in: float) -> None:
    """Refuse cord ends that are too long for a child.

    Parameters
    ----------
    plan : Plan
    ends : float
        How far each end hangs out when the waist lies flat, mm.
    drawn_in : float
        How much shorter the waist is when it is drawn in to the body, mm: each end gains half of it.

    Raises
    ------
    DraftError
        With the longest ends, mm, when the body may be a child's.
    """
    if not may_be_child(plan.body):
        return
    most = min(LONGEST_END_OPEN, LONGEST_END_FITTED - max(0.0, drawn_in) / 2)
    if ends > most + HAIR:
        raise DraftError(
            "style.band.ends",
            ends,
            f"at most {at_most(most)} mm on a body that may be a child's: free ends of {LONGEST_END_OPEN:g} fully open "
            f"and of {LONGEST_END_FITTED:g} at fitted size",
            "make the ends shorter, or take an elastic and no cord",
        )


def child_notes(plan: Plan) -> list[str]:
    """Cautions for a body that may be a child's; none for others."""
    if not may_be_child(plan.body):
        return []
    told = ["caution: these measures may be a child's; the rules of your country for children's clothes come first"]
    if isinstance(plan.style.band, DrawstringBand):
        told.append(_cords(plan))
    return [
        *told,
        "child: sew every button, hook and stud through two layers and interfacing, and pull hard at each before it is "
        "worn; leave out what a small child could bite off",
        "child: as nightwear it falls under the rules for nightwear, which limit how fast cloth may burn",
    ]


def _cords(plan: Plan) -> str:
    words = (
        f"child: cords only at the front of the waist, none behind and none at the hems; free ends of at most "
        f"{fmt(LONGEST_END_OPEN, 0)} fully open and {fmt(LONGEST_END_FITTED, 0)} as worn, without knots or toggles, "
        "the cord sewn fast at its middle"
    )
    return words + ("; for a young child an elastic is safer" if may_be_young(plan.body) else "")
