"""The least change: which lengths must come out, what counts as near, and the solution for one body or many."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields

import numpy as np

from draft.block import Block
from draft.fitting.bounds import bounds_of
from draft.fitting.change import NAMES
from draft.fitting.lengths import Lengths
from draft.fitting.quadratic import least_change
from draft.geometry.arrays import Floats

USUAL: Mapping[str, float] = {
    "front_fork": 15.0,
    "front_lift": 15.0,
    "front_fullness": 0.10,
    "back_fork": 20.0,
    "back_rise": 15.0,
    "back_fullness": 0.10,
    "seat_slant": 10.0,
}
"""The change of each number that a cutter would call usual: the unit in which changes are compared."""

PART_TOL_MM = 0.01  # a miss of this size of a crotch part or the thigh weighs as much as one usual change
TOTAL_TOL_MM = 0.0005  # the same for the total crotch length: it is met even where its parts cannot be
FORK_TOL_MM = 4.0  # the same for the total width of the fork: it gives way a little before other changes grow large
STEP_TOL = 1e-9  # in units of the usual change
MOST_STEPS = 40


@dataclass(frozen=True, eq=False)
class Aims:
    """Lengths that a block is moved to, mm; nan where there is none. All arrays of one shape.

    `thigh` is a least girth; `fork` the width of front and back fork together, from the points where the crotch seams
    cross the hip line.
    """

    front_crotch: Floats
    back_crotch: Floats
    thigh: Floats
    fork: Floats

    @property
    def rows(self) -> Floats:
        """All of them on a new last axis, in the order of the fields."""
        return np.stack([getattr(self, name) for name in AIMS], axis=-1)


AIMS = tuple(f.name for f in fields(Aims))
_FLOOR = AIMS.index("thigh")
_SCALE = np.array([USUAL[name] for name in NAMES])


def tolerated(rows: int) -> Floats:
    """How much of each miss weighs as much as one usual change: the matrix C of the quadratic problem."""
    one = np.diag([PART_TOL_MM**2, PART_TOL_MM**2, PART_TOL_MM**2, FORK_TOL_MM**2])
    one[:2, :2] -= (PART_TOL_MM**2 - TOTAL_TOL_MM**2) / 2
    return np.broadcast_to(one, (rows, *one.shape))


def solve(block: Block, aims: Aims, hip: Floats) -> tuple[Floats, Floats]:
    """Change of each row (rows, 7) and the lengths it gives (rows, 4); for blocks of one axis.

    Every step replaces the lengths by their slopes and solves the quadratic problem; a row that no longer moves is
    left alone, so that a body gets the same block among many as alone.
    """
    lengths, target = Lengths.of(block), aims.rows
    low, high = (edge / _SCALE for edge in bounds_of(block, hip))
    asked = ~np.isnan(target)
    target = np.where(asked, target, 0.0)
    z = np.zeros((len(hip), len(NAMES)))
    going = np.arange(len(hip))
    for _ in range(MOST_STEPS):
        old, wanted = z[going], asked[going]
        values, slopes = lengths.rows(going)(old * _SCALE)
        a = np.where(wanted[..., None], slopes * _SCALE, 0.0)
        b = np.where(wanted, target[going] - values, 0.0) + np.einsum("rmn,rn->rm", a, old)
        new = least_change(a, b, tolerated(len(going)), low[going], high[going], _FLOOR)
        z[going] = new
        going = going[np.abs(new - old).max(axis=1) > STEP_TOL]
        if not len(going):
            break
    return z * _SCALE, lengths(z * _SCALE)[0]
