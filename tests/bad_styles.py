"""Wrong choices and what each must be told; and choices that a body has no room for.

`WRONG`: (name, what is written, and patterns of what the message says: field and value, what was expected, the remedy).
`NO_ROOM`: choices inside their own limits that some bodies cannot have, with the limit each message names.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

import numpy as np
from zoo import WOMAN, ZOO

import draft
from draft.style import Pocket

LIMITS = "choose a value inside these limits"
LENGTH = r"a (finite )?length in mm, cm, m, in or ft"
NUMBER = "write a number of millimetres or text"


def shorts(style: draft.Style) -> draft.Pattern:
    return draft.shorts(WOMAN, style)


WRONG = [
    # names
    (
        "misspelt part",
        lambda: draft.Style(pokcet=None),
        r"style\.pokcet is missing",
        "one of name, leg, .*",
        "write 'pocket'",
    ),
    (
        "misspelt length",
        lambda: draft.Leg(insideleg=100),
        r"style\.leg\.insideleg is 100",
        "one of inside_leg, .*",
        "write 'inside_leg'",
    ),
    (
        "misspelt ease",
        lambda: draft.Ease(hips=40),
        r"style\.ease\.hips is 40",
        "one of waist, hip, thigh, front_crotch, back_crotch",
        "write 'hip'",
    ),
    (
        "misspelt share",
        lambda: draft.Darts(backshare=0.4),
        r"style\.darts\.backshare is 0\.4",
        "one of front, .*",
        "write 'back_share'",
    ),
    (
        "misspelt button",
        lambda: draft.StraightBand(buton=15),
        r"style\.band\.buton is 15",
        "one of depth, .*",
        "write 'button'",
    ),
    (
        "unknown word",
        lambda: draft.PlainHem(colour=1),
        r"style\.hem\.colour is 1",
        "one of depth, turn",
        "choose one of these",
    ),
    (
        "unknown seam",
        lambda: draft.Allowances(elbow=8),
        r"style\.allowances\.elbow is 8",
        "one of side, inseam, .*",
        "choose one of these",
    ),
    ("two misspelt, the first is told", lambda: draft.Style(lge=1, hme=2), r"style\.lge is 1", ".*", "write 'leg'"),
    (
        "no name: a length",
        lambda: draft.Leg(150),
        r"style\.leg is \(150,\)",
        "choices by name",
        r"write Leg\(inside_leg=\.\.\.\)",
    ),
    (
        "no name: a part",
        lambda: draft.Style("summer"),
        r"style is \('summer',\)",
        "choices by name",
        r"write Style\(name=\.\.\.\)",
    ),
    # types of parts
    ("name is a number", lambda: draft.Style(name=5), r"style\.name is 5", "one line of text", "write a short label"),
    (
        "name of two lines",
        lambda: draft.Style(name="a\nb"),
        r"style\.name is 'a\\nb'",
        "one line of text",
        "write a short label",
    ),
    ("leg is a number", lambda: draft.Style(leg=150), r"style\.leg is 150", "a Leg", r"write draft\.Leg\(\.\.\.\)"),
    ("leg is none", lambda: draft.Style(leg=None), r"style\.leg is missing", "a Leg", r"write draft\.Leg"),
    (
        "pocket is text",
        lambda: draft.Style(pocket="curved"),
        r"style\.pocket is 'curved'",
        "a CurvedPocket or .*",
        r"write draft\.CurvedPocket",
    ),
    (
        "hem is a pocket",
        lambda: draft.Style(hem=draft.CurvedPocket()),
        r"style\.hem is CurvedPocket\(.*\)",
        "a TurnedCuff or PlainHem or .*",
        r"write draft\.TurnedCuff",
    ),
    (
        "band is left out",
        lambda: draft.Style(band=None),
        r"style\.band is missing",
        "a StraightBand or .*",
        r"write draft\.StraightBand",
    ),
    (
        "closing is a class",
        lambda: draft.Style(closing=draft.FlyFront),
        r"style\.closing is <class .*>",
        "a FlyFront or .*",
        r"write draft\.FlyFront",
    ),
    (
        "ease is a mapping",
        lambda: draft.Style(ease={"hip": 60}),
        r"style\.ease is \{'hip': 60\}",
        "a Ease",
        r"write draft\.Ease",
    ),
    (
        "pocket of no kind",
        lambda: shorts(draft.Style(pocket=Pocket())),
        r"style\.pocket is Pocket\(\)",
        "a CurvedPocket or .*",
        "choose a kind that has pieces",
    ),
    (
        "interfacing is text",
        lambda: draft.Style(interfacing="yes"),
        r"style\.interfacing is 'yes'",
        "True or False",
        "choose one of the two",
    ),
    (
        "interfacing is one",
        lambda: draft.Style(interfacing=1),
        r"style\.interfacing is 1",
        "True or False",
        "choose one of the two",
    ),
    # lengths
    (
        "nan",
        lambda: draft.Leg(inside_leg=float("nan")),
        r"style\.leg\.inside_leg is nan",
        LENGTH,
        "write a length such as 720",
    ),
    ("infinity", lambda: draft.Ease(hip=float("inf")), r"style\.ease\.hip is inf", LENGTH, "write a length"),
    (
        "numpy nan",
        lambda: draft.Style(waist_drop=np.float64("nan")),
        r"style\.waist_drop is nan",
        LENGTH,
        "write a length",
    ),
    (
        "unknown unit",
        lambda: draft.TurnedCuff(depth="4 cubits"),
        r"style\.hem\.depth is '4 cubits'",
        LENGTH,
        "write one of these units",
    ),
    (
        "misspelt unit",
        lambda: draft.TurnedCuff(depth="4 centimtres"),
        r"style\.hem\.depth is '4 centimtres'",
        LENGTH,
        "write 'centimetres'",
    ),
    (
        "empty text",
        lambda: draft.Leg(hem=""),
        r"style\.leg\.hem is ''",
        LENGTH,
        "write a length .* or leave the field out",
    ),
    ("truth value", lambda: draft.StraightBand(depth=True), r"style\.band\.depth is True", LENGTH, NUMBER),
    (
        "none where a size is needed",
        lambda: draft.Allowances(side=None),
        r"style\.allowances\.side is missing",
        LENGTH,
        NUMBER,
    ),
    ("complex", lambda: draft.CurvedPocket(width=90j), r"style\.pocket\.width is 90j", LENGTH, NUMBER),
    ("list", lambda: draft.FlyFront(length=[150]), r"style\.closing\.length is \[150\]", LENGTH, NUMBER),
    # limits
    ("leg too short", lambda: draft.Leg(inside_leg=20), r"style\.leg\.inside_leg is 20", "50 to 1150 mm", LIMITS),
    (
        "leg in cm",
        lambda: draft.Leg(inside_leg="8 cm 2"),
        r"style\.leg\.inside_leg is '8 cm 2'",
        LENGTH,
        "write one number and one unit",
    ),
    ("hem too wide as text", lambda: draft.Leg(hem="3 m"), r"style\.leg\.hem is '3 m'", "150 to 2000 mm", LIMITS),
    ("raised to the ribs", lambda: draft.Style(waist_drop=-95), r"style\.waist_drop is -95", "-90 to 150 mm", LIMITS),
    ("ease far too tight", lambda: draft.Ease(waist=-200), r"style\.ease\.waist is -200", "-60 to 300 mm", LIMITS),
    (
        "fly without allowance for its fold",
        lambda: draft.Allowances(fly=4),
        r"style\.allowances\.fly is 4",
        "6 to 25 mm",
        LIMITS,
    ),
    ("button like a plate", lambda: draft.StraightBand(button=90), r"style\.band\.button is 90", "8 to 40 mm", LIMITS),
    (
        "facing past its bag",
        lambda: draft.CurvedPocket(facing_depth=50),
        r"style\.pocket\.facing_depth is 50\.0",
        "at most 40 mm, the bag_beyond: .*",
        "make the facing narrower or the bag wider",
    ),
    # numbers and words
    (
        "half a dart",
        lambda: draft.Darts(back=1.5),
        r"style\.darts\.back is 1\.5",
        "a whole number from 0 to 2",
        "choose one of these",
    ),
    (
        "three darts",
        lambda: draft.Darts(back=3),
        r"style\.darts\.back is 3",
        "a whole number from 0 to 2",
        "choose one of these",
    ),
    (
        "dart is true",
        lambda: draft.Darts(front=True),
        r"style\.darts\.front is True",
        "a whole number from 0 to 1",
        "choose one of these",
    ),
    ("share above one", lambda: draft.Darts(back_share=1.2), r"style\.darts\.back_share is 1\.2", "0 to 1", LIMITS),
    (
        "share below none",
        lambda: draft.Darts(front_share=-0.1),
        r"style\.darts\.front_share is -0\.1",
        "0 to 1",
        LIMITS,
    ),
    (
        "share is nan",
        lambda: draft.Darts(front_share=float("nan")),
        r"style\.darts\.front_share is nan",
        "0 to 1",
        LIMITS,
    ),
    (
        "share as text",
        lambda: draft.Darts(back_share="40 %"),
        r"style\.darts\.back_share is '40 %'",
        "a number from 0 to 1",
        r"give a share, e\.g\. 0\.4",
    ),
    (
        "share is true",
        lambda: draft.Darts(back_share=True),
        r"style\.darts\.back_share is True",
        "a number from 0 to 1",
        "give a share",
    ),
    (
        "unknown lap",
        lambda: draft.FlyFront(lap="left"),
        r"style\.closing\.lap is 'left'",
        "'left_over_right' or 'right_over_left'",
        "choose one",
    ),
    (
        "lap of arrays",
        lambda: draft.FlyFront(lap=np.array([1, 2])),
        r"style\.closing\.lap is array\(\[1, 2\]\)",
        "'left_over_right' or .*",
        "choose one",
    ),
    (
        "unknown sections",
        lambda: draft.StraightBand(sections="three"),
        r"style\.band\.sections is 'three'",
        "'one' or 'side_seams'",
        "choose one",
    ),
    # calls
    ("no body", lambda: draft.shorts(None), r"body is missing", r"a draft\.Body", r"write draft\.Body\(waist="),
    (
        "body is a mapping",
        lambda: draft.trousers({"waist": 700}),
        r"body is \{'waist': 700\}",
        r"a draft\.Body",
        r"write draft\.Body\(waist=",
    ),
    (
        "style is a part of it",
        lambda: shorts(draft.PlainHem()),
        r"style is PlainHem\(.*\)",
        r"a draft\.Style",
        r"write draft\.Style\(\.\.\.\)",
    ),
    (
        "unknown method",
        lambda: draft.shorts(WOMAN, method="free hand"),
        r"method is 'free hand'",
        "one of centre_line, seat_sixths, ten_degrees, tenths_of_hip, third_of_hip",
        "choose a method that exists, or pass a function",
    ),
    (
        "unknown fit",
        lambda: draft.shorts(WOMAN, fit="tight"),
        r"fit is 'tight'",
        "'measured' or 'formula'",
        "choose one of these",
    ),
    (
        "unknown dialect",
        lambda: draft.shorts(WOMAN).save_dxf("x.dxf", dialect="plane"),
        r"dialect is 'plane'",
        "'plain' or 'astm'",
        "choose one of these",
    ),
    (
        "unknown edge",
        lambda: draft.shorts(WOMAN).pieces["front"].edge("cuff"),
        r"edge of front is 'cuff'",
        "one of side, hem, inseam, .*",
        "name one of them",
    ),
]


class NoRoom(NamedTuple):
    """A choice that goes too far on a body; `make` puts one number into a style, `beyond` is too much or too little.

    `step` is how far inside the printed limit the number must work: printed limits are rounded. `bodies` are those it
    is tried on; left out: all of the zoo.
    """

    name: str
    field: str
    make: Callable[[float], draft.Style]
    beyond: float
    remedy: str
    step: float = 1.0
    bodies: tuple[str, ...] = tuple(ZOO)


def leg(**sizes: float) -> draft.Style:
    return draft.Style(leg=draft.Leg(**sizes), hem=draft.PlainHem(depth=10, turn=0), pocket=None)


NO_ROOM = [
    NoRoom(
        "waist drop too deep", "style.waist_drop", lambda v: draft.Style(waist_drop=v, pocket=None), 150, "smaller drop"
    ),
    NoRoom(
        "front dart into the hip",
        "style.darts.front_length",
        lambda v: draft.Style(darts=draft.Darts(front=1, front_length=v), pocket=None),
        250,
        "inside these limits",
    ),
    NoRoom(
        "back dart into the hip",
        "style.darts.back_centre_length",
        lambda v: draft.Style(darts=draft.Darts(back_centre_length=v)),
        250,
        "inside these limits",
    ),
    NoRoom(
        "side dart into the hip",
        "style.darts.back_side_length",
        lambda v: draft.Style(darts=draft.Darts(back_side_length=v)),
        250,
        "inside these limits",
    ),
    NoRoom(
        "front dart eats the waist",
        "style.darts.front_share",
        lambda v: draft.Style(darts=draft.Darts(front=1, front_share=v), pocket=None),
        1.0,
        "smaller share",
        0.01,
    ),
    NoRoom(
        "one back dart eats the waist",
        "style.darts.back_share",
        lambda v: draft.Style(darts=draft.Darts(back=1, back_share=v)),
        1.0,
        "smaller share",
        0.01,
    ),
    NoRoom(
        "two back darts eat the waist",
        "style.darts.back_share",
        lambda v: draft.Style(darts=draft.Darts(back=2, back_share=v)),
        1.0,
        "smaller share",
        0.01,
    ),
    NoRoom(
        "back darts too small to sew",
        "style.darts.back_share",
        lambda v: draft.Style(darts=draft.Darts(back=2, back_share=v)),
        0.02,
        "larger share, or style.darts.back=",
        0.01,
    ),
    NoRoom(
        "leg longer than the body's",
        "style.leg.inside_leg",
        lambda v: draft.Style(leg=draft.Leg(inside_leg=v)),
        1150,
        "shorter leg",
    ),
    NoRoom(
        "stretched too much", "style.leg.stretch", lambda v: leg(inside_leg=150, stretch=v), 13, "stretch it less", 0.1
    ),
    NoRoom("hem too wide, short", "style.leg.hem", lambda v: leg(inside_leg=160, hem=v), 2000, "another width"),
    NoRoom("hem too narrow, short", "style.leg.hem", lambda v: leg(inside_leg=90, hem=v), 150, "another width"),
    NoRoom("hem too wide, long", "style.leg.hem", lambda v: leg(inside_leg=310, hem=v), 2000, "another width"),
    NoRoom(
        "knee too wide",
        "style.leg.knee",
        lambda v: draft.Style(leg=draft.Leg(inside_leg=520, knee=v)),
        1500,
        "another width",
        bodies=("woman", "man", "small", "stout", "slim"),
    ),
    NoRoom(
        "knee too narrow",
        "style.leg.knee",
        lambda v: leg(inside_leg=430, knee=v),
        180,
        "another width",
        bodies=("woman", "stout", "very large"),
    ),
    NoRoom("thigh too wide", "style.ease.thigh", lambda v: draft.Style(ease=draft.Ease(thigh=v)), 400, "another ease"),
    NoRoom(
        "thigh too narrow",
        "style.ease.thigh",
        lambda v: draft.Style(ease=draft.Ease(thigh=v), allowances=draft.Allowances(crotch=4)),
        -40,
        "another ease",
    ),
    NoRoom(
        "mouth into the fly",
        "style.pocket.width",
        lambda v: draft.Style(pocket=draft.CurvedPocket(width=v)),
        160,
        "mouth narrower",
    ),
    NoRoom(
        "mouth into the dart",
        "style.pocket.width",
        lambda v: draft.Style(pocket=draft.CurvedPocket(width=v), darts=draft.Darts(front=1)),
        160,
        "mouth narrower",
    ),
    NoRoom(
        "mouth past the hip",
        "style.pocket.depth",
        lambda v: draft.Style(pocket=draft.CurvedPocket(depth=v)),
        220,
        "end it higher",
    ),
    NoRoom(
        "bag past the cuff",
        "style.pocket.bag_depth",
        lambda v: draft.Style(pocket=draft.CurvedPocket(bag_depth=v), leg=draft.Leg(inside_leg=70)),
        220,
        "bag shallower",
    ),
    NoRoom(
        "fly past the straight",
        "style.closing.length",
        lambda v: draft.Style(closing=draft.FlyFront(length=v)),
        260,
        "shorten it",
    ),
    NoRoom(
        "fly into the dart",
        "style.closing.width",
        lambda v: draft.Style(closing=draft.FlyFront(width=v), darts=draft.Darts(front=1), pocket=None),
        60,
        "narrower",
    ),
    NoRoom(
        "shield inside the topstitching",
        "style.closing.shield_width",
        lambda v: draft.Style(closing=draft.FlyFront(shield_width=v)),
        20,
        "widen it",
    ),
    NoRoom(
        "underlap too small for the button",
        "style.band.underlap",
        lambda v: draft.Style(band=draft.StraightBand(underlap=v)),
        0,
        "make it wider",
    ),
    NoRoom(
        "underlap too small for a large button",
        "style.band.underlap",
        lambda v: draft.Style(band=draft.StraightBand(underlap=v, button=30)),
        20,
        "make it wider",
    ),
    NoRoom(
        "cuff deeper than the leg",
        "style.hem.depth",
        lambda v: draft.Style(leg=draft.Leg(inside_leg=80), hem=draft.TurnedCuff(depth=v)),
        120,
        "cuff shallower",
        0.1,
    ),
    NoRoom(
        "hem deeper than the leg",
        "style.hem.depth",
        lambda v: draft.Style(leg=draft.Leg(inside_leg=80), hem=draft.PlainHem(depth=v)),
        80,
        "hem shallower",
        0.1,
    ),
    NoRoom(
        "allowance past the curve",
        "style.allowances.crotch",
        lambda v: draft.Style(allowances=draft.Allowances(crotch=v)),
        25,
        "narrower allowance",
        0.5,
    ),
]
