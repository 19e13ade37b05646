"""What to say of lengths that the least change could not reach."""

from __future__ import annotations

from collections.abc import Mapping

from draft.body import Body
from draft.fitting.bounds import bounds_of
from draft.fitting.change import NAMES
from draft.fitting.fit import Fit

UNMET_TOL_MM = 1.0
AT_EDGE = 1e-6

_LIFTS = {"front_crotch": "front_lift", "back_crotch": "back_rise"}


def unmet(body: Body, fit: Fit, floors: Mapping[str, float], sizes: Mapping[str, float]) -> dict[str, str]:
    """Name of each length that was missed by more than 1 mm, and which measure to take again; empty when all were met.

    `floors` are the least sizes of the pattern and `sizes` what it has.

    A crotch part that cannot be met pushes its miss into the other part, so that the total stays true: the measure to
    doubt is the one whose own seam has gone to the end of its bounds.
    """
    missed = {name: fit.reached[name] - aim for name, aim in fit.aims.items() if name in _LIFTS}
    missed = {name: miss for name, miss in missed.items() if abs(miss) > UNMET_TOL_MM}
    found = {}
    if missed:
        doubted = [name for name in _LIFTS if name in fit.aims and _at_edge(fit, body, _LIFTS[name])] or list(missed)
        again = " and ".join(doubted)
        for name in missed:
            whose = "" if name in doubted else f"it takes up what {again} leaves over, so that the total stays true; "
            found[name] = f"{whose}take {again} again ({HOW}), then crotch_depth from the same waist"
        if abs(sum(fit.reached[n] - fit.aims[n] for n in _LIFTS if n in fit.aims)) > UNMET_TOL_MM:
            found["crotch"] = f"take {again} and crotch_depth again, all from the same waist"
    if "thigh" in fit.aims and fit.reached["thigh"] < fit.aims["thigh"] - UNMET_TOL_MM:
        found["thigh"] = "the forks cannot move further: take thigh and hip again, or ask for more hip ease"
    elif "thigh" in floors and sizes["thigh"] < floors["thigh"] - UNMET_TOL_MM:
        found["thigh"] = "the leg ends so near that its hem takes it away: make the hem wider or the leg longer"
    return found


HOW = "over the body with a small weight hung on the tape; it settles where front and back part"


def _at_edge(fit: Fit, body: Body, name: str) -> bool:
    low, high = bounds_of(fit.formula, body.hip)
    value, at = float(getattr(fit.change, name)), NAMES.index(name)
    return bool(value <= low[at] + AT_EDGE or value >= high[at] - AT_EDGE)
