"""Every pair of options of the style, on six builds far apart: whole patterns, or refusals that say what would work.

Most faults of choices come from two of them together (common practice in testing software, no source), so each allowed
pair of options is drafted. The random test below goes through everything between the options.
"""

from __future__ import annotations

import os
from itertools import product

import pytest
from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from refusals import followed, limit_told, refused_again
from style_space import (
    BODIES,
    GARMENTS,
    PLAIN,
    RULES,
    Row,
    allowed_pairs,
    coverage,
    covering_rows,
    drafted,
    forbidden,
    pairs_of,
    replacements,
)
from styles import dressed
from zoo import bodies

import draft

EXAMPLES = min(150, int(os.environ.get("DRAFT_EXAMPLES", "2000")))
SEAM_TOL_MM = 0.5
ROWS = covering_rows()


def assert_whole(pattern: draft.Pattern) -> None:
    """Nothing found but measures to take again, and partners equal."""
    assert [finding for finding in pattern.check() if finding.code != "fit"] == []
    assert [seam.name for seam in pattern.seams if not abs(seam.difference) <= SEAM_TOL_MM] == []


def assert_says_what_works(refusal: draft.DraftError) -> None:
    assert limit_told(refusal), f"no limit told: {refusal}"


def first_made(row: Row) -> draft.Pattern | None:
    """Pattern of a row for the first of the six bodies that can have it; the average one is asked first."""
    for body in BODIES:
        try:
            return drafted(row, body)
        except draft.DraftError:
            continue
    return None


# The table


def test_rows_hold_all_allowed_pairs():
    percent, lacking = coverage(ROWS)
    assert (percent, sorted(map(sorted, lacking))) == (100.0, [])


def test_rows_keep_the_rules():
    assert [row for row in ROWS if forbidden(row)] == []


def test_coverage_notices_a_pair_that_is_left_out():
    pair = frozenset({("hem", "vented"), ("band", "faced")})
    percent, lacking = coverage([row for row in ROWS if not pair <= set(row.items())])
    assert percent < 100
    assert pair in lacking


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.why)
def test_what_a_rule_forbids_is_refused_on_every_build(rule):
    """A rule that forbids what can be sewn would hide pairs from the proof."""
    for options in product(*rule.clash.values()):
        clash = dict(zip(rule.clash, options, strict=True))
        assert first_made({**PLAIN, **clash}) is None, f"{clash} can be made"


# The pairs


@pytest.mark.parametrize("number", range(len(ROWS)), ids=lambda number: f"{number:03d}")
def test_row_is_whole_or_refused_with_a_limit_on_every_build(number):
    for body in BODIES:
        try:
            pattern = drafted(ROWS[number], body)
        except draft.DraftError as refusal:
            assert_says_what_works(refusal)
        else:
            assert_whole(pattern)


def test_every_allowed_pair_is_made_on_some_build():
    """A pair counts only when a pattern holds it: for rows that all bodies refuse, others are drafted."""
    lacking = allowed_pairs().difference(*(pairs_of(row) for row in ROWS if first_made(row)))
    given_up = set()
    while lacking:
        pair = min(lacking, key=sorted)
        held, pattern = replaced(pair, lacking)
        if pattern is None:
            given_up.add(pair)
        else:
            assert_whole(pattern)
        lacking -= held
    assert sorted(map(sorted, given_up)) == []


def replaced(pair, lacking):
    """Pairs that the first replacement row with a pattern holds, and this pattern; else the pair, and none."""
    for row in replacements(pair, lacking):
        pattern = None if forbidden(row) else first_made(row)
        if pattern is not None:
            return pairs_of(row), pattern
    return {pair}, None


# Everything between


@pytest.mark.slow
@settings(
    max_examples=EXAMPLES,
    deadline=None,
    phases=[Phase.explicit, Phase.reuse, Phase.generate],  # shrinking would draft for minutes
    suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large, HealthCheck.filter_too_much],
)
@given(both=dressed(bodies()), garment=st.sampled_from(sorted(GARMENTS)))
def test_any_style_is_whole_or_refused_with_a_limit_that_works(both, garment):
    body, style = both
    try:
        pattern = GARMENTS[garment](body, style)
    except draft.DraftError as refusal:
        assert_says_what_works(refusal)
        assert_limit_works(garment, body, style, refusal)
    else:
        assert_whole(pattern)


def assert_limit_works(garment, body, style, refusal) -> None:
    """A field set to the limit that its refusal names is not refused again."""
    other = followed(refusal, style)
    if other is None:
        return
    again = None
    try:
        GARMENTS[garment](body, other)
    except draft.DraftError as other_refusal:
        again = other_refusal
    assert again is None or not refused_again(refusal, again), f"{refusal} At the limit: {again}"
