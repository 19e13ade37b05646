"""What each alteration is for: its place in the order of work, the fault behind it, and the test that tells it apart.

`Cause.amount` says what the alteration's ``by`` stands for here, in mm:

girth   of the whole body
leg     of one leg, all round
length  along the body, at the place
shift   of a line or an edge, on either half
none    the alteration has no amount

Signs: a positive ``swing_side_seam`` makes the front wider and the back narrower, ``leg_slope`` brings the hem inwards
(told at the length of full trousers), ``move_back_darts`` goes towards the side. ``widen_back_darts`` and
``darts_to_side`` are of the darts of one back together; the waist stays as long as it was.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

ORDER = (
    "waist level and tilt",
    "girth and its share",
    "crotch depth",
    "crotch length, fork and curve",
    "waist and darts",
    "legs",
    "hem and band",
)
"""Order of work: fit again after the first four before the rest is judged."""


@dataclass(frozen=True)
class Cause:
    """One alteration as a cure: ``step`` is its place in `ORDER`, counted from 1.

    ``more`` and ``less`` say what is wrong when its amount is positive and when it is negative.
    """

    step: int
    amount: str
    more: str
    test: str
    less: str = ""

    def because(self, amount: float) -> str:
        """Fault that an amount of this sign cures."""
        return self.less if amount < 0 and self.less else self.more


_GIRTH_TEST = "open the side seams where it strains, or pin folds along them: what both sides gape or take is the girth"
_FORK_TEST = "unpick the inseam 100 to 150 mm from the fork: it opens by what the fork lacks"
_LEVEL_TEST = "open the waist seam and let it find its own level: the lines go when level or tilt was the fault"
_TUCK_TEST = "pin a level tuck under the back band: folds below the seat that go with it came from length, not girth"
_STANCE_TEST = "stand with the feet about 600 mm apart: creases from the inseam that go came from the slope of the leg"
_CHALK_TEST = "chalk the crease and hang a weighted thread from the knee: what lies between them is the amount"

CAUSES: Mapping[str, Cause] = MappingProxyType(
    {
        "raise_waist": Cause(
            1, "length", "the waist lies too low all round", _LEVEL_TEST, "the waist lies too high all round"
        ),
        "raise_front_waist": Cause(
            1, "length", "the front rise is short", _LEVEL_TEST, "the front rise is long: its surplus folds or bubbles"
        ),
        "raise_back_waist": Cause(
            1,
            "length",
            "the back rise is short",
            "let the waist find its level, standing and seated: behind it slides down or creeps up",
            "the back rise is long",
        ),
        "sway_back": Cause(1, "length", "the back is hollow above the seat: its length has nowhere to lie", _TUCK_TEST),
        "raise_sides": Cause(1, "length", "the waist is short over the hip bones", _LEVEL_TEST, "it is long there"),
        "high_hip": Cause(
            1, "length", "one hip stands higher", "measure from the floor to the waist at both sides, shoes off"
        ),
        "all_girths": Cause(
            2, "girth", "it is too small all over", _GIRTH_TEST, "it is too large all over: folds stand upright"
        ),
        "hip_ease": Cause(2, "girth", "the hip is short of girth", _GIRTH_TEST, "the hip has girth to spare"),
        "side_to_centre_front": Cause(
            2,
            "shift",
            "the front quarter sits too far from the centre",
            "pin the side and open the centre front by as much: the band lies flat",
            "the front quarter sits too near to the centre",
        ),
        "side_to_centre_back": Cause(
            2,
            "shift",
            "the back quarter sits too far from the centre",
            "pin the side and open the centre back by as much: the band lies flat",
            "the back quarter sits too near to the centre",
        ),
        "swing_side_seam": Cause(
            2,
            "shift",
            "the front is too narrow beside the back",
            "hang a weighted thread from the waist at the side: the seam stands off it",
            "the back is too narrow beside the front",
        ),
        "full_abdomen": Cause(
            2,
            "length",
            "the abdomen needs length and width in front",
            "slit the front across below the band, from the centre front towards the side: it opens at the centre",
        ),
        "flat_abdomen": Cause(
            2, "length", "the front has length over a flat abdomen", "pin a level tuck in front under the band"
        ),
        "crotch_depth": Cause(
            3,
            "length",
            "the crotch lies too high",
            "sit on a hard chair and measure the side from the waist to the seat; compare with the draft",
            "the crotch lies too low",
        ),
        "extend_front_fork": Cause(4, "shift", "the front fork is short", _FORK_TEST, "the front fork is long"),
        "extend_back_fork": Cause(4, "shift", "the back fork is short", _FORK_TEST, "the back fork is long"),
        "scoop_front": Cause(
            4,
            "shift",
            "the front curve is too flat",
            "clip and trim the allowance in the curve first; what strains after that is the curve",
            "the front curve is too deep",
        ),
        "scoop_back": Cause(
            4,
            "shift",
            "the back curve is too flat low down",
            "clip and trim the allowance in the curve first; what strains after that is the curve",
            "the back curve is too deep",
        ),
        "full_seat": Cause(
            4,
            "length",
            "the seat needs length and width over its fullest part",
            "slit the back across on the hip line, from the centre back towards the side: it opens at the centre",
        ),
        "flat_seat": Cause(4, "length", "the back has length and width over a flat seat", _TUCK_TEST),
        "waist_ease": Cause(
            5, "girth", "the waist is short of girth", "open the band: the hip below stays right", "the waist is large"
        ),
        "let_out_side_seams": Cause(
            2, "girth", "the sides are short from band to hip", _GIRTH_TEST, "the sides are large from band to hip"
        ),
        "let_out_centre_back": Cause(
            5,
            "girth",
            "the back waist is short of girth at its centre",
            "pin or open the centre back alone: the sides of the band stay as they lie",
            "the back waist is large at its centre: a hollow back",
        ),
        "widen_knee": Cause(
            6, "leg", "the knee is too narrow to bend", "open the leg's seams at the knee", "the knee is too wide"
        ),
        "darts_to_side": Cause(
            5,
            "shift",
            "the darts take what the side should",
            "pin the side above the hip and let the darts out as much",
        ),
        "move_back_darts": Cause(
            5,
            "shift",
            "the darts lie too near the centre back",
            "mark the fullest part with the mock-up on",
            "they lie too near the side",
        ),
        "widen_back_darts": Cause(
            5,
            "shift",
            "the back needs more shaping at the waist",
            "pin the surplus into the darts, and let out as much at the side: the band lies flat all round",
        ),
        "lengthen_back_darts": Cause(
            5,
            "length",
            "the darts end too high above the fullest part",
            "mark the fullest part: the dart should end 20 to 30 mm above it",
            "the darts reach past the fullest part",
        ),
        "add_front_dart": Cause(
            5, "none", "the front is flat between hip bones that stand out", "pin a small dart that aims at the bone"
        ),
        "remove_back_dart": Cause(
            5, "none", "the back is not hollow enough for its darts", "let one dart out: the band still lies flat"
        ),
        "fuller_thigh": Cause(
            6,
            "leg",
            "the thigh needs girth",
            "open the side seam at the thigh; when it does not gape, open the inseam",
            "the thigh has girth to spare",
        ),
        "knock_knees": Cause(6, "shift", "the knees stand inside the crease", _CHALK_TEST),
        "bow_legs": Cause(6, "shift", "the knees stand outside the crease", _CHALK_TEST),
        "leg_slope": Cause(
            6, "shift", "the legs of the pattern stand too far apart", _STANCE_TEST, "they stand too close together"
        ),
        "prominent_calf": Cause(
            6, "leg", "the back of the leg catches on the calf", "open both seams at the calf: the folds drop"
        ),
        "lengthen_at_knee": Cause(
            6,
            "length",
            "the leg is short, and its shape sits too high",
            "chalk the knee: the knee line lies above it",
            "the leg is long, and its shape sits too low",
        ),
        "widen_hem": Cause(7, "leg", "the hem is narrow", "open both seams at the hem", "the hem is wide"),
        "lengthen_at_hem": Cause(
            7,
            "length",
            "the leg is short",
            "settle the crotch first: trousers that cannot rise into it look too long in the leg",
            "the leg is long",
        ),
        "contour_band": Cause(
            7, "none", "a straight band lies on a cone", "slit the upper edge of the band: it laps or gapes there"
        ),
    }
)
"""Name of an alteration -> what it is for."""
