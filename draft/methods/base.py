"""What every drafting method is given, and what it says of itself."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from draft.block import Block
from draft.body import Body


@dataclass(frozen=True, eq=False)
class Measures:
    """The numbers a method drafts from, in mm; floats for one body, arrays for many.

    ``body_rise`` is the seated crotch depth.
    """

    waist: float
    hip: float
    body_rise: float
    waist_to_hip: float
    inside_leg: float

    @classmethod
    def of(cls, body: Body) -> Measures:
        """Measures of one body, its crotch depth converted to seated when it was taken standing."""
        return cls(body.waist, body.hip, body.seated_crotch_depth(), body.waist_to_hip, body.inside_leg)


@dataclass(frozen=True, eq=False)
class MethodEase:
    """Ease that replaces the method's own; None keeps it. `fork` is added to the fork width of front and back each."""

    waist: float | None = None
    hip: float | None = None
    fork: float = 0.0


@dataclass(frozen=True)
class Method:
    """A drafting method: its name, the recipe, and where it comes from."""

    name: str
    title: str
    source: str
    made_for: str
    unit: str
    required: tuple[str, ...]
    draft: Callable[[Measures, MethodEase], Block]
