"""Speed of the fit: many bodies in arrays against one by one, fitted against formula. Nothing asserts time."""

from __future__ import annotations

import time

import numpy as np
import population
from zoo import ZOO

import draft

WOMAN = ZOO["woman"]


def seconds(call) -> float:
    start = time.perf_counter()
    call()
    return time.perf_counter() - start


def test_blocks_of_many_bodies(benchmark):
    bodies = population.drawn(1000).bodies
    many = benchmark(lambda: draft.blocks(bodies))
    assert len(many) == 1000


def test_fitted_shorts(benchmark):
    assert len(benchmark(lambda: [p.notch_places for p in draft.shorts(WOMAN).pieces.values()])) == 14


def test_ratios_of_the_fit(request):
    """Print: 3,000 bodies in arrays and one by one (from a sample), cost per body, fitted and formula shorts."""
    quick = request.config.getoption("benchmark_disable")
    bodies = population.drawn(30 if quick else 3000).bodies
    sample = bodies[:: max(1, len(bodies) // 100)]
    draft.blocks(bodies[:5])
    together = seconds(lambda: draft.blocks(bodies))
    half = seconds(lambda: draft.blocks(bodies[: len(bodies) // 2]))
    alone = seconds(lambda: [draft.blocks([body]) for body in sample]) / len(sample) * len(bodies)
    print(f"\n{len(bodies)} bodies: {together:.2f} s in arrays, {alone:.1f} s one by one: {alone / together:.0f} x")
    print(f"half as many: {half:.2f} s, {half / together:.2f} of the time")
    runs = 1 if quick else 15
    for fit in ("measured", "formula"):
        times = [seconds(lambda fit=fit: draft.shorts(WOMAN, fit=fit)) for _ in range(runs)]
        print(f"shorts, {fit}: {1000 * float(np.min(times)):.1f} ms")
