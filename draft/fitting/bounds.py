"""How far each number of a change may go, and why.

A block is moved only as far as bodies differ and as a cutter would still call it the same block. All limits are common
practice without a source, set wide around what the survey's bodies need; the reasons stand beside them.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from draft.block import Block
from draft.fitting.change import NAMES
from draft.fitting.crotch import CrotchShape
from draft.geometry.arrays import Floats, Real

MOVES: Mapping[str, tuple[float, float]] = {
    # The fork is half of the body's depth between the legs. Adults of one hip girth differ by about 50 mm in it.
    "front_fork": (-30.0, 50.0),
    "back_fork": (-45.0, 70.0),
    # The waist: a tied elastic may lie 50 mm lower under an abdomen, or be lifted by it as much; at the back a hollow
    # or full seat asks for as much. More than that is a level measured wrongly.
    "front_lift": (-60.0, 60.0),
    "back_rise": (-60.0, 60.0),
    # A curve is from flat to square; the limits of its roundness below apply too.
    "front_fullness": (-0.04, 0.25),
    "back_fullness": (-0.25, 0.25),
    # Over a rise of 250 mm 30 mm are 7 degrees: from a flat seat to a riding seat.
    "seat_slant": (-30.0, 30.0),
}
SMALL_ADULT = 860.0  # hip below which all limits in mm shrink with the body: children
HANDLE = (0.40, 0.86)  # reach of the handles: below, a slanted line; above, the curve turns sharper than 2 cm
LEAST_FRONT, LEAST_BACK = 0.035, 0.055  # width of the fork from the corner, share of the hip: narrower forks bind
LEAST_RADIUS = 25.0  # of the front curve at the fork, mm: seam allowances of 10 mm still lie flat beside it
LEAST_STRAIGHT = 45.0  # of the front seam, for the fly; of the back, for the waist to lean on
STEEPEST_WAIST = 0.4  # rise of the waist line from side to centre per mm of its length: steeper, no band lies flat
UPRIGHT_MOST, LEAN_MOST = 0.03, 0.50  # lean of the seat seam: never past upright, at most 27 degrees

_HALVINGS = 40


def bounds_of(block: Block, hip: Real) -> tuple[Floats, Floats]:
    """Lowest and highest value of each number, in the order of the change's fields, on the last axis."""
    front, back = CrotchShape.of(block.front), CrotchShape.of(block.back)
    size = np.minimum(1.0, hip / SMALL_ADULT)
    low, high = ({name: _sized(name, edge[end], size) for name, edge in MOVES.items()} for end in (0, 1))
    for name, shape, least in (("front", front, LEAST_FRONT), ("back", back, LEAST_BACK)):
        width = shape.fork.real - shape.corner.real
        fork, full = f"{name}_fork", f"{name}_fullness"
        low[fork] = np.maximum(low[fork], np.minimum(least * hip - width, 0.0))
        low[full] = np.maximum(low[full], np.minimum(HANDLE[0] - np.minimum(shape.near, shape.far), 0.0))
        high[full] = np.minimum(high[full], np.maximum(HANDLE[1] - np.maximum(shape.near, shape.far), 0.0))
    low["front_fork"] = np.maximum(low["front_fork"], _roundest(front, LEAST_RADIUS * size))
    for name, shape, panel in (("front_lift", front, block.front), ("back_rise", back, block.back)):
        low[name] = np.maximum(low[name], np.minimum(LEAST_STRAIGHT * size - shape.straight, 0.0))
        run = panel.waist_centre - panel.waist_side
        steepest = STEEPEST_WAIST * abs(run)
        low[name] = np.maximum(low[name], np.minimum(-steepest - run.imag, 0.0))
        high[name] = np.minimum(high[name], np.maximum(steepest - run.imag, 0.0))
    height = (back.waist_centre - back.top).imag
    low["seat_slant"] = np.maximum(low["seat_slant"], np.minimum((back.lean - UPRIGHT_MOST) * height, 0.0))
    high["seat_slant"] = np.minimum(high["seat_slant"], np.maximum((back.lean + LEAN_MOST) * height, 0.0))

    def stacked(edge: Mapping[str, Real]) -> Floats:
        return np.stack([np.broadcast_to(edge[name], np.shape(hip)) for name in NAMES], axis=-1)

    return stacked(low), stacked(high)


def _sized(name: str, edge: float, size: Real) -> Real:
    """Limit for a body of this size: a share stays, millimetres shrink."""
    return edge * (size if not name.endswith("fullness") else size**0)


def _roundest(front: CrotchShape, least: Real) -> Real:
    """How far in the front fork may move before its curve is too sharp there (0 where it is too sharp already)."""
    low: Real = -0.9 * (front.fork - front.corner).real
    high: Real = 0.0 * front.near
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        sharp = front.changed(middle, 0.0, 0.0, 0.0).radius_at_fork < least
        low, high = np.where(sharp, middle, low), np.where(sharp, high, middle)
    return high
