"""The measured body, lower half.

All sizes are millimetres. Posture for all measures, unless said: standing upright and barefoot, weight even, abdomen
relaxed, breath out, over thin underwear, tape touching without denting (common practice). The waist is where a tied
elastic settles; leave it on, for every measure from the waist starts at that same level.

Names are those of ISO 8559-1:2017 where it has one. That standard was not read. Behind each clause stands how it is
known: *second-hand* (a citation elsewhere) or *from memory*. *1989* marks a term in a book's list of ISO 8559:1989
terms, which was read.

Glossary
--------
waist
    Waist girth, 5.3.10 (second-hand). Horizontal, midway between the lowest rib and the top of the hip bone.
hip
    Hip girth, 5.3.13 (second-hand). Horizontal, over the fullest part of the buttocks.
crotch_depth
    Body rise (1989; no clause known). From the waist straight down at the side. ``crotch_depth_taken="seated"``: to a
    hard flat chair, sitting upright. ``"standing"``: waist height less inside leg height. The two differ; see
    `draft.body_checks.STANDING_TO_SEATED_MM`.
waist_to_hip
    Waist to hips (1989; no clause known). From the waist straight down at the side to the level of the hip girth.
inside_leg
    Inside leg height, or crotch height, 5.1.15 (second-hand). From the crotch straight down to the floor.
front_crotch, back_crotch
    The two parts of the total crotch length, 5.4.18 (second-hand and from memory; one citation has 5.1.11), which runs
    from the front waist between the legs to the back waist over the body, tape not tight. The parts have no clause.
    They meet at the crotch point, where the inseams will meet: a small weight hung on the tape settles there.
thigh
    Thigh girth, 5.3.20 (second-hand). Horizontal, just below the fold of the buttock; legs slightly apart.
knee
    Knee girth, 5.3.22 (second-hand). Horizontal, at the middle of the kneecap, leg straight; legs slightly apart.
calf
    Calf girth, 5.3.24 (second-hand). The largest horizontal girth of the lower leg; legs slightly apart.
ankle
    Ankle girth, 5.3.26 (from memory). Over the ankle bones.
knee_height
    Knee height (1989; no clause known). From the middle of the kneecap straight down to the floor.
hip_depth
    Buttock depth of body surveys (none in ISO 8559-1 known). Front to back at the hip, horizontal, by callipers or
    between two set squares.
"""

from __future__ import annotations

import functools
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any, Literal, Self, TypeAlias, TypeVar, cast, get_args

from draft.body_checks import MEASURES, STANDING_TO_SEATED_MM, contradictions, measured, missing
from draft.errors import DraftError, collected, nearest
from draft.estimates import Estimate, estimated
from draft.size_tables import table_named
from draft.units import Length

Taken: TypeAlias = Literal["seated", "standing"]
"""How a crotch depth was taken."""

REQUIRED = ("waist", "hip", "crotch_depth", "waist_to_hip", "inside_leg")
"""The measures without which nothing can be drafted."""

OPTIONAL = tuple(field for field in MEASURES if field not in REQUIRED)
"""The measures that are estimated when they are not given."""

Init = TypeVar("Init", bound=Callable[..., None])


def _tells_all(init: Init) -> Init:
    """Let ``__init__`` tell of misspelt and missing names together with wrong values; its signature stays."""
    names = tuple(name for name in init.__annotations__ if name != "return")

    @functools.wraps(init)
    def told(self: object, /, *positional: object, **given: object) -> None:
        if positional:
            raise DraftError("body", positional, "measures by name", "write Body(waist=720, hip=980, ...)")
        known: dict[str, object] = dict.fromkeys(REQUIRED)
        known.update({name: value for name, value in given.items() if name in names})
        wrong = []
        for name, value in given.items():
            if name not in names:
                near = nearest(name, names)
                wrong.append(_misspelt(name, value, near))
                # Judge the value as the measure that was meant, so that it is not called missing too.
                if near is not None and known.get(near) is None:
                    known[near] = value
        try:
            init(self, **known)
        except DraftError as error:
            wrong.append(error)
        if wrong:
            raise collected(wrong) from None

    return cast(Init, told)


def _misspelt(name: str, value: object, near: str | None) -> DraftError:
    expected = f"one of {', '.join(MEASURES)}, crotch_depth_taken, name"
    remedy = f"write {near} instead of {name}" if near else f"leave {name} out"
    return DraftError(f"body.{name}", _not_missing(value), expected, remedy)


GROWTH_ABOVE_WAIST = 0.5  # mm of girth per mm above the waist
HOLLOW_WAIST = 0.2  # a waist smaller than the hip by this share or more has all of that growth


@dataclass(frozen=True, init=False, repr=False)
class Body:
    """The measurements of one body, checked; what each one means stands at the top of this module.

    Parameters
    ----------
    waist, hip : float or str
        Girths. Every length is a number of millimetres or text with a unit; it is kept as a float in mm.
    crotch_depth, waist_to_hip : float or str
        Down from the waist.
    inside_leg : float or str
        Crotch to floor.
    crotch_depth_taken : {"seated", "standing"}
        How the crotch depth was taken.
    front_crotch, back_crotch : float or str, optional
        Waist to crotch point over the body.
    thigh, knee, calf, ankle : float or str, optional
        Girths of the leg.
    knee_height, hip_depth : float or str, optional
        Kneecap to floor; front to back at the hip.
    name : str
        A label for the pieces, one line.

    Raises
    ------
    DraftError
        For a missing, misspelt or wrong measure, and for measures that contradict each other. All of them are told at
        once; ``error.many`` holds them one by one.

    Examples
    --------
    >>> body = Body(waist="72 cm", hip=980, crotch_depth=262, waist_to_hip=205, inside_leg='30"', name="demo")
    >>> body
    Body(waist=720.0, hip=980.0, crotch_depth=262.0, waist_to_hip=205.0, inside_leg=762.0, name='demo')
    >>> body.thigh is None, round(body.known("thigh"))
    (True, 584)
    >>> Body(waist=72, hip=980, crotch_depth=255, waist_to_hip=262, inside_leg=760)
    Traceback (most recent call last):
        ...
    draft.errors.CollectedError: 2 inputs are wrong.
    body.waist is 72.0, expected 400 to 2000 mm (children from about 2 years to very large adults):
    72 looks like centimetres; write "72 cm" or 720, or like inches; write "72 in" or 1828.8.
    body.waist_to_hip is 262.0, expected 255.0 mm or less, the seated crotch depth:
    measure both from the same waist; when the hip is as full lower still, write 255.0.
    """

    waist: float
    hip: float
    crotch_depth: float
    waist_to_hip: float
    inside_leg: float
    crotch_depth_taken: Taken
    front_crotch: float | None
    back_crotch: float | None
    thigh: float | None
    knee: float | None
    calf: float | None
    ankle: float | None
    knee_height: float | None
    hip_depth: float | None
    name: str

    @_tells_all
    def __init__(
        self,
        *,
        waist: Length,
        hip: Length,
        crotch_depth: Length,
        waist_to_hip: Length,
        inside_leg: Length,
        crotch_depth_taken: Taken = "seated",
        front_crotch: Length | None = None,
        back_crotch: Length | None = None,
        thigh: Length | None = None,
        knee: Length | None = None,
        calf: Length | None = None,
        ankle: Length | None = None,
        knee_height: Length | None = None,
        hip_depth: Length | None = None,
        name: str = "",
    ) -> None:
        given = {
            "waist": waist,
            "hip": hip,
            "crotch_depth": crotch_depth,
            "waist_to_hip": waist_to_hip,
            "inside_leg": inside_leg,
            "front_crotch": front_crotch,
            "back_crotch": back_crotch,
            "thigh": thigh,
            "knee": knee,
            "calf": calf,
            "ankle": ankle,
            "knee_height": knee_height,
            "hip_depth": hip_depth,
        }
        known = _judged(given, crotch_depth_taken, name)
        values: Mapping[str, object] = {
            **dict.fromkeys(given),
            **known,
            "crotch_depth_taken": str(crotch_depth_taken),
            "name": str(name),
        }
        for field, value in values.items():
            object.__setattr__(self, field, value)

    @classmethod
    def from_size(cls, table: str, size: str | float, /, **measured: Any) -> Self:
        """Take a body from a size table, with any measure of your own in its place.

        Parameters
        ----------
        table : str
            Name of one of `draft.size_tables.TABLES`; print the table to see its sizes and where it comes from.
        size : str or float
            One of its sizes.
        **measured : float or str
            Measures that were taken, and the name, as for `Body`; they replace those of the size. A measure from the
            waist has to start at the table's waist level. A crotch depth is seated, unless said, as in `Body`.

        Raises
        ------
        DraftError
            For a table or size that does not exist, and as `Body`.

        Notes
        -----
        A size is the mean of many bodies and fits none of them: cut a mock-up first.

        Examples
        --------
        >>> body = Body.from_size("women by hip", 100, inside_leg="74 cm")
        >>> body.name, body.hip, body.inside_leg, body.crotch_depth_taken
        ('women by hip 100', 999.0, 740.0, 'standing')
        """
        row = table_named(table)
        if "crotch_depth_taken" in measured and "crotch_depth" not in measured:
            taken = measured["crotch_depth_taken"]
            remedy = "give the crotch depth too, or leave crotch_depth_taken out"
            raise DraftError("body.crotch_depth_taken", taken, "a crotch depth taken that way beside it", remedy)
        taken = {} if "crotch_depth" in measured else {"crotch_depth_taken": row.crotch_depth_taken}
        name = f"{row.name} {size:g}" if isinstance(size, float) else f"{row.name} {size}"
        return cls(**{"name": name, **taken, **row[size], **measured})

    def __repr__(self) -> str:
        told = {field: getattr(self, field) for field in self.__dataclass_fields__}
        said = (
            f"{field}={value!r}"
            for field, value in told.items()
            if value is not None and (field, value) not in (("crotch_depth_taken", "seated"), ("name", ""))
        )
        return f"Body({', '.join(said)})"

    def seated_crotch_depth(self) -> float:
        """Give the crotch depth as taken seated, mm.

        A standing depth is made seated by adding 15 mm (common practice is 10 to 20, no source).

        Examples
        --------
        >>> size = dict(waist=720, hip=980, waist_to_hip=200, inside_leg=760)
        >>> Body(crotch_depth=247, crotch_depth_taken="standing", **size).seated_crotch_depth()
        262.0
        """
        return self.crotch_depth + (STANDING_TO_SEATED_MM if self.crotch_depth_taken == "standing" else 0.0)

    def girth_at(self, depth_below_waist: float) -> float:
        """Estimate the girth of the body about the waist, mm.

        Parameters
        ----------
        depth_below_waist : float
            Level, mm below the waist (negative: above it); below the hip the girth stays as it is there.

        Notes
        -----
        A parabola that starts at the waist girth and is level at the hip, where the body is fullest. Above the waist
        it grows by half a millimetre for each, less on a body whose waist is near its hip, where it stays as it is.
        Both are assumptions without a source; the measured girth at that level is better.

        Examples
        --------
        >>> body = Body(waist=720, hip=980, crotch_depth=262, waist_to_hip=200, inside_leg=760)
        >>> [body.girth_at(depth) for depth in (-10, 0, 100, 200, 250)]
        [725.0, 720.0, 915.0, 980.0, 980.0]
        """
        if depth_below_waist < 0:
            hollow = min(max((1 - self.waist / self.hip) / HOLLOW_WAIST, 0.0), 1.0)
            return self.waist - depth_below_waist * GROWTH_ABOVE_WAIST * hollow
        u = min(max(depth_below_waist / self.waist_to_hip, 0.0), 1.0)
        return self.waist + (self.hip - self.waist) * u * (2 - u)

    @property
    def estimates(self) -> tuple[Estimate, ...]:
        """Likely values for the measures that were not given.

        Each is the mean of adults alike in every measure that was given; see `draft.estimates`. A body smaller than
        those adults is treated as one of them made smaller as a whole, and the estimate has no standard deviation.

        Examples
        --------
        >>> body = Body(waist=720, hip=980, crotch_depth=262, waist_to_hip=205, inside_leg=760, thigh=580, knee=380)
        >>> for estimate in body.estimates:
        ...     print(estimate.field, estimate, estimate.for_drafting)
        calf estimated 361 +- 15 mm (1 SD) True
        ankle estimated 214 +- 10 mm (1 SD) True
        knee_height estimated 438 +- 10 mm (1 SD) True
        hip_depth estimated 212 +- 11 mm (1 SD) True
        front_crotch estimated 277 +- 26 mm (1 SD) False
        back_crotch estimated 377 +- 22 mm (1 SD) False
        """
        known = {field: value for field in MEASURES if (value := getattr(self, field)) is not None}
        return estimated({**known, "crotch_depth": self.seated_crotch_depth() - STANDING_TO_SEATED_MM})

    def known(self, field: str) -> float:
        """Give a measure if it was taken, else its estimate, mm.

        Raises
        ------
        DraftError
            For a name that is not a measure.
        """
        if field not in MEASURES:
            near = nearest(field, MEASURES)
            remedy = f"ask for {near} instead of {field}" if near else "ask for one of these"
            raise DraftError("field", field, f"one of {', '.join(MEASURES)}", remedy)
        value = cast(float | None, getattr(self, field))
        return value if value is not None else next(e.value for e in self.estimates if e.field == field)

    def filled(self) -> Body:
        """Give the body with its estimates written in, but for the crotch lengths, which must be measured.

        Examples
        --------
        >>> body = Body(waist=720, hip=980, crotch_depth=262, waist_to_hip=205, inside_leg=760, thigh=580).filled()
        >>> round(body.knee), body.front_crotch is None
        (382, True)
        """
        likely: dict[str, Any] = {e.field: e.value for e in self.estimates if e.for_drafting}
        return replace(self, **likely)


def _judged(given: Mapping[str, object], taken: object, name: object) -> dict[str, float]:
    """Read every measure; raise one error that tells all that is wrong."""
    known: dict[str, float] = {}
    wrong: list[DraftError] = []
    for field, value in given.items():
        try:
            if value is not None:
                known[field] = measured(field, value)
            elif field in REQUIRED:
                wrong.append(missing(field))
        except DraftError as error:
            wrong.append(error)
    wrong += _wrong_words(taken, name)
    wrong += contradictions(known, taken=taken)
    if wrong:
        raise collected(wrong)
    return known


def _wrong_words(taken: object, name: object) -> Iterator[DraftError]:
    if not isinstance(taken, str) or taken not in get_args(Taken):
        near = nearest(str(taken), get_args(Taken))
        remedy = f"write {near!r}" if near else "say whether the body sat on a chair or stood"
        yield DraftError("body.crotch_depth_taken", _not_missing(taken), "'seated' or 'standing'", remedy)
    if not isinstance(name, str) or not name.isprintable():
        yield DraftError("body.name", _not_missing(name), "one line of text", "write a short label, or leave it out")


def _not_missing(value: object) -> object:
    """Keep a given ``None`` from being told as a missing value."""
    return "None" if value is None else value
