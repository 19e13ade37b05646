"""What a body can measure: limits of each measure, and measures that contradict each other.

Glossary
--------
limits
    The smallest and largest value that is accepted, from children of about two years to very large adults. They catch
    slips of the unit and of the tape, not unusual bodies.
ratio rule
    Between which shares of another measure a measure lies. What no body shows is refused, nothing else.
survey
    ANSUR II, the 2012 Anthropometric Survey of U.S. Army Personnel, public-release data (Gordon et al., Technical
    Report NATICK/TR-15/007, 2014): 996 women and 2,068 men aged 17 to 58, waist at the navel. Its figures below were
    computed from the data. It has no children and few very large bodies, so the limits reach far beyond it.
seated, standing
    The two ways to take the crotch depth; see `STANDING_TO_SEATED_MM`.

The limits themselves are common practice without a source, set wide around the survey and around published size charts
for children (chest, waist, hip and inside leg by height from 86 cm; two shop charts, read).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import NamedTuple

from draft.errors import DraftError
from draft.units import MM_PER_UNIT, fmt, has_unit, to_mm

STANDING_TO_SEATED_MM = 15.0
"""A seated crotch depth is larger than a standing one by 10 to 20 mm: common practice, no source."""

HIP_BELOW_CROTCH_MM: Mapping[str, float] = MappingProxyType({"seated": 0.0, "standing": 40.0})
"""How far the hip may lie below the crotch depth as it was taken. Nothing of a seated body lies below the chair. On a
standing body the buttocks may be fullest below the crotch: in the survey the hip lies 51 mm (women) and 42 mm (men)
above the crotch at the median, below it in 0.2 % of the women and 2.0 % of the men, and at most 29 mm below."""

FRONT_OF_DEPTH = 0.7
"""Least front crotch length per standing crotch depth. A tape cannot be shorter than the drop it spans, but the waist
may dip at the front and the split be taken too far forward: the survey's lowest is 0.78, its first percentiles are 1.04
(women) and 0.90 (men)."""

BACK_OF_DEPTH = 1.0
"""Least back crotch length per standing crotch depth. The survey's lowest is 1.23."""

CROTCH_OF_DEPTH = 1.9
"""Least total crotch length per standing crotch depth. Down and up again is 2.0 by geometry, less 5 % for the error of
the tape; the survey's lowest is 2.29."""

CROTCH_UNDER_HIP = 0.5
"""Largest share of the hip by which the total crotch length exceeds down and up. The survey's largest is 0.36."""

BACK_OF_FRONT = (0.5, 3.5)
"""Back per front crotch length. The survey goes from 0.82 to 2.37, with means of 1.23 (women) and 1.34 (men)."""

HIP_MINUS_WAIST_MM = (-400.0, 600.0)
HIP_OF_WAIST = (0.7, 2.0)
"""Hip less waist, and hip per waist. The survey goes from -172 to 347 mm and from 0.87 to 1.43."""


class Measure(NamedTuple):
    """The limits of one measure in mm, and how to take it."""

    low: float
    high: float
    take: str


class Ratio(NamedTuple):
    """``field`` lies between ``low`` and ``high`` times ``of``."""

    field: str
    of: str
    low: float
    high: float


MEASURES: Mapping[str, Measure] = MappingProxyType(
    {
        "waist": Measure(400, 2000, "level round the natural waist, where a tied elastic settles"),
        "hip": Measure(450, 2100, "level round the fullest part of the buttocks"),
        "crotch_depth": Measure(
            110,
            450,
            "at the side from the waist down to a hard flat chair, sitting; or standing, waist height less inside leg",
        ),
        "waist_to_hip": Measure(40, 350, "at the side from the waist straight down to the level of the hip girth"),
        "inside_leg": Measure(250, 1150, "from the crotch to the floor, with a book pushed up level against a wall"),
        "front_crotch": Measure(
            120, 600, "over the body from the front waist to the crotch point, where a hung weight settles"
        ),
        "back_crotch": Measure(
            150, 700, "over the body from the back waist to the crotch point, where a hung weight settles"
        ),
        "thigh": Measure(200, 1200, "level round the thigh just below the fold of the buttock"),
        "knee": Measure(150, 850, "level round the middle of the kneecap, leg straight"),
        "calf": Measure(140, 750, "level round the fullest part of the calf"),
        "ankle": Measure(100, 450, "round the ankle over the ankle bones"),
        "knee_height": Measure(130, 700, "from the middle of the kneecap to the floor"),
        "hip_depth": Measure(90, 600, "front to back at the hip, between two set squares or books"),
    }
)
"""Every measure of a body that is a length, in the order of telling."""

RATIOS = (
    # Survey, lowest to highest of women and men: thigh 0.53 to 0.69 of the hip, calf 0.50 to 0.75 of the thigh, ankle
    # 0.49 to 0.71 of the calf, knee height 0.53 to 0.62 of the inside leg, buttock depth 0.20 to 0.28 of the hip. The
    # girth above the knee stands in for the knee: 0.54 to 0.77 of the thigh, and the ankle 0.42 to 0.67 of it.
    Ratio("thigh", "hip", 0.35, 0.9),
    Ratio("knee", "thigh", 0.4, 1.0),
    Ratio("calf", "thigh", 0.3, 1.0),
    Ratio("calf", "knee", 0.5, 2.0),
    Ratio("ankle", "knee", 0.3, 1.0),
    Ratio("ankle", "calf", 0.35, 1.0),
    # The same by way of the thigh or the hip, for when the girth between is not given; survey 0.27 to 0.47 of the
    # thigh, and 0.34 to 0.47, 0.31 to 0.45 and 0.16 to 0.28 of the hip.
    Ratio("ankle", "thigh", 0.12, 1.0),
    Ratio("knee", "hip", 0.15, 0.9),
    Ratio("calf", "hip", 0.15, 0.9),
    Ratio("ankle", "hip", 0.12, 0.45),
    Ratio("knee_height", "inside_leg", 0.4, 0.85),
    Ratio("hip_depth", "hip", 0.12, 0.4),
)

_SLACK_MM = 1e-6
"""Rounding that a limit computed from another measure may carry."""

_BODIES = "children from about 2 years to very large adults"
_GUESSES = {"cm": "centimetres", "in": "inches", "m": "metres"}


def measured(field: str, given: object) -> float:
    """Read one measure, and refuse what no body measures.

    Raises
    ------
    DraftError
        When it is no length, or outside its limits; a number that fits in another unit is told so.

    Examples
    --------
    >>> measured("waist", "72 cm")
    720.0
    >>> measured("waist", 28)
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: body.waist is 28.0, expected 400 to 2000 mm (children from about 2 years to very large
    adults): 28 looks like inches; write "28 in" or 711.2.
    """
    mm = to_mm(given, f"body.{field}")
    low, high, take = MEASURES[field]
    if low <= mm <= high:
        return mm
    shown = str(given) if isinstance(given, str) else mm
    guess = "" if has_unit(given) else _other_units(mm, low, high)
    remedy = guess or f"measure it again, {take}"
    raise DraftError(f"body.{field}", shown, f"{fmt(low, 0)} to {fmt(high, 0)} mm ({_BODIES})", remedy)


def missing(field: str) -> DraftError:
    """Say of a required measure that it is missing and how to take it."""
    low, high, take = MEASURES[field]
    return DraftError(f"body.{field}", None, f"{fmt(low, 0)} to {fmt(high, 0)} mm", f"measure it {take}")


def standing_depth(known: Mapping[str, float], taken: object) -> float | None:
    """Give the crotch depth as taken standing, mm, or ``None`` when nobody can tell.

    Examples
    --------
    >>> standing_depth({"crotch_depth": 262}, "seated"), standing_depth({"crotch_depth": 262}, "lying")
    (247.0, None)
    """
    if "crotch_depth" not in known or taken not in ("seated", "standing"):
        return None
    return known["crotch_depth"] - (STANDING_TO_SEATED_MM if taken == "seated" else 0.0)


def contradictions(known: Mapping[str, float], *, taken: object) -> list[DraftError]:
    """Find the measures that cannot belong to one body.

    Parameters
    ----------
    known : mapping of str to float
        The measures that are given and inside their limits, mm.
    taken : object
        How the crotch depth was taken; anything but ``"seated"`` and ``"standing"`` leaves the depth out of the rules.

    Examples
    --------
    >>> for error in contradictions({"thigh": 380, "knee": 580}, taken="seated"):
    ...     print(error)
    body.knee is 580, expected 152.0 to 380.0 mm, that is 0.4 to 1 times the thigh (380 mm):
    measure the knee and the thigh again.
    """
    depth = standing_depth(known, taken)
    return [
        *_hip_against_waist(known),
        *_hip_against_crotch(known, taken),
        *_crotch_parts(known, depth),
        *_crotch_total(known, depth),
        *_broken_ratios(known),
    ]


def bounds(field: str, known: Mapping[str, float]) -> tuple[float, float]:
    """Give the limits of one measure when others are known, in mm.

    Examples
    --------
    >>> bounds("knee", {}), bounds("knee", {"thigh": 500, "hip": 1000})
    ((150, 850), (200.0, 500.0))
    """
    low, high, _ = MEASURES[field]
    for rule in RATIOS:
        if rule.field == field and rule.of in known:
            low, high = max(low, rule.low * known[rule.of]), min(high, rule.high * known[rule.of])
        elif rule.of == field and rule.field in known:
            low, high = max(low, known[rule.field] / rule.high), min(high, known[rule.field] / rule.low)
    return low, high


def crotch_bounds(field: str, known: Mapping[str, float]) -> tuple[float, float]:
    """Give the limits of one crotch length when the hip, the standing crotch depth and perhaps the other are known, mm.

    Examples
    --------
    >>> crotch_bounds("back_crotch", {"hip": 1000, "crotch_depth": 200})
    (200.0, 700)
    >>> crotch_bounds("back_crotch", {"hip": 1000, "crotch_depth": 200, "front_crotch": 260})
    (200.0, 640.0)
    """
    depth, share = known["crotch_depth"], FRONT_OF_DEPTH if field == "front_crotch" else BACK_OF_DEPTH
    low, high, _ = MEASURES[field]
    low = max(low, share * depth)
    other = known.get("back_crotch" if field == "front_crotch" else "front_crotch")
    if other is None:
        return low, high
    least, most = BACK_OF_FRONT if field == "back_crotch" else (1 / BACK_OF_FRONT[1], 1 / BACK_OF_FRONT[0])
    low = max(low, least * other, CROTCH_OF_DEPTH * depth - other)
    return low, min(high, most * other, 2 * depth + CROTCH_UNDER_HIP * known["hip"] - other)


def _other_units(mm: float, low: float, high: float) -> str:
    """Say in which other unit a bare number would be a body's, if in any."""
    bare = f"{mm:g}"
    meant = [
        (f'{word}; write "{bare} {unit}" or {mm * MM_PER_UNIT[unit]:.6g}')
        for unit, word in _GUESSES.items()
        if low <= mm * MM_PER_UNIT[unit] <= high
    ]
    return f"{bare} looks like {', or like '.join(meant)}" if meant else ""


def _between(
    field: str, known: Mapping[str, float], limits: tuple[float, float], why: str, remedy: str
) -> list[DraftError]:
    """Complain when a known measure lies outside limits that follow from others."""
    low, high = limits
    if low - _SLACK_MM <= known[field] <= high + _SLACK_MM:
        return []
    expected = f"{fmt(low)} to {fmt(high)} mm, {why}"
    return [DraftError(f"body.{field}", known[field], expected, remedy)]


def _hip_against_waist(known: Mapping[str, float]) -> list[DraftError]:
    if not {"waist", "hip"} <= known.keys():
        return []
    waist = known["waist"]
    low = max(waist + HIP_MINUS_WAIST_MM[0], waist * HIP_OF_WAIST[0])
    high = min(waist + HIP_MINUS_WAIST_MM[1], waist * HIP_OF_WAIST[1])
    why = f"for a waist of {fmt(waist, 0)} mm"
    return _between("hip", known, (low, high), why, "measure the waist and the hip again, with the tape level")


def _hip_against_crotch(known: Mapping[str, float], taken: object) -> list[DraftError]:
    below = HIP_BELOW_CROTCH_MM.get(taken) if isinstance(taken, str) else None
    if below is None or not {"crotch_depth", "waist_to_hip"} <= known.keys():
        return []
    largest = known["crotch_depth"] + below
    if known["waist_to_hip"] <= largest + _SLACK_MM:
        return []
    more = f"{fmt(below, 0)} mm more than " if below else ""
    expected = f"{fmt(largest)} mm or less, {more}the {taken} crotch depth"
    remedy = f"measure both from the same waist; when the hip is as full lower still, write {fmt(largest)}"
    return [DraftError("body.waist_to_hip", known["waist_to_hip"], expected, remedy)]


def _crotch_parts(known: Mapping[str, float], depth: float | None) -> Iterator[DraftError]:
    if depth is None:
        return
    for field, share in (("front_crotch", FRONT_OF_DEPTH), ("back_crotch", BACK_OF_DEPTH)):
        least = share * depth
        if known.get(field, least) < least - _SLACK_MM:
            expected = f"{fmt(least)} mm or more {_for_depth(depth)[:-1]}"
            remedy = f"measure it again {MEASURES[field].take}; check the crotch depth"
            yield DraftError(f"body.{field}", known[field], expected, remedy)


def _crotch_total(known: Mapping[str, float], depth: float | None) -> Iterator[DraftError]:
    if not {"front_crotch", "back_crotch"} <= known.keys():
        return
    front, back = known["front_crotch"], known["back_crotch"]
    fields, values = "body.front_crotch + body.back_crotch", (front, back)
    if depth is not None:
        words = _for_depth(depth)
        least = CROTCH_OF_DEPTH * depth
        if front + back < least - _SLACK_MM:
            remedy = "measure both again, from the same waist as the crotch depth"
            yield DraftError(fields, values, f"{fmt(least)} mm or more together {words[:-1]}", remedy)
        if "hip" in known and front + back > (most := 2 * depth + CROTCH_UNDER_HIP * known["hip"]) + _SLACK_MM:
            expected = f"{fmt(most)} mm or less together {words} and a hip of {fmt(known['hip'])} mm"
            yield DraftError(fields, values, expected, "measure both again with the tape close to the body")
    low, high = BACK_OF_FRONT
    if not low * front - _SLACK_MM <= back <= high * front + _SLACK_MM:
        expected = f"the back {low:g} to {high:g} times the front"
        yield DraftError(
            fields, values, expected, "hang a small weight on the tape and read both parts where it settles"
        )


def _broken_ratios(known: Mapping[str, float]) -> Iterator[DraftError]:
    told: set[str] = set()
    for field, of, low, high in RATIOS:
        if field in told or not {field, of} <= known.keys():
            continue
        why = f"that is {low:g} to {high:g} times the {_words(of)} ({fmt(known[of], 0)} mm)"
        remedy = f"measure the {_words(field)} and the {_words(of)} again"
        for error in _between(field, known, (low * known[of], high * known[of]), why, remedy):
            told.add(field)
            yield error


def _for_depth(depth: float) -> str:
    less = fmt(STANDING_TO_SEATED_MM, 0)
    return f"for a standing crotch depth of {fmt(depth)} mm, {less} less than seated,"


def _words(field: str) -> str:
    return field.replace("_", " ")
