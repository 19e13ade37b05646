"""Which measure that was not taken would help the fit most."""

from __future__ import annotations

from dataclasses import dataclass

from draft.body import Body
from draft.estimates import FIELDS, remaining_sds
from draft.fitting.fit import FORK_OF_DEPTH
from draft.units import fmt

WEIGHTS = {"front_crotch": 1.0, "back_crotch": 1.0, "hip_depth": FORK_OF_DEPTH}
"""What the fit takes from a body beyond what every method does, and how much of it goes into the draft. The thigh is a
least girth that seldom counts and is left out."""


@dataclass(frozen=True)
class Worth:
    """A measure that would help.

    ``sd`` is how far bodies differ in it that are alike in all that was measured, mm (1 SD, adults); ``now`` how much
    of the lengths that the fit aims at is unknown, ``left`` how much would still be with it.
    """

    field: str
    sd: float
    now: float
    left: float

    def __str__(self) -> str:
        return (
            f"{self.field} (bodies alike in all that was measured differ in it by {fmt(self.sd, 0)} mm, 1 SD; "
            f"with it the crotch seam and fork are known to {fmt(self.left, 0)} instead of {fmt(self.now, 0)} mm)"
        )


def most_useful(body: Body) -> Worth | None:
    """Give the missing measure that leaves least unknown of what the fit aims at; None when all of it was measured.

    Examples
    --------
    >>> body = Body(waist=720, hip=980, crotch_depth=262, waist_to_hip=205, inside_leg=760)
    >>> most_useful(body).field
    'front_crotch'
    """
    given = tuple(field for field in FIELDS if getattr(body, field) is not None)
    missing = [field for field in WEIGHTS if field not in given]
    if not missing:
        return None
    left = {field: _unknown((*given, field)) for field in missing}
    best = min(left, key=lambda field: left[field])
    return Worth(best, remaining_sds(given)[best], _unknown(given), left[best])


def _unknown(given: tuple[str, ...]) -> float:
    """Root of the sum of what is left unknown, weighted."""
    sds = remaining_sds(given)
    return float(sum((weight * sds.get(field, 0.0)) ** 2 for field, weight in WEIGHTS.items()) ** 0.5)
