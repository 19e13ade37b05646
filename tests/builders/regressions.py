"""Derives the tables of `draft.estimates` from the survey and prints them.

Run from the repository with the survey data in reach (see ``tests/survey.py``):

    PYTHONPATH=tests python tests/builders/regressions.py

Women and men weigh the same, though twice as many men were measured. The covariance is that of the mixture of both
sexes: the mean of the covariances within the sexes, plus what comes from their means lying apart. A body does not tell
its sex, so what its waist, hip and heights tell about it has to come through this second part.
"""

from __future__ import annotations

import sys

import numpy as np
import survey

from draft.body import OPTIONAL, REQUIRED
from draft.body_checks import MEASURES

FIELDS = tuple(MEASURES)


def moments() -> tuple[np.ndarray, np.ndarray]:
    """Mean and covariance of the 13 measures, mm and mm2, women and men weighing the same."""
    tables = list(survey.table().values())
    women, men = (sizes.mean(axis=0) for sizes in tables)
    within = sum(np.cov(sizes.T) for sizes in tables) / 2
    return (women + men) / 2, within + np.outer(women - men, women - men) / 4


def missed(known: tuple[str, ...], field: str) -> tuple[float, float, float]:
    """Root mean square, mm, of what the conditional mean misses on the survey: both sexes as one, women, men."""
    mean, covariance = moments()
    of, to = [FIELDS.index(name) for name in known], FIELDS.index(field)
    gain = np.linalg.solve(covariance[np.ix_(of, of)], covariance[of, to])
    women, men = (
        np.mean((sizes[:, to] - mean[to] - (sizes[:, of] - mean[of]) @ gain) ** 2) for sizes in survey.table().values()
    )
    return float(np.sqrt((women + men) / 2)), float(np.sqrt(women)), float(np.sqrt(men))


def main() -> None:
    """Print the tables."""
    mean, covariance = moments()
    say = sys.stdout.write
    say("MEANS = (" + ", ".join(f"{value:.1f}" for value in mean) + ")\n")
    say("COVARIANCE = (\n")
    for i in range(len(FIELDS)):
        row = ", ".join(f"{covariance[i, j]:.0f}" for j in range(i + 1))
        say(f"    ({row},),\n" if i == 0 else f"    ({row}),\n")
    say(")\n\nSD mm given the required measures (both, women, men), and given all the others\n")
    for field in OPTIONAL:
        both, women, men = missed(REQUIRED, field)
        rest = missed(tuple(name for name in FIELDS if name != field), field)
        say(f"{field:12} {both:5.1f} {women:5.1f} {men:5.1f}   {rest[0]:5.1f} {rest[1]:5.1f} {rest[2]:5.1f}\n")


if __name__ == "__main__":
    main()
