"""The body survey ANSUR II, lower half, for the tests that compare with its data.

Source: Gordon et al., 2012 Anthropometric Survey of U.S. Army Personnel, Technical Report NATICK/TR-15/007 (2014),
public-release data: 996 women and 2,068 men, waist at the navel, crotch depth standing. The data are not part of this
repository. They are looked for where ``DRAFT_SURVEY`` points, else as ``data/ansur2_lower_body_a.csv`` in a folder next
to the repository; where they are not found, a test that asks for them is skipped.

One row per body, in millimetres, with the column names of the survey. What each column is on a `draft.Body` stands in
`sizes`. The survey has no girth at the kneecap: the one just above it stands in for the knee.
"""

from __future__ import annotations

import csv
import os
from functools import cache
from pathlib import Path

import numpy as np
import pytest

import draft

ROOT = Path(__file__).parent.parent
FILE = "ansur2_lower_body_a.csv"
SEXES = {"F": "women", "M": "men"}


def path() -> Path | None:
    """Where the data lie, or None."""
    told = os.environ.get("DRAFT_SURVEY")
    if told:
        return Path(told)
    return next(iter(sorted(ROOT.parent.glob(f"*/data/{FILE}"))), None)


@cache
def rows() -> tuple[dict[str, str], ...]:
    """Every row of the survey as it was written; skips the test when the data are not found."""
    found = path()
    if found is None:
        pytest.skip(f"the survey data {FILE} are not found; set DRAFT_SURVEY to the file")
    with found.open(encoding="utf-8", newline="") as lines:
        return tuple(csv.DictReader(lines))


def sizes(row: dict[str, str]) -> dict[str, float]:
    """Measures of a body by the names of `draft.Body`, mm; the crotch depth is taken standing."""
    mm = {column: float(text) for column, text in row.items() if column != "sex"}
    waist_height, back = mm["waistheightomphalion"], mm["crotchlengthposterioromphalion"]
    return {
        "waist": mm["waistcircumference"],
        "hip": mm["buttockcircumference"],
        "crotch_depth": waist_height - mm["crotchheight"],
        "waist_to_hip": waist_height - mm["buttockheight"],
        "inside_leg": mm["crotchheight"],
        "front_crotch": mm["crotchlengthomphalion"] - back,
        "back_crotch": back,
        "thigh": mm["thighcircumference"],
        "knee": mm["lowerthighcircumference"],
        "calf": mm["calfcircumference"],
        "ankle": mm["anklecircumference"],
        "knee_height": mm["kneeheightmidpatella"],
        "hip_depth": mm["buttockdepth"],
    }


@cache
def bodies() -> tuple[draft.Body, ...]:
    """Every body of the survey, in the order of `rows`."""
    return tuple(draft.Body(**sizes(row), crotch_depth_taken="standing") for row in rows())


@cache
def table() -> dict[str, np.ndarray]:
    """Measures of the women and of the men, mm: one array each, a column per measure in the order of `sizes`."""
    return {
        people: np.array([list(sizes(row).values()) for row in rows() if row["sex"] == letter])
        for letter, people in SEXES.items()
    }
