"""From a method's block to the block of the measured body: the aims of a body, and the fit for one or for many."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Literal, get_args

import numpy as np

from draft.block import Block, chained, mapped, stacked
from draft.body import Body
from draft.errors import DraftError
from draft.fitting.change import NAMES, Change, changed, raised
from draft.fitting.lengths import Lengths
from draft.fitting.problem import AIMS, Aims, solve
from draft.geometry.arrays import Floats, Real
from draft.methods.base import Measures, Method
from draft.methods.ease import with_ease
from draft.style import Ease

Fitting = Literal["measured", "formula"]

FRONT_CROTCH_EASE, BACK_CROTCH_EASE = 10.0, 15.0
"""Ease of the crotch lengths when none is asked for: 25 mm together, classic (common practice, no source; the usual
range is 20 to 40)."""

LEAST_THIGH_EASE = 25.0
"""Least ease of a measured thigh when none is asked for: one inch (a university costume text and a vocational one, both
read in part)."""

FORK_OF_DEPTH = 0.90
"""Width of both forks together as a share of a measured hip depth. The section of the body between the legs is about as
deep as the fork is wide; of 3,064 surveyed adults fitted by their crotch lengths alone women had 0.98 and men 0.85 of
the hip depth at the median (computed), and of the shares tried 0.90 asked for the fewest changes of the waist."""


@dataclass(frozen=True, eq=False)
class Fit:
    """A block moved to a body by the least change.

    ``formula`` is the block before, ``block`` after ``change``; ``aims`` are the lengths that were asked for and
    ``reached`` those that came out, both by name, in mm (the thigh is a least girth). Arrays when made for many bodies.
    """

    formula: Block
    block: Block
    change: Change
    aims: Mapping[str, Real]
    reached: Mapping[str, Real]

    @cached_property
    def lengths(self) -> dict[str, Real]:
        """Lengths of the block in mm, asked for or not: crotch seams, thigh, width of both forks, waist and hip."""
        front, back = self.block.front, self.block.back
        net = {p: abs(p.waist_side - p.waist_centre) - sum(d.intake for d in p.darts) for p in (front, back)}
        return {
            **self.reached,
            "crotch": self.reached["front_crotch"] + self.reached["back_crotch"],
            "waist": 2 * sum(net.values()),
            "hip": 2 * sum((p.hip_centre - p.hip_side).real for p in (front, back)),
        }

    def __getitem__(self, row: int) -> Fit:
        """Fit of one body among many."""
        return Fit(
            row_of(self.formula, row),
            row_of(self.block, row),
            Change(*self.change.numbers[row].tolist()),
            _row(self.aims, row),
            _row(self.reached, row),
        )


def row_of(blocks: Block, row: int) -> Block:
    """Block of one body among many, in plain numbers."""

    def one(number: float) -> float:
        return np.asarray(number)[row].item() if np.ndim(number) else number

    return mapped(blocks, one)


def _row(lengths: Mapping[str, Real], row: int) -> dict[str, float]:
    one = {name: float(np.asarray(values)[row]) for name, values in lengths.items()}
    return {name: mm for name, mm in one.items() if not np.isnan(mm)}


def formula_block(method: Method, measures: Measures, ease: Ease) -> Block:
    """Block of a method with the asked ease, before any fit."""
    if method.one_by_one and np.ndim(measures.hip):
        drawn = stacked([method.draft(one) for one in measures.each()])
    else:
        drawn = method.draft(measures)
    usual = method.usual_ease or (None, None)
    waist, hip = (mm if asked is None else asked for asked, mm in zip((ease.waist, ease.hip), usual, strict=True))
    return with_ease(drawn, measures, waist, hip, method.seams)


def aims_of(body: Body, ease: Ease, more_thigh: float = 0.0) -> dict[str, float]:
    """Lengths that a body asks of a block, mm; only those that were measured."""
    asked = {
        "front_crotch": (body.front_crotch, ease.front_crotch, FRONT_CROTCH_EASE),
        "back_crotch": (body.back_crotch, ease.back_crotch, BACK_CROTCH_EASE),
        "thigh": (body.thigh, ease.thigh, LEAST_THIGH_EASE),
    }
    aims = {
        name: measured + (usual if wanted is None else wanted)
        for name, (measured, wanted, usual) in asked.items()
        if measured is not None
    }
    if "thigh" in aims:
        aims["thigh"] += more_thigh
    if body.hip_depth is not None:
        aims["fork"] = FORK_OF_DEPTH * body.hip_depth
    return aims


def fitted(method: Method, bodies: Sequence[Body], ease: Ease, more_thigh: float = 0.0) -> Fit:
    """Blocks of many bodies, each moved by the least change.

    Parameters
    ----------
    method : Method
    bodies : sequence of Body
    ease : Ease
        Girths and crotch lengths; None: the method's and the usual.
    more_thigh : float
        Added to the least thigh, for a leg whose seams take some of it away.
    """
    measures = Measures.of_all(bodies)
    formula = spread(formula_block(method, measures, ease), len(bodies))
    if not method.rise_from_body:
        formula = raised(formula, measures.body_rise - formula.levels["waist"])
    each = [aims_of(body, ease, more_thigh) for body in bodies]
    aims = {name: np.array([aim.get(name, np.nan) for aim in each]) for name in AIMS}
    numbers, reached = solve(formula, Aims(**aims), np.asarray(measures.hip))
    change = Change.of(numbers)
    return Fit(formula, changed(formula, change), change, aims, _named(reached))


def by_formula(method: Method, bodies: Sequence[Body], ease: Ease) -> Fit:
    """Blocks of many bodies as the method draws them, in the shape of a fit that changes nothing."""
    formula = spread(formula_block(method, Measures.of_all(bodies), ease), len(bodies))
    none = np.zeros((len(bodies), len(NAMES)))
    aims = {name: np.full(len(bodies), np.nan) for name in AIMS}
    return Fit(formula, formula, Change.of(none), aims, _named(Lengths.of(formula)(none)[0]))


def _named(reached: Floats) -> dict[str, Real]:
    return dict(zip(AIMS, np.moveaxis(reached, -1, 0), strict=True))


def spread(block: Block, rows: int) -> Block:
    """Block whose every number is an array of as many rows, also where the method has one for all bodies."""

    def rowed(number: float) -> float:
        return np.broadcast_to(number, (rows,))  # type: ignore[return-value]

    return mapped(block, rowed)


def joined(fits: Sequence[Fit]) -> Fit:
    """One fit in arrays of several."""

    def lengths(name: str) -> dict[str, Real]:
        parts = [getattr(fit, name) for fit in fits]
        return {key: np.concatenate([part[key] for part in parts]) for key in parts[0]}

    if len(fits) == 1:
        return fits[0]
    change = Change.of(np.concatenate([fit.change.numbers for fit in fits]))
    formula, block = (chained([getattr(fit, name) for fit in fits]) for name in ("formula", "block"))
    return Fit(formula, block, change, lengths("aims"), lengths("reached"))


def checked_fit(fit: object) -> Fitting:
    """Fit by name; refused when it does not exist."""
    if fit not in get_args(Fitting):
        raise DraftError("fit", fit, "'measured' or 'formula'", "choose one of these")
    return fit  # type: ignore[return-value]
