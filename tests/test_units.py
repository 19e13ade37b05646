import math
import sys
import unicodedata
from decimal import Decimal
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from draft.errors import DraftError
from draft.units import HAIR, MM_PER_INCH, MM_PER_UNIT, at_least, at_most, fmt, has_unit, to_mm

INCH = Fraction(254, 10)  # the international inch of 1959: 25.4 mm exactly (from memory)
LONGEST_MM = 10_000_000
FLOAT_TOL = 1e-12  # relative: one rounding of the text, one of the expected value


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        (720, 720.0),
        (720.0, 720.0),
        (np.float32(720), 720.0),
        (np.float64(720.25), 720.25),
        (np.int16(720), 720.0),
        (np.uint8(72), 72.0),
        (Fraction(1441, 2), 720.5),
        (Decimal("720.5"), 720.5),
        ("720", 720.0),
        ("720mm", 720.0),
        ("720 millimetres", 720.0),
        ("72 cm", 720.0),
        ("72CM", 720.0),
        (np.str_("72 cm"), 720.0),
        ("72.0 centimeters", 720.0),
        ("28,5 cm", 285.0),
        ("0.72 m", 720.0),
        ("0,720 m", 720.0),
        (".5 cm", 5.0),
        ("28.375 inches", 720.725),
        ("28 3/8 in", 720.725),
        ("28 3/8 in.", 720.725),
        ("28-3/8 inch", 720.725),
        ('28 3/8"', 720.725),
        ("28⅜″", 720.725),
        ("28 ⅜ in", 720.725),
        ("28⅜”", 720.725),
        ("28⅜''", 720.725),
        ("28 3⁄8 in", 720.725),
        ("227/8 in", 720.725),
        ("28\u00a03/8\u202fin", 720.725),
        ("\t28 3/8   in\n", 720.725),
        ("⅟8 in", 3.175),
        ("2 ft 4 in", 711.2),
        ("2ft 4⅜in", 720.725),
        ("2' 4 3/8\"", 720.725),
        ("2′4″", 711.2),
        ("2.5 ft", 762.0),
        ("72 ㎝", 720.0),
        ("７２cm", 720.0),
        ("-1 1/2 in", -38.1),
        ("−15 mm", -15.0),
        ("+15", 15.0),
        ("0", 0.0),
    ],
)
def test_reads_as_a_person_writes(text, mm):
    read = to_mm(text)
    assert type(read) is float
    assert read == mm


@pytest.mark.parametrize(
    ("text", "remedy"),
    [
        ("28 parsecs", "write one of these units instead of 'parsecs'"),
        ("28 inchs", "write 'inches' instead of 'inchs'"),
        ("28 metrs", "write 'metres' instead of 'metrs'"),
        ("", "write a length"),
        ("\u00a0", "write a length"),
        ("28 1/0 in", "divide by zero"),
        ("28 0/0", "divide by zero"),
        ("1,250 mm", "write 1.250 or 1250"),
        ("nan", "write one number and one unit"),
        ("1e3", "write one number and one unit"),
        ("0x10", "write one number and one unit"),
        ("1_000", "write one number and one unit"),
        ("12.5 3/8 in", "write one number and one unit"),
        ("28 3/ in", "write one number and one unit"),
        ("3/8/2 in", "write one number and one unit"),
        ("--5", "write one number and one unit"),
        ("72²", "write one number and one unit"),
        ("4 in 2 ft", "write one number and one unit"),
        ("7" * 5000, "write one length only"),
        (None, "write a number of millimetres or text"),
        (True, "write a number of millimetres or text"),
        (np.False_, "write a number of millimetres or text"),
        (1j, "write a number of millimetres or text"),
        (np.array([720.0, 980.0]), "write a number of millimetres or text"),
        (object, "write a number of millimetres or text"),
        (math.nan, "write a length"),
        (-math.inf, "write a length"),
        (np.float32("nan"), "write a length"),
        (Decimal("sNaN"), "write a length"),
        (10**400, "write a length"),
    ],
)
def test_refuses_with_field_and_remedy(text, remedy):
    with pytest.raises(DraftError) as caught:
        to_mm(text, "style.ease.hip")
    assert caught.value.field == "style.ease.hip"
    assert "length in mm, cm, m, in or ft" in caught.value.expected
    assert remedy in caught.value.remedy
    message = str(caught.value)
    assert message.startswith("style.ease.hip is ")
    assert "np.float" not in message
    assert len(message) < 300


def test_inch_is_exact():
    assert Fraction(str(MM_PER_INCH)) == INCH
    assert to_mm("1 in") == MM_PER_UNIT["in"] == float(INCH)
    assert to_mm("1 ft") == MM_PER_UNIT["ft"] == float(12 * INCH)


def test_every_vulgar_fraction_of_unicode_is_read():
    # Outside truth: the numeric value in the Unicode character database, as shipped with Python.
    signs = [
        chr(code)
        for code in range(sys.maxunicode + 1)
        if unicodedata.decomposition(chr(code)).startswith("<fraction>") and chr(code) != "⅟"  # a numerator only
    ]
    assert len(signs) >= 18
    for sign in signs:
        assert to_mm(f"28{sign} mm") == pytest.approx(28 + unicodedata.numeric(sign), rel=FLOAT_TOL)


@given(st.integers(-LONGEST_MM, LONGEST_MM), st.sampled_from(sorted(MM_PER_UNIT)))
def test_whole_numbers_of_any_unit(count, unit):
    assert to_mm(f"{count} {unit}") == pytest.approx(count * MM_PER_UNIT[unit], rel=FLOAT_TOL)


@given(st.floats(-LONGEST_MM, LONGEST_MM))
def test_round_trip_through_cm(mm):
    assert to_mm(f"{mm / 10:.9f} cm") == pytest.approx(mm, abs=1e-7)


@given(st.integers(0, 200), st.integers(1, 31))
def test_round_trip_through_inches_and_fractions(whole, parts):
    expected = float((whole + Fraction(parts, 32)) * INCH)
    assert to_mm(f"{whole} {parts}/32 in") == expected
    assert to_mm(f"{whole}-{parts}/32 inches") == expected
    assert to_mm(f'{whole + parts / 32}"') == expected


@given(st.integers(0, 20), st.integers(0, 11), st.integers(1, 7))
def test_feet_and_inches_add_up(feet, inches, parts):
    expected = float((12 * feet + inches + Fraction(parts, 8)) * INCH)
    assert to_mm(f"{feet} ft {inches} {parts}/8 in") == expected


@given(st.decimals(0, 9999, places=2))
def test_comma_and_point_are_the_same(number):
    assert to_mm(f"{number} cm".replace(".", ",")) == to_mm(f"{number} cm")


@given(st.one_of(st.text(), st.text("0123456789 /.,-'\"cmint½", max_size=12), st.floats(), st.integers(), st.binary()))
def test_gives_a_float_or_one_error(anything):
    try:
        mm = to_mm(anything)
    except DraftError:
        return
    assert math.isfinite(mm)


@pytest.mark.parametrize("text", ["72 cm", '28"', "28″", "2' 4\"", "720mm", "72 ㎝"])
def test_a_named_unit_is_seen(text):
    assert has_unit(text)


@pytest.mark.parametrize("text", ["720", "28 3/8", "28⅜", 720, None])
def test_a_bare_number_has_no_unit(text):
    assert not has_unit(text)


@pytest.mark.parametrize(
    ("mm", "decimals", "text"),
    [
        (720, 1, "720.0"),
        (720.04, 1, "720.0"),
        (720.0, 0, "720"),
        (-0.0, 1, "0.0"),
        (-0.04, 1, "0.0"),
        (-0.4, 0, "0"),
        (-0.05, 2, "-0.05"),
        (1e16, 1, "10000000000000000.0"),
        (1e-9, 3, "0.000"),
        (np.float64(7.25), 2, "7.25"),
        (np.int64(-7), 1, "-7.0"),
    ],
)
def test_writes_fixed_decimals(mm, decimals, text):
    assert fmt(mm, decimals) == text


@given(st.floats(-LONGEST_MM, LONGEST_MM), st.integers(0, 6))
def test_written_numbers_read_back(mm, decimals):
    text = fmt(np.float64(mm), decimals)
    assert set(text) <= set("-0123456789.")
    assert len(text.partition(".")[2]) == decimals
    assert to_mm(text) == pytest.approx(mm, abs=0.5 * 10**-decimals + 1e-9)
    assert not (text.startswith("-") and float(text) == 0)


@pytest.mark.parametrize("number", [math.nan, math.inf, np.float64("nan")])
def test_never_writes_nan(number):
    with pytest.raises(DraftError, match=r"number is (nan|inf), expected a finite number to write: look for the step"):
        fmt(number)


@given(st.floats(-5000, 5000), st.integers(0, 3))
def test_written_limits_lie_inside_by_less_than_one_step(limit, decimals):
    step = 10.0**-decimals
    assert -step - HAIR < float(at_most(limit, decimals)) - limit < HAIR
    assert -HAIR < float(at_least(limit, decimals)) - limit < step + HAIR


@given(st.integers(-50_000, 50_000), st.floats(-4e-7, 4e-7), st.integers(0, 3))
def test_float_noise_does_not_move_a_written_limit(steps, noise, decimals):
    limit = steps / 10**decimals
    assert at_most(limit + noise, decimals) == at_least(limit + noise, decimals) == fmt(limit, decimals)
