"""Leg shapes by name: what hem and knee a shape asks for, from the finished hip.

Source: a published summary of leg types (read) gives the flat width of the hem by the finished hip H: slim at most
0.2 H less 30 mm; straight 0.2 H to 0.2 H + 50 with a knee about equal; flared, the knee narrower than the hem;
tapered, wider; culottes 0.2 H + 100 or more. Inside these the numbers below are ours (common practice, no source), in
mm of girth. Legs that end above the knee take the method's own width there, made wider or narrower by the shape.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from draft.errors import DraftError
from draft.shape.leg import NEAR_KNEE_MM, LegSeams
from draft.style import Leg, LegShape


@dataclass(frozen=True)
class Girths:
    """Hem and knee over 0.4 of the finished hip (both sides of the flat width), and what a short leg's hem gains."""

    hem: float
    knee: float
    short: float


GIRTHS: Mapping[LegShape, Girths] = {
    "straight": Girths(hem=60.0, knee=70.0, short=0.0),
    "tapered": Girths(hem=-60.0, knee=50.0, short=-25.0),
    "wide": Girths(hem=160.0, knee=170.0, short=60.0),
    "flared": Girths(hem=120.0, knee=20.0, short=50.0),
    "bell": Girths(hem=220.0, knee=10.0, short=90.0),
    "breeches": Girths(hem=120.0, knee=150.0, short=60.0),
    "culottes": Girths(hem=330.0, knee=250.0, short=140.0),
    "balloon": Girths(hem=40.0, knee=230.0, short=120.0),
}
SHARES = (1.0, 0.75, 0.5, 0.25, 0.0)  # of the way from the method's own leg, where a body has no room for all of it


def asked(leg: Leg, hip: float, below_knee: float) -> tuple[float | None, float | None]:
    """Hem and knee that a leg ending `below_knee` mm below the knee line asks for by name; None: the method's."""
    if leg.shape is None or below_knee < NEAR_KNEE_MM:
        return leg.hem, leg.knee
    girths, base = GIRTHS[leg.shape], 0.4 * hip
    hem, knee = (base + girth for girth in (girths.hem, girths.knee))
    return (hem if leg.hem is None else leg.hem), (knee if leg.knee is None else leg.knee)


def shaped(leg: Leg, hip: float, below_knee: float, cut: Callable[[float | None, float | None], LegSeams]) -> LegSeams:
    """Leg of the asked shape, or the nearest to it that the body has room for.

    `cut` draws a leg with a hem and a knee, and refuses what has no room. Hem and knee that the style asks for in mm
    are not moved. What is asked for beyond the shape is then added to the hem.
    """
    legs, knee = _named(leg, hip, below_knee, cut)
    return cut(legs.hem + leg.wider, knee) if leg.wider else legs


def _named(
    leg: Leg, hip: float, below_knee: float, cut: Callable[[float | None, float | None], LegSeams]
) -> tuple[LegSeams, float | None]:
    """Leg of the asked shape, and the knee it was cut with."""
    own = cut(leg.hem, leg.knee)
    if leg.shape is None:
        return own, leg.knee
    hem: float | None
    if below_knee < NEAR_KNEE_MM:
        hem, knee = (own.hem + GIRTHS[leg.shape].short if leg.hem is None else leg.hem), leg.knee
    else:
        hem, knee = asked(leg, hip, below_knee)
    for share in SHARES[:-1]:
        nearer = own.hem + share * (hem - own.hem) if hem is not None and leg.hem is None else leg.hem
        for at_knee in (knee, leg.knee) if knee != leg.knee else (knee,):
            try:
                return cut(nearer, at_knee), at_knee
            except DraftError:
                continue
    return own, leg.knee
