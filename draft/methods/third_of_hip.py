"""Third-of-hip draft (trousers of South Asian vocational courses, centimetres).

Source: slides of a course on trouser drafting, lesson 9, author not shown, read; a later copy of something, but it
lists every line. Settled by us where the slides slip: a second 7 is point 11; a line 5-8 is 5-9; 18 is not defined and
mirrors 17; the outlet at the back hip is given a height, 5, but no width, for which 2 is used. Ours: the length of the
back dart, the bow of the side and hollow of the inseam, and how round the curves are. Point 10 of the crease is placed
at the hem, 9 at the knee.

The source draws about 6 cm of seam allowance inside the whole waist and hip (four seams of about 1.5). The sheet's
curves are tangent to the straight lines above them; on the back the corner lies on the seat line at the height of the
dropped fork.

Frame of the source: x = 0 on the front's side line 0-3, y = 0 on the crotch line at 3; the top lies below the belt. The
block is moved so that x = 0 is the crease.
"""

from __future__ import annotations

import numpy as np

from draft.block import Block, DartPlan, PanelBlock, at_height, crotch_seam, moved
from draft.geometry.points import mid, unit
from draft.methods.base import Measures, Method

CM = 10.0
SEAMS = 6.0
KNEE_SHARE, BOTTOM_SHARE = 48 / 96, 40 / 96  # girths as shares of the hip, from the example
BACK_DART, BACK_DART_LENGTH = 2.0, 11.0
FRONT_K, BACK_K = 0.6, 0.72


def third_of_hip(body: Measures) -> Block:
    """Front and back for one body, or for arrays of bodies.

    Parameters
    ----------
    body : Measures
        Waist, hip, inside leg; mm. The rise is a formula of the hip; the length below the belt is rise and inside leg.
    """
    W, H, L = body.waist / CM, body.hip / CM, body.inside_leg / CM
    Kn, B = KNEE_SHARE * H, BOTTOM_SHARE * H

    # Levels on the side line.
    p0 = 1j * (H / 4 + 1.5)  # 0
    p1 = -1j * L  # 1
    p2 = p1 - 6j  # 2  hem allowance
    p3 = 0j * H  # 3
    p5 = p1 / 2 + 5j  # 5  knee
    y_top, y_knee, y_hem = p0.imag, p5.imag, p1.imag

    # Front fork, crease and centre.
    p6 = H / 3 - 2 + 0j  # 6
    p7 = p6 / 2  # 7  crease on the crotch line
    p8, p9, p10 = p7 + 1j * y_top, p7 + 1j * y_knee, p7 + 1j * y_hem  # 8, 9, 10
    p11 = p6 - 5  # 11
    p12 = p11 + 1j * y_top  # 12 centre front
    p13 = p12 - (W / 4 + 2)  # 13
    p14 = p11 + 1j * H / 16  # 14 start of the curve

    # Front knee and hem.
    p15, p16 = p9 - Kn / 4, p9 + Kn / 4  # 15, 16
    p17, p18 = p10 - B / 4, p10 + B / 4  # 17, 18

    # Back fork and seat line.
    a = p6 - 1j  # A
    b = a + H / 18  # B  fork
    c = mid(p12, p8)  # C
    d = c + 1j * H / 24  # D  centre back
    e = d.real - np.sqrt((W / 4 + 3.5) ** 2 - (H / 24) ** 2) + 1j * y_top  # E
    f = mid(d, p11)  # F  start of the curve

    # Back side, knee and hem, 2 outside the front's.
    g = p3 + 5j  # G
    h = g - 2  # H
    i, j = p15 - 2, p16 + 2  # I, J
    k, m = p17 - 2, p18 + 2  # K, L

    # Back dart: at the middle of D-E, aimed at 7; not within 2 of the hip line (on small children).
    mouth = mid(d, e)
    dart = DartPlan(mouth, mouth + unit(p7 - mouth) * np.minimum(BACK_DART_LENGTH, y_top - 7), 0 * W + BACK_DART)

    front_crotch = crotch_seam(p12, p14, p6, FRONT_K)
    back_crotch = crotch_seam(d, f, b, BACK_K)
    f_hip, b_hip = at_height(front_crotch, g.imag), at_height(back_crotch, h.imag)

    front = PanelBlock(
        waist_centre=p12, waist_side=p13, hip_centre=f_hip, hip_side=g, knee_side=p15, hem_side=p17, hem_inseam=p18,
        knee_inseam=p16, fork=p6, crotch=front_crotch, side_bow=0.4, side_hollow=0.0, inseam_hollow=0.6, darts=(),
        points={
            "0": p0, "1": p1, "2": p2, "3": p3, "5": p5, "6": p6, "7": p7, "8": p8, "9": p9, "10": p10, "11": p11,
            "12": p12, "13": p13, "14": p14, "15": p15, "16": p16, "17": p17, "18": p18,
        },
    )  # fmt: skip
    back = PanelBlock(
        waist_centre=d, waist_side=e, hip_centre=b_hip, hip_side=h, knee_side=i, hem_side=k, hem_inseam=m,
        knee_inseam=j, fork=b, crotch=back_crotch, side_bow=0.4, side_hollow=0.0, inseam_hollow=1.0, darts=(dart,),
        points={
            "A": a, "B": b, "C": c, "D": d, "E": e, "F": f, "G": g, "H": h, "I": i, "J": j, "K": k, "L": m,
        },
    )  # fmt: skip
    net = abs(p12 - p13) + abs(d - e) - BACK_DART
    ease = {"waist": 2 * net - W, "hip": 2 * (f_hip - g + b_hip - h).real - H}
    levels = {"waist": y_top, "hip": g.imag, "crotch": 0 * H, "knee": y_knee, "hem": y_hem}
    drawn = Block("third_of_hip", front, back, levels, ease)
    return moved(drawn, by=-p7, scale=CM)


METHOD = Method(
    name="third_of_hip",
    title="Third-of-hip draft",
    source="slides of a South Asian vocational course; slips settled as told in the recipe",
    made_for="not said in the source; trousers with a fly, 1 cm of waist ease and about 3 of hip ease",
    unit="cm",
    required=("waist", "hip", "inside_leg"),
    draft=third_of_hip,
    rise_from_body=False,
    seams=SEAMS * CM,
)
