"""How thick the leg is where a hem lies, and what a closed hem has to pass when it is pulled on.

Between the measured girths the leg is taken to grow evenly. The heights of ankle and calf, and the girth around heel
and instep as a multiple of the ankle, are from memory: means of adults, good for a limit and not for a fit.
"""

from __future__ import annotations

import numpy as np

from draft.body import Body

ANKLE_SHARE, CALF_SHARE = 0.2, 0.7  # heights above the floor, of the knee height
HEEL_SHARE = 1.5  # around heel and instep, of the ankle
BELOW_FORK = 25.0  # where the thigh is measured


def _levels(body: Body) -> tuple[tuple[float, float], ...]:
    """Height above the floor and girth, upwards, mm."""
    knee = body.known("knee_height")
    heights = ANKLE_SHARE * knee, CALF_SHARE * knee, knee, body.inside_leg - BELOW_FORK
    return tuple(zip(heights, (body.known(name) for name in ("ankle", "calf", "knee", "thigh")), strict=True))


def leg_girth(body: Body, height: float) -> float:
    """Girth of one leg at a height above the floor, mm.

    >>> body = Body(waist=720, hip=980, crotch_depth=262, waist_to_hip=205, inside_leg=760, thigh=580, knee=380,
    ...             calf=370, ankle=230, knee_height=450)
    >>> round(leg_girth(body, 450)), round(leg_girth(body, 315)), round(leg_girth(body, 0))
    (380, 370, 230)
    """
    heights, girths = zip(*_levels(body), strict=True)
    return float(np.interp(height, heights, girths))


def girth_to_pass(body: Body, height: float) -> float:
    """Largest girth from the floor up to a height: a hem without an opening is pulled over it, mm.

    >>> body = Body(waist=720, hip=980, crotch_depth=262, waist_to_hip=205, inside_leg=760, thigh=580, knee=380,
    ...             calf=370, ankle=230, knee_height=450)
    >>> round(girth_to_pass(body, 60)), round(girth_to_pass(body, 400))
    (345, 376)
    """
    below = [girth for at, girth in _levels(body) if at <= height]
    return max(HEEL_SHARE * body.known("ankle"), leg_girth(body, height), *below)
