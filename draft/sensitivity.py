"""How far an error of the tape goes: the change of every finished length for an error in each measure."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Literal

from draft.body import Body
from draft.body_checks import MEASURES
from draft.drafting import shorts, trousers
from draft.errors import DraftError
from draft.guide.lessons import lessons_of
from draft.methods.base import Method, Recipe
from draft.pattern import Pattern
from draft.style import Style
from draft.table import Table
from draft.units import fmt

Garment = Literal["shorts", "trousers"]
LARGEST_ERROR = 50.0
_SMALLER, _TRIES = 0.5, 6
UNTOLD_MM = 0.05  # a change below this is shown as none


@dataclass(frozen=True, repr=False)
class Sensitivity:
    """Change of the finished lengths, mm, by measure and length, for the ``errors`` of the measures."""

    errors: Mapping[str, float]
    changes: Mapping[str, Mapping[str, float]]

    def largest(self, measure: str) -> float:
        """Largest change that this error makes in any length, mm."""
        return max(map(abs, self.changes[measure].values()), default=0.0)

    @property
    def take_twice(self) -> tuple[str, ...]:
        """Measures in the order in which it pays to take them again: by the largest change they make."""
        return tuple(sorted(self.changes, key=self.largest, reverse=True))

    def table(self) -> Table:
        """One row for each measure, the one that pays most first."""
        lengths = list(next(iter(self.changes.values()), {}))
        rows = []
        for measure in self.take_twice:
            changes = self.changes[measure]
            cells = ["" if abs(changes[name]) < UNTOLD_MM else fmt(changes[name], 1) for name in lengths]
            rows.append((measure.replace("_", " "), fmt(self.errors[measure], 0), *cells))
        heads = ("measure", "error", *(name.replace("_", " ") for name in lengths))
        return Table("Change of the finished lengths, mm", heads, tuple(rows))

    def __repr__(self) -> str:
        return f"<Sensitivity: {len(self.changes)} measures, to take twice: {', '.join(self.take_twice[:3])}>"

    def __str__(self) -> str:
        return str(self.table())

    def _repr_html_(self) -> str:
        return self.table().html()


def sensitivity(
    body: Body,
    style: Style | None = None,
    *,
    error: float | Literal["home", "trained"] = "home",
    garment: Garment = "shorts",
    method: str | Method | Recipe = "centre_line",
    fit: str = "measured",
) -> Sensitivity:
    """How much an error in each measure changes each finished length, so that one knows which to take twice.

    Parameters
    ----------
    body : Body
    style : Style, optional
    error : float or {"home", "trained"}
        Error of every measure in mm, or the usual error of somebody at home or of a trained observer, as the lessons
        of :func:`draft.how_to_measure` give it.
    garment : {"shorts", "trousers"}
    method, fit
        As for :func:`draft.shorts`.

    Returns
    -------
    Sensitivity
        Half of the difference between the pattern with the measure too large and the one with it too small.

    Raises
    ------
    DraftError
        For a wrong error or garment, and what drafting itself raises. A measure that cannot be moved by its error
        without contradicting another one is moved by less, and the change is scaled up.

    Examples
    --------
    >>> body = Body(waist=740, hip=1000, crotch_depth=270, waist_to_hip=200, inside_leg=770, back_crotch=385)
    >>> told = sensitivity(body, error=10)
    >>> round(told.changes["back_crotch"]["back_crotch"], 3), told.changes["waist"]["inside_leg"]
    (10.0, 0.0)
    """
    if garment not in ("shorts", "trousers"):
        raise DraftError("garment", garment, "'shorts' or 'trousers'", "choose one of these")
    make = shorts if garment == "shorts" else trousers
    errors = {measure: _error(error, measure, body) for measure in MEASURES if getattr(body, measure) is not None}

    def drawn(changed: Body) -> Pattern:
        return make(changed, style, method=method, fit=fit)

    drawn(body)
    return Sensitivity(errors, {measure: _change(body, measure, mm, drawn) for measure, mm in errors.items()})


def _error(error: object, measure: str, body: Body) -> float:
    if error in ("home", "trained"):
        ways = [lesson for lesson in lessons_of(measure) if lesson.taken in ("", body.crotch_depth_taken)]
        return float(getattr(ways[0], str(error)).mm)
    if isinstance(error, int | float) and not isinstance(error, bool) and 0 < error <= LARGEST_ERROR:
        return float(error)
    raise DraftError("error", error, f"more than 0 and at most {LARGEST_ERROR:g} mm, 'home' or 'trained'", "give one")


def _change(body: Body, measure: str, error: float, drawn: Callable[[Body], Pattern]) -> dict[str, float]:
    value, told = getattr(body, measure), None
    step = error
    for _ in range(_TRIES):
        try:
            high, low = (drawn(replace(body, **{measure: value + sign * step})).measure() for sign in (1, -1))
        except DraftError as refused:
            told, step = refused, step * _SMALLER
            continue
        return {name: (high[name] - low[name]) / 2 * error / step for name in high if name in low}
    assert told is not None
    raise told
