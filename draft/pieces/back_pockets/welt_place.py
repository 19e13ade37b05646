"""How large the mouth and the bags of a welt pocket are, and where they lie on the back."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import floor

from draft.choice import Choice
from draft.choices.back_pockets import WeltPocket
from draft.errors import DraftError
from draft.geometry.construct import hook
from draft.geometry.meet import meet_line
from draft.geometry.path import Path
from draft.geometry.segments import Line
from draft.pieces.back_pockets.mouth import (
    Frame,
    clear_of_seams,
    closed_back,
    frame_at,
    lowest_mouth,
)
from draft.pieces.back_pockets.room import below_waist, lowest_start, no_room, rise_of
from draft.pieces.back_pockets.shield import QUARTER_CIRCLE
from draft.pieces.plan import Plan
from draft.shape.leg import largest
from draft.units import HAIR, at_most

USUAL_WIDTH, WIDTH_SHARE = 130.0, 0.67  # 115-140 read; the share of the back at the mouth is common practice, no source
USUAL_BELOW, BELOW_SHARE = 70.0, 0.37  # 65-80 read; of the way from the waist seam to the hip line
SMALLEST, SMALLEST_BAG, USUAL_BAG, LEAST_BELOW = 40.0, 60.0, 150.0, 25.0
BAG_BEYOND = 15.0  # the bag past each end of the mouth (common practice, no source)
BAG_CLEAR = 4.0  # of the seams of the back
BAG_ROUND = 25.0  # common practice, no source
FACING_DEPTH, FACING_ABOVE = 75.0, 20.0  # 75 read; how much of it lies above the mouth is common practice


@dataclass(frozen=True)
class Sizes:
    """Sizes that the choice and the back together give, mm; `bag` counts from the mouth's lower edge."""

    width: float
    below: float
    opening: float
    bag: float

    @property
    def bag_width(self) -> float:
        """Width of the bags."""
        return self.width + 2 * BAG_BEYOND


def chosen(plan: Plan) -> WeltPocket:
    """The chosen pocket."""
    pocket: Choice | None = plan.style.back_pocket
    assert isinstance(pocket, WeltPocket)
    return pocket


@lru_cache(maxsize=4)
def sizes(plan: Plan) -> Sizes:
    """Sizes of the pocket on this back.

    Raises
    ------
    DraftError
        When the mouth comes near the hip line or a seam, or the bag near a seam or below the crotch line; with the
        largest size that works.
    """
    below = _below(plan)
    width = _width(plan, below)
    return Sizes(width, below, chosen(plan).opening, _bag(plan, below, width))


def _below(plan: Plan) -> float:
    pocket, back = chosen(plan), closed_back(plan.shell.back)
    most = lowest_mouth(back, plan.shell.levels["hip"], SMALLEST) - pocket.opening
    rise = rise_of(plan)
    usual = rise + min(USUAL_BELOW, floor(BELOW_SHARE * (most - rise)))
    return below_waist(plan, pocket.below, usual, lowest_start(plan, LEAST_BELOW, 0.0), most, "set the mouth higher")


def _width(plan: Plan, below: float) -> float:
    opening, waist = chosen(plan).opening, closed_back(plan.shell.back)

    def fits(width: float) -> bool:
        if width <= 0:
            return True
        tried = Sizes(width, below, opening, SMALLEST_BAG)
        reach = tried.bag_width / 2 + BAG_CLEAR
        if not reach <= waist.middle <= waist.waist.length - reach:
            return False
        mouth = [end for part in box_of(plan, tried) for end in part.points()]
        return clear_of_seams(plan.shell.back, mouth) and _bag_fits(plan, tried)

    most = largest(fits, 260.0)
    asked = chosen(plan).width
    if most < SMALLEST - HAIR:
        raise no_room(
            plan, f"{SMALLEST:g} mm of mouth with a bag {SMALLEST_BAG:g} deep on this back, which has {at_most(most)}"
        )
    if asked is None:
        share = min(WIDTH_SHARE * _mouth_room(plan, below), most)
        return min(max(SMALLEST, min(USUAL_WIDTH, floor(share))), most)
    if asked > most + HAIR:
        expected = f"at most {at_most(most)} mm on this back"
        raise DraftError("style.back_pocket.width", asked, expected, "make the mouth narrower or leave the pocket out")
    return asked


def _mouth_room(plan: Plan, below: float) -> float:
    """Widest mouth that lies clear of the seams at this height, without regard to its bag."""

    def fits(width: float) -> bool:
        frame = frame_at(closed_back(plan.shell.back), below, SMALLEST)
        line = frame.line(-width / 2, width / 2, 0.0)
        return clear_of_seams(plan.shell.back, [line[0].start, line[-1].end])

    return largest(lambda width: width <= 0 or fits(width), 400.0)


def _bag(plan: Plan, below: float, width: float) -> float:
    opening = chosen(plan).opening
    most = largest(lambda bag: bag <= 0 or _bag_fits(plan, Sizes(width, below, opening, bag)), 400.0)
    asked = chosen(plan).bag_depth
    bag = min(USUAL_BAG, floor(most)) if asked is None else asked
    if bag > most + HAIR:
        expected = f"at most {at_most(most)} mm above the crotch line of this back"
        raise DraftError("style.back_pocket.bag_depth", bag, expected, "make the bag shallower or set the mouth higher")
    return bag


def _bag_fits(plan: Plan, s: Sizes) -> bool:
    """Whether the bag lies on the back and ends above the crotch line: nobody sits on it."""
    frame, half, low = frame_of(plan, s), s.bag_width / 2, -s.opening - s.bag
    at_mouth = frame.line(-half, half, -s.opening)
    feet = [frame.closed(x + 1j * low) for x in (-half, 0.0, half)]
    points = [at_mouth[0].start, at_mouth[-1].end, *feet]
    above_crotch = min(p.imag for p in feet) >= plan.shell.levels["crotch"]
    return above_crotch and clear_of_seams(plan.shell.back, points, BAG_CLEAR)


def frame_of(plan: Plan, s: Sizes) -> Frame:
    """Place of the mouth on the closed back."""
    return frame_at(closed_back(plan.shell.back), s.below, s.width)


def box_of(plan: Plan, s: Sizes) -> list[Path]:
    """Box of the mouth on the flat back."""
    return frame_of(plan, s).box(-s.width / 2, s.width / 2, 0.0, -s.opening)


@dataclass(frozen=True, eq=False)
class Bag:
    """The inner bag in the closed back: its contour from the waist seam round to the waist seam, and the waist."""

    around: Path
    waist: Path
    starts: float  # of the bag, along the sewn waist of the back


def contour(plan: Plan, s: Sizes) -> Bag:
    """The inner bag."""
    frame, back = frame_of(plan, s), closed_back(plan.shell.back)
    half, low = s.bag_width / 2, -s.opening - s.bag
    starts = back.middle - half
    waist = back.waist.between(starts, back.middle + half)
    reach = min(BAG_ROUND, 0.3 * s.bag_width)
    foot_a, foot_b = frame.closed(-half + 1j * low), frame.closed(half + 1j * low)
    up_a, up_b = waist.end - foot_a, waist.start - foot_b
    across = (foot_b - foot_a) / abs(foot_b - foot_a) * reach
    one, two = foot_a + up_a / abs(up_a) * reach, foot_b + up_b / abs(up_b) * reach
    left = hook(one, foot_a, foot_a + across, QUARTER_CIRCLE)
    right = hook(foot_b - across, foot_b, two, QUARTER_CIRCLE)
    around = Path.join(Line(waist.end, one), left, Line(left.p3, right.p0), right, Line(two, waist.start))
    return Bag(around, waist, starts)


def level_at(plan: Plan, s: Sizes, bag: Bag, y: float) -> tuple[float, float]:
    """Places along the contour at the height `y` of the frame, on the side's side and on the centre's."""
    frame = frame_of(plan, s)
    found = meet_line(bag.around, frame.closed(1j * y), frame.place.turn)
    return found[0], found[-1]


def facing_span(s: Sizes) -> tuple[float, float]:
    """Upper and lower edge of the facing in the frame; it ends above the round of the bag."""
    high = min(FACING_ABOVE, s.below - 5.0)
    return high, max(high - FACING_DEPTH, -s.opening - s.bag + BAG_ROUND + 5.0)
