"""Likely values for measures that were not taken, from those that were.

Glossary
--------
survey
    ANSUR II, adults only; see `draft.body_checks`. Its women and men weigh the same here, though it has twice as many
    men. It has no girth at the kneecap: the one just above it stands in for the knee.
joint model
    Means of the 13 measures and how they vary together (their covariance). One table serves every choice of known
    measures: the estimate is the mean of the bodies that are alike in all known measures, as a linear regression on
    all of them at once would give it, and its standard deviation is what that regression misses.
known
    The measures that were taken. Every one counts: a thigh tells of the knee, one crotch length of the other.

What one line per measure would lose: it misses 14 mm of the ankle and of the hip depth, the joint model 12 and 11 from
the five measures that every body has. Whether a body is a woman's or a man's is not asked; the part of the covariance
between the sexes brings in what the known measures tell about it.

The survey measures from a waist at the navel. From a waist that lies higher, both crotch lengths are longer by about
that height (geometry); together the estimates follow only half of it. All other estimates change by less than 0.15 mm
per mm of that height, and by less than 0.1 mm per mm of waist girth.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from draft.body_checks import MEASURES, bounds, crotch_bounds
from draft.units import fmt

FIELDS = tuple(MEASURES)
"""Order of the measures in the tables below; the crotch depth is taken standing."""

# Means, mm, and covariance, mm2, of the survey as one population, half of it women: the mean of the covariances within
# the sexes, plus a quarter of the square of what lies between their means. Computed from its data.
MEANS = (900.9, 1020.4, 204.3, 157.2, 814.7, 272.6, 349.1, 620.4, 404.5, 382.8, 222.5, 468.9, 239.5)
COVARIANCE = (
    (12894,),
    (6912, 5982),
    (-12, 130, 483),
    (-330, -132, 429, 781),
    (1591, 679, 252, 498, 3012),
    (1436, 1432, 111, -52, -61, 1056),
    (840, 905, 395, 421, 521, 6, 936),
    (5109, 4224, 80, -109, 588, 990, 664, 3373),
    (2706, 2186, 60, -7, 455, 528, 357, 1698, 1144),
    (2407, 1725, 102, 79, 514, 378, 349, 1372, 869, 940),
    (1034, 684, 86, 103, 352, 126, 198, 542, 375, 403, 260),
    (1273, 583, 210, 270, 1710, 45, 338, 482, 343, 368, 231, 1095),
    (2527, 1753, 30, -78, 334, 433, 302, 1338, 708, 600, 246, 272, 697),
)

SD_OF_WOMEN_AND_MEN: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        "front_crotch": (25.1, 26.3),
        "back_crotch": (20.1, 23.0),
        "thigh": (18.8, 20.0),
        "knee": (20.2, 15.7),
        "calf": (19.7, 19.0),
        "ankle": (12.4, 11.2),
        "knee_height": (9.0, 10.3),
        "hip_depth": (11.8, 10.7),
    }
)
"""What the estimates from the five required measures missed on the survey's women and on its men, each alone, mm."""

SMALLEST_HIP, SMALLEST_LEG, LARGEST_HIP = 860.0, 690.0, 1310.0
"""Hip and inside leg of small adults (lower first percentile of the two sexes), and the survey's largest hip, mm."""

# The crotch lengths come last: they must be measured, and nothing else hangs on them.
ORDER = ("thigh", "knee", "calf", "ankle", "knee_height", "hip_depth", "front_crotch", "back_crotch")
CROTCH_LENGTHS = ("front_crotch", "back_crotch")
"""Bodies alike in all else differ by 40 mm and more in these: no estimate is good enough to draft from."""


@dataclass(frozen=True)
class Estimate:
    """A likely value for a measure that was not taken.

    Parameters
    ----------
    field : str
        Which measure of a `draft.Body`.
    value : float
        The likely value, mm.
    method : str
        How it was found, in words.
    sd : float or None
        Standard deviation of what the method missed on the adults it was made from, mm: about two adults in three lie
        within it. ``None`` where nothing is known, as for children.
    for_drafting : bool
        False where bodies differ too much for the value to shape a draft: the crotch lengths must be measured.

    Examples
    --------
    >>> print(Estimate("calf", 371.4, "by eye", 21.0))
    estimated 371 +- 21 mm (1 SD)
    >>> print(Estimate("calf", 212.0, "by eye", None))
    estimated 212 mm (how far off is not known)
    """

    field: str
    value: float
    method: str
    sd: float | None
    for_drafting: bool = True

    def __str__(self) -> str:
        if self.sd is None:
            return f"estimated {fmt(self.value, 0)} mm (how far off is not known)"
        return f"estimated {fmt(self.value, 0)} +- {fmt(self.sd, 0)} mm (1 SD)"


def estimated(known: Mapping[str, float]) -> tuple[Estimate, ...]:
    """Estimate every measure that is not known, each within what the known ones allow.

    Parameters
    ----------
    known : mapping of str to float
        Measures of one body, mm: the hip, the inside leg and any others, the crotch depth as taken standing. A body
        with a hip below 860 mm is taken for an adult with a hip of 860 mm made smaller as a whole. Below that, or
        with an inside leg below 690 mm, the estimates have no standard deviation.

    Examples
    --------
    >>> body = {"waist": 840, "hip": 1000, "crotch_depth": 196, "waist_to_hip": 147, "inside_leg": 788, "thigh": 600}
    >>> for estimate in estimated(body)[:2]:
    ...     print(estimate.field, estimate)
    knee estimated 393 +- 17 mm (1 SD)
    calf estimated 370 +- 18 mm (1 SD)
    """
    scale = min(1.0, known["hip"] / SMALLEST_HIP)
    adult = known["hip"] >= SMALLEST_HIP and known["inside_leg"] >= SMALLEST_LEG
    given = tuple(field for field in FIELDS if field in known)
    gain, sds = _regression(given)
    away = np.array([known[field] / scale for field in given]) - _means(given)
    made, within = [], dict(known)
    for field in ORDER:
        if field in known:
            continue
        likely = scale * float(_means((field,))[0] + gain[field] @ away)
        low, high = (crotch_bounds if field in CROTCH_LENGTHS else bounds)(field, within)
        within[field] = min(max(likely, low), high)
        made.append(
            Estimate(
                field,
                within[field],
                _method(len(given), known, field),
                sds[field] if adult else None,
                for_drafting=field not in CROTCH_LENGTHS,
            )
        )
    return tuple(made)


def remaining_sds(given: tuple[str, ...]) -> Mapping[str, float]:
    """Standard deviation of every measure among adults alike in the given ones, mm.

    Examples
    --------
    >>> round(remaining_sds(("hip", "crotch_depth", "back_crotch"))["front_crotch"])
    24
    """
    return _regression(tuple(field for field in FIELDS if field in given))[1]


def _means(fields: tuple[str, ...]) -> NDArray[np.float64]:
    return np.array([MEANS[FIELDS.index(field)] for field in fields])


@lru_cache(maxsize=256)
def _regression(given: tuple[str, ...]) -> tuple[Mapping[str, NDArray[np.float64]], Mapping[str, float]]:
    """Coefficients of every other measure on the given ones, and the standard deviation of what they miss.

    They are those of a normal distribution's conditional mean: C_og C_gg^-1, and the root of C_oo - C_og C_gg^-1 C_go.
    """
    covariance = np.array([[COVARIANCE[max(i, j)][min(i, j)] for j in range(len(FIELDS))] for i in range(len(FIELDS))])
    of = [FIELDS.index(field) for field in given]
    gains, sds = {}, {}
    for to, field in enumerate(FIELDS):
        if field not in given:
            gains[field] = np.linalg.solve(covariance[np.ix_(of, of)], covariance[of, to])
            sds[field] = float(np.sqrt(covariance[to, to] - covariance[to, of] @ gains[field]))
    return gains, sds


def _method(count: int, known: Mapping[str, float], field: str) -> str:
    words = f"mean of adults (ANSUR II) alike in the {count} known measures"
    if known["hip"] < SMALLEST_HIP:
        words += ", scaled down below the smallest adults"
    elif known["inside_leg"] < SMALLEST_LEG:
        words += f", continued below their shortest legs of {fmt(SMALLEST_LEG, 0)} mm"
    if known["hip"] > LARGEST_HIP:
        words += f", continued beyond their largest hip of {fmt(LARGEST_HIP, 0)} mm"
    if field in CROTCH_LENGTHS:
        words += ", from a waist at the navel; bodies alike in all of these can differ by 40 mm and more, so measure it"
    return words
