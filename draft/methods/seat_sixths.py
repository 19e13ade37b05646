"""Seat-sixths draft (men's trousers, British tailoring, inches).

Source: W. D. F. Vincent, The Cutter's Practical Guide, part 13 (military garments), infantry trousers and Scotch trews,
about 1902, pages 64 and 65, read in a public scan; in the public domain in the United States. Its points are named
after their inches on a 36 seat: 6, 9, 12 are a sixth, a quarter and a third.

Read: the fork, the knee and hem widths of the topside (outer ones), the whole underside, the widths that front and back
share out. Damaged or ambiguous in the scan, settled by the source's own arithmetic: the leg centre 6, the front line 9,
the seat mark and 13 1/2. Not read: the page with the first lines of the topside; its top stands square above 9 as far
as side less leg. Ours: the seat level, a plain top of the back seat seam one inch above the front's instead of the
military high back, and how round the curves are.

The source draws two inches of seam allowance inside the whole waist and seat. Its leg is wide at the back of the knee
and narrow at the hem of the underside, so that a stripe lies on the side seam; this is kept.

Frame of the source: x = 0 on the side line, y = 0 on the fork line. The block is moved so that x = 0 is the leg centre.
"""

from __future__ import annotations

import numpy as np

from draft.block import Block, PanelBlock, at_height, crotch_seam, moved
from draft.geometry.points import with_y
from draft.methods.base import Measures, Method

INCH = 25.4
OWN_WAIST, OWN_SEAT = 2.0, 4.0  # over the measure: half waist plus 1, half seat plus 2, seams included
SEAMS = 2.0  # of these
KNEE_SHARE, BOTTOM_SHARE = 18 / 36, 17 / 36  # of the seat, from the example: 18 and 17 on a 36 seat
FRONT_K, BACK_K = 0.6, 0.62
HIGHEST_TURN = 0.6  # of the rise: on a low rise the curve starts below the seat mark (ours; the example has 0.58)


def seat_sixths(body: Measures) -> Block:
    """Front and back for one body, or for arrays of bodies.

    Parameters
    ----------
    body : Measures
        Waist, hip (seat), standing rise (side less leg), inside leg; mm.
    """
    W, S, L, rise = body.waist / INCH, body.hip / INCH, body.inside_leg / INCH, body.standing_rise / INCH
    Kn, B = KNEE_SHARE * S, BOTTOM_SHARE * S
    y_seat, y_knee, y_hem = S / 12, -(L / 2 - 2), -L

    # Topside: leg centre, front line and fork.
    p6 = S / 6 + 0j  # 6   leg centre
    p9 = S / 4 + 0j  # 9   front line
    p12 = S / 3 + 0j  # 12  front fork
    a = p9 + 1j * rise  # A   front top
    front_side_top = a - W / 4 - 1
    front_seat = 0 * S + 1j * y_seat  # the seat level on the side line
    front_crotch = crotch_seam(a, p9 + 1j * y_seat, p12, FRONT_K)

    # Knee and hem of the topside, wider at the side than inside.
    knee = p6 + 1j * y_knee  # K
    hem = p6 + 1j * y_hem  # B
    front_knee_side, front_knee_in = knee - (Kn / 4 + 1), knee + Kn / 4
    front_hem_side, front_hem_in = hem - (B / 4 + 1.5), hem + (B / 4 - 0.25)

    # Underside: the seat line runs from 12 through the star, the fork lies an eighth of the seat beyond 9.
    star = p9 + 1j * (S / 6 + 1)  # seat angle mark
    p13h = S / 4 + S / 8 + 0j  # 13 1/2  back fork
    t = with_y(p12, star, rise + 1)  # T  back top, one inch above the front's
    turn = with_y(p12, star, np.minimum(star.imag, HIGHEST_TURN * rise))  # where the curve leaves the seat line
    back_crotch = crotch_seam(t, turn, p13h, BACK_K)

    # Waist and seat: what front and back make up together, less what the front has.
    back_waist = W / 2 + 1 - (a - front_side_top).real
    back_side_top = t.real - np.sqrt(back_waist**2 - 1) + 1j * rise
    on_seat_line = with_y(p12, star, y_seat)
    back_seat = on_seat_line - (S / 2 + 2 - (p9 - front_seat).real)
    in_cloth = {
        "front": at_height(front_crotch, y_seat) - front_seat,
        "back": at_height(back_crotch, y_seat) - back_seat,
    }

    # Knee and hem of the underside make up knee + 1 and bottom + 1.
    back_knee_side, back_knee_in = knee - (Kn / 4 - 1), knee + Kn / 4 + 1
    back_hem_side = hem - (B / 4 - 1)
    back_hem_in = back_hem_side + (B + 1 - (front_hem_in - front_hem_side).real)

    front = PanelBlock(
        waist_centre=a, waist_side=front_side_top, hip_centre=at_height(front_crotch, y_seat), hip_side=front_seat,
        knee_side=front_knee_side, hem_side=front_hem_side, hem_inseam=front_hem_in, knee_inseam=front_knee_in,
        fork=p12, crotch=front_crotch, side_bow=0.25, side_hollow=0.0, inseam_hollow=0.35, darts=(),
        points={
            "6": p6, "9": p9, "12": p12, "A": a, "side top": front_side_top, "K": knee, "B": hem,
            "knee out": front_knee_side, "knee in": front_knee_in, "hem out": front_hem_side, "hem in": front_hem_in,
        },
    )  # fmt: skip
    back = PanelBlock(
        waist_centre=t, waist_side=back_side_top, hip_centre=at_height(back_crotch, y_seat), hip_side=back_seat,
        knee_side=back_knee_side, hem_side=back_hem_side, hem_inseam=back_hem_in, knee_inseam=back_knee_in,
        fork=p13h, crotch=back_crotch, side_bow=0.25, side_hollow=0.0, inseam_hollow=0.5, darts=(),
        points={
            "star": star, "13 1/2": p13h, "T": t, "T4": with_y(p12, star, rise + 4), "side top": back_side_top,
            "side at seat": back_seat, "knee out": back_knee_side, "knee in": back_knee_in,
            "hem out": back_hem_side, "hem in": back_hem_in,
        },
    )  # fmt: skip
    hip_ease = 2 * (in_cloth["front"] + in_cloth["back"]).real - S
    levels = {"waist": rise, "hip": y_seat, "crotch": 0.0 * S, "knee": y_knee, "hem": y_hem}
    drawn = Block("seat_sixths", front, back, levels, {"waist": OWN_WAIST + 0 * W, "hip": hip_ease})
    return moved(drawn, by=-p6, scale=INCH)


METHOD = Method(
    name="seat_sixths",
    title="Seat-sixths draft",
    source="W. D. F. Vincent, The Cutter's Practical Guide, part 13, about 1902; start of the topside inferred",
    made_for="men; close trousers with a seat angle of 23 degrees, for riding and marching",
    unit="in",
    required=("waist", "hip", "crotch_depth", "inside_leg"),
    draft=seat_sixths,
    seams=SEAMS * INCH,
)
