"""Gathered hem: the leg's own bottom edge gathered into a folded band without an opening.

Its frame: x along the band of the wearer's right leg from the inseam around the back, right side up, seen from outside;
y = 0 on the seam with the leg, the outer half above the fold. Beside side seam and inseam a stretch stays flat, so that
no gathers are caught in the crossing seams; between them front and back are gathered by one share.

Gathers of 1.2 to 3 times the band, and 20 flat beside each seam, are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from draft.choices.hems import GatheredHem
from draft.edge import Corner, Edge
from draft.errors import DraftError
from draft.geometry.path import Path
from draft.geometry.segments import Line
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces.hems.girths import girth_to_pass, leg_girth
from draft.pieces.hems.strip import PARTS, clear_of_floor, panel_of
from draft.pieces.interfacing import interfacing_of
from draft.pieces.plan import Plan
from draft.seams import Joint, Run, Seam
from draft.units import at_least, at_most, fmt

LEAST_FULLNESS, MOST_FULLNESS = 1.2, 3.0
ROUNDING = 0.01  # a leg is cut to its girth within this, mm
TIGHT = 20.0  # more than the leg: a band with less is felt when the knee is bent (common practice, no source)
NAME = "hem_band"


@dataclass(frozen=True)
class Sizes:
    """Lengths along the closed band, and what stays flat beside each seam, mm."""

    front: float
    back: float
    clear: float

    @property
    def girth(self) -> float:
        """Closed band."""
        return self.front + self.back


def _choice(plan: Plan) -> GatheredHem:
    hem = plan.style.hem
    assert isinstance(hem, GatheredHem)
    return hem


def _height(plan: Plan) -> float:
    """Of the leg's bottom edge above the floor."""
    return plan.body.inside_leg - plan.shell.front.inseam.length


def sizes(plan: Plan) -> Sizes:
    """Lengths that follow from the body and the leg's bottom edge.

    Raises
    ------
    DraftError
        When the band does not pass the leg below it or hangs to the floor, or when the leg is too narrow or too wide
        to be gathered to it; with the limit.
    """
    hem = _choice(plan)
    clear_of_floor(plan, hem.depth)
    passes = girth_to_pass(plan.body, _height(plan))
    girth = passes + hem.ease if hem.girth is None else hem.girth
    if girth < passes:
        expected = f"at least {at_least(passes)} mm to pass the foot and the leg up to its place"
        raise DraftError("style.hem.girth", girth, expected, "make the band longer, or take a KneeBand, which opens")
    flat = 4 * hem.clear
    leg = [panel_of(plan, part).hem.length for part in PARTS]
    least, most = ((girth - flat) * fullness + flat for fullness in (LEAST_FULLNESS, MOST_FULLNESS))
    if not least - ROUNDING <= sum(leg) <= most + ROUNDING:
        expected = f"{at_least(least)} to {at_most(most)} mm to be gathered to a band of {girth:.0f}"
        raise DraftError("style.leg.hem", round(sum(leg), 1), expected, "set a hem inside these limits")
    share = (girth - flat) / (sum(leg) - flat)
    front, back = ((long - flat / 2) * share + flat / 2 for long in leg)
    return Sizes(front, back, hem.clear)


def allowance(plan: Plan) -> float:
    """Allowance of the seam with the band, as for a cuff."""
    return plan.style.allowances.cuff


def corner() -> Corner:
    """Side seam and inseam are sewn and pressed open before the band is joined."""
    return Corner("mirrored")


def above(plan: Plan) -> float:
    """Nothing: the band hangs below the leg."""
    sizes(plan)
    return 0.0


def leg_lines(plan: Plan, name: str) -> list[InnerLine]:
    """No lines on the leg."""
    return []


def _count(part: str) -> int:
    return 1 if part == "front" else 2


def leg_notches(plan: Plan, name: str) -> list[Notch]:
    """Where the gathers begin and end, single in front, double behind."""
    clear, long = sizes(plan).clear, panel_of(plan, name).hem.length
    return [
        Notch("hem", clear, f"{name} gathers at the side", _count(name)),
        Notch("hem", long - clear, f"{name} gathers at the inseam", _count(name)),
    ]


def pieces(plan: Plan) -> list[Piece]:
    """Band, and its interfacing when the style asks for interfacing."""
    band = _band(plan)
    return [band, interfacing_of(band)] if plan.style.interfacing else [band]


def _band(plan: Plan) -> Piece:
    """Outer half from y = 0 down to the fold, inner half below it; its seam edge is walked from the front inseam."""
    s, a, depth = sizes(plan), plan.style.allowances, _choice(plan).depth
    long, low, fold = s.girth, -2j * depth, -1j * depth
    edges = (
        Edge("back_end", (Path.line(0j, low),), allowance=a.inseam),
        Edge("inner", (Path.line(low, long + low),), allowance=a.cuff),
        Edge("front_end", (Path.line(long + low, long + 0j),), allowance=a.inseam),
        Edge("leg", (Path.line(long + 0j, 0j),), allowance=a.cuff),
    )
    return Piece(
        name=NAME,
        title="Hem band",
        edges=edges,
        cut=Cut(2, "self", mirrored=True),
        grainline=Line(0.2 * long + 1.5 * fold, 0.8 * long + 1.5 * fold),
        notches=(
            Notch("leg", s.clear, "front gathers at the inseam"),
            Notch("leg", s.front - s.clear, "front gathers at the side"),
            Notch("leg", s.front, "side"),
            Notch("leg", s.front + s.clear, "back gathers at the side", 2),
            Notch("leg", s.girth - s.clear, "back gathers at the inseam", 2),
        ),
        lines=(InnerLine("fold", Path.line(fold, long + fold), "fold"),),
        made_for=plan.made_for,
        notes=(f"closed {fmt(s.girth, 0)}",),
    )


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> tuple[list[Seam], list[Joint]]:
    """Band closed to a ring, and the leg on it: flat, gathered, flat."""
    s = sizes(plan)
    ends = Run(NAME, "front_end"), Run(NAME, "back_end", back=True)
    found = [Seam.of("hem band, inseam", *ends, pieces)]
    for part, own in (("front", s.front), ("back", s.back)):
        long = panel_of(plan, part).hem.length
        names = "flat at the side", "gathered", "flat at the inseam"
        on_leg = (0.0, s.clear, long - s.clear, long)
        on_band = (0.0, s.clear, own - s.clear, own)
        for name, i in zip(names, range(3), strict=True):
            run = _on_band(s, part, on_band[i], on_band[i + 1])
            ease = long - own if name == "gathered" else 0.0
            leg = Run(part, "hem", on_leg[i], on_leg[i + 1])
            found.append(Seam.of(f"hem band, {part}, {name}", leg, run, pieces, ease))
    return found, []


def _on_band(s: Sizes, part: str, start: float, stop: float) -> Run:
    """Run on the band between two distances from the side seam."""
    if part == "front":
        return Run(NAME, "leg", s.front - stop, s.front - start, back=True)
    return Run(NAME, "leg", s.front + start, s.front + stop)


def notes(plan: Plan) -> list[str]:
    """How the leg is gathered, and what to mind."""
    s, hem = sizes(plan), _choice(plan)
    leg = sum(panel_of(plan, part).hem.length for part in PARTS)
    told = [
        f"hem band: closed {fmt(s.girth, 0)}, the leg's bottom edge of {fmt(leg, 0)} is gathered to it between the "
        f"notches, {fmt(s.clear, 0)} beside each seam stay flat; gather with two rows of long stitches, one on either "
        "side of the seam line",
        f"hem band: it hangs {fmt(hem.depth, 0)} below the inside leg; a leg that is to blouse over it wants as much "
        "more length as it is to fall over",
    ]
    if s.girth < leg_girth(plan.body, _height(plan)) + TIGHT:
        told.append("caution: the band lies close around the leg; try it on, sit and bend the knee before it is sewn")
    return told
