"""Writes ``tests/population_model.json``: how the measures of women and of men spread and hang together in the survey.

Run from the repository with the survey data in reach (see ``tests/survey.py``):

    PYTHONPATH=tests python tests/builders/population_model.py
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import numpy as np
import survey

from draft.body_checks import MEASURES

MODEL = Path(__file__).parent.parent / "population_model.json"
SOURCE = (
    "Computed from the public-release data of ANSUR II (Gordon et al., NATICK/TR-15/007, 2014): 996 women and 2,068 "
    "men. Millimetres; waist at the navel, crotch depth standing, girth above the kneecap for the knee."
)


def model() -> dict[str, Any]:
    """Means and standard deviations, mm, to 0.1, and correlations to 0.001, of each sex."""
    people = {}
    for name, sizes in survey.table().items():
        correlations = np.corrcoef(sizes.T)
        people[name] = {
            "mean": [round(float(mean), 1) for mean in sizes.mean(axis=0)],
            "sd": [round(float(sd), 1) for sd in sizes.std(axis=0, ddof=1)],
            "correlation": [[round(float(r), 3) for r in row[: i + 1]] for i, row in enumerate(correlations)],
        }
    return {"source": SOURCE, "fields": list(MEASURES), **people}


def text(content: dict[str, Any]) -> str:
    """JSON with one line per list of numbers."""
    lines = [f'"source": {json.dumps(content["source"])}', f'"fields": {json.dumps(content["fields"])}']
    for people in ("women", "men"):
        own = content[people]
        rows = ",\n".join(f"   {json.dumps(row)}" for row in own["correlation"])
        lines.append(
            f'"{people}": {{\n  "mean": {json.dumps(own["mean"])},\n  "sd": {json.dumps(own["sd"])},\n'
            f'  "correlation": [\n{rows}\n  ]\n }}'
        )
    return "{\n " + ",\n ".join(lines) + "\n}\n"


if __name__ == "__main__":
    MODEL.write_text(text(model()), encoding="utf-8")
