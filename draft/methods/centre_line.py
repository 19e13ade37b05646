"""Centre-line block from measured body rise (women's trouser block, centimetres).

Source: the trouser block of a British metric textbook on pattern cutting for women's wear, known through a restatement
in a textbook of English for clothing students (read). Front points 0 to 15 and back points 16 to 27 were read there.
From memory, confirmed only by arithmetic: back points 28 and 29, the hollow of the back inseam and side seam, and the
positions and lengths of the darts. The worked example (waist 68, hip 94, rise 28, waist to hip 20.6, waist to floor
104, bottom 22) uses a size whose measures are from memory.

Not in the source: bodies outside women's sizes 8 to 30. What is done for them is argued where it happens.

Frame: x = 0 on the crease, y = 0 on the crotch line, millimetres.
"""

from __future__ import annotations

import numpy as np

from draft.block import Block, DartPlan, PanelBlock
from draft.geometry.construct import hook_touching, point_at_height
from draft.geometry.path import Path
from draft.geometry.points import choose, cross_lines, unit, with_y
from draft.geometry.segments import Line
from draft.methods.base import Measures, Method

OWN_WAIST_EASE = 10.0  # 1 cm, stated in the source
OWN_HIP_EASE = 40.0  # between the construction lines: 2 x 0.5 + 2 x 1.5 cm; in cloth more, see `hip_in_cloth`
FRONT_DART, FRONT_DART_LENGTH = 20.0, 100.0
BACK_DARTS, BACK_DART_LENGTHS = (20.0, 20.0), (120.0, 100.0)

# Touch points and knee widths go by size group: 8 to 14, 16 to 22, 24 to 30. A size 12 has a hip of 94 cm and a size
# step is 4 cm. Inside a group the book's value stands; between two groups it is drawn straight, so that no body jumps
# by 2.5 mm for 1 mm of hip. Below size 8 the touch shrinks with the hip: on a child the book's 3 cm would pass
# outside the fork.
GROUP_HIPS = (0.0, 860.0, 980.0, 1020.0, 1150.0, 1190.0)
FRONT_TOUCH = (0.0, 30.0, 30.0, 32.5, 32.5, 35.0)
BACK_TOUCH = (0.0, 42.5, 42.5, 45.0, 45.0, 47.5)
# Outside those sizes, and where the thigh moves the fork, the touch is kept between two shares of the corner's distance
# from the chord: more would be a slanted line, less a corner. The book's size 12 has 0.62 and 0.47, its size 30 about
# 0.51 and 0.41.
FRONT_ROUNDNESS, BACK_ROUNDNESS = (0.50, 0.70), (0.36, 0.62)
KNEE_OVER_HEM = (0.0, 13.0, 13.0, 15.0, 15.0, 17.0)

BOTTOM_SHARE = 220 / 940  # the example's bottom width as a share of its hip (ours: the book lets the reader choose)
KNEE_UP, KNEE_UP_SHARE = 50.0, 0.075  # 5 cm above the middle of the leg; on legs under 67 cm (children) in proportion


def rounded_touch(touch: float, top: complex, corner: complex, fork: complex, shares: tuple[float, float]) -> float:
    """Touch distance that keeps the curve from `top` to `fork` round."""
    to_top, to_fork = abs(top - corner), abs(fork - corner)
    to_chord = to_top * to_fork / abs(top - fork)
    return np.minimum(np.maximum(touch, shares[0] * to_chord), shares[1] * to_chord)  # type: ignore[no-any-return]


def centre_line(body: Measures) -> Block:
    """Front and back for one body, or for arrays of bodies.

    Parameters
    ----------
    body : Measures
        Waist, hip, seated body rise, waist to hip, inside leg; mm.
    """
    W, H, BR, WH = body.waist, body.hip, body.body_rise, body.waist_to_hip
    bottom = BOTTOM_SHARE * H  # B, flat
    front_touch = np.interp(H, GROUP_HIPS, FRONT_TOUCH)
    back_touch = np.interp(H, GROUP_HIPS, BACK_TOUCH)
    knee_more = np.interp(H, GROUP_HIPS, KNEE_OVER_HEM)

    # Levels on the crease line.
    y_waist = BR  # 0
    y_hip = BR - WH  # 2
    y_hem = -body.inside_leg  # 3
    y_knee = -(body.inside_leg / 2 - np.minimum(KNEE_UP, KNEE_UP_SHARE * body.inside_leg))  # 4

    # Centre front and fork.
    x5 = H / 12 + 15
    p5 = x5 + 0j  # 5
    p6 = x5 + 1j * y_hip  # 6
    p7 = x5 + 1j * y_waist  # 7
    p9 = x5 + H / 16 + 5 + 0j  # 9  front fork
    p10 = p7 - 10  # 10 centre front waist

    # Front crotch: straight 10-6, then a curve tangent to it that passes 5 at the touch distance. Where the hip line
    # lies lower than the fork is wide (the book's size 12: 7.4 against 6.4 cm) a curve from 6 would be a slanted line,
    # so there it starts as far up the straight part as the fork is wide.
    fork_width = p9.real - p5.real
    curve_start = with_y(p10, p6, np.maximum(y_hip, fork_width))
    corner = cross_lines(p10, unit(p6 - p10), p9, 1 + 0j)
    front_past = rounded_touch(front_touch, curve_start, p5, p9, FRONT_ROUNDNESS)
    front_hook, _ = hook_touching(curve_start, corner, p9, front_past, past=p5)
    front_crotch = Path((front_hook.reversed(), Line(curve_start, p10)))

    # Back centre line, seat seam and fork.
    x16 = x5 - x5 / 4
    p16 = x16 + 0j  # 16
    p17 = x16 + 1j * y_hip  # 17
    p18 = x16 + 1j * y_waist  # 18
    p19 = x16 + 0.5j * BR  # 19 end of the straight part of the seat seam
    p20 = p18 - 20  # 20
    p21 = p20 + 20j  # 21 centre back waist
    x23 = p9.real + (p9.real - x5) / 2
    p23 = x23 + 0j  # 23
    p24 = p23 - 5j  # 24 back fork
    seat_corner = cross_lines(p21, unit(p19 - p21), p24, 1 + 0j)
    back_past = rounded_touch(back_touch, p19, p16, p24, BACK_ROUNDNESS)
    back_hook, _ = hook_touching(p19, seat_corner, p24, back_past, past=p16)
    back_crotch = Path((back_hook.reversed(), Line(p19, p21)))

    # Hip, from the uprights through 6 and 17. The cloth reaches on to the crotch curves, so the ease in cloth is more.
    front_at_hip = choose(y_hip < curve_start.imag, point_at_height(front_hook, y_hip), p6)
    seat_at_hip = choose(y_hip < p19.imag, point_at_height(back_hook, y_hip), with_y(p19, p21, y_hip))
    p8 = p6 - (H / 4 + 5)  # 8  front hip
    p25 = p17 - (H / 4 + 15)  # 25 back hip
    hip_in_cloth = OWN_HIP_EASE + 2 * (front_at_hip.real - x5 + seat_at_hip.real - x16)

    # Side of the waist.
    p11 = p10 - (W / 4 + 22.5)  # 11 front side waist
    back_run = W / 4 + 42.5
    p22 = p21 - 20j - np.sqrt(back_run**2 - 20**2)  # 22 back side waist, on the waist line

    # Knee and hem, square across the crease. Back points lie 1 cm outside the front's on either side.
    half_hem = bottom / 2 - 5
    half_knee = half_hem + knee_more
    p12, p14 = -half_hem + 1j * y_hem, half_hem + 1j * y_hem  # 12, 14
    p13, p15 = -half_knee + 1j * y_knee, half_knee + 1j * y_knee  # 13, 15
    p26, p28 = p12 - 10, p14 + 10  # 26, 28
    p27, p29 = p13 - 10, p15 + 10  # 27, 29

    # Darts: front on the crease, back at the third-points of 21-22 and square to it. None reaches within 2 cm of the
    # hip line (common practice; the book's do not).
    reach = WH - 20
    back_down = -1j * unit(p21 - p22)
    back_mouths = (p21 + (p22 - p21) / 3, p21 + (p22 - p21) * 2 / 3)
    front_plan = DartPlan(
        0 * p10 + 1j * y_waist, 0 * p10 + 1j * (y_waist - np.minimum(FRONT_DART_LENGTH, reach)), 0 * W + FRONT_DART
    )
    back_plans = tuple(
        DartPlan(mouth, mouth + back_down * np.minimum(long, reach), 0 * W + intake)
        for mouth, long, intake in zip(back_mouths, BACK_DART_LENGTHS, BACK_DARTS, strict=True)
    )

    front = PanelBlock(
        waist_centre=p10, waist_side=p11, hip_centre=front_at_hip, hip_side=p8, knee_side=p13, hem_side=p12,
        hem_inseam=p14, knee_inseam=p15, fork=p9, crotch=front_crotch,
        side_bow=5.0, side_hollow=0.0, inseam_hollow=7.5, darts=(front_plan,),
        points={
            "0": 0 * p10 + 1j * y_waist, "1": 0 * p10, "2": 0 * p10 + 1j * y_hip, "3": 0 * p10 + 1j * y_hem,
            "4": 0 * p10 + 1j * y_knee, "5": p5, "6": p6, "7": p7, "8": p8, "9": p9, "10": p10, "11": p11,
            "12": p12, "13": p13, "14": p14, "15": p15,
        },
    )  # fmt: skip
    back = PanelBlock(
        waist_centre=p21, waist_side=p22, hip_centre=seat_at_hip, hip_side=p25, knee_side=p27, hem_side=p26,
        hem_inseam=p28, knee_inseam=p29, fork=p24, crotch=back_crotch,
        side_bow=5.0, side_hollow=5.0, inseam_hollow=12.5, darts=back_plans,
        points={
            "16": p16, "17": p17, "18": p18, "19": p19, "20": p20, "21": p21, "22": p22, "23": p23, "24": p24,
            "25": p25, "26": p26, "27": p27, "28": p28, "29": p29,
        },
    )  # fmt: skip
    levels = {"waist": y_waist, "hip": y_hip, "crotch": 0.0, "knee": y_knee, "hem": y_hem}
    return Block("centre_line", front, back, levels, {"waist": OWN_WAIST_EASE, "hip": hip_in_cloth})


METHOD = Method(
    name="centre_line",
    title="Centre-line block from measured body rise",
    source="British women's trouser block, read in a restatement; back leg and darts from memory",
    made_for="women, sizes 8 to 30; other bodies as argued in the recipe",
    unit="cm",
    required=("waist", "hip", "crotch_depth", "waist_to_hip", "inside_leg"),
    draft=centre_line,
)
