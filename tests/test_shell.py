"""From block to shell: what the waist, the darts and the leg promise."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from zoo import ZOO, bodies

import draft
from draft.fitting.fit import formula_block
from draft.geometry.points import angle_deg, unit
from draft.methods import METHODS
from draft.methods.base import Measures

WOMAN = ZOO["woman"]
SETTINGS = settings(max_examples=30, deadline=None)


def shell_of(body=WOMAN, garment=draft.shorts, **choices):
    return garment(body, draft.Style(**choices)).shell


def intakes(panel):
    return [dart.intake for dart in panel.waist.darts]


@pytest.mark.parametrize("body", ZOO)
def test_waist_seam_is_the_asked_girth(body):
    shell = shell_of(ZOO[body], ease=draft.Ease(waist=20))
    girth = 2 * (shell.front.waist.length + shell.back.waist.length)
    assert girth == pytest.approx(ZOO[body].waist + 20, abs=0.1)


def test_without_a_front_dart_its_intake_goes_to_both_side_seams():
    """Half of the front's 20 mm to the front's side, half to the back's: front waist 10 wider, back 10 narrower."""
    with_dart = shell_of(darts=draft.Darts(front=1), pocket=None)
    without = shell_of(darts=draft.Darts(front=0), pocket=None)
    assert without.front.waist.length - with_dart.front.waist.length == pytest.approx(10, abs=0.1)
    assert without.back.waist.length - with_dart.back.waist.length == pytest.approx(-10, abs=0.1)


@pytest.mark.parametrize(("front", "back"), [(0, 0), (0, 1), (1, 1), (1, 2), (0, 2)])
def test_darts_are_as_many_as_chosen(front, back):
    shell = shell_of(darts=draft.Darts(front=front, back=back), pocket=None)
    assert (len(intakes(shell.front)), len(intakes(shell.back))) == (front, back)


@SETTINGS
@given(share=st.floats(0.15, 0.45))
def test_back_darts_take_the_asked_share(share):
    shell = shell_of(darts=draft.Darts(back_share=share))
    hip = shell.levels["hip"]
    block = formula_block(METHODS["centre_line"], Measures.of(WOMAN), draft.Ease()).back
    assert block.hip_side.imag == hip
    difference = block.hip_centre.real - block.hip_side.real - shell.back.waist.length
    # The drawn seam is a little longer than its chord, and the darts take that up: 2 mm at the most.
    assert sum(intakes(shell.back)) == pytest.approx(share * difference, abs=2.0)


def test_stout_figures_get_no_darts():
    body = ZOO["stout"]
    assert body.waist >= body.hip
    shell = shell_of(body, darts=draft.Darts(front=1, back=2), pocket=None)
    assert intakes(shell.front) == intakes(shell.back) == []


@SETTINGS
@given(body=bodies(), drop=st.floats(0, 30))
def test_waist_below_the_waist_is_the_body_there_plus_ease(body, drop):
    """The method's own profile: ease grows from waist to hip as the girth does."""
    style = draft.Style(waist_drop=drop, ease=draft.Ease(waist=10, hip=60))
    sizes = draft.shorts(body, style).measure()
    u = min(1.0, drop / body.waist_to_hip)
    assert sizes["waist"] == pytest.approx(body.girth_at(drop) + 10 + 50 * u * (2 - u), abs=1.0)


def test_waist_seam_is_square_to_all_it_meets():
    for panel in (shell_of(darts=draft.Darts(front=1), pocket=None).front, shell_of().back):
        assert angle_deg(panel.crotch.end_dir, panel.waist.parts[0].start_dir) == pytest.approx(90, abs=1e-6)
        assert angle_deg(panel.waist.parts[-1].end_dir, panel.side.start_dir) == pytest.approx(90, abs=1e-6)
        for dart, (before, after) in zip(panel.waist.darts, pairwise(panel.waist.parts), strict=True):
            into = unit(dart.centre_leg - dart.point)
            out = unit(dart.side_leg - dart.point)
            assert angle_deg(into, before.end_dir) == pytest.approx(90, abs=1e-6)
            assert angle_deg(out, after.start_dir) == pytest.approx(90, abs=1e-6)


@pytest.mark.parametrize("length", [60, 90, 140, 250, 330, 345, 360, 400, 450, 600, 760])
def test_leg_has_any_length(length):
    pattern = draft.trousers(WOMAN, draft.Style(leg=draft.Leg(inside_leg=length), hem=draft.PlainHem(depth=15)))
    assert pattern.measure()["inside_leg"] == pytest.approx(length, abs=0.01)
    assert list(pattern.check()) == []


@pytest.mark.parametrize(("hem", "knee"), [(420, None), (600, 520), (360, 440), (None, 560)])
def test_hem_and_knee_are_as_asked(hem, knee):
    style = draft.Style(leg=draft.Leg(hem=hem, knee=knee), hem=draft.PlainHem())
    pattern = draft.trousers(WOMAN, style)
    sizes = pattern.measure()
    if hem:
        assert sizes["hem"] == pytest.approx(hem, abs=0.5)
    if knee:
        assert sizes["knee"] == pytest.approx(knee, abs=1.0)
    assert list(pattern.check()) == []


@SETTINGS
@given(body=bodies(), share=st.floats(0.2, 0.95))
def test_side_seams_are_equal_and_inseams_differ_by_the_stretch(body, share):
    length = max(60.0, share * body.inside_leg)
    shell = shell_of(body, draft.trousers, leg=draft.Leg(inside_leg=length), hem=draft.PlainHem(depth=15))
    assert shell.front.side.length == pytest.approx(shell.back.side.length, abs=0.01)
    assert shell.front.inseam.length - shell.back.inseam.length == pytest.approx(shell.stretch, abs=0.01)
    assert shell.stretch <= 0.015 * length + 1e-9


def test_seams_are_smooth_from_waist_to_hem():
    shell = shell_of(garment=draft.trousers, hem=draft.PlainHem())
    for panel in (shell.front, shell.back):
        for path in (panel.side, panel.inseam, panel.crotch):
            for one, two in pairwise(path.segments):
                assert abs(angle_deg(one.end_dir, two.start_dir)) < 0.5


@pytest.mark.parametrize("body", ["woman", "man", "ten years"])
def test_shape_does_not_jump_as_the_leg_grows(body):
    """Lengths 5 mm apart give hems that differ by less than 12 mm, also as the hem passes the knee."""
    longest = ZOO[body].inside_leg - 1
    lengths = np.arange(100, longest, 5)
    hems = [
        shell_of(ZOO[body], draft.trousers, leg=draft.Leg(inside_leg=float(n)), hem=draft.PlainHem(depth=15))
        for n in lengths
    ]
    girths = np.array([s.front.hem.length + s.back.hem.length for s in hems])
    assert np.max(np.abs(np.diff(girths))) < 12
