"""Invented bodies for the tests: nobody was measured for them.

`ZOO` holds one of each kind by name; `bodies()` draws plausible ones of every size from children of about two years
to very large adults. Girths hang together with the hip and lengths with the stature, as they do on people.
"""

from types import MappingProxyType

import numpy as np
from hypothesis import strategies as st

from draft.body import OPTIONAL, Body

WOMAN = Body(
    name="woman",
    waist=720,
    hip=980,
    crotch_depth=262,
    waist_to_hip=205,
    inside_leg=760,
    front_crotch=300,
    back_crotch=385,
    thigh=580,
    knee=380,
    calf=370,
    ankle=230,
    knee_height=450,
    hip_depth=240,
)
MAN = Body(
    name="man",
    waist=870,
    hip=1000,
    crotch_depth=268,
    waist_to_hip=215,
    inside_leg=815,
    front_crotch=305,
    back_crotch=400,
    thigh=600,
    knee=395,
    calf=385,
    ankle=235,
    knee_height=475,
    hip_depth=250,
)
TALL = Body(
    name="tall",
    waist=880,
    hip=1060,
    crotch_depth=300,
    waist_to_hip=235,
    inside_leg=960,
    front_crotch=335,
    back_crotch=430,
    thigh=620,
    knee=415,
    calf=400,
    ankle=250,
    knee_height=555,
    hip_depth=255,
)
SMALL = Body(
    name="small",
    waist=600,
    hip=840,
    crotch_depth=235,
    waist_to_hip=175,
    inside_leg=655,
    front_crotch=262,
    back_crotch=330,
    thigh=485,
    knee=325,
    calf=315,
    ankle=200,
    knee_height=385,
    hip_depth=190,
)
STOUT = Body(  # the waist is larger than the hip
    name="stout",
    waist=1180,
    hip=1120,
    crotch_depth=275,
    waist_to_hip=225,
    inside_leg=765,
    front_crotch=370,
    back_crotch=400,
    thigh=640,
    knee=430,
    calf=405,
    ankle=250,
    knee_height=450,
    hip_depth=305,
)
VERY_LARGE = Body(
    name="very large",
    waist=1600,
    hip=1720,
    crotch_depth=330,
    waist_to_hip=260,
    inside_leg=740,
    front_crotch=490,
    back_crotch=560,
    thigh=980,
    knee=620,
    calf=560,
    ankle=330,
    knee_height=445,
    hip_depth=460,
)
SLIM = Body(
    name="slim",
    waist=640,
    hip=850,
    crotch_depth=258,
    waist_to_hip=195,
    inside_leg=830,
    front_crotch=275,
    back_crotch=340,
    thigh=475,
    knee=335,
    calf=320,
    ankle=210,
    knee_height=480,
    hip_depth=185,
)
TODDLER = Body(
    name="toddler",
    waist=495,
    hip=540,
    crotch_depth=178,
    waist_to_hip=115,
    inside_leg=335,
    front_crotch=200,
    back_crotch=235,
    thigh=310,
    knee=220,
    calf=210,
    ankle=145,
    knee_height=200,
    hip_depth=130,
)
TEN_YEARS = Body(
    name="ten years",
    waist=590,
    hip=720,
    crotch_depth=225,
    waist_to_hip=160,
    inside_leg=630,
    front_crotch=245,
    back_crotch=300,
    thigh=420,
    knee=300,
    calf=285,
    ankle=190,
    knee_height=365,
    hip_depth=165,
)
ONLY_REQUIRED = Body(
    name="only required",
    waist=760,
    hip=1010,
    crotch_depth=250,
    crotch_depth_taken="standing",
    waist_to_hip=200,
    inside_leg=775,
)

ZOO = MappingProxyType(
    {body.name: body for body in (WOMAN, MAN, TALL, SMALL, STOUT, VERY_LARGE, SLIM, TODDLER, TEN_YEARS, ONLY_REQUIRED)}
)
"""One invented body of each kind, by name."""

# Mean hip by stature, mm: shop size charts for children up to 1740 (read), held level from there.
STATURES = (860, 980, 1100, 1200, 1380, 1500, 1620, 1740)
MEAN_HIPS = (540, 580, 620, 640, 720, 780, 880, 960)
LARGEST_BUILD_PERCENT = 185


def percent(low: int, high: int) -> st.SearchStrategy[float]:
    """Draw a share in whole percents: such draws shrink well and print short."""
    return st.integers(low, high).map(lambda whole: whole / 100)


@st.composite
def measurements(draw: st.DrawFn) -> dict[str, float | str]:
    """Draw all the measures of one plausible body, as keywords for `Body`, in whole millimetres."""
    stature = draw(st.integers(880, 2050))
    adult = min(max((stature - 1200) / 300, 0.0), 1.0)  # 0 up to 1.2 m, 1 from 1.5 m

    # Girths: from the hip downwards. Children vary less, and have a waist nearer to the hip and rounder joints. Of a
    # hip above 1150 mm only half the surplus goes on down the leg.
    stoutest = round(125 + adult * (LARGEST_BUILD_PERCENT - 125))
    hip = np.interp(stature, STATURES, MEAN_HIPS) * draw(percent(92, stoutest))
    waist = hip * draw(percent(round(84 - 14 * adult), round(100 + 12 * adult)))
    carried = min(hip, 1150 + (hip - 1150) / 2)
    thigh_share = draw(percent(55, 66))
    knee = carried * thigh_share * draw(percent(round(66 - 6 * adult), round(75 - 3 * adult)))
    calf = knee * draw(percent(90, 104))
    ankle = calf * draw(percent(round(62 - 8 * adult), round(69 - 8 * adult)))

    # Heights: an inside leg of 0.64 x stature - 240 in children goes over into 0.58 x stature - 168 in adults.
    child_leg, adult_leg = 0.64 * stature - 240, 0.58 * stature - 168
    inside_leg = (child_leg * (1 - adult) + adult_leg * adult) * draw(percent(95, 105))
    crotch_depth = (0.105 * stature + 90) * draw(percent(92, 110))  # seated, from the natural waist
    taken = draw(st.sampled_from(("seated", "standing")))

    # The crotch runs down, up again, and on under the body by a share of the hip.
    crotch = 2 * (crotch_depth - 15) + carried * draw(percent(14, 28))
    back = crotch * draw(percent(51, 64))
    sizes = {
        "waist": waist,
        "hip": hip,
        "crotch_depth": crotch_depth - (15 if taken == "standing" else 0),
        "waist_to_hip": crotch_depth * draw(percent(66, 84)),
        "inside_leg": inside_leg,
        "front_crotch": crotch - back,
        "back_crotch": back,
        "thigh": hip * thigh_share,
        "knee": knee,
        "calf": calf,
        "ankle": ankle,
        "knee_height": inside_leg * draw(percent(55, 61)),
        "hip_depth": hip * draw(percent(21, 27)),
    }
    return {"crotch_depth_taken": taken, **{field: float(round(size)) for field, size in sizes.items()}}


@st.composite
def bodies(draw: st.DrawFn, *, complete: bool = False) -> Body:
    """Draw a plausible body; any of the optional measures may be missing unless it is to be complete."""
    sizes = draw(measurements())
    left_out = set() if complete else draw(st.sets(st.sampled_from(OPTIONAL)))
    return Body(**{field: size for field, size in sizes.items() if field not in left_out})
