"""Ten-degree wedge draft (men's trousers, American and German tailoring, inches).

Source: Gunther F. Hertzer, Garment Cutting in the Twentieth Century, 1892 (the year from memory), the chapters on
pants, read in a public copy; in the public domain. All lines come from one wedge: its unit u is a twentieth of half the
seat plus 2 1/2, its point lies 80 u below the waist, and 7 1/2 degrees of it (1 in 8) reach from centre front to side,
2 1/2 more (1 in 24) to the inner line.

Read: the wedge, the fork with its 1 1/4, the seat line, the crease, the front waist thrown 5/8 forward and dropped 1/2,
the back seat seam at 1 in 4, one gore in the back, knee and hem equal on both sides of the crease. For full waists the
book throws the front waist 1 1/4 forward and more, at most 2 u; that choice is not drawn. Ours: the height of the back
top within the 1/2 to 1 of the book, the half inch more in the back waist, where and how long the gore is, the knee
level, how front and back share knee and hem, the bow of the side, and how round the curves are. The book lets the seat
seams bend at the seat line; here the curve is tangent to the straight line above it, so its corner lies not on the base
line but, on a 38 seat, 0.3 in nearer the side (front) and 0.9 in nearer the fork (back). Levels: where the base line
crosses the top of the wedge stands for the waist line.

Frame of the source: x = 0 on the base line (centre front), y = 0 on the fork line; there the crease leans 1 in 24. The
block is turned by 2.4 degrees so that the crease is upright, and moved so that the fork lies at y = 0. The fork and the
hip line are level after the turn. Knee and hem are drawn level before it, not square to the crease: on a 38 seat their
ends lie up to 6 mm higher (side) or lower (inseam) than the crease's point.
"""

from __future__ import annotations

import numpy as np

from draft.block import Block, DartPlan, PanelBlock, crotch_seam, moved
from draft.geometry.points import cross_lines, mid, unit
from draft.methods.base import Measures, Method

INCH = 25.4
KNEE_SHARE, BOTTOM_SHARE = 19.5 / 38, 18 / 38  # of the seat, from the example: 19 1/2 and 18 on a 38 seat
GORE, GORE_LENGTH = 1.25, 5.0
FRONT_K, BACK_K = 0.6, 0.45
UPRIGHT = unit(24 - 1j)  # turns the crease, 1 to the side in 24 up, into a vertical
SIDE_DIR = unit(-1 + 8j)


def ten_degrees(body: Measures) -> Block:
    """Front and back for one body, or for arrays of bodies.

    Parameters
    ----------
    body : Measures
        Waist, hip (seat), inside leg; mm. The rise is a formula of the hip.
    """
    W, S, L = body.waist / INCH, body.hip / INCH, body.inside_leg / INCH
    Kn, B = KNEE_SHARE * S, BOTTOM_SHARE * S
    u = (S / 2 + 2.5) / 20
    y_top, y_seat, y_knee, y_hem = 10 * u, 3.25 * u, -(L / 2 - 2), -L

    # The wedge: its point, the fork on the inner line, the seat line.
    apex = -70j * u
    fork = 70 * u / 24 + 1.25 + 0j
    seat = 1j * y_seat  # on the base line
    seat_side = -(y_seat + 70 * u) / 8 + 1j * y_seat  # on the side line

    # Front waist: thrown forward, dropped at the centre.
    cf_top = 5 / 8 + 1j * (y_top - 0.5)
    front_side_top = 5 / 8 - W / 4 + 1j * y_top

    # Back waist: the seat seam leaves the base line at 1 in 4; the waist holds one gore.
    y_back = y_top + 0.75
    cb_top = -(y_back - y_seat) / 4 + 1j * y_back
    back_side_top = cb_top.real - np.sqrt((W / 4 + GORE + 0.5) ** 2 - 0.75**2) + 1j * y_top

    # Knee and hem, equal on both sides of the crease.
    knee = -(y_knee + 70 * u) / 24 + 1j * y_knee
    hem = -(y_hem + 70 * u) / 24 + 1j * y_hem
    front_half_knee, back_half_knee = Kn / 4 - 0.5, Kn / 4 + 0.5
    front_half_hem, back_half_hem = B / 4 - 0.5, B / 4 + 0.5

    drop = ((fork - apex) * UPRIGHT).imag

    def upright(p: complex) -> complex:
        """Point of the sheet when the crease stands upright at x = 0 and the fork at y = 0."""
        return (p - apex) * UPRIGHT - 1j * drop

    f = {
        "apex": upright(apex), "fork": upright(fork), "seat": upright(seat), "seat side": upright(seat_side),
        "CF top": upright(cf_top), "side top": upright(front_side_top), "knee": upright(knee), "hem": upright(hem),
        "knee out": upright(knee - front_half_knee), "knee in": upright(knee + front_half_knee),
        "hem out": upright(hem - front_half_hem), "hem in": upright(hem + front_half_hem),
    }  # fmt: skip
    b = {
        "CB top": upright(cb_top), "side top": upright(back_side_top),
        "knee out": upright(knee - back_half_knee), "knee in": upright(knee + back_half_knee),
        "hem out": upright(hem - back_half_hem), "hem in": upright(hem + back_half_hem),
    }  # fmt: skip

    # The hip line is level through the seat point; the side line crosses it a little below the book's seat line.
    hip_side = cross_lines(f["seat side"], SIDE_DIR * UPRIGHT, f["seat"], 1 + 0j)
    mouth = mid(b["CB top"], b["side top"])
    square = -1j * unit(b["CB top"] - b["side top"])
    # The gore does not reach within 3/4 in of the hip line (on small children; ours).
    gore = DartPlan(mouth, mouth + square * np.minimum(GORE_LENGTH, 6.75 * u - 0.75), 0 * W + GORE)

    front = PanelBlock(
        waist_centre=f["CF top"], waist_side=f["side top"], hip_centre=f["seat"], hip_side=hip_side,
        knee_side=f["knee out"], hem_side=f["hem out"], hem_inseam=f["hem in"], knee_inseam=f["knee in"],
        fork=f["fork"], crotch=crotch_seam(f["CF top"], f["seat"], f["fork"], FRONT_K),
        side_bow=0.2, side_hollow=0.0, inseam_hollow=0.4, darts=(), points=f,
    )  # fmt: skip
    back = PanelBlock(
        waist_centre=b["CB top"], waist_side=b["side top"], hip_centre=f["seat"], hip_side=hip_side,
        knee_side=b["knee out"], hem_side=b["hem out"], hem_inseam=b["hem in"], knee_inseam=b["knee in"],
        fork=f["fork"], crotch=crotch_seam(b["CB top"], f["seat"], f["fork"], BACK_K),
        side_bow=0.0, side_hollow=0.0, inseam_hollow=0.4, darts=(gore,), points=b,
    )  # fmt: skip
    waist = 2 * (abs(cf_top - front_side_top) + abs(cb_top - back_side_top) - GORE)
    ease = {"waist": waist - W, "hip": 4 * (f["seat"] - hip_side).real - S}
    y_waist = upright(1j * y_top).imag  # where the base line crosses the top line of the wedge
    levels = {
        "waist": y_waist, "hip": f["seat"].imag, "crotch": 0 * S, "knee": f["knee"].imag, "hem": f["hem"].imag,
    }  # fmt: skip
    return moved(Block("ten_degrees", front, back, levels, ease), scale=INCH)


METHOD = Method(
    name="ten_degrees",
    title="Ten-degree wedge draft",
    source="G. F. Hertzer, Garment Cutting in the Twentieth Century, 1892; how front and back share the leg is ours",
    made_for="men; trousers with a wide fork, room for dress and straddle",
    unit="in",
    required=("waist", "hip", "inside_leg"),
    draft=ten_degrees,
    rise_from_body=False,
)
