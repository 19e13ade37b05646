"""Drafting time of the presets as ratios to plain shorts, in one run; the richest should stay below 2.

Run with ``pytest tests/benchmarks -n 0 --benchmark-enable -s``; without it each case runs once, as a test.
"""

from __future__ import annotations

import statistics
import time

import pytest
from zoo import ZOO

import draft

WOMAN = ZOO["woman"]
ROUNDS = 7


def median_time(make) -> float:
    make()  # warm
    times = []
    for _ in range(ROUNDS):
        start = time.process_time()
        make()
        times.append(time.process_time() - start)
    return statistics.median(times)


@pytest.mark.parametrize("name", draft.presets().names)
def test_preset_against_plain_shorts(name, benchmark):
    preset = draft.presets().named(name)
    pattern = benchmark(lambda: preset.draft(WOMAN))
    assert pattern.pieces
    if benchmark.enabled:
        ratio = median_time(lambda: preset.draft(WOMAN)) / median_time(lambda: draft.shorts(WOMAN))
        print(f"\n{name}: {ratio:.2f} x plain shorts")
