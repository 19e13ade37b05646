"""A traced pattern against a body: where it is too tight, too long or too shallow, and what would mend it.

A difference counts when it is larger than what tape, tracing and cloth leave uncertain. The tolerances are common
practice without a source, full girths and whole seams, mm; so is the order of the remedies: girths first, then the
depth of the crotch, then what is left of the lengths of the crotch seam, front and back for themselves.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from html import escape
from types import MappingProxyType

from draft.body import Body
from draft.errors import DraftError
from draft.style import Ease
from draft.table import Table
from draft.trace.refit import filled_ease
from draft.trace.search import ABOVE_FLOOR_MM, LONG_LEG
from draft.trace.traced import Traced
from draft.units import fmt

TOLERANCES = MappingProxyType(
    {
        "waist": 10.0,
        "hip": 15.0,
        "thigh": 20.0,
        "knee": 15.0,
        "crotch_depth": 7.0,
        "front_crotch": 15.0,
        "back_crotch": 15.0,
        "crotch": 15.0,
        "inside_leg": 10.0,
    }
)
"""What is left out of account, mm (common practice, no source)."""

LEAST_ONLY = ("thigh", "knee")  # more than this is style
DEPTH_EASE = 5.0  # on the seated crotch depth: the least of closely cut trousers (common practice, no source)
KNEE_EASE = 25.0  # at least one inch (an extension leaflet, read in a poor copy)
RAISED_AT_MOST = 13.0  # waist raised at centre front or back; more is let out at the fork (half an inch, read)
AT_HEM_AT_MOST = 20.0  # longer changes of the leg are made at the knee, so that the hem keeps its width

WORDS = {"girth": ("too tight", "too wide"), "length": ("too short", "too long"), "depth": ("too shallow", "too deep")}


@dataclass(frozen=True)
class Row:
    """One size: as traced, of the body, and wanted (body and ease), mm; `gap` is traced less wanted."""

    where: str
    traced: float
    body: float
    wanted: float
    verdict: str
    estimated: bool = False

    @property
    def gap(self) -> float:
        """Traced less wanted, mm."""
        return self.traced - self.wanted


@dataclass(frozen=True)
class Suggestion:
    """An alteration by its name, its amounts in mm, and why."""

    name: str
    amounts: Mapping[str, float]
    reason: str

    def __str__(self) -> str:
        told = ", ".join(f"{key}={mm:g}" for key, mm in self.amounts.items())
        return f"{self.name}({told}): {self.reason}"


@dataclass(frozen=True)
class Comparison:
    """All rows, and what would make the pattern fit; prints as a table."""

    name: str
    rows: tuple[Row, ...]
    suggestions: tuple[Suggestion, ...]

    @property
    def fits(self) -> bool:
        """Whether every size is right within its tolerance."""
        return not self.suggestions and all(row.verdict in ("fits", "roomy") for row in self.rows)

    def __getitem__(self, where: str) -> Row:
        """Row of a size by its name."""
        for row in self.rows:
            if row.where == where:
                return row
        raise KeyError(where)

    def table(self) -> Table:
        """One row for each size."""
        rows = tuple(
            (
                row.where.replace("_", " "),
                fmt(row.traced, 0),
                fmt(row.body, 0),
                fmt(row.wanted, 0),
                f"{row.gap:+.0f}",
                row.verdict + (", body estimated" if row.estimated else ""),
            )
            for row in self.rows
        )
        return Table(
            f"{self.name}: traced and wanted, mm", ("where", "traced", "body", "wanted", "gap", "verdict"), rows
        )

    def __str__(self) -> str:
        told = [f"- {one}" for one in self.suggestions] or ["- nothing to alter"]
        return "\n".join([str(self.table()), "", "To make it fit; sew a mock-up before the cloth is cut:", *told])

    def _repr_html_(self) -> str:

        told = "".join(f"<li>{escape(str(one))}</li>" for one in self.suggestions) or "<li>nothing to alter</li>"
        return f"{self.table().html()}<p>To make it fit; sew a mock-up before the cloth is cut:</p><ul>{told}</ul>"


def compare(traced: Traced, body: Body, *, ease: Ease | None = None) -> Comparison:
    """Where a traced pattern does not fit a body, and which alterations would make it.

    Parameters
    ----------
    traced : Traced
    body : Body
        Crotch lengths are compared when they were measured; a thigh that was not is estimated.
    ease : Ease, optional
        What the garment is to have more than the body; what is None in it, or when it is left out: waist 10, hip 60,
        thigh 25, front crotch 10, back crotch 15 mm (common practice, no source).

    Returns
    -------
    Comparison

    Examples
    --------
    >>> import draft
    >>> from draft.trace import Outline, Traced
    >>> leg = [100j - 125, -160j - 125, -160j + 125, 160, 90 + 20j, 75 + 45j, 65 + 100j, 65 + 255j, 255j - 125]
    >>> traced = Traced(front=Outline(leg), back=Outline(leg), allowance=0, waist_to_hip=200)
    >>> body = draft.Body(waist=750, hip=755, crotch_depth=270, waist_to_hip=200, inside_leg=770, thigh=500)
    >>> print(compare(traced, body))
    traced pattern: traced and wanted, mm
    where         traced  body  wanted  gap  verdict
    ------------  ------  ----  ------  ---  -----------
    waist            760   750     760   +0  fits
    hip              792   755     815  -23  too tight
    thigh            559   500     525  +34  roomy
    crotch depth     255   270     275  -20  too shallow
    <BLANKLINE>
    To make it fit; sew a mock-up before the cloth is cut:
    - hip_ease(by=23): hip too tight by 23 mm
    - crotch_depth(by=20): crotch depth too shallow by 20 mm
    """
    for value, kind, field in ((traced, Traced, "traced"), (body, Body, "body")):
        if not isinstance(value, kind):
            raise DraftError(field, type(value).__name__, f"a {kind.__name__}", f"write {kind.__name__}(...)")
    rows = tuple(_rows(traced, body, filled_ease(ease)))
    return Comparison(traced.name, rows, tuple(_suggested({row.where: row for row in rows})))


def _rows(traced: Traced, body: Body, ease: Ease) -> Iterator[Row]:
    sizes, depth = traced.measure(), traced.levels["waist"]
    eases = {"waist": ease.waist, "hip": ease.hip, "thigh": ease.thigh, "knee": KNEE_EASE}
    for name, more in eases.items():
        if name in sizes:
            known = body.known(name)
            yield _row(name, "girth", sizes[name], known, known + (more or 0), estimated=getattr(body, name) is None)
    seated = body.seated_crotch_depth()
    yield _row("crotch_depth", "depth", depth, seated, seated + DEPTH_EASE)
    parts = {
        "front_crotch": (body.front_crotch, ease.front_crotch),
        "back_crotch": (body.back_crotch, ease.back_crotch),
    }
    told = {name: (mm, more or 0.0) for name, (mm, more) in parts.items() if mm is not None}
    for name, (mm, more) in told.items():
        yield _row(name, "length", sizes[name], mm, mm + more)
    if len(told) == 2:
        whole, more = (sum(pair) for pair in zip(*told.values(), strict=True))
        yield _row("crotch", "length", sizes["crotch"], whole, whole + more)
    if sizes["inside_leg"] > LONG_LEG * depth:
        leg = body.inside_leg
        yield _row("inside_leg", "length", sizes["inside_leg"], leg, leg - ABOVE_FLOOR_MM)


def _row(where: str, kind: str, traced: float, body: float, wanted: float, *, estimated: bool = False) -> Row:
    gap = traced - wanted
    verdict = "fits" if abs(gap) <= TOLERANCES[where] else WORDS[kind][gap > 0]
    if where in LEAST_ONLY:
        verdict = "too tight" if gap < 0 else "roomy" if gap > TOLERANCES[where] else "fits"
    return Row(where, traced, body, wanted, verdict, estimated)


def _suggested(rows: Mapping[str, Row]) -> Iterator[Suggestion]:
    yield from _girths(rows)
    depth = rows["crotch_depth"]
    deeper = 0.0 if depth.verdict == "fits" else -depth.gap
    if deeper:
        yield _one("crotch_depth", deeper, depth)
    for name, part in (("front_crotch", "front"), ("back_crotch", "back")):
        if name in rows:
            yield from _seam(rows[name], part, deeper)
    if "inside_leg" in rows and rows["inside_leg"].verdict != "fits":
        leg = rows["inside_leg"]
        yield _one("lengthen_at_hem" if abs(leg.gap) <= AT_HEM_AT_MOST else "lengthen_at_knee", -leg.gap, leg)


def _girths(rows: Mapping[str, Row]) -> Iterator[Suggestion]:
    """All girths by what the hip asks for where all are off to one side; else each for itself."""
    waist, hip, thigh = rows["waist"], rows["hip"], rows.get("thigh")
    faulty = [row for row in (waist, hip, thigh) if row is not None and row.verdict not in ("fits", "roomy")]
    done = 0.0
    if len(faulty) == (3 if thigh is not None else 2) and len({row.gap > 0 for row in faulty}) == 1:
        done = -hip.gap
        yield Suggestion("all_girths", _by(done), f"all girths {hip.verdict}, the hip by {abs(hip.gap):.0f} mm")
    elif hip.verdict != "fits":
        yield _one("hip_ease", -hip.gap, hip)
    if abs(waist.gap + done) > TOLERANCES["waist"]:
        left = waist.gap + done
        after = " when the girths are altered" if done else ""
        yield Suggestion("waist_ease", _by(-left), f"waist {WORDS['girth'][left > 0]} by {abs(left):.0f} mm{after}")
    if thigh is not None and thigh.verdict == "too tight" and not done:
        yield _one("fuller_thigh", -thigh.gap, thigh)


def _seam(row: Row, part: str, deeper: float) -> Iterator[Suggestion]:
    """What is left to do on one crotch seam after the depth was altered, which changes it by as much."""
    left = row.gap + deeper
    if abs(left) <= TOLERANCES[row.where]:
        return
    after = " when the depth is altered" if deeper else ""
    reason = f"{row.where.replace('_', ' ')} {WORDS['length'][left > 0]} by {abs(left):.0f} mm{after}"
    if left > 0:
        yield Suggestion(*(("sway_back", _by(left)) if part == "back" else ("raise_front_waist", _by(-left))), reason)
        return
    raised = min(-left, RAISED_AT_MOST)
    yield Suggestion(f"raise_{part}_waist", _by(raised), reason)
    if -left - raised >= 1:
        yield Suggestion(f"extend_{part}_fork", _by(-left - raised), f"the rest of it: {reason}")


def _one(name: str, by: float, row: Row) -> Suggestion:
    return Suggestion(name, _by(by), f"{row.where.replace('_', ' ')} {row.verdict} by {abs(row.gap):.0f} mm")


def _by(mm: float) -> Mapping[str, float]:
    return MappingProxyType({"by": float(round(mm))})
