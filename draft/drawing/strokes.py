"""Strokes of a piece as SVG path data: which lines are drawn, how each kind looks, and the one flip of y.

Glossary
--------
stroke   the lines of one kind
ink      how one line is written: a form with places for coordinates, and the points that fill them
frame    what turns a piece's coordinates into the drawing's: a shift, then y downwards from the top edge
look     colour, width and dash of a kind, in plain attributes
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from draft.errors import DraftError
from draft.geometry.path import JOIN_TOL_MM, Path
from draft.geometry.segments import Line
from draft.units import fmt

if TYPE_CHECKING:
    from draft.piece import Piece

DECIMALS = 3  # of a mm
FONT = "Arial, DejaVu Sans, sans-serif"
ARROW, ARROW_HALF_WIDTH = 7.0, 2.2
CROSS = 2.5  # of a drill hole: arm beyond the circle's middle, at least
FOLD_BRACKET = 6.0  # distance of the bracket from an edge that lies on the fold


@dataclass(frozen=True)
class Look:
    """How a kind of line is drawn; sizes in mm."""

    colour: str
    width: float
    dash: str = ""

    @cached_property
    def attributes(self) -> dict[str, str]:
        """Presentation attributes of SVG."""
        plain = {"fill": "none", "stroke": self.colour, "stroke-width": f"{self.width:g}", "stroke-linejoin": "round"}
        return plain | ({"stroke-dasharray": self.dash} if self.dash else {})


LOOKS = {
    "cut": Look("#000000", 0.5),
    "sew": Look("#1f5fbf", 0.25, "5 2"),
    "grain": Look("#000000", 0.35),
    "notches": Look("#000000", 0.45),
    "fold-edge": Look("#7a3fa0", 0.6),
    "fold": Look("#7a3fa0", 0.35, "10 2 2 2"),
    "placement": Look("#0a7a4b", 0.3, "3 1.5"),
    "topstitch": Look("#b3541e", 0.35, "1.5 1"),
    "dart": Look("#1f5fbf", 0.35, "8 1.5 1 1.5"),
    "guide": Look("#555555", 0.25, "0.6 1.8"),
    "buttonhole": Look("#b3123a", 0.5, "2.4 0.6"),
    "button": Look("#b3123a", 0.4),
    "holes": Look("#000000", 0.3),
}
"""Kind of line -> look, in the order of drawing. The kinds of inner lines have the names they have on the piece."""

INNER = ("fold", "placement", "topstitch", "dart", "guide", "buttonhole", "button")


@dataclass(frozen=True)
class Frame:
    """Place of a piece in a drawing whose top edge is at `top`.

    >>> Frame(10 + 0j, 100)([5 + 20j])
    (15.0, 80.0)
    """

    shift: complex
    top: float

    def __call__(self, points: Sequence[complex]) -> tuple[float, ...]:
        """Coordinates x, y, x, y ... in the drawing, rounded; no negative zero.

        Raises
        ------
        DraftError
            For a coordinate that is no finite number, which must not reach a file.
        """
        p = np.array(points, dtype=complex).conj() + complex(self.shift.real, self.top - self.shift.imag)
        flat = np.round(p.view(float), DECIMALS) + 0.0
        if not np.isfinite(flat).all():
            raise DraftError("coordinate", "not finite", "a finite number", "look for the step that made it")
        return tuple(flat.tolist())


@dataclass(frozen=True, eq=False)
class Ink:
    """What is written of one line: text with a place for every coordinate, and the points that go there."""

    form: str
    points: Sequence[complex]


def written(inks: Sequence[Ink], frame: Frame) -> list[str]:
    """Texts of many inks, their coordinates turned and rounded all at once.

    >>> written([curve(Path.line(0, 10, 10 + 10j, 0)), Ink("%.3f %.3f", [5j])], Frame(0, 20))
    ['M0.000,20.000L10.000,20.000L10.000,10.000Z', '0.000 15.000']
    """
    points = [point for ink in inks for point in ink.points]
    text = "\n".join([ink.form for ink in inks]) % frame(points)
    return text.split("\n") if inks else []


def curve(path: Path) -> Ink:
    """Path data of exact lines and cubics; a closed path ends with Z."""
    form = ["M%.3f,%.3f"]
    segments = path.segments
    points = [segments[0].controls[0]]
    closed = abs(segments[-1].controls[-1] - points[0]) <= JOIN_TOL_MM
    if closed and len(segments) > 2 and isinstance(segments[-1], Line):
        segments = segments[:-1]  # Z draws it
    for segment in segments:
        points += segment.controls[1:]
        form.append("L%.3f,%.3f" if isinstance(segment, Line) else "C%.3f,%.3f %.3f,%.3f %.3f,%.3f")
    if closed:
        form.append("Z")
    return Ink("".join(form), points)


def polylines(runs: Iterable[Sequence[complex]]) -> Ink:
    """Path data of open polylines."""
    form: list[str] = []
    points: list[complex] = []
    for run in runs:
        form.append("M%.3f,%.3f" + "L%.3f,%.3f" * (len(run) - 1))
        points += run
    return Ink("".join(form), points)


def strokes(piece: Piece) -> Iterator[tuple[str, tuple[Ink, ...]]]:
    """Every kind of line that the piece has, with its paths, in the order of drawing."""
    yield "cut", (curve(piece.cut_line),)
    yield "sew", (curve(piece.sew_line),)
    yield "grain", (polylines(arrow(*piece.grainline.controls)),)
    if slits := notches(piece):
        yield "notches", (polylines(slits),)
    if brackets := fold_edges(piece):
        yield "fold-edge", (polylines(brackets),)
    for kind in INNER:
        if inks := tuple(curve(line.path) for line in piece.lines if line.kind == kind):
            yield kind, inks
    if piece.holes:
        yield "holes", tuple(_hole(hole.at, hole.diameter / 2) for hole in piece.holes)


def arrow(start: complex, end: complex) -> list[list[complex]]:
    """Line with a head at both ends; the heads of a short line are smaller."""
    whole = abs(end - start)
    if whole == 0:
        return [[start, end]]
    along = (end - start) / whole
    size = min(1.0, whole / (4 * ARROW))
    back, aside = ARROW * size * along, ARROW_HALF_WIDTH * size * 1j * along
    heads = [[tip - way + aside, tip, tip - way - aside] for tip, way in ((start, -back), (end, back))]
    return [[start, end], *heads]


def notches(piece: Piece) -> list[list[complex]]:
    """Slits, each from the cut line into the allowance; two at one place (the legs of a closed dart) are two."""
    places = (place for _, slits in piece.notch_places for place in slits)
    return [[place.on_cut, place.on_cut + place.inward * place.depth] for place in places if place.depth > 0]


def fold_edges(piece: Piece) -> list[list[complex]]:
    """Bracket along the edge that lies on the fold of the cloth, its arrows pointing at the edge."""
    if not piece.cut.on_fold:
        return []
    found: list[list[complex]] = []
    for edge in piece.edges:
        if edge.name == "fold":
            along = (edge.end - edge.start) / abs(edge.end - edge.start)
            margin = min(15.0, 0.2 * edge.length)
            one, two = edge.start + margin * along, edge.end - margin * along
            into = 1j * along * FOLD_BRACKET
            found.append([one, one + into, two + into, two])
            for tip in (one, two):
                found.append([tip + into / 2 + along * 1.2, tip, tip + into / 2 - along * 1.2])
    return found


def _hole(at: complex, radius: float) -> Ink:
    """Circle of two arcs with a cross through it."""
    arm = max(CROSS, 1.8 * radius)
    cross = polylines([(at - arm, at + arm), (at - 1j * arm, at + 1j * arm)])
    half = f"A{fmt(radius, DECIMALS)},{fmt(radius, DECIMALS)} 0 1 0 %.3f,%.3f"
    return Ink(f"M%.3f,%.3f{half}{half}Z{cross.form}", [at - radius, at + radius, at - radius, *cross.points])


def identifier(name: str) -> str:
    """Name as an id: letters, digits, ``-`` and ``_``, a letter first.

    >>> identifier("fly_facing"), identifier("2 <b>")
    ('fly_facing', 'piece-2-b')
    """
    plain = re.sub(r"[^A-Za-z0-9_]+", "-", name).strip("-")
    return plain if plain[:1].isalpha() else f"piece-{plain}".rstrip("-")
