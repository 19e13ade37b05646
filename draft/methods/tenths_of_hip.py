"""Tenths-of-hip draft (trousers of Chinese vocational schools, men's front, centimetres).

Source: Wu Hongqing, a comparison of ways to teach the cutting of suit trousers, Textile Reports (in Chinese) 2018 no.
11, read: the front and its example for size 170/74A. Slope of the back seat line, 3.5 to 15, and how it changes for
flat and full seats: a trade question-and-answer text, read. From memory, as the usual values of this school: the rest
of the back. The article prints the front hem as 21 less 2 beside a bottom of 22; the bottom of 22 is used, as in a
women's text of the same draft. That text differs in the knee (4 cm up instead of 3), the fork (0.11 of the hip behind)
and the side (0.7 to 1); these are not drawn.

The source's waist and hip are those of the finished garment, with their ease already in. Drafted from the measures of
a body the recipe gives no ease; a pattern without ease asked for is given 10 mm at the waist and 60 at the hip, fairly
close (common practice, no source).

Ours: front and back darts' lengths and places where not given (pleat on the crease, 7 long; back darts at the thirds of
the waist), the hollows of side and inseam, and how round the curves are. In the sheet's own curves the corner lies on
the fork line under the hip point; here the curve is tangent to the straight line above, so the front's corner lies 0.4
further in and the back's at the height of the dropped fork.

Frame of the source: x = 0 on the side line of each piece, y = 0 on the crotch line; the top lies below the band. Here
each piece is placed so that its crease is x = 0, which sets its side line first.
"""

from __future__ import annotations

import numpy as np

from draft.block import Block, DartPlan, PanelBlock, crotch_seam, moved
from draft.geometry.points import unit, with_y
from draft.methods.base import Measures, Method

CM = 10.0
BOTTOM_SHARE = 22 / 100  # flat width as a share of the hip, from the example
PLEATS, PLEAT_LENGTH = 6.0, 7.0
BACK_DARTS, BACK_DART_LENGTHS = (2.0, 2.0), (12.0, 10.0)
FRONT_K, BACK_K = 0.6, 0.6


def tenths_of_hip(body: Measures) -> Block:
    """Front and back for one body, or for arrays of bodies.

    Parameters
    ----------
    body : Measures
        Waist, hip, inside leg; mm. The rise is a formula of the hip; the length below the band is rise and inside leg.
    """
    W, H, L = body.waist / CM, body.hip / CM, body.inside_leg / CM
    b = BOTTOM_SHARE * H
    r = H / 4  # rise below the band

    # Levels.
    y_top, y_hip, y_hem = r, r / 3, -L
    y_knee = (y_hip + y_hem) / 2 + 3

    # Front: the crease halves the way from the side, 0.7 in from the side line, to the fork.
    front_width = H / 4 - 1
    front_side = -(0.7 + front_width + 0.04 * H) / 2 + 0j  # side line on the crotch line
    f_hip_side = front_side + 1j * y_hip
    f_hip = f_hip_side + front_width  # hip point
    f_side = front_side + 0.7  # side on the crotch line
    f_fork = front_side + front_width + 0.04 * H
    f_top = f_hip.real - 0.8 + 1j * y_top  # centre front
    f_side_top = f_top - (W / 4 - 1 + PLEATS)

    # Front hem, and the knee on the line from the middle of the fork's extension to the hem.
    f_hem_in, f_hem_out = (b - 2) / 2 + 1j * y_hem, -(b - 2) / 2 + 1j * y_hem
    mid_fork = f_fork - 0.02 * H
    f_knee_in = with_y(mid_fork, f_hem_in, y_knee)
    f_knee_out = -f_knee_in.conjugate()

    # Back: the seat line slopes 3.5 to 15 through the hip point; the fork lies a tenth of the hip beyond its foot.
    back_width = H / 4 + 1
    to_foot = back_width + 3.5 / 15 * y_hip
    back_side = -(to_foot + H / 10) / 2 + 0j  # side line on the crotch line; the crease halves the way to the fork
    b_hip_side = back_side + 1j * y_hip
    b_hip = b_hip_side + back_width  # hip point
    foot = back_side + to_foot
    b_fork = foot + H / 10 - 1j  # dropped by 1
    b_top = with_y(foot, b_hip, y_top + 2.5)  # centre back
    back_run = W / 4 + 1 + sum(BACK_DARTS)
    b_side_top = b_top.real - np.sqrt(back_run**2 - 2.5**2) + 1j * y_top

    # Back knee and hem, 2 outside the front's on either side of the crease.
    b_knee_in, b_knee_out = f_knee_in + 2, f_knee_out - 2
    b_hem_in, b_hem_out = f_hem_in + 2, f_hem_out - 2

    # Pleat on the crease, darts at the thirds of the back waist; none within 2 of the hip line (on small children).
    reach = y_top - y_hip - 2
    pleat_mouth = 0 * H + 1j * y_top
    pleat = DartPlan(pleat_mouth, pleat_mouth - 1j * np.minimum(PLEAT_LENGTH, reach), 0 * W + PLEATS)
    square = -1j * unit(b_top - b_side_top)
    mouths = (b_top + (b_side_top - b_top) / 3, b_top + (b_side_top - b_top) * 2 / 3)
    darts = tuple(
        DartPlan(mouth, mouth + square * np.minimum(long, reach), 0 * W + intake)
        for mouth, long, intake in zip(mouths, BACK_DART_LENGTHS, BACK_DARTS, strict=True)
    )

    front = PanelBlock(
        waist_centre=f_top, waist_side=f_side_top, hip_centre=f_hip, hip_side=f_hip_side, knee_side=f_knee_out,
        hem_side=f_hem_out, hem_inseam=f_hem_in, knee_inseam=f_knee_in, fork=f_fork,
        crotch=crotch_seam(f_top, f_hip, f_fork, FRONT_K),
        side_bow=0.0, side_hollow=0.3, inseam_hollow=0.5, darts=(pleat,),
        points={
            "side line": front_side, "hip side": f_hip_side, "hip": f_hip, "side": f_side, "fork": f_fork,
            "crease": 0 * front_side, "CF top": f_top, "side top": f_side_top, "mid fork": mid_fork,
            "knee out": f_knee_out, "knee in": f_knee_in, "hem out": f_hem_out, "hem in": f_hem_in,
        },
    )  # fmt: skip
    back = PanelBlock(
        waist_centre=b_top, waist_side=b_side_top, hip_centre=b_hip, hip_side=b_hip_side, knee_side=b_knee_out,
        hem_side=b_hem_out, hem_inseam=b_hem_in, knee_inseam=b_knee_in, fork=b_fork,
        crotch=crotch_seam(b_top, b_hip, b_fork, BACK_K),
        side_bow=0.0, side_hollow=0.5, inseam_hollow=1.2, darts=darts,
        points={
            "side line": back_side, "hip side": b_hip_side, "hip": b_hip, "foot": foot, "fork": b_fork,
            "crease": 0 * back_side, "CB top": b_top, "side top": b_side_top,
            "knee out": b_knee_out, "knee in": b_knee_in, "hem out": b_hem_out, "hem in": b_hem_in,
        },
    )  # fmt: skip
    net = abs(f_top - f_side_top) - PLEATS + abs(b_top - b_side_top) - sum(BACK_DARTS)
    ease = {"waist": 2 * net - W, "hip": 2 * (f_hip - f_hip_side + b_hip - b_hip_side).real - H}
    levels = {"waist": y_top, "hip": y_hip, "crotch": 0 * H, "knee": y_knee, "hem": y_hem}
    return moved(Block("tenths_of_hip", front, back, levels, ease), scale=CM)


METHOD = Method(
    name="tenths_of_hip",
    title="Tenths-of-hip draft",
    source="Wu Hongqing, Textile Reports 2018 no. 11 (front); back seat slope from a trade text, other back lines from"
    " memory",
    made_for="men; pleated trousers, drafted from finished girths (ease of 10 and 60 mm is ours)",
    unit="cm",
    required=("waist", "hip", "inside_leg"),
    draft=tenths_of_hip,
    rise_from_body=False,
    usual_ease=(10.0, 60.0),
)
