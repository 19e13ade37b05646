"""Choices that are wrong in themselves, and choices for which a body has no room: one clear error each."""

from __future__ import annotations

import dataclasses
import math
import re

import pytest
from zoo import ZOO

import draft

WOMAN = ZOO["woman"]

# What is written, the field the error names, and words of its expectation or remedy.
WRONG = [
    ("misspelt part", lambda: draft.Style(pokcet=None), "style.pokcet", "write 'pocket'"),
    ("misspelt length", lambda: draft.Leg(insideleg=100), "style.leg.insideleg", "write 'inside_leg'"),
    ("unknown word", lambda: draft.PlainHem(colour=1), "style.hem.colour", "one of depth, turn"),
    ("name is a number", lambda: draft.Style(name=5), "style.name", "one line of text"),
    ("leg is a number", lambda: draft.Style(leg=150), "style.leg", "draft.Leg"),
    ("pocket is text", lambda: draft.Style(pocket="curved"), "style.pocket", "Pocket"),
    ("hem is a pocket", lambda: draft.Style(hem=draft.CurvedPocket()), "style.hem", "Hem"),
    ("interfacing is text", lambda: draft.Style(interfacing="yes"), "style.interfacing", "True or False"),
    ("nan", lambda: draft.Leg(inside_leg=math.nan), "style.leg.inside_leg", "finite"),
    ("infinite", lambda: draft.Ease(hip=math.inf), "style.ease.hip", "finite"),
    ("unknown unit", lambda: draft.TurnedCuff(depth="4 cubits"), "style.hem.depth", "unit"),
    ("empty text", lambda: draft.TurnedCuff(depth=""), "style.hem.depth", "a length in mm"),
    ("a truth value", lambda: draft.TurnedCuff(depth=True), "style.hem.depth", "a length in mm"),
    ("None where a size is needed", lambda: draft.TurnedCuff(depth=None), "style.hem.depth", "a length in mm"),
    ("complex", lambda: draft.TurnedCuff(depth=4j), "style.hem.depth", "a length in mm"),
    ("leg too short", lambda: draft.Leg(inside_leg=20), "style.leg.inside_leg", "50 to 1150 mm"),
    ("leg negative", lambda: draft.Leg(inside_leg=-100), "style.leg.inside_leg", "50 to 1150 mm"),
    ("hem too narrow", lambda: draft.Leg(hem=100), "style.leg.hem", "150 to 2000 mm"),
    ("knee too wide", lambda: draft.Leg(knee=3000), "style.leg.knee", "180 to 1500 mm"),
    ("stretch too much", lambda: draft.Leg(stretch=20), "style.leg.stretch", "0 to 13 mm"),
    ("ease far too tight", lambda: draft.Ease(waist=-200), "style.ease.waist", "-60 to 300 mm"),
    ("ease far too wide", lambda: draft.Ease(hip=900), "style.ease.hip", "-60 to 500 mm"),
    ("drop too deep for anybody", lambda: draft.Style(waist_drop=500), "style.waist_drop", "0 to 150 mm"),
    ("drop upwards", lambda: draft.Style(waist_drop=-5), "style.waist_drop", "0 to 150 mm"),
    ("two front darts", lambda: draft.Darts(front=2), "style.darts.front", "0 to 1"),
    ("three back darts", lambda: draft.Darts(back=3), "style.darts.back", "0 to 2"),
    ("half a dart", lambda: draft.Darts(back=1.5), "style.darts.back", "whole number"),
    ("share above one", lambda: draft.Darts(back_share=1.2), "style.darts.back_share", "0 to 1"),
    ("share negative", lambda: draft.Darts(front_share=-0.1), "style.darts.front_share", "0 to 1"),
    ("share as text", lambda: draft.Darts(back_share="40 %"), "style.darts.back_share", "a number from 0 to 1"),
    ("dart as long as a leg", lambda: draft.Darts(front_length=400), "style.darts.front_length", "30 to 250 mm"),
    ("band too deep", lambda: draft.StraightBand(depth=100), "style.band.depth", "15 to 60 mm"),
    ("unknown sections", lambda: draft.StraightBand(sections="three"), "style.band.sections", "'one' or 'side_seams'"),
    ("overlap too long", lambda: draft.StraightBand(overlap=200), "style.band.overlap", "0 to 120 mm"),
    ("button too small", lambda: draft.StraightBand(button=3), "style.band.button", "8 to 40 mm"),
    ("unknown lap", lambda: draft.FlyFront(lap="left"), "style.closing.lap", "'left_over_right' or 'right_over_left'"),
    ("fly too wide", lambda: draft.FlyFront(width=90), "style.closing.width", "20 to 60 mm"),
    ("fly too long", lambda: draft.FlyFront(length=400), "style.closing.length", "40 to 260 mm"),
    ("mouth too wide", lambda: draft.CurvedPocket(width=300), "style.pocket.width", "25 to 160 mm"),
    ("mouth ease too large", lambda: draft.CurvedPocket(mouth_ease=20), "style.pocket.mouth_ease", "0 to 8 mm"),
    ("cuff too deep", lambda: draft.TurnedCuff(depth=300), "style.hem.depth", "15 to 120 mm"),
    ("hem too deep", lambda: draft.PlainHem(depth="30 cm"), "style.hem.depth", "10 to 80 mm"),
    ("allowance too wide", lambda: draft.Allowances(crotch=60), "style.allowances.crotch", "4 to 25 mm"),
    ("allowance of nothing", lambda: draft.Allowances(side=0), "style.allowances.side", "4 to 40 mm"),
    ("no body", lambda: draft.shorts(None), "body", "draft.Body"),
    ("body is a mapping", lambda: draft.shorts({"waist": 700}), "body", "draft.Body"),
    ("style is text", lambda: draft.shorts(WOMAN, "jeans"), "style", "draft.Style"),
    ("unknown method", lambda: draft.shorts(WOMAN, method="none"), "method", "centre_line"),
    ("unknown fit", lambda: draft.shorts(WOMAN, fit="best"), "fit", "'formula' or 'measured'"),
    ("fit that is not there yet", lambda: draft.shorts(WOMAN, fit="measured"), "fit", "does not yet move it"),
    (
        "alterations are not there yet",
        lambda: draft.shorts(WOMAN, alterations=[1]),
        "alterations",
        "no alterations yet",
    ),
    ("unknown dialect", lambda: draft.shorts(WOMAN).save_dxf("x.dxf", dialect="r14"), "dialect", "'plain' or 'astm'"),
    ("unknown edge", lambda: draft.shorts(WOMAN).pieces["front"].edge("seam"), "edge of front", "side, hem, inseam"),
]


@pytest.mark.parametrize(("make", "field", "words"), [row[1:] for row in WRONG], ids=[row[0] for row in WRONG])
def test_wrong_choice_gives_one_clear_error(make, field, words):
    with pytest.raises(draft.DraftError, match=re.escape(words)) as caught:
        make()
    assert caught.value.field == field
    assert str(caught.value).startswith(field)
    assert caught.value.remedy


# Choices inside their own limits for which this body has no room. `put` makes the style of a value; the error names
# the largest (or smallest) value that works, which is then tried.
NO_ROOM = [
    ("mouth past the hip", "style.pocket.depth", 215.0, lambda v: draft.Style(pocket=draft.CurvedPocket(depth=v))),
    ("mouth into the fly", "style.pocket.width", 160.0, lambda v: draft.Style(pocket=draft.CurvedPocket(width=v))),
    (
        "mouth into the dart",
        "style.pocket.width",
        120.0,
        lambda v: draft.Style(darts=draft.Darts(front=1), pocket=draft.CurvedPocket(width=v)),
    ),
    ("bag past the hem", "style.pocket.bag_depth", 220.0,
     lambda v: draft.Style(leg=draft.Leg(inside_leg=50), hem=draft.TurnedCuff(depth=25),
                           pocket=draft.CurvedPocket(depth=150, bag_depth=v))),
    ("fly past the straight", "style.closing.length", 255.0, lambda v: draft.Style(closing=draft.FlyFront(length=v))),
    ("waist past the fly", "style.waist_drop", 145.0, lambda v: draft.Style(waist_drop=v)),
    ("leg past the floor", "style.leg.inside_leg", 900.0, lambda v: draft.Style(leg=draft.Leg(inside_leg=v))),
    ("stretch past 1.5 %", "style.leg.stretch", 8.0, lambda v: draft.Style(leg=draft.Leg(inside_leg=150, stretch=v))),
    ("cuff past the leg", "style.hem.depth", 60.0,
     lambda v: draft.Style(leg=draft.Leg(inside_leg=60), hem=draft.TurnedCuff(depth=v))),
    ("hem past the leg", "style.hem.depth", 60.0,
     lambda v: draft.Style(leg=draft.Leg(inside_leg=60), hem=draft.PlainHem(depth=v))),
    ("front dart eats the waist", "style.darts.front_share", 0.95,
     lambda v: draft.Style(darts=draft.Darts(front=1, front_share=v), pocket=None)),
    ("back dart eats the waist", "style.darts.back_share", 0.9,
     lambda v: draft.Style(darts=draft.Darts(back=1, back_share=v))),
    ("back darts too small to sew", "style.darts.back_share", 0.05,
     lambda v: draft.Style(darts=draft.Darts(back=2, back_share=v))),
    ("dart past the hip", "style.darts.back_centre_length", 240.0,
     lambda v: draft.Style(darts=draft.Darts(back_centre_length=v))),
    ("hem wider than seams can lean", "style.leg.hem", 1900.0,
     lambda v: draft.Style(leg=draft.Leg(inside_leg=150, hem=v))),
    ("hem narrower than seams can lean", "style.leg.hem", 160.0,
     lambda v: draft.Style(leg=draft.Leg(inside_leg=100, hem=v), hem=draft.PlainHem())),
    ("no room for the button", "style.band.underlap", 10.0, lambda v: draft.Style(band=draft.StraightBand(underlap=v))),
    ("facing narrower than its topstitching", "style.closing.width", 30.0,
     lambda v: draft.Style(closing=draft.FlyFront(width=v, topstitch=32))),
    ("thigh narrower than the fork", "style.ease.thigh", -40.0, lambda v: draft.Style(ease=draft.Ease(thigh=v))),
    ("thigh wider than the fork", "style.ease.thigh", 400.0, lambda v: draft.Style(ease=draft.Ease(thigh=v))),
]  # fmt: skip


@pytest.mark.parametrize(("field", "value", "put"), [row[1:] for row in NO_ROOM], ids=[row[0] for row in NO_ROOM])
def test_choice_without_room_names_a_limit_that_works(field, value, put):
    with pytest.raises(draft.DraftError) as caught:
        draft.shorts(WOMAN, put(value))
    assert caught.value.field == field
    assert caught.value.value == value
    limits = [float(n) for n in re.findall(r"-?\d+(?:\.\d+)?", caught.value.expected)]
    assert limits, caught.value.expected
    step = 0.011 if field.endswith("share") else 0.11 if field.endswith("stretch") else 1.0
    limit = max(limits) if "to" in caught.value.expected.split() and value > max(limits) else limits[0]
    works = limit - step if value > limit else limit + step
    assert list(draft.shorts(WOMAN, put(works)).check()) == []


def test_choices_are_frozen():
    with pytest.raises(dataclasses.FrozenInstanceError):
        draft.Style().waist_drop = 10


def test_text_with_units_is_read():
    assert draft.TurnedCuff(depth="4 cm").depth == 40.0
    assert draft.Leg(inside_leg='6 1/2"').inside_leg == pytest.approx(165.1)


def test_a_refused_pattern_leaves_no_file(tmp_path):
    target = tmp_path / "shorts.svg"
    with pytest.raises(draft.DraftError):
        draft.shorts(WOMAN, draft.Style(pocket=draft.CurvedPocket(depth=215))).save_svg(target)
    assert list(tmp_path.iterdir()) == []
