"""Wrong inputs and what each must be told: (name, keywords, pattern of the message).

Every pattern asks for the field, the value, what was expected and the remedy. ``(?s)`` lets it run over several lines.
"""

import numpy as np

GOOD = {"waist": 720, "hip": 980, "crotch_depth": 262, "waist_to_hip": 205, "inside_leg": 760}
"""A body that is accepted; each row below spoils it in one way."""


def without(*fields):
    return {field: size for field, size in GOOD.items() if field not in fields}


LENGTH = "expected a length in mm, cm, m, in or ft"

BAD_BODIES = [
    # text and types, read by the units
    (
        "unknown unit",
        GOOD | {"waist": "28 parsecs"},
        rf"body\.waist is '28 parsecs', {LENGTH}: write one of these units",
    ),
    ("misspelt unit", GOOD | {"waist": "28 inchs"}, rf"body\.waist is '28 inchs', {LENGTH}: write 'inches' instead of"),
    (
        "misspelt metric",
        GOOD | {"hip": "98 centimtres"},
        rf"body\.hip is '98 centimtres', {LENGTH}: write 'centimetres'",
    ),
    ("empty text", GOOD | {"waist": ""}, rf"body\.waist is '', {LENGTH}: write a length .* or leave the field out"),
    ("only spaces", GOOD | {"hip": "  "}, rf"body\.hip is '  ', {LENGTH}: write a length .* or leave the field out"),
    (
        "divided by zero",
        GOOD | {"waist": "28 1/0 in"},
        rf"body\.waist is '28 1/0 in', {LENGTH}: .*divide by zero: correct",
    ),
    ("garbage", GOOD | {"waist": "about 72"}, rf"body\.waist is 'about 72', {LENGTH}: write one number and one unit"),
    ("only a unit", GOOD | {"waist": "cm"}, rf"body\.waist is 'cm', {LENGTH}: write one number and one unit"),
    (
        "two numbers",
        GOOD | {"waist": "72 98 cm"},
        rf"body\.waist is '72 98 cm', {LENGTH}: write one number and one unit",
    ),
    ("raised digit", GOOD | {"waist": "72²"}, rf"body\.waist is '72²', {LENGTH}: write one number and one unit"),
    ("hidden infinity", GOOD | {"hip": "inf"}, rf"body\.hip is 'inf', {LENGTH}: write one number and one unit"),
    ("thousands", GOOD | {"hip": "1,020 mm"}, r"body\.hip is '1,020 mm', .* read in one way: write 1\.020 or 1020"),
    ("long text", GOOD | {"hip": "9" * 5000}, rf"body\.hip is \S{{50,70}}\.\.\.\S*, {LENGTH}: write one length only"),
    ("truth value", GOOD | {"waist": True}, rf"body\.waist is True, {LENGTH}: write a number of millimetres or text"),
    ("numpy truth", GOOD | {"waist": np.True_}, rf"body\.waist is np\.True_, {LENGTH}: write a number of millimetres"),
    ("complex", GOOD | {"waist": 720 + 0j}, rf"body\.waist is \(720\+0j\), {LENGTH}: write a number of millimetres"),
    ("list", GOOD | {"waist": [720]}, rf"body\.waist is \[720\], {LENGTH}: write a number of millimetres or text"),
    ("bytes", GOOD | {"waist": b"72 cm"}, rf"body\.waist is b'72 cm', {LENGTH}: write a number of millimetres or text"),
    ("array", GOOD | {"waist": np.arange(3)}, rf"body\.waist is array\(\[0, 1, 2\]\), {LENGTH}: write a number"),
    (
        "nan",
        GOOD | {"waist": float("nan")},
        r"body\.waist is nan, expected a finite length .*: write a length such as 720",
    ),
    ("numpy nan", GOOD | {"hip": np.float64("nan")}, r"body\.hip is nan, expected a finite length .*: write a length"),
    ("infinity", GOOD | {"hip": float("inf")}, r"body\.hip is inf, expected a finite length .*: write a length"),
    ("huge integer", GOOD | {"hip": 10**400}, r"body\.hip is inf, expected a finite length .*: write a length"),
    # names
    (
        "misspelt field",
        without("waist") | {"wasit": 720},
        r"\Abody\.wasit is 720, expected one of waist, hip, .*: write waist",
    ),
    (
        "unknown field",
        GOOD | {"shoulder": 400},
        r"\Abody\.shoulder is 400, expected one of waist, .*: leave shoulder out",
    ),
    (
        "unknown and none",
        GOOD | {"shoulder": None},
        r"body\.shoulder is 'None', expected one of .*: leave shoulder out",
    ),
    (
        "hip missing",
        without("hip"),
        r"body\.hip is missing, expected 450 to 2100 mm: measure it level round the fullest",
    ),
    (
        "waist is none",
        GOOD | {"waist": None},
        r"body\.waist is missing, expected 400 to 2000 mm: measure it level round",
    ),
    (
        "depth missing",
        without("crotch_depth"),
        r"body\.crotch_depth is missing, .*: measure it at the side.*chair, sitting",
    ),
    (
        "level missing",
        without("waist_to_hip"),
        r"body\.waist_to_hip is missing, expected 40 to 350 mm: measure it at the",
    ),
    ("leg missing", without("inside_leg"), r"body\.inside_leg is missing, .*: measure it from the crotch to the floor"),
    # sizes: another unit was meant
    (
        "waist in cm or in",
        GOOD | {"waist": 72},
        r'body\.waist is 72\.0, expected 400 to 2000 mm .*"72 cm" or 720, .* "72 in"',
    ),
    (
        "waist in inches",
        GOOD | {"waist": 28},
        r'body\.waist is 28\.0, .*: 28 looks like inches; write "28 in" or 711\.2',
    ),
    (
        "waist in metres",
        GOOD | {"waist": 0.72},
        r'body\.waist is 0\.72, .*: 0\.72 looks like metres; write "0\.72 m" or 720',
    ),
    ("waist as bare text", GOOD | {"waist": "28"}, r"body\.waist is '28', .*: 28 looks like inches; write \"28 in\""),
    (
        "depth in cm",
        GOOD | {"crotch_depth": 26.2},
        r'body\.crotch_depth is 26\.2, .*centimetres; write "26\.2 cm" or 262',
    ),
    (
        "hip in inches",
        GOOD | {"hip": 38.5},
        r'body\.hip is 38\.5, .*: 38\.5 looks like inches; write "38\.5 in" or 977\.9',
    ),
    (
        "ankle in cm",
        GOOD | {"ankle": 23},
        r'body\.ankle is 23\.0, expected 100 to 450 mm .*centimetres; write "23 cm" or 230',
    ),
    # sizes: no unit helps
    (
        "zero",
        GOOD | {"waist": 0},
        r"body\.waist is 0\.0, expected 400 to 2000 mm \(children from .*: measure it again, level",
    ),
    (
        "negative",
        GOOD | {"inside_leg": -760},
        r"body\.inside_leg is -760\.0, expected 250 to 1150 mm .*: measure it again",
    ),
    ("negative text", GOOD | {"hip": "-98 cm"}, r"body\.hip is '-98 cm', expected 450 to 2100 mm .*: measure it again"),
    (
        "too large",
        GOOD | {"hip": 2500},
        r"body\.hip is 2500\.0, expected 450 to 2100 mm .*: measure it again, level round",
    ),
    (
        "unit is named",
        GOOD | {"waist": "28 mm"},
        r"body\.waist is '28 mm', expected 400 to 2000 mm .*: measure it again",
    ),
    (
        "thigh too large",
        GOOD | {"thigh": 1300},
        r"body\.thigh is 1300\.0, expected 200 to 1200 mm .*: measure it again",
    ),
    (
        "knee too small",
        GOOD | {"knee": 100.5},
        r"body\.knee is 100\.5, expected 150 to 850 mm .*: measure it again, level",
    ),
    # measures that contradict each other
    (
        "hip below the chair",
        GOOD | {"waist_to_hip": 270},
        r"body\.waist_to_hip is 270\.0, expected 262\.0 mm or less, the seated crotch depth: measure .*write 262\.0",
    ),
    (
        "hip far below crotch, standing",
        GOOD | {"waist_to_hip": 303, "crotch_depth_taken": "standing"},
        r"body\.waist_to_hip is 303\.0, expected 302\.0 mm or less, 40 mm more than the standing .* write 302\.0",
    ),
    (
        "hip far above waist",
        GOOD | {"hip": 1400},
        r"body\.hip is 1400\.0, expected 504\.0 to 1320\.0 mm, for a waist of 720",
    ),
    (
        "waist far above hip",
        GOOD | {"waist": 1500},
        r"body\.hip is 980\.0, expected 1100\.0 to 2100\.0 mm, for .*: measure the",
    ),
    (
        "front short",
        GOOD | {"front_crotch": 165},
        r"body\.front_crotch is 165\.0, expected 172\.9 mm or more .* 247\.0 .*weight",
    ),
    (
        "back short",
        GOOD | {"back_crotch": 240},
        r"body\.back_crotch is 240\.0, expected 247\.0 mm or more .*: measure it again",
    ),
    (
        "crotch short",
        GOOD | {"front_crotch": 200, "back_crotch": 260},
        r"front_crotch \+ body\.back_crotch is \(200\.0, 260\.0\), expected 469\.3 mm or more together .*: measure",
    ),
    (
        "crotch long",
        GOOD | {"front_crotch": 480, "back_crotch": 560},
        r"front_crotch \+ body\.back_crotch is \(480\.0, 560\.0\), expected 984\.0 mm or less together .*: measure",
    ),
    (
        "crotch split",
        GOOD | {"front_crotch": 180, "back_crotch": 660},
        r"body\.back_crotch is \(180\.0, 660\.0\), expected the back 0\.5 to 3\.5 times the front: hang a small weight",
    ),
    (
        "thigh as hip",
        GOOD | {"thigh": 900},
        r"body\.thigh is 900\.0, expected 343\.0 to 882\.0 mm, .* the hip .*: measure the",
    ),
    (
        "knee over thigh",
        GOOD | {"thigh": 500, "knee": 520},
        r"body\.knee is 520\.0, expected 200\.0 to 500\.0 mm, .*thigh again",
    ),
    (
        "calf over thigh",
        GOOD | {"thigh": 400, "calf": 410},
        r"body\.calf is 410\.0, expected 120\.0 to 400\.0 mm, .*thigh again",
    ),
    (
        "ankle over calf",
        GOOD | {"calf": 300, "ankle": 310},
        r"body\.ankle is 310\.0, expected 105\.0 to 300\.0 mm, .*calf again",
    ),
    (
        "ankle over knee",
        GOOD | {"knee": 300, "ankle": 310},
        r"body\.ankle is 310\.0, expected 90\.0 to 300\.0 mm, .*knee again",
    ),
    (
        "kneecap high",
        GOOD | {"knee_height": 690},
        r"body\.knee_height is 690\.0, expected 304\.0 to 646\.0 mm, .*leg again",
    ),
    (
        "body deep",
        GOOD | {"hip_depth": 450},
        r"body\.hip_depth is 450\.0, expected 117\.6 to 392\.0 mm, .*: measure the hip",
    ),
    # words
    (
        "taken misspelt",
        GOOD | {"crotch_depth_taken": "seatd"},
        r"depth_taken is 'seatd', expected 'seated' or .*: write 'seated'",
    ),
    (
        "taken unknown",
        GOOD | {"crotch_depth_taken": 3},
        r"depth_taken is 3, expected 'seated' or 'standing': say whether the",
    ),
    (
        "taken is none",
        GOOD | {"crotch_depth_taken": None},
        r"depth_taken is 'None', expected 'seated' or 'standing': say whether",
    ),
    (
        "name no text",
        GOOD | {"name": 7},
        r"body\.name is 7, expected one line of text: write a short label, or leave it out",
    ),
    (
        "name of two lines",
        GOOD | {"name": "a\nb"},
        r"body\.name is 'a\\nb', expected one line of text: write a short label",
    ),
    # several at once
    (
        "three wrong",
        GOOD | {"waist": 28, "hip": "98 parsecs", "knee": -1},
        r"(?s)\A3 inputs are wrong\.\nbody\.waist is 28\.0, .*\nbody\.hip is '98 parsecs', .*\nbody\.knee is -1\.0, .*",
    ),
    (
        "nothing given",
        {},
        r"(?s)\A5 inputs .*\.waist is missing.*hip is missing.*crotch_depth is.*waist_to_hip is.*inside_leg is missing",
    ),
    (
        "misspelt and wrong",
        without("hip") | {"hips": 39},
        r"(?s)\A2 inputs .*body\.hips is 39, expected one of .*: write hip .*body\.hip is 39\.0, .*write \"39 in\"",
    ),
    (
        "contradiction and range",
        GOOD | {"waist_to_hip": 300, "calf": 5},
        r"(?s)\A2 inputs .*body\.calf is 5\.0, expected 140 to 750 mm .*body\.waist_to_hip is 300\.0, expected 262\.0",
    ),
]
