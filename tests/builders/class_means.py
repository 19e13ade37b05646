"""Derives the size tables by hip of `draft.size_tables` from the survey and prints them.

Run from the repository with the survey data in reach (see ``tests/survey.py``):

    PYTHONPATH=tests python tests/builders/class_means.py

A class holds the bodies of one sex from 20 mm below its hip up to, but not including, 20 mm above it; its row is their
mean, rounded to whole millimetres. Classes of fewer than 10 bodies are left out.
"""

from __future__ import annotations

import sys

import numpy as np
import survey

from draft.body_checks import MEASURES

CLASSES_CM = tuple(range(76, 136, 4))
HALF_MM = 20.0
FEWEST = 10


def class_means() -> dict[str, dict[str, tuple[int, tuple[int, ...]]]]:
    """For women and men: size (hip in cm) to the number of bodies and their mean measures, mm."""
    hip = tuple(MEASURES).index("hip")
    found: dict[str, dict[str, tuple[int, tuple[int, ...]]]] = {}
    for people, sizes in survey.table().items():
        for cm in CLASSES_CM:
            own = sizes[np.abs(sizes[:, hip] - cm * 10 + 0.25) < HALF_MM]  # the survey has whole mm: lower edge only
            if len(own) >= FEWEST:
                means = tuple(round(float(mean)) for mean in own.mean(axis=0))
                found.setdefault(people, {})[str(cm)] = (len(own), means)
    return found


def main() -> None:
    """Print the rows, one per size."""
    for people, classes in class_means().items():
        sys.stdout.write(f"{people}\n")
        for size, (count, means) in classes.items():
            sys.stdout.write(f'    "{size}": {means},  # {count}\n')


if __name__ == "__main__":
    main()
