"""Draft random styles on random bodies and print what came of it, as Markdown tables.

usage: python tests/builders/style_report.py [--count N] [--seed S] [--examples]

Styles and bodies are drawn by the strategies of the tests, the same ones for the same seed. Told are the patterns made
and without finding, the refusals by field, the crashes, and the findings by code. A refusal that names a limit is put
to the test: the refused field is set to the limit, and must not be refused again.
"""

from __future__ import annotations

import argparse
import sys
import time
import traceback
from collections import Counter, defaultdict
from dataclasses import dataclass, field
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from hypothesis import HealthCheck, Phase, given, seed, settings
from hypothesis import strategies as st
from refusals import followed, limit_told, refused_again
from styles import dressed
from zoo import WOMAN, bodies

import draft

GARMENTS = {"shorts": draft.shorts, "trousers": draft.trousers}
MANY_SAME_SHOWN = 3
AVERAGE_CASES = 300

Case = tuple[str, draft.Body, draft.Style]


@dataclass
class Told:
    """What came of all cases; each list holds the cases with what was said."""

    made: int = 0
    refused: dict[str, list[tuple[Case, str]]] = field(default_factory=lambda: defaultdict(list))
    crashed: dict[str, list[tuple[Case, str]]] = field(default_factory=lambda: defaultdict(list))
    found: dict[str, list[tuple[Case, str]]] = field(default_factory=lambda: defaultdict(list))
    unclear: dict[str, list[tuple[Case, str]]] = field(default_factory=lambda: defaultdict(list))
    limits: Counter[str] = field(default_factory=Counter)
    wrong_limits: dict[str, list[tuple[Case, str]]] = field(default_factory=lambda: defaultdict(list))


def cases(count: int, start: int, people: st.SearchStrategy[draft.Body]) -> list[Case]:
    """Random cases, the same for the same seed."""
    drawn: list[Case] = []

    @seed(start)
    @settings(
        max_examples=count,
        phases=[Phase.generate],
        database=None,
        deadline=None,
        suppress_health_check=list(HealthCheck),
    )
    @given(garment=st.sampled_from(sorted(GARMENTS)), both=dressed(people))
    def draw(garment: str, both: tuple[draft.Body, draft.Style]) -> None:
        drawn.append((garment, *both))

    draw()
    return drawn


def crash_place() -> str:
    """Exception in hand: its type, and the innermost line of the library where it came from."""
    kind, _, trace = sys.exc_info()
    frames = [f for f in traceback.extract_tb(trace) if "/draft/" in f.filename]
    last = frames[-1] if frames else traceback.extract_tb(trace)[-1]
    return f"{kind.__name__ if kind else '?'} in {last.filename.split('/draft/')[-1]}:{last.lineno}"


def attempt(told: Told, case: Case) -> None:
    """Draft and check one case and write down what came of it."""
    garment, body, style = case
    try:
        pattern = GARMENTS[garment](body, style)
        findings = pattern.check()
        pattern.measure()
        uneven = [seam for seam in pattern.seams if not abs(seam.difference) <= 0.5]
    except draft.DraftError as refusal:
        refuse(told, case, refusal)
        return
    except Exception as error:  # every other one is what this script looks for
        told.crashed[crash_place()].append((case, str(error)))
        return
    told.made += 1
    for finding in findings:
        told.found[finding.code].append((case, f"{finding.where}: {finding.message}"))
    for seam in uneven:
        told.found["uneven"].append((case, f"{seam.name}: {seam.difference:.2f}"))


def refuse(told: Told, case: Case, refusal: draft.DraftError) -> None:
    """Write down a refusal, and whether its limit holds."""
    told.refused[refusal.field].append((case, str(refusal)))
    if not limit_told(refusal):
        told.unclear[refusal.field].append((case, str(refusal)))
    garment, body, style = case
    other = followed(refusal, style)
    if other is None:
        told.limits["no limit to set"] += 1
        return
    try:
        GARMENTS[garment](body, other)
        told.limits["limit works"] += 1
    except draft.DraftError as again:
        if refused_again(refusal, again):
            told.limits["refused again"] += 1
            told.wrong_limits[refusal.field].append((case, f"{refusal} || at the limit: {again}"))
        else:
            told.limits["limit works, another limit does not"] += 1
    except Exception as error:
        told.crashed[crash_place() + " (at the limit)"].append(((garment, body, other), str(error)))


def written(case: Case) -> str:
    """Case as code."""
    garment, body, style = case
    sizes = ", ".join(f"{k}={getattr(body, k)!r}" for k in body.__dataclass_fields__ if getattr(body, k) is not None)
    return f"draft.{garment}(draft.Body({sizes}), draft.{style!r})"


def table(title: str, rows: dict[str, list[tuple[Case, str]]], *, examples: bool) -> None:
    """One line for each kind, with what the first case said."""
    say = sys.stdout.write
    say(f"\n| {title} | cases | example |\n| --- | --- | --- |\n")
    for name, cases_of in sorted(rows.items(), key=lambda row: -len(row[1])):
        say(f"| {name} | {len(cases_of)} | {cases_of[0][1].replace('|', '/')[:300]} |\n")
    if examples:
        for name, cases_of in rows.items():
            for case, words in cases_of[:MANY_SAME_SHOWN]:
                say(f"\n    # {name}: {words}\n    {written(case)}\n")


def share_on_average(count: int, start: int) -> float:
    """Part of the drawn styles that an average body can have, when they are drawn for it."""
    drawn = cases(count, start, st.just(WOMAN))
    done = Told()
    for case in drawn:
        attempt(done, case)
    return done.made / len(drawn)


def main() -> None:
    """Print the tables."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--count", type=int, default=3000)
    parser.add_argument("--seed", type=int, default=20)
    parser.add_argument("--examples", action="store_true", help="write some cases of each kind as code")
    chosen = parser.parse_args()
    start, drawn, told = time.perf_counter(), cases(chosen.count, chosen.seed, bodies()), Told()
    for case in drawn:
        attempt(told, case)
    seconds = time.perf_counter() - start
    say = sys.stdout.write
    refused, crashed = (sum(map(len, rows.values())) for rows in (told.refused, told.crashed))
    say(f"{len(drawn)} cases, seed {chosen.seed}, {seconds:.0f} s: {told.made} patterns, {refused} refusals, ")
    say(f"{crashed} crashes (also at limits), {sum(map(len, told.found.values()))} findings.\n")
    some = min(AVERAGE_CASES, chosen.count)
    say(
        f"Drawn for one average body, {100 * share_on_average(some, chosen.seed):.0f} % of {some} styles can be made.\n"
    )
    say("Refusals, by what their limit is worth: " + ", ".join(f"{k} {n}" for k, n in told.limits.most_common()) + "\n")
    table("crash", told.crashed, examples=chosen.examples)
    table("finding", told.found, examples=chosen.examples)
    table("refused field", told.refused, examples=False)
    table("refused without a limit", told.unclear, examples=chosen.examples)
    table("refused again at its own limit", told.wrong_limits, examples=chosen.examples)


if __name__ == "__main__":
    main()
