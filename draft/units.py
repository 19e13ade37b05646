"""Lengths in and numbers out: the only place that knows other units than the millimetre.

Glossary
--------
length
    What a person may write: ``720`` (millimetres), ``"72 cm"``, ``"28 3/8 in"``, ``"2 ft 4 in"``.
bare number
    A number without a unit, as a number or as text. It is always millimetres.
inch
    25.4 mm exactly (the international inch of 1959, from memory).

Text is read exactly, as a fraction, and rounded to a float once at the end.
"""

from __future__ import annotations

import math
import re
import unicodedata
from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction
from numbers import Real
from types import MappingProxyType
from typing import TypeAlias

from draft.errors import DraftError, nearest

Length: TypeAlias = float | str
"""What a person may write for a length: millimetres, or text with a unit."""

HAIR = 1e-6
"""How far a value may lie beyond a computed limit: so much is float noise, mm."""

MM_PER_INCH = 25.4
MM_PER_UNIT: Mapping[str, float] = MappingProxyType(
    {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": MM_PER_INCH, "ft": 304.8}
)

_NAMES: Mapping[str, str] = MappingProxyType(
    {
        **dict.fromkeys(("mm", "millimetre", "millimetres", "millimeter", "millimeters"), "mm"),
        **dict.fromkeys(("cm", "centimetre", "centimetres", "centimeter", "centimeters"), "cm"),
        **dict.fromkeys(("m", "metre", "metres", "meter", "meters"), "m"),
        **dict.fromkeys(("in", "inch", "inches", '"'), "in"),
        **dict.fromkeys(("ft", "foot", "feet", "'"), "ft"),
    }
)
_EXACT_MM = {unit: Fraction(str(size)) for unit, size in MM_PER_UNIT.items()}

_KNOWN = "a length in mm, cm, m, in or ft"
_EXAMPLES = 'such as 720, "72 cm" or "28 3/8 in"'
_LONGEST_TEXT = 60

# Prime, double prime and the quotation marks that word processors put in their place.
_MARKS = str.maketrans({"′": "'", "’": "'", "‘": "'", "″": '"', "”": '"', "“": '"', "−": "-"})

_NUMBER = r"(?:(?:\d+(?:\ |-))?\d+\ ?/\ ?\d+ | \d+(?:[.,]\d+)? | [.,]\d+)"
_UNIT = r"[^\W\d_]+\.? | ['\"]"
_SINGLE = re.compile(rf"(?P<sign>[+-]?)\ ?(?P<number>{_NUMBER})\ ?(?P<unit>{_UNIT})?", re.VERBOSE | re.ASCII)
_FEET_AND_INCHES = re.compile(
    rf"(?P<sign>[+-]?)\ ?(?P<feet>\d+)\ ?(?:ft\.?|foot|feet|')\ ?(?P<inches>{_NUMBER})\ ?(?:in\.?|inch|inches|\")",
    re.VERBOSE | re.ASCII,
)
_THOUSANDS = re.compile(r"[1-9]\d{0,2},\d{3}", re.ASCII)

# Which compatibility characters stand for plain ones: vulgar fractions, hard and narrow spaces, full-width digits,
# units in one sign. Raised and ringed digits do not: the square of 72 is not 722.
_STANDS_FOR_PLAIN = ("<fraction>", "<noBreak>", "<compat>", "<wide>", "<square>")


def to_mm(value: object, field: str = "length") -> float:
    """Read one length and give it in millimetres.

    Parameters
    ----------
    value : object
        A finite number (millimetres), or text: a number, a space if wanted, a unit. The number may be decimal with a
        point or a comma, a fraction, or both (``28 3/8``, ``28-3/8``, ``28⅜``). Without a unit it is millimetres.
        Units: mm, cm, m, in (or the double prime), ft (or the prime), and their names in full.
    field : str
        What the length is for; names the input in the error.

    Returns
    -------
    float
        Millimetres. The sign and the size are not judged here.

    Raises
    ------
    DraftError
        For everything that is not one finite length: no unit of the list, a truth value, nan, empty text, a division
        by zero, a comma that could be a decimal comma or a thousands mark.

    Examples
    --------
    >>> to_mm(720), to_mm("72 cm"), to_mm("28,5 cm"), to_mm("0.72 m"), to_mm("720")
    (720.0, 720.0, 285.0, 720.0, 720.0)
    >>> to_mm("28 3/8 in"), to_mm('28⅜"'), to_mm("28.375 inches"), to_mm("2 ft 4 in")
    (720.725, 720.725, 720.725, 711.2)
    >>> to_mm("28 parsecs", "body.waist")
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: body.waist is '28 parsecs', expected a length in mm, cm, m, in or ft:
    write one of these units instead of 'parsecs', such as 720, "72 cm" or "28 3/8 in".
    >>> to_mm("28 inchs", "body.waist")
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: body.waist is '28 inchs', expected a length in mm, cm, m, in or ft:
    write 'inches' instead of 'inchs'.
    """
    if isinstance(value, str):
        return _from_text(str(value), field)
    if isinstance(value, bool) or not isinstance(value, Real | Decimal):
        raise DraftError(field, _shown(value), _KNOWN, f"write a number of millimetres or text {_EXAMPLES}")
    try:
        number = float(value)
    except (OverflowError, ValueError):
        number = math.inf
    if not math.isfinite(number):
        raise DraftError(field, number, _KNOWN.replace("a length", "a finite length"), f"write a length {_EXAMPLES}")
    return number


def has_unit(value: object) -> bool:
    """Whether a length names its unit, so that nobody need guess what was meant.

    Examples
    --------
    >>> has_unit("72 cm"), has_unit("72"), has_unit(72)
    (True, False, False)
    """
    return isinstance(value, str) and re.search(r"[^\W\d_]|['\"]", _plain(value)) is not None


def fmt(mm: float, decimals: int = 1) -> str:
    """One number as text: fixed decimals, no negative zero, no exponent.

    Parameters
    ----------
    mm : float
        The number, usually millimetres; a numpy scalar will do.
    decimals : int
        How many decimals to write, zero or more.

    Raises
    ------
    DraftError
        For nan and infinity, which must not reach a file.

    Examples
    --------
    >>> fmt(720), fmt(720.725, 2), fmt(-0.04), fmt(711.2, decimals=0)
    ('720.0', '720.73', '0.0', '711')
    >>> import numpy as np
    >>> fmt(np.float64(7.25), 2)
    '7.25'
    """
    number = float(mm)
    if not math.isfinite(number):
        raise DraftError("number", number, "a finite number to write", "look for the step that made it")
    text = f"{number:.{decimals}f}"
    return text.lstrip("-") if float(text) == 0 else text


def at_most(most: float, decimals: int = 0) -> str:
    """Largest value that works as text, rounded down: the written number works too.

    Parameters
    ----------
    most : float
        The limit, usually millimetres. What is compared with it may lie up to `HAIR` beyond, so that a limit that is
        off by float noise is not written one step too low.
    decimals : int
        How many decimals to write, zero or more.

    Examples
    --------
    >>> at_most(110.9), at_most(0.6 * 60 - 11.7, 1), at_most(0.2497, 3), at_most(-0.0)
    ('110', '24.3', '0.249', '0')
    """
    steps = 10**decimals
    return fmt(math.floor((float(most) + HAIR / 2) * steps) / steps, decimals)


def at_least(least: float, decimals: int = 0) -> str:
    """Smallest value that works as text, rounded up: the written number works too.

    Parameters
    ----------
    least : float
        The limit, usually millimetres. What is compared with it may lie up to `HAIR` below.
    decimals : int
        How many decimals to write, zero or more.

    Examples
    --------
    >>> at_least(609.2), at_least(20 + 1e-9), at_least(0.2503, 3), at_least(-0.4)
    ('610', '20', '0.251', '0')
    """
    steps = 10**decimals
    return fmt(math.ceil((float(least) - HAIR / 2) * steps) / steps, decimals)


def _from_text(text: str, field: str) -> float:
    """Millimetres of a text, through an exact fraction."""
    if len(text) > _LONGEST_TEXT:
        raise DraftError(field, _shown(text), _KNOWN, f"write one length only, {_EXAMPLES}")
    plain = _plain(text)
    if not plain:
        raise DraftError(field, text, _KNOWN, f"write a length {_EXAMPLES}, or leave the field out")
    if both := _FEET_AND_INCHES.fullmatch(plain):
        feet = Fraction(both["feet"]) * _EXACT_MM["ft"]
        return _signed(both, feet + _number(both["inches"], text, field) * _EXACT_MM["in"])
    single = _SINGLE.fullmatch(plain)
    if single is None:
        raise DraftError(field, text, _KNOWN, f"write one number and one unit, {_EXAMPLES}")
    return _signed(single, _number(single["number"], text, field) * _unit(single["unit"], text, field))


def _signed(match: re.Match[str], size: Fraction) -> float:
    return float(-size if match["sign"] == "-" else size)


def _plain(text: str) -> str:
    """Write the text in ASCII as far as it has one: marks, fractions and spaces made plain, lower case."""
    plain = "".join(_plain_character(c) for c in text.translate(_MARKS)).replace("\N{FRACTION SLASH}", "/")
    return " ".join(plain.casefold().replace("''", '"').split())


def _plain_character(character: str) -> str:
    form = unicodedata.decomposition(character)
    if not form.startswith(_STANDS_FOR_PLAIN):
        return character
    # The sign for three eighths decomposes to "3", a fraction slash and "8"; without the space put before it, "28" and
    # the sign would run together to 283/8.
    space = " " if form.startswith("<fraction>") else ""
    return space + unicodedata.normalize("NFKC", character)


def _number(plain: str, text: str, field: str) -> Fraction:
    """Read the exact number in a plain text that is known to be one."""
    if "/" in plain:
        *whole, top, bottom = (int(part) for part in re.findall(r"\d+", plain))
        if bottom == 0:
            raise DraftError(field, text, _KNOWN, "a fraction cannot divide by zero: correct its lower number")
        return sum(whole) + Fraction(top, bottom)
    if _THOUSANDS.fullmatch(plain):
        point, joined = plain.replace(",", "."), plain.replace(",", "")
        raise DraftError(field, text, f"{_KNOWN} that can be read in one way", f"write {point} or {joined}")
    return Fraction(plain.replace(",", "."))


def _unit(name: str | None, text: str, field: str) -> Fraction:
    """Millimetres in one of the named unit; a missing name means millimetres."""
    if name is None:
        return _EXACT_MM["mm"]
    name = name.rstrip(".")
    if name in _NAMES:
        return _EXACT_MM[_NAMES[name]]
    near = nearest(name, _NAMES)
    instead = f"write {near!r} instead of {name!r}" if near else f"write one of these units instead of {name!r}"
    raise DraftError(field, text, _KNOWN, instead if near else f"{instead}, {_EXAMPLES}")


def _shown(value: object) -> object:
    """Give the value as an error may show it: itself when short, otherwise the beginning of it."""
    if value is None or len(repr(value)) <= _LONGEST_TEXT:
        return value
    return f"{' '.join(repr(value).split())[: _LONGEST_TEXT - 3]}..."
