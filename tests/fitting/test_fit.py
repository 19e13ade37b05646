"""The fit keeps its word: lengths as the body's, nothing moved without need, nothing hidden."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from scipy.optimize import minimize
from zoo import ZOO, bodies

import draft
from draft.fitting.bounds import bounds_of
from draft.fitting.change import NAMES
from draft.fitting.fit import BACK_CROTCH_EASE, FORK_OF_DEPTH, FRONT_CROTCH_EASE, LEAST_THIGH_EASE
from draft.fitting.lengths import Lengths
from draft.fitting.problem import USUAL
from draft.methods import METHODS

SIZE_TOL_MM = 1.0
FEW = settings(max_examples=40, deadline=None)
CROTCH = ("front_crotch", "back_crotch", "crotch")
MEASURED = [name for name, body in ZOO.items() if body.front_crotch and body.back_crotch]


def bare(body: draft.Body, **measures: float | None) -> draft.Body:
    """Body without the measures that only the fit uses, but for the given ones."""
    none = dict.fromkeys(("front_crotch", "back_crotch", "thigh", "hip_depth"))
    return replace(body, **(none | measures))


@pytest.mark.parametrize("method", METHODS)
@pytest.mark.parametrize("body", MEASURED)
def test_lengths_are_body_plus_ease_or_named(body, method):
    pattern = draft.shorts(ZOO[body], method=method)
    sizes, targets, found = pattern.measure(), pattern.targets(), pattern.check()
    named = {finding.where for finding in found}
    assert {finding.code for finding in found} <= {"fit"}
    for name, target in targets.items():
        assert name in named or abs(sizes[name] - target) <= SIZE_TOL_MM, name
    assert targets["front_crotch"] == ZOO[body].front_crotch + FRONT_CROTCH_EASE
    assert targets["back_crotch"] == ZOO[body].back_crotch + BACK_CROTCH_EASE
    assert targets["crotch"] == targets["front_crotch"] + targets["back_crotch"]


def test_targets_list_every_length_that_is_aimed_at():
    body = replace(ZOO["woman"], front_crotch=300, back_crotch=385, thigh=580)
    style = draft.Style(leg=draft.Leg(inside_leg=600, hem=420, knee=480))
    assert set(draft.trousers(body, style).targets()) == {
        "waist", "hip", "thigh", "knee", "hem", "front_crotch", "back_crotch", "crotch", "inside_leg", "outside_leg",
    }  # fmt: skip


@pytest.mark.parametrize("make", [draft.shorts, draft.trousers])
def test_front_and_back_seams_are_equal(make):
    pieces = make(ZOO["woman"]).shell
    assert pieces.front.inseam.length == pytest.approx(pieces.back.inseam.length, abs=0.01)
    assert pieces.front.side.length == pytest.approx(pieces.back.side.length, abs=0.01)


@FEW
@given(body=bodies())
def test_body_whose_lengths_are_the_formula_s_is_left_alone(body):
    """Measured on the formula's own pattern, less the ease, and given as the body's: nothing moves at all."""
    body = bare(body)
    formula = draft.shorts(body, fit="formula")
    sizes = formula.measure()
    front, back = sizes["front_crotch"] - FRONT_CROTCH_EASE, sizes["back_crotch"] - BACK_CROTCH_EASE
    try:
        same = replace(body, front_crotch=front, back_crotch=back)
    except draft.DraftError:
        return  # no body has these lengths
    fitted = draft.shorts(same)
    assert np.abs(fitted.fit.change.numbers / list(USUAL.values())).max() < 1e-4
    for name, size in fitted.measure().items():
        assert size == pytest.approx(sizes[name], abs=0.01), name


def test_without_measured_lengths_the_formula_stays():
    for body in ZOO.values():
        pattern = draft.shorts(bare(body))
        assert pattern.fit.change.numbers.tolist() == [0.0] * 7
        assert set(pattern.targets()) == {"waist", "hip", "inside_leg", "outside_leg"}


@pytest.mark.parametrize(("given_part", "left"), [("front_crotch", "back_crotch"), ("back_crotch", "front_crotch")])
def test_one_part_alone_moves_its_own_seam_only(given_part, left):
    formula = draft.shorts(bare(ZOO["woman"]))
    body = bare(ZOO["woman"], **{given_part: getattr(ZOO["woman"], given_part) + 12})
    pattern = draft.shorts(body)
    assert abs(pattern.measure()[given_part] - pattern.targets()[given_part]) <= SIZE_TOL_MM
    assert pattern.measure()[left] == pytest.approx(formula.measure()[left], abs=1e-6)
    assert left not in pattern.targets()
    assert "crotch" not in pattern.targets()


def test_seated_and_standing_depth_of_one_body_give_one_draft():
    """15 mm between them: common practice (10 to 20), no source."""
    body = ZOO["woman"]
    standing = replace(body, crotch_depth=body.crotch_depth - 15, crotch_depth_taken="standing")
    one, two = draft.shorts(body), draft.shorts(standing)
    assert dict(one.measure()) == pytest.approx(dict(two.measure()), abs=1e-9)


def test_the_same_twice():
    one, two = (draft.shorts(ZOO["man"]) for _ in range(2))
    assert one.fit.change.numbers.tolist() == two.fit.change.numbers.tolist()


@pytest.mark.parametrize("hem", [None, 500])
def test_thigh_is_never_tighter_than_asked(hem):
    """A fuller thigh moves the forks out, on the finished pattern, also with a hem that takes the seams in."""
    style = draft.Style(leg=draft.Leg(hem=hem))
    own = draft.shorts(bare(ZOO["woman"]), style).measure()["thigh"]
    for more in (-60, -10, 5, 20):
        body = bare(ZOO["woman"], thigh=own - LEAST_THIGH_EASE + more)
        pattern = draft.shorts(body, style)
        assert pattern.measure()["thigh"] >= body.thigh + LEAST_THIGH_EASE - 0.25
        assert pattern.check() == []
        if more < 0:
            assert pattern.measure()["thigh"] == pytest.approx(own, abs=0.01)


def test_hip_depth_sets_the_width_of_the_fork():
    widths = []
    for depth in (205, 225, 245, 265):
        reached = draft.blocks([bare(ZOO["woman"], hip_depth=depth)]).fit[0].reached["fork"]
        assert reached == pytest.approx(FORK_OF_DEPTH * depth, abs=4.0)
        widths.append(reached)
    assert widths == sorted(widths)


def test_ease_of_the_crotch_can_be_chosen():
    ease = draft.Ease(front_crotch=4, back_crotch=30)
    sizes = draft.shorts(ZOO["woman"], draft.Style(ease=ease)).measure()
    assert sizes["front_crotch"] == pytest.approx(ZOO["woman"].front_crotch + 4, abs=SIZE_TOL_MM)
    assert sizes["back_crotch"] == pytest.approx(ZOO["woman"].back_crotch + 30, abs=SIZE_TOL_MM)


def test_lower_waist_seam_leaves_its_drop_out_of_the_crotch_seam():
    full, low = (draft.shorts(ZOO["woman"], draft.Style(waist_drop=drop)).measure() for drop in (0, 30))
    for name in ("front_crotch", "back_crotch"):
        assert full[name] - low[name] == pytest.approx(30, abs=0.01)


@pytest.mark.parametrize("body", ["woman", "man", "stout", "ten years"])
def test_no_other_block_inside_the_bounds_is_nearer(body):
    """scipy's SLSQP on the same lengths, started from several places, finds no smaller change."""
    person = replace(ZOO[body], hip_depth=None, thigh=None)
    fit = draft.blocks([person]).fit[0]
    many = draft.blocks([person])
    lengths = Lengths.of(many.fit.formula)
    scale = np.array(list(USUAL.values()))
    low, high = (edge / scale for edge in bounds_of(fit.formula, person.hip))
    aims = np.array([fit.aims["front_crotch"], fit.aims["back_crotch"]])

    def miss(z):
        return lengths((z * scale)[None])[0][0, :2] - aims

    mine = fit.change.numbers / scale
    assert np.abs(miss(mine)).max() < 0.01
    rng = np.random.default_rng(1)
    for _ in range(4):
        start = np.clip(rng.normal(size=7), low, high)
        theirs = minimize(
            lambda z: z @ z, start, bounds=list(zip(low, high, strict=True)), method="SLSQP",
            constraints={"type": "eq", "fun": miss}, options={"ftol": 1e-12, "maxiter": 300},
        )  # fmt: skip
        if theirs.success and np.abs(miss(theirs.x)).max() < 1e-3:
            assert mine @ mine <= theirs.fun * (1 + 1e-3) + 1e-6


def test_numbers_stay_inside_their_bounds():
    for body in (ZOO[name] for name in MEASURED):
        for front, back in ((-60, 60), (60, -60), (80, 80)):
            try:
                far = replace(body, front_crotch=body.front_crotch + front, back_crotch=body.back_crotch + back)
            except draft.DraftError:
                continue
            fit = draft.blocks([far]).fit[0]
            low, high = bounds_of(fit.formula, far.hip)
            assert np.all(fit.change.numbers >= low - 1e-9), body.name
            assert np.all(fit.change.numbers <= high + 1e-9), body.name


def test_a_function_is_a_method():
    """A user's own block: a square-shouldered invention, only to be drafted; with plain numbers and an `if`."""

    def boxy(m: draft.Measures) -> draft.Block:
        """Boxy block (invented)."""
        panels = []
        for name in ("front", "back"):
            lean, wide = (5, 0.07) if name == "front" else (25, 0.13)
            centre, side = 0.09 * m.hip, 0.09 * m.hip - m.hip / 4 - 15
            if m.hip > 1200:
                wide += 0.005
            y_hip = m.body_rise - m.waist_to_hip
            top = centre + 1j * max(y_hip, 0.4 * m.body_rise)
            waist_centre = centre - lean + 1j * (m.body_rise + 2 * lean / 5)
            fork = centre + wide * m.hip + 0j
            crotch = draft.crotch_seam(waist_centre, top, fork, 0.6)
            run = min(m.waist / 4 + 10, m.hip / 4 + 10)
            panels.append(
                draft.PanelBlock(
                    waist_centre=waist_centre, waist_side=waist_centre.real - run + 1j * m.body_rise,
                    hip_centre=centre + 1j * y_hip, hip_side=side + 1j * y_hip,
                    knee_side=-0.11 * m.hip - 0.5j * m.inside_leg, hem_side=-0.1 * m.hip - 1j * m.inside_leg,
                    knee_inseam=0.11 * m.hip - 0.5j * m.inside_leg, hem_inseam=0.1 * m.hip - 1j * m.inside_leg,
                    fork=fork, crotch=crotch, inseam_hollow=6.0,
                )
            )  # fmt: skip
        levels = {"waist": m.body_rise, "hip": m.body_rise - m.waist_to_hip, "crotch": 0.0, "knee": -0.5 * m.inside_leg}
        return draft.Block("boxy", *panels, levels)

    for body in (ZOO["woman"], ZOO["man"]):
        pattern = draft.shorts(body, method=boxy)
        assert pattern.check() == []
        assert pattern.block.method == "boxy"
        assert pattern.measure()["hip"] == pytest.approx(pattern.targets()["hip"], abs=SIZE_TOL_MM)
    assert "Boxy block (invented)." in draft.shorts(ZOO["woman"], method=boxy).report()
    asked = draft.shorts(ZOO["woman"], draft.Style(ease=draft.Ease(hip=70)), method=boxy)
    assert asked.measure()["hip"] == pytest.approx(ZOO["woman"].hip + 70, abs=SIZE_TOL_MM)


@pytest.mark.parametrize(
    ("method", "words"),
    [
        (lambda m: 7, "expected a draft.Block"),
        ("centreline", "write 'centre_line'"),
        (7, "one of centre_line, seat_sixths"),
    ],
)
def test_wrong_method_is_told(method, words):
    with pytest.raises(draft.DraftError, match=words):
        draft.shorts(ZOO["woman"], method=method)


def test_names_of_the_numbers_are_told():
    told = str(draft.shorts(ZOO["woman"]).fit.change)
    for name in NAMES:
        assert name.replace("_", " ") in told
