"""Every alteration keeps its promise: what it names changes as asked, what it keeps stays, and all still sews."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from zoo import ZOO, bodies

import draft
from draft.alter.catalogue import SPECS
from draft.block import POINTS

CHANGE_TOL_MM, KEEP_TOL_MM, UNDO_TOL_MM = 0.5, 0.1, 0.1
BODIES = ["woman", "man", "ten years"]
SHARES = (-0.8, 0.4)  # of the largest amount either way
GARMENTS = {"shorts": draft.shorts, "trousers": draft.trousers}


@cache
def plain(garment, body):
    return GARMENTS[garment](ZOO[body])


def amounts(spec):
    """Amounts to try: both ways as far as the limits go."""
    given = {argument.name: argument.choices[0] for argument in spec.arguments if argument.choices}
    if len(given) == len(spec.arguments):
        return [given]
    argument = spec.arguments[-1]
    tried = [share * (argument.high if share > 0 else -argument.low) for share in SHARES]
    return [{**given, "by": by} for by in tried if by]


def attempt(garment, body, alterations):
    """Pattern, or None where the body has no room; a refusal names a limit or what goes together."""
    try:
        return GARMENTS[garment](body, alterations=alterations)
    except draft.DraftError as error:
        refused = error
    assert any(c.isdigit() for c in refused.expected) or "a leg that ends below" in refused.expected, str(refused)
    return None


def broken(before, after, alteration):
    """Promises that were not kept, in words."""
    was, now, promised = before.measure(), after.measure(), alteration.promised
    found = [f.message for f in after.check() if f.code != "fit"]
    for name in [name for name in promised if name in was and name in now]:
        miss = now[name] - was[name] - promised[name]
        if abs(miss) > CHANGE_TOL_MM:
            found.append(f"{name} misses its change by {miss:.2f}")
    for name in [name for name in alteration.spec.keeps if name in was and name in now]:
        if abs(now[name] - was[name]) > KEEP_TOL_MM:
            found.append(f"{name} is kept but moves {now[name] - was[name]:.2f}")
    return found


def test_there_are_at_least_twenty_five():
    assert len(draft.alterations()) >= 25


@pytest.mark.parametrize("garment", GARMENTS)
@pytest.mark.parametrize("name", SPECS)
def test_alteration_keeps_its_promise(name, garment):
    spec, made = SPECS[name], 0
    for body in BODIES:
        for amount in amounts(spec):
            one = spec(**amount)
            pattern = attempt(garment, ZOO[body], [one])
            if pattern is not None:
                made += 1
                assert broken(plain(garment, body), pattern, one) == [], (body, str(one))
    assert made or (spec.past_knee and garment == "shorts")


@pytest.mark.parametrize("name", [name for name, spec in SPECS.items() if spec.on_block and spec.arguments])
def test_inverse_undoes_an_alteration_of_the_block(name):
    spec = SPECS[name]
    block = plain("trousers", "woman").block
    for by in (4.0, 11.0):
        one = spec(by=by, **({"side": "left"} if name == "high_hip" else {}))
        back = one.with_by(-by).on_block(one.on_block(block))
        for side in ("front", "back"):
            old, new = getattr(block, side), getattr(back, side)
            gaps = [abs(getattr(old, point) - getattr(new, point)) for point in POINTS]
            assert max(gaps) <= UNDO_TOL_MM, (side, POINTS[int(np.argmax(gaps))])
            assert abs(old.crotch.length - new.crotch.length) <= UNDO_TOL_MM


COMMUTING = ["waist_ease", "hip_ease", "raise_front_waist", "sway_back", "scoop_front", "widen_hem", "lengthen_at_hem"]


@pytest.mark.parametrize("one", COMMUTING)
@pytest.mark.parametrize("two", COMMUTING)
def test_alterations_of_different_places_commute(one, two):
    """Girth, level, curve and leg do not meet: their order does not matter."""
    if one >= two:
        pytest.skip("the same pair the other way round")
    pair = [SPECS[one](by=8), SPECS[two](by=8)]
    there, here = (draft.shorts(ZOO["woman"], alterations=order).measure() for order in (pair, pair[::-1]))
    for name, size in there.items():
        assert here[name] == pytest.approx(size, abs=0.1), name


@st.composite
def chains(draw, count):
    names = draw(st.lists(st.sampled_from(sorted(SPECS)), min_size=count, max_size=count))
    found = []
    for name in names:
        spec, given = SPECS[name], {}
        for argument in spec.arguments:
            if argument.choices:
                given[argument.name] = draw(st.sampled_from(argument.choices))
            else:
                share = draw(st.floats(-0.25, 0.25))
                given[argument.name] = share * (argument.high if share > 0 else -argument.low)
        found.append(spec(**given))
    return found


@settings(
    max_examples=60,
    deadline=None,
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.filter_too_much, HealthCheck.data_too_large],
)
@given(body=bodies(), chain=chains(10), garment=st.sampled_from(sorted(GARMENTS)))
def test_ten_alterations_in_a_row_sew_or_are_refused(body, chain, garment):
    try:
        pattern = GARMENTS[garment](body, alterations=chain)
    except draft.DraftError:
        assume(False)
    assert [finding for finding in pattern.check() if finding.code != "fit"] == []
    assert pattern.alterations == tuple(chain)
