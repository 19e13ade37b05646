"""Leg shapes by name, against the published summary of leg types and against each other."""

from __future__ import annotations

from typing import get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from zoo import ZOO, bodies

import draft
from draft.style import LegShape

SHAPES = get_args(LegShape)
ADULTS = ["woman", "man", "tall", "stout"]


def trousers(body, shape, **leg):
    return draft.trousers(body, draft.Style(leg=draft.Leg(shape=shape, **leg), hem=draft.PlainHem()))


@pytest.mark.parametrize("body", ADULTS)
def test_flat_widths_are_those_of_the_leg_types(body):
    """Read in a summary of leg types: hem by the finished hip H, flat, and which of knee and hem is wider."""
    sizes = {shape: trousers(ZOO[body], shape).measure() for shape in SHAPES}
    hem = {shape: size["hem"] / 2 for shape, size in sizes.items()}
    hip = sizes["straight"]["hip"]
    assert 0.2 * hip - 1 <= hem["straight"] <= 0.2 * hip + 50
    assert hem["tapered"] <= 0.2 * hip - 29
    assert sizes["flared"]["knee"] < sizes["flared"]["hem"]
    assert sizes["bell"]["knee"] < sizes["bell"]["hem"]
    assert sizes["tapered"]["knee"] > sizes["tapered"]["hem"]
    assert sizes["straight"]["knee"] == pytest.approx(sizes["straight"]["hem"], abs=20)
    assert hem["tapered"] < hem["straight"] < hem["flared"] < hem["bell"]


@pytest.mark.parametrize("body", ADULTS)
def test_culottes_are_wide_from_knee_to_hem(body):
    """Read: the flat hem of culottes is at least a fifth of the finished hip and 100 mm."""
    sizes = trousers(ZOO[body], "culottes", inside_leg=0.7 * ZOO[body].inside_leg).measure()
    assert sizes["hem"] / 2 >= 0.2 * sizes["hip"] + 99
    assert sizes["knee"] > 0.4 * sizes["hip"] + 200


@pytest.mark.parametrize("garment", [draft.shorts, draft.trousers])
@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("body", ZOO)
def test_every_body_gets_every_shape(garment, shape, body):
    pattern = garment(ZOO[body], draft.Style(leg=draft.Leg(shape=shape), hem=draft.PlainHem(depth=20, turn=5)))
    assert [finding for finding in pattern.check() if finding.code != "fit"] == []


def test_girths_in_mm_are_not_moved():
    sizes = trousers(ZOO["woman"], "flared", knee=480).measure()
    assert sizes["knee"] == pytest.approx(480, abs=1)
    assert sizes["hem"] > 500


@settings(max_examples=60, deadline=None)
@given(body=bodies(), shape=st.sampled_from(SHAPES), length=st.floats(0.1, 0.95))
def test_any_length_of_any_shape_sews(body, shape, length):
    leg = draft.Leg(shape=shape, inside_leg=max(60.0, length * body.inside_leg))
    try:
        pattern = draft.trousers(body, draft.Style(leg=leg, hem=draft.PlainHem(depth=15, turn=0), pocket=None))
    except draft.DraftError:
        return
    assert [finding for finding in pattern.check() if finding.code != "fit"] == []
