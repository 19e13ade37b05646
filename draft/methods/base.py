"""What every drafting method is given, and what it says of itself."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

import numpy as np

from draft.block import Block
from draft.body import Body
from draft.body_checks import STANDING_TO_SEATED_MM
from draft.geometry.arrays import Real

LOWEST_HIP_SHARE = 0.16
"""Least height of the drafted hip line above the crotch line, as a share of the body rise. A line drawn lower would
measure the fork and not the hip; the body's girth there is drafted at this height (common practice, no source: the
methods that fix the hip line put it between a sixth and a third of the rise)."""


@dataclass(frozen=True, eq=False)
class Measures:
    """The numbers a method drafts from, in mm; floats for one body, arrays for many.

    ``body_rise`` is the seated crotch depth, ``standing_rise`` the standing one (side less inside leg). The hip line
    of ``waist_to_hip`` lies at least 0.16 of the rise above the crotch line.
    """

    waist: float
    hip: float
    body_rise: float
    waist_to_hip: float
    inside_leg: float

    @property
    def standing_rise(self) -> float:
        """Waist height less inside leg."""
        return self.body_rise - STANDING_TO_SEATED_MM

    @classmethod
    def of(cls, body: Body) -> Measures:
        """Measures of one body, its crotch depth converted to seated when it was taken standing."""
        rise = body.seated_crotch_depth()
        down = min(body.waist_to_hip, (1 - LOWEST_HIP_SHARE) * rise)
        return cls(body.waist, body.hip, rise, down, body.inside_leg)

    @classmethod
    def of_all(cls, bodies: Sequence[Body]) -> Measures:
        """Measures of many bodies, as arrays."""
        rows = [cls.of(body) for body in bodies]
        columns: Real = (np.array([getattr(row, n) for row in rows], dtype=float) for n in cls.__dataclass_fields__)
        return cls(*columns)

    def each(self) -> Iterator[Measures]:
        """Measures of one body after the other."""
        columns = (getattr(self, name).tolist() for name in self.__dataclass_fields__)
        return (Measures(*row) for row in zip(*columns, strict=True))


Recipe = Callable[[Measures], Block]
"""What drafts a block: a function of the measures."""


@dataclass(frozen=True)
class Method:
    """A drafting method: its name, the recipe, and where it comes from.

    ``rise_from_body`` tells whether it takes the depth of the crotch from the body or from a formula on the girths;
    ``seams`` is how much of its whole girths, in mm, is seam allowance that the source draws inside the pattern;
    ``usual_ease`` is the ease (waist, hip) when none is asked for, of a source that drafts from finished girths;
    ``one_by_one`` is set for a recipe that takes numbers but no arrays.
    """

    name: str
    title: str
    source: str
    made_for: str
    unit: str
    required: tuple[str, ...]
    draft: Recipe
    rise_from_body: bool = True
    seams: float = 0.0
    usual_ease: tuple[float, float] | None = None
    one_by_one: bool = False
