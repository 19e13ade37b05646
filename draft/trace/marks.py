"""Darts and grain of a traced piece: told by the lines inside its outline, or by notches cut into its waist."""

from __future__ import annotations

from typing import TypeAlias

import numpy as np

from draft.geometry.arrays import Points
from draft.trace.outline import Outline

Triple: TypeAlias = tuple[complex, complex, complex]
"""End of one leg at the waist, point, end of the other leg."""

DART_LEG_MM = (30.0, 250.0)
DART_MOUTH_MM = (3.0, 90.0)
UNEQUAL_LEGS_MM = 6.0
GRAIN_MM = 100.0
GRAIN_OFF_DEG = 15.0
GAP_TURN_DEG = 60.0


def propose_darts(outline: Outline) -> tuple[Triple, ...]:
    """Darts that are drawn inside an outline as lines of two legs that meet at a point.

    >>> piece = Outline([0, 200, 200 + 300j, 300j], lines=(np.array([90 + 300j, 100 + 200j, 110 + 300j]),))
    >>> propose_darts(piece)
    (((90+300j), (100+200j), (110+300j)),)
    """
    found = [(complex(line[0]), complex(line[1]), complex(line[2])) for line in outline.lines if len(line) == 3]
    return tuple(triple for triple in found if _is_dart(*triple))


def _is_dart(one: complex, point: complex, two: complex) -> bool:
    legs = abs(one - point), abs(two - point)
    return (
        DART_LEG_MM[0] <= min(legs)
        and max(legs) <= DART_LEG_MM[1]
        and abs(legs[0] - legs[1]) <= UNEQUAL_LEGS_MM
        and DART_MOUTH_MM[0] <= abs(one - two) <= min(DART_MOUTH_MM[1], *legs)
    )


def drawn_grain(outline: Outline, upright: complex) -> tuple[complex, complex] | None:
    """Longest straight line inside an outline within 15 degrees of `upright`, or None."""
    lines = [(complex(line[0]), complex(line[1])) for line in outline.lines if len(line) == 2]
    fit = [
        (a, b)
        for a, b in lines
        if abs(b - a) >= GRAIN_MM and abs(abs(np.degrees(np.angle((b - a) / upright))) - 90) >= 90 - GRAIN_OFF_DEG
    ]
    return max(fit, key=lambda ends: abs(ends[1] - ends[0]), default=None)


def gaps(line: Points) -> tuple[Triple, ...]:
    """Darts cut out of an edge: corners out, in to a point, and out again.

    >>> gaps(np.array([0, 40, 50 - 80j, 60, 100]))
    (((40+0j), (50-80j), (60+0j)),)
    """
    if len(line) < 5:
        return ()
    steps = np.diff(line)
    turns = np.degrees(np.angle(steps[1:] / steps[:-1]))
    found = []
    for index in np.flatnonzero(np.abs(turns) > GAP_TURN_DEG):
        k = int(index) + 1
        if 2 <= k <= len(line) - 3:
            triple = (complex(line[k - 1]), complex(line[k]), complex(line[k + 1]))
            around = turns[k - 2], turns[k]
            if _is_dart(*triple) and max(np.sign(around) * np.sign(turns[k - 1])) < 0:
                found.append(triple)
    return tuple(found)
