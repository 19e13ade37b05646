"""How far below the waist seam a back pocket's mouth lies, and what to say where a back has no room for the pocket."""

from __future__ import annotations

from draft.errors import DraftError
from draft.geometry.points import mid
from draft.pieces.back_pockets.mouth import CLEAR, lower_ends
from draft.pieces.plan import Plan
from draft.units import HAIR, at_least, at_most

DART_LENGTHS = ("back_centre_length", "back_side_length")
SHORTEST_DART, SURELY_SHORT = 30.0, 3.0  # least of the choice; so that the length told works


def lowest_start(plan: Plan, clear: float, above: float) -> float:
    """Least distance of a mouth below the waist seam, whose marks reach `above` mm above it.

    `clear` is what a mouth needs below a waist seam at the body's waist. A raised waist adds its height, and with a
    yoke the mouth lies below its seam.
    """
    yoke, rise = plan.style.yoke, rise_of(plan)
    below_yoke = 0.0 if yoke is None else max(yoke.centre, yoke.side) + CLEAR + above
    return max(clear + rise, below_yoke)


def rise_of(plan: Plan) -> float:
    """How far the waist seam lies above the body's waist, mm."""
    return max(0.0, -plan.style.waist_drop)


def below_waist(plan: Plan, asked: float | None, usual: float, least: float, most: float, remedy: str) -> float:
    """Distance of the mouth below the waist seam: as asked for, or the usual one between both limits.

    Raises
    ------
    DraftError
        With the largest or smallest that works; without any, with what leaves no room for the mouth.
    """
    if most < least - HAIR:
        raise _no_place(plan, least - most)
    if asked is None:
        return min(max(least, usual), most)
    field = "style.back_pocket.below"
    if asked > most + HAIR:
        expected = f"at most {at_most(most)} mm on this back: the mouth lies above the hip line"
        raise DraftError(field, asked, expected, f"{remedy} or leave the pocket out")
    if asked < least - HAIR and plan.style.yoke is None:  # with a yoke its own check says what is in the way
        expected = f"at least {at_least(least)} mm: the mouth lies below the body's waist"
        raise DraftError(field, asked, expected, "set the pocket lower or leave it out")
    return asked


def _no_place(plan: Plan, missing: float) -> DraftError:
    yoke = plan.style.yoke
    if yoke is not None:
        name = "centre" if yoke.centre >= yoke.side else "side"
        deepest = getattr(yoke, name)
        expected = f"at most {at_most(max(0.0, deepest - missing))} mm for this pocket, between yoke and hip line"
        return DraftError(f"style.yoke.{name}", deepest, expected, "make the yoke shallower or leave the pocket out")
    return no_room(plan, f"{at_least(missing)} mm more between the waist seam and the hip line for its mouth")


def no_room(plan: Plan, expected: str) -> DraftError:
    """Say that no size of the pocket works on this back."""
    pocket = plan.style.back_pocket
    asked_below = getattr(pocket, "below", None) is not None
    remedy = "set it higher or lower, or leave it out" if asked_below else "leave the pocket out on this back"
    if plan.style.yoke is not None:
        remedy = "make the yoke shallower, or leave the pocket out"
    return DraftError("style.back_pocket", type(pocket).__name__, expected, remedy)


def dart_too_long(plan: Plan, dart: int, too_long: float) -> DraftError:
    """Say that a dart of the back is `too_long` mm too long for the pocket over it, with the length that works."""
    darts, drop = plan.style.darts, max(0.0, plan.style.waist_drop)
    found, name = plan.shell.back.waist.darts[dart], DART_LENGTHS[dart]
    asked = getattr(darts, name)
    length = abs(mid(*lower_ends(found)) - found.point) + drop if asked is None else asked
    most = length - too_long - SURELY_SHORT
    if most < SHORTEST_DART + drop:
        return no_room(plan, "a back whose darts end higher: this one runs on below the pocket")
    expected = f"at most {at_most(most)} mm under this pocket, which ends above the crotch line"
    return DraftError(f"style.darts.{name}", asked, expected, "shorten the dart, or leave the pocket out")
