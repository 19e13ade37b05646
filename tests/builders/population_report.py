"""Print how the fit does on a population, method by method, as Markdown tables.

usage: python tests/builders/population_report.py [--patterns N] [--synthetic COUNT]

The population is the survey when its data are found (``tests/survey.py``), else the synthetic one. Blocks are fitted
for all bodies; of every N-th body the whole shorts pattern is drafted and checked (left out: every 10th).
"""

from __future__ import annotations

import argparse
import sys
import time
from collections import Counter
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

import population
import survey

import draft
from draft.fitting.problem import USUAL
from draft.methods import METHODS

HEADS = (
    "method", "", "formula less asked crotch", "total within 1 mm, %", "largest miss of total", "front within 1 mm, %",
    "back within 1 mm, %", "tightest thigh", "front fork", "front lift", "back fork", "back rise",
    "distance (usual changes)", "s",
)  # fmt: skip


def people(synthetic: int | None) -> tuple[str, dict[str, list[draft.Body]]]:
    """Name of the population, and its women and men."""
    if synthetic is None and survey.path() is not None:
        rows = [row["sex"] for row in survey.rows()]
        both = {sex: [b for b, s in zip(survey.bodies(), rows, strict=True) if s == sex] for sex in "FM"}
        return f"survey, {len(rows)} bodies", {"women": both["F"], "men": both["M"]}
    count = synthetic or 1500
    return (
        f"synthetic, {2 * count} bodies",
        {sex: list(population.drawn(count, sex).bodies) for sex in ("women", "men")},
    )


def spread(values: np.ndarray, form: str = ".0f") -> str:
    """5th, 50th and 95th percentile."""
    return " / ".join(format(p, form) for p in np.nanpercentile(values, [5, 50, 95]))


def blocks_row(method: str, sex: str, bodies: list[draft.Body]) -> str:
    """One line of the table of blocks."""
    start = time.perf_counter()
    many = draft.blocks(bodies, method=method)
    seconds = time.perf_counter() - start
    front, back = many.misses["front_crotch"], many.misses["back_crotch"]
    aims = many.fit.aims
    formula = draft.blocks(bodies, method=method, fit="formula").lengths
    before = formula["front_crotch"] + formula["back_crotch"] - aims["front_crotch"] - aims["back_crotch"]
    far = np.sqrt(((many.fit.change.numbers / list(USUAL.values())) ** 2).sum(axis=1))
    cells = (
        method, sex, spread(before), f"{100 * np.mean(abs(front + back) <= 1):.1f}", f"{abs(front + back).max():.2f}",
        f"{100 * np.mean(abs(front) <= 1):.1f}", f"{100 * np.mean(abs(back) <= 1):.1f}",
        f"{many.misses['thigh'].min():.1f}", spread(many.fit.change.front_fork), spread(many.fit.change.front_lift),
        spread(many.fit.change.back_fork), spread(many.fit.change.back_rise), spread(far, ".1f"), f"{seconds:.2f}",
    )  # fmt: skip
    return "| " + " | ".join(cells) + " |"


def patterns_row(method: str, bodies: list[draft.Body]) -> str:
    """One line of the table of patterns."""
    found: Counter[str] = Counter()
    clean = 0
    for body in bodies:
        try:
            codes = {f"{f.code} {f.where}" for f in draft.shorts(body, method=method).check()}
        except draft.DraftError as error:
            codes = {f"refused: {error.field}"}
        clean += not codes
        found.update(codes)
    told = ", ".join(f"{code} {count}" for code, count in found.most_common()) or "none"
    return f"| {method} | {len(bodies)} | {clean} | {told} |"


def main() -> None:
    """Print both tables."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--patterns", type=int, default=10)
    parser.add_argument("--synthetic", type=int)
    chosen = parser.parse_args()
    name, both = people(chosen.synthetic)
    say = sys.stdout.write
    say(f"Population: {name}. Lengths in mm; three numbers are the 5th, 50th and 95th percentile.\n\n")
    say(f"| {' | '.join(HEADS)} |\n{'| --- ' * len(HEADS)}|\n")
    for method in METHODS:
        for sex, bodies in both.items():
            say(blocks_row(method, sex, bodies) + "\n")
    say("\n| method | shorts patterns | without finding | findings |\n| --- | --- | --- | --- |\n")
    sample = [body for bodies in both.values() for body in bodies][:: chosen.patterns]
    for method in METHODS:
        say(patterns_row(method, sample) + "\n")


if __name__ == "__main__":
    main()
