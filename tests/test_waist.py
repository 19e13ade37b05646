"""The waist seam step by step: how it is shared out, where the darts come to lie, how the line is drawn."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from zoo import ZOO, bodies

import draft
from draft.fitting.fit import formula_block
from draft.geometry.points import angle_deg, dot, unit
from draft.methods import METHODS
from draft.methods.base import Measures
from draft.shape.waist import (
    LENGTH_TOL_MM,
    SMALLEST_GAP,
    Level,
    Suppression,
    at_level,
    has_room,
    no_room,
    suppress,
    waist_ease,
    waist_seam,
    waist_target,
)

WITHIN_MM = 1.3  # how much more than planned a drawn dart takes: its seam is a curve, longer than its chord
FEW = settings(max_examples=40, deadline=None)
SHARE = st.floats(0.15, 0.4)


class Half:
    """Front and back of one body at one level, shared out for one choice of darts."""

    def __init__(self, body: draft.Body, darts: draft.Darts, drop: float = 0.0, ease: float | None = None) -> None:
        self.body = body
        self.block = formula_block(METHODS["centre_line"], Measures.of(body), draft.Ease(waist=ease))
        self.panels = {"front": self.block.front, "back": self.block.back}
        self.levels = {name: at_level(panel, drop) for name, panel in self.panels.items()}
        self.hips = {name: p.hip_centre.real - p.hip_side.real for name, p in self.panels.items()}
        self.girth = body.girth_at(drop) + waist_ease(self.block, body, drop)
        self.plan = suppress(self.levels["front"], self.levels["back"], self.hips, self.girth, darts)

    def own(self, name: str) -> float:
        """Sewn waist of the panel as the method draws it."""
        return self.levels[name].run - self.levels[name].intake

    def seam(self, name: str, lengths: tuple[float | None, ...] = (None, None)):
        return waist_seam(self.panels[name], self.levels[name], self.plan[name], lengths)


ANY_DARTS = st.builds(
    draft.Darts,
    front=st.integers(0, 1),
    back=st.integers(0, 2),
    front_share=st.none() | SHARE,
    back_share=st.none() | SHARE,
)


def shared_out(body: draft.Body, darts: draft.Darts, drop: float = 0.0) -> Half | None:
    """None when the body has no room for that share; the error then tells the limit."""
    try:
        return Half(body, darts, drop)
    except draft.DraftError as error:
        if error.field.endswith("_share") and error.expected.startswith(("at most", "at least")):
            return None
        raise


# Shared out


@FEW
@given(body=bodies(), darts=ANY_DARTS, drop=st.sampled_from([0.0, 10.0, 25.0]))
def test_both_halves_add_up_to_the_girth_and_no_dart_is_negative(body, darts, drop):
    half = shared_out(body, darts, drop)
    if half is None:
        return
    assert 2 * (half.plan["front"].net + half.plan["back"].net) == pytest.approx(half.girth, abs=1e-6)
    for name, plan in half.plan.items():
        assert all(intake > 0 for intake in plan.intakes), name
        assert len(plan.intakes) in (0, getattr(darts, name))


@pytest.mark.parametrize("body", ZOO)
def test_intake_of_a_dart_left_out_moves_the_side_seam_by_half_each(body):
    """The front's dart left out: its waist is half the intake wider, the back's half the intake narrower."""
    half = Half(ZOO[body], draft.Darts(front=0, back=2))
    change = (half.girth / 2 - half.own("front") - half.own("back")) / 2
    left_out = half.levels["front"].intake
    back_left = half.levels["back"].intake - sum(half.plan["back"].intakes)
    assert half.plan["front"].net == pytest.approx(half.own("front") + change + left_out / 2 - back_left / 2)
    assert half.plan["back"].net == pytest.approx(half.own("back") + change - left_out / 2 + back_left / 2)


@pytest.mark.parametrize(("front", "back"), [(0.3, None), (None, 0.3), (0.25, 0.35)])
@pytest.mark.parametrize("count", [0, 1, 2])
@pytest.mark.parametrize("body", ["woman", "small", "slim", "man"])
def test_shares_are_of_the_difference_that_is_drawn(body, count, front, back):
    """Intake = share x (hip width less sewn waist), also when the other panel's darts moved the side seam."""
    darts = draft.Darts(front=1, back=count, front_share=front, back_share=back)
    half = shared_out(ZOO[body], darts)
    if half is None:
        return
    for name, share in (("front", front), ("back", back)):
        plan = half.plan[name]
        if share is not None and plan.intakes:
            difference = half.hips[name] - plan.net
            assert sum(plan.intakes) == pytest.approx(share * difference, abs=1e-9)
            assert len(set(plan.intakes)) == 1
            drawn = sum(dart.intake for dart in half.seam(name).darts)
            assert 0 <= drawn - sum(plan.intakes) <= WITHIN_MM * len(plan.intakes)


def test_share_of_all_the_darts_that_are_there_is_told_with_its_limit():
    with pytest.raises(draft.DraftError, match=r"style\.darts\.back_share is 0\.9, expected at most 0\.\d+ for 1 dart"):
        Half(ZOO["woman"], draft.Darts(back=1, back_share=0.9))


@pytest.mark.parametrize("share", [None, 0.3])
def test_waist_wider_than_the_hip_gets_no_darts(share):
    body = ZOO["stout"]
    half = Half(body, draft.Darts(front=1, back=2, front_share=share, back_share=None))
    assert body.waist >= body.hip
    assert half.hips["front"] < half.plan["front"].net
    assert half.plan["front"].intakes == half.plan["back"].intakes == ()


def test_without_any_dart_all_of_their_intake_goes_to_the_side_seams():
    half, own = Half(ZOO["woman"], draft.Darts(front=0, back=0)), Half(ZOO["woman"], draft.Darts(front=1, back=2))
    assert half.plan["front"].intakes == half.plan["back"].intakes == ()
    moved = (half.levels["front"].intake - half.levels["back"].intake) / 2
    assert moved == pytest.approx((20 - 40) / 2)  # the book's darts: one of 2 cm in front, two of 2 cm behind
    assert half.plan["front"].net - own.plan["front"].net == pytest.approx(moved)
    assert half.plan["back"].net - own.plan["back"].net == pytest.approx(-moved)


# Level


@FEW
@given(body=bodies(), share=st.floats(0, 1.2))
def test_ease_grows_from_the_waist_to_the_hip_as_the_girth_does(body, share):
    half = Half(body, draft.Darts())
    drop, own = share * body.waist_to_hip, half.block.ease
    grown = (body.girth_at(drop) - body.waist) / (body.hip - body.waist) if body.hip != body.waist else 0.0
    if body.hip != body.waist:
        assert waist_ease(half.block, body, drop) == pytest.approx(own["waist"] + grown * (own["hip"] - own["waist"]))
    style = draft.Style(waist_drop=min(drop, 150))
    expected = body.girth_at(style.waist_drop) + waist_ease(half.block, body, style.waist_drop)
    assert waist_target(half.block, body, style.waist_drop) == pytest.approx(expected)


@FEW
@given(body=bodies(), drop=st.floats(5, 30))
def test_lower_waist_lies_on_both_seams_of_the_method_and_thins_its_darts(body, drop):
    half = Half(body, draft.Darts())
    for name, panel in half.panels.items():
        level = at_level(panel, drop)
        assert abs(level.centre - panel.crotch.point_at(panel.crotch.length - drop)) < 1e-9
        assert abs(level.side - panel.side.point_at(drop)) < 1e-9
        for lower, plan in zip(level.plans, panel.darts, strict=True):
            assert lower.point == plan.point, name
            assert 0 <= lower.intake <= plan.intake
            axis = unit(plan.mouth - plan.point)
            assert abs(dot(lower.mouth - plan.point, 1j * axis)) < 1e-6
            assert lower.intake == pytest.approx(plan.intake * abs(lower.mouth - plan.point)
                                                 / abs(plan.mouth - plan.point))  # fmt: skip


# Drawn


@FEW
@given(body=bodies(), darts=ANY_DARTS, drop=st.sampled_from([0.0, 15.0]))
def test_drawn_seam_has_its_length_and_is_square_to_all_it_meets(body, darts, drop):
    half = shared_out(body, darts, drop)
    for name in half.levels if half else ():
        panel, seam = half.panels[name], half.seam(name)
        assert seam.length == pytest.approx(half.plan[name].net, abs=LENGTH_TOL_MM)
        below, _ = panel.crotch.split_at(panel.crotch.length - drop) if drop else (panel.crotch, None)
        assert angle_deg(below.end_dir, seam.parts[0].start_dir) == pytest.approx(90, abs=1.0)
        side = panel.side_to(seam.parts[-1].end, panel.knee_side)
        # The side seam is drawn from where the seam ends, and that is moved by a hair at the last step.
        assert angle_deg(seam.parts[-1].end_dir, side.start_dir) == pytest.approx(90, abs=0.01)
        for dart, (before, after) in zip(seam.darts, pairwise(seam.parts), strict=True):
            assert abs(dart.centre_leg - dart.point) == pytest.approx(abs(dart.side_leg - dart.point), abs=1e-9)
            assert angle_deg(dart.centre_leg - dart.point, before.end_dir) == pytest.approx(90, abs=1e-6)
            assert angle_deg(dart.side_leg - dart.point, after.start_dir) == pytest.approx(90, abs=1e-6)
            assert before.end == dart.centre_leg
            assert after.start == dart.side_leg


def test_one_back_dart_lies_midway_between_the_methods_two():
    half = Half(ZOO["woman"], draft.Darts(back=1))
    first, second = half.levels["back"].plans
    (dart,) = half.seam("back").darts
    assert abs(dart.point - (first.point + second.point) / 2) < 1e-9
    assert abs((dart.centre_leg + dart.side_leg) / 2 - (first.mouth + second.mouth) / 2) < 1e-9


@pytest.mark.parametrize("drop", [0.0, 20.0])
@pytest.mark.parametrize("lengths", [(80.0, 60.0), (140.0, 110.0)])
def test_dart_lengths_count_from_the_methods_waist_line(drop, lengths):
    """A lower waist cuts the same dart shorter: its point stays where the length puts it."""
    half = Half(ZOO["woman"], draft.Darts(), drop)
    for dart, plan, length in zip(half.seam("back", lengths).darts, half.panels["back"].darts, lengths, strict=True):
        assert abs(plan.mouth - dart.point) == pytest.approx(length, abs=0.5)
        assert abs(dot(dart.point - plan.mouth, 1j * unit(plan.mouth - plan.point))) < 1e-6


def test_dart_without_cloth_beside_it_is_refused():
    half = Half(ZOO["woman"], draft.Darts())
    level = half.levels["back"]
    narrow = Level(level.centre, level.side, tuple(level.plans))
    seam = waist_seam(half.panels["back"], narrow, Suppression(SMALLEST_GAP * 2, (20.0, 20.0)), (None, None))
    with pytest.raises(draft.DraftError, match=r"style\.darts\.back is 2, expected 12 mm .* beside each dart: .*fewer"):
        raise no_room("back", seam)
    assert not has_room(narrow, seam)
    assert has_room(level, half.seam("back"))


SMALL_DIFFERENCE = draft.Body(
    waist=552, hip=658, crotch_depth=195, waist_to_hip=135, inside_leg=407, crotch_depth_taken="seated"
)


def test_smallest_share_told_works_and_so_does_the_count_of_darts():
    def made(darts: draft.Darts) -> draft.Pattern:
        return draft.shorts(SMALL_DIFFERENCE, draft.Style(ease=draft.Ease(hip=20), darts=darts, pocket=None))

    with pytest.raises(draft.DraftError, match=r"front_share is 0\.25, expected at least 0\.\d{3} for 1") as caught:
        made(draft.Darts(front=1, front_share=0.25))
    least = float(caught.value.expected.split()[2])
    assert made(draft.Darts(front=1, front_share=least)).check() == []
    assert caught.value.remedy.endswith("or style.darts.front=0")
    assert made(draft.Darts(front=0, front_share=0.25)).check() == []


def test_share_too_large_for_one_dart_is_told_the_count_that_takes_it():
    def made(back: int, share: float) -> draft.Pattern:
        return draft.shorts(ZOO["man"], draft.Style(darts=draft.Darts(back=back, back_share=share)), fit="formula")

    with pytest.raises(draft.DraftError, match=r"back_share is 0\.9, expected at most 0\.\d{3} for 1") as caught:
        made(1, 0.9)
    assert made(1, float(caught.value.expected.split()[2])).check() == []
    if caught.value.remedy.endswith("style.darts.back=2"):
        assert made(2, 0.9).check() == []


def test_share_of_the_front_that_no_count_takes_is_told_another_share_only():
    """A front has one dart at most."""
    with pytest.raises(draft.DraftError, match="front_share") as caught:
        draft.shorts(ZOO["woman"], draft.Style(darts=draft.Darts(front=1, front_share=1.0), pocket=None))
    assert caught.value.remedy == "take a smaller share"
