"""Invented adults that spread and hang together as the women and men of a survey do: nobody was measured for them.

`drawn` takes them from a normal distribution of all 13 measures at once, one for women and one for men, with the means,
deviations and correlations of ``population_model.json`` (its source stands in it; ``builders/population_model.py``
makes it). Draws that `draft.Body` refuses are drawn again; `Population.refused` tells their share.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import numpy as np

import draft

MODEL = json.loads((Path(__file__).parent / "population_model.json").read_text("utf-8"))
FIELDS: tuple[str, ...] = tuple(MODEL["fields"])
SEED = 20


@dataclass(frozen=True)
class Population:
    """Drawn bodies, and the share of all draws that `draft.Body` refused."""

    bodies: tuple[draft.Body, ...]
    refused: float


@cache
def drawn(count: int, people: str = "both", seed: int = SEED) -> Population:
    """Draw bodies, in whole tenths of a millimetre: ``"women"``, ``"men"``, or ``"both"`` by turns."""
    turns = ("women", "men") if people == "both" else (people,)
    rng = np.random.default_rng(seed)
    bodies: list[draft.Body] = []
    draws = 0
    while len(bodies) < count:
        sex = turns[len(bodies) % len(turns)]
        draws += 1
        sizes = np.round(rng.multivariate_normal(*moments(sex), method="cholesky"), 1)
        try:
            bodies.append(
                draft.Body(
                    **dict(zip(FIELDS, map(float, sizes), strict=True)),
                    crotch_depth_taken="standing",
                    name=f"drawn {sex} {len(bodies) + 1}",
                )
            )
        except draft.DraftError:
            continue
    return Population(tuple(bodies), 1 - count / draws)


def moments(people: str) -> tuple[np.ndarray, np.ndarray]:
    """Mean and covariance of the model, mm and mm2."""
    own = MODEL[people]
    n = len(FIELDS)
    rows = own["correlation"]
    correlation = np.array([[rows[max(i, j)][min(i, j)] for j in range(n)] for i in range(n)])
    return np.array(own["mean"]), correlation * np.outer(own["sd"], own["sd"])
