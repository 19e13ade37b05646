"""Coin pocket: it lies on the pocket facing, under the waist seam, caught in the side seam.

Its sizes are common practice without a source; shapely (a general library) says what lies inside what.
"""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon
from zoo import ZOO

import draft
from draft.choices.small_parts import CoinPocket

POCKETS = {
    "curved": draft.CurvedPocket(),
    "loose": draft.CurvedPocket(mouth_ease=5),
    "slanted": draft.SlantedPocket(),
    "grown on": draft.SlantedPocket(grown_on=True),
}


def made(body="woman", pocket="curved", coin=None, make=draft.shorts):
    return make(ZOO[body], draft.Style(pocket=POCKETS[pocket], small_parts=(coin or CoinPocket(),)))


def tried(make):
    """What was drafted, or the error it was refused with."""
    try:
        return make(), None
    except draft.DraftError as error:
        return None, error


def faults(pattern):
    return [finding for finding in pattern.check() if finding.code != "fit"]


def polygon(path):
    return Polygon([(p.real, p.imag) for p in path.points(0.05)])


def placed(pattern):
    return next(line.path for line in pattern.pieces["pocket_facing"].lines if line.note.startswith("coin pocket"))


@pytest.mark.parametrize("make", [draft.shorts, draft.trousers])
@pytest.mark.parametrize("pocket", POCKETS)
@pytest.mark.parametrize("body", ZOO)
def test_coin_pocket_lies_on_the_facing_of_every_body(body, pocket, make):
    pattern = made(body, pocket, make=make)
    assert faults(pattern) == []
    coin, facing = pattern.pieces["coin_pocket"], pattern.pieces["pocket_facing"]
    assert polygon(facing.sew_line).buffer(0.05).covers(polygon(coin.sew_line))
    inner = LineString(
        [(p.real, p.imag) for p in facing.edge("inner" if pocket != "grown on" else "contour").path.points(0.1)]
    )
    assert inner.distance(polygon(coin.sew_line)) >= 4 - 0.1
    path = placed(pattern)
    assert path.length == pytest.approx(sum(coin.edge(name).length for name in ("lower", "inner", "mouth")))


@pytest.mark.parametrize("pocket", POCKETS)
@pytest.mark.parametrize("body", ZOO)
def test_its_mouth_is_in_sight_above_the_end_of_the_pocket_mouth(body, pocket):
    pattern = made(body, pocket)
    facing, top = pattern.pieces["pocket_facing"], placed(pattern).start
    end = next(notch.along for notch in facing.notches if notch.edge == "side")
    assert abs(facing.edge("side").point_at(end) - top) >= 14
    assert facing.edge("side").start.imag > top.imag


def test_side_edge_is_caught_in_the_side_seam():
    pattern = made(coin=CoinPocket(below=20, width=50, depth=50))
    seam = next(seam for seam in pattern.seams if seam.name == "coin pocket in the side seam")
    assert (seam.b.piece, seam.b.edge, seam.b.start, seam.b.stop) == ("pocket_facing", "side", 20, pytest.approx(70))
    assert seam.length_a == seam.length_b == pytest.approx(50)
    coin = pattern.pieces["coin_pocket"]
    assert coin.edge("side").allowance == pattern.style.allowances.side
    assert [coin.edge(name).length for name in ("mouth", "lower")] == pytest.approx([50, 50])
    assert coin.edge("mouth").allowance == 15 + 8
    assert str(coin.cut) == "cut 1 self"


@pytest.mark.parametrize("pocket", [None, draft.InSeamPocket(), draft.FrontPatchPocket()])
def test_no_facing_no_coin_pocket(pocket):
    with pytest.raises(draft.DraftError, match=r"style\.pocket is .*a curved or slanted pocket.*leave the coin pocket"):
        draft.shorts(ZOO["woman"], draft.Style(pocket=pocket, small_parts=(CoinPocket(),)))


@pytest.mark.parametrize("pocket", POCKETS)
@pytest.mark.parametrize(("field", "most"), [("width", 120), ("depth", 140), ("below", 120)])
@pytest.mark.parametrize("body", ["woman", "very large", "toddler"])
def test_largest_size_that_is_named_works(body, field, most, pocket):
    coin = CoinPocket(**{field: most})
    pattern, error = tried(lambda: made(body, pocket, coin))
    if error is None:
        assert faults(pattern) == []
    else:
        assert error.field == f"style.small_parts.{field}"
        limit = float(re.search(r"at most (\d+) mm", error.expected).group(1))
        smaller = replace(coin, **{field: limit}, **({"depth": 25} if field == "width" else {}))
        assert faults(made(body, pocket, smaller)) == []
        with pytest.raises(draft.DraftError, match=rf"small_parts\.{field}"):
            made(body, pocket, replace(coin, **{field: limit + 1}))


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    coin=st.builds(
        CoinPocket,
        width=st.none() | st.floats(25, 120),
        depth=st.none() | st.floats(25, 140),
        below=st.none() | st.floats(8, 120),
        hem=st.floats(8, 25),
        turn=st.floats(5, 12),
    ),
    pocket=st.sampled_from(list(POCKETS)),
    body=st.sampled_from(["woman", "stout", "toddler"]),
)
def test_any_coin_pocket_sews_together_or_is_refused_with_its_limit(coin, pocket, body):
    pattern, error = tried(lambda: made(body, pocket, coin))
    if error is not None:
        assert error.field.startswith("style.small_parts.")
        assert re.search(r"at most \d+ mm", error.expected)
    else:
        assert faults(pattern) == []
