"""What both dialects of DXF share: lines as vertices, what must hold before writing, plain text, the document.

Glossary
--------
vertex       a point of a polyline as it stands in the file, rounded once
turn point   a vertex where a line has a corner, where a straight stretch runs into a curve, or where an open line ends
curve point  a vertex through which a curve is rebuilt; the vertices between only keep the polyline close to the curve
"""

from __future__ import annotations

import cmath
import unicodedata
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from importlib import import_module
from itertools import pairwise
from math import ceil, inf
from threading import Lock
from typing import TYPE_CHECKING, Any

import numpy as np

from draft.edge import Edge
from draft.errors import DraftError
from draft.geometry.arrays import Flags, Floats
from draft.geometry.flatten import steps_for
from draft.geometry.path import JOIN_TOL_MM, Path, chain
from draft.geometry.points import angle_deg
from draft.geometry.segments import Line, Segment
from draft.piece import Piece

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.layouts.base import BaseLayout

FLATTEN_MM = 0.05  # how far a polyline may stray from the true curve; half of what is allowed
CURVE_POINT_MM = 0.2  # how far the chords between curve points may stray
CURVE_POINTS_TO_NEXT_MM = 30.0  # on flat curves too: a spline goes astray where near points are followed by far ones
CURVE_POINTS_APART_MM = 1.0  # closer ones would steer a spline by what was lost in rounding
STRAIGHT_MM = 5.0  # a straight stretch from here on is kept straight: a spline would bend it
CORNER_DEG = 3.0  # a turn below this is no corner
SHORTEST_MM = 0.01  # vertices closer than this make a cutter stutter
CAPITALS = 0.72  # height of capitals, by which text is measured here, to the size of the font
NARROW = 0.85  # the usual stroke font is as wide as it is high; so it needs the room that the label has reckoned with

PLAIN, CURVE, TURN = 0, 1, 2

_LONGEST_TEXT = 250  # the format holds 255 characters in one string
_LETTERS = str.maketrans(
    {
        "ß": "ss", "æ": "ae", "Æ": "AE", "œ": "oe", "Œ": "OE", "ø": "o", "Ø": "O", "đ": "d", "Đ": "D", "ð": "d",
        "Ð": "D", "þ": "th", "Þ": "Th", "ł": "l", "Ł": "L", "ı": "i", "‘": "'", "’": "'", "‚": "'", "“": '"',
        "”": '"', "„": '"', "«": '"', "»": '"', "–": "-", "—": "-", "−": "-", "×": "x", "⁄": "/",
        # These two start codes inside text: a backslash one for a letter, a caret one for a control character.
        "\\": "/", "^": "-",
    }
)  # fmt: skip


def ascii_text(text: str) -> str:
    r"""One line of printable ASCII: letters without their accents, anything without a likeness as a question mark.

    >>> ascii_text("Ünal <& Co> – 50 %%d\n½")
    'Unal <& Co> - 50 %d 1/2'
    """
    apart = unicodedata.normalize("NFKD", text.translate(_LETTERS)).translate(_LETTERS)
    kept = (c for c in apart if c.isspace() or unicodedata.category(c) not in ("Cc", "Cf", "Mn"))
    plain = "".join(c if " " <= c <= "~" else "?" for c in " ".join("".join(kept).split()))
    while "%%" in plain:  # two of them start a code for a sign
        plain = plain.replace("%%", "%")
    return plain[:_LONGEST_TEXT]


@dataclass(frozen=True, eq=False)
class Vertices:
    """A line as it is written; `marks` says of each vertex whether it is PLAIN, a CURVE point or a TURN point."""

    points: list[complex]
    marks: list[int]
    closed: bool

    def marked(self, mark: int) -> Iterator[complex]:
        """Vertices with one mark."""
        return (p for p, here in zip(self.points, self.marks, strict=True) if here == mark)


def rounded(p: complex, decimals: int) -> complex:
    """Point as it is written; no negative zero.

    >>> rounded(complex(1.2345, -0.0001), 2)
    (1.23+0j)
    """
    return complex(round(float(p.real), decimals) + 0.0, round(float(p.imag), decimals) + 0.0)


def finite(where: str, points: Iterable[complex]) -> None:
    """Refuse points that are no numbers."""
    for p in points:
        if not cmath.isfinite(p):
            raise DraftError(where, p, "finite coordinates in mm", "look for the step that made it; nothing is written")


def vertices(path: Path, where: str, decimals: int, shift: complex = 0j) -> Vertices:
    """Line as vertices within 0.05 mm of it, rounded once, none closer together than 0.01 mm.

    Parameters
    ----------
    path : Path
        Open or closed; of a closed one the first vertex is not repeated.
    where : str
        Piece and line, for the error.
    decimals : int
        How many decimals of a millimetre are written.
    shift : complex
        Where the piece's origin comes to lie.

    Raises
    ------
    DraftError
        When a coordinate is no number, or nothing but a point is left.
    """
    finite(where, (p for segment in path for p in segment.controls))
    segments = [s for s in path if _extent(s) >= SHORTEST_MM]  # shorter ones have no direction worth the name
    if not segments:
        raise DraftError(where, 0.0, "a line with a length", "leave the line out of the piece")
    points: list[complex] = []
    marks: list[int] = []
    for index, segment in enumerate(segments):
        stations, shaping = _stations(segment)
        points += (segment.points(stations) + shift).tolist()
        start = _joint(segments[index - 1], segment) if index or path.closed else TURN
        marks += [start, *np.where(shaping[1:], CURVE, PLAIN).tolist()]
    if not path.closed:
        points.append(path.end + shift)
        marks.append(TURN)
    thin = _thinned([rounded(p, decimals) for p in points], marks, closed=path.closed)
    if len(thin.points) < 2 + path.closed:
        raise DraftError(where, len(thin.points), "a line with a length", "leave the line out of the piece")
    return thin


def _extent(segment: Segment) -> float:
    """How far a segment reaches, by its control points."""
    return max(abs(p - segment.controls[0]) for p in segment.controls)


def _joint(one: Segment, two: Segment) -> int:
    """Mark of the place where two segments meet."""
    straight, other = (isinstance(s, Line) and abs(s.p1 - s.p0) >= STRAIGHT_MM for s in (one, two))
    return TURN if straight != other or abs(angle_deg(one.end_dir, two.start_dir)) > CORNER_DEG else CURVE


def _stations(segment: Segment) -> tuple[Floats, Flags]:
    """Parameters of the vertices of a segment without its end, and which of them are curve points."""
    if isinstance(segment, Line):
        return np.zeros(1), np.ones(1, dtype=bool)
    spans = max(steps_for(segment, CURVE_POINT_MM), ceil(_extent(segment) / CURVE_POINTS_TO_NEXT_MM))
    each = ceil(steps_for(segment, FLATTEN_MM) / spans)
    count = np.arange(spans * each)
    return count / (spans * each), count % each == 0


def _thinned(points: list[complex], marks: list[int], *, closed: bool) -> Vertices:
    """Vertices without those that lie on the one before them; the one with the stronger mark stays."""
    kept: list[complex] = []
    kept_marks: list[int] = []
    for p, mark in zip(points, marks, strict=True):
        if not kept or abs(p - kept[-1]) >= SHORTEST_MM - 1e-9:
            kept.append(p)
            kept_marks.append(mark)
        elif mark > kept_marks[-1]:
            kept[-1], kept_marks[-1] = p, mark
    while closed and len(kept) > 1 and abs(kept[-1] - kept[0]) < SHORTEST_MM - 1e-9:
        kept.pop()
        kept_marks[0] = max(kept_marks[0], kept_marks.pop())
    return Vertices(kept, _apart(kept, kept_marks), closed)


def _apart(points: list[complex], marks: list[int]) -> list[int]:
    """Marks without the curve points that lie close behind another marked vertex, or close before a turn point."""
    found = list(marks)
    onwards = range(len(points))
    for order, stops in ((onwards, (TURN, CURVE)), (reversed(onwards), (TURN,))):
        last = complex(inf)
        for k in order:
            if found[k] == CURVE and abs(points[k] - last) < CURVE_POINTS_APART_MM:
                found[k] = PLAIN
            elif found[k] in stops:
                last = points[k]
    return found


def check_piece(piece: Piece) -> None:
    """Refuse a piece that no file can hold, before anything is drawn.

    Raises
    ------
    DraftError
        When a coordinate is no number or the cut line is open; it names piece and place.
    """
    for edge in piece.edges:
        finite(f"{piece.name}, edge {edge.name}", (p for part in edge.parts for s in part for p in s.controls))
        finite(f"{piece.name}, allowance of {edge.name}", (edge.allowance,))
        finite(f"{piece.name}, dart", (p for dart in edge.darts for p in (dart.centre_leg, dart.side_leg, dart.point)))
    finite(f"{piece.name}, grainline", piece.grainline.controls)
    finite(f"{piece.name}, drill hole", (hole.at for hole in piece.holes))
    finite(f"{piece.name}, notch", (notch.along for notch in piece.notches))
    for line in piece.lines:
        where = f"{piece.name}, {line.kind} line"
        finite(where, (p for segment in line.path for p in segment.controls))
        if not line.path.length > SHORTEST_MM:
            raise DraftError(where, line.path.length, "a line with a length", "leave it out of the piece")
    for start, end in ((piece.edges[k - 1].end, edge.start) for k, edge in enumerate(piece.edges)):
        if abs(end - start) > JOIN_TOL_MM:
            raise DraftError(f"{piece.name}, outline", end - start, "a closed line", "close this gap (in mm)")
    cut = piece.cut_line
    if not cut.closed:
        gap = abs(cut.end - cut.start)
        raise DraftError(f"{piece.name}, cut line", gap, "a closed line", "look for this gap (in mm) at its corners")


def boundary(piece: Piece, decimals: int, shift: complex = 0j) -> Vertices:
    """Cut line of a piece as vertices.

    Raises
    ------
    DraftError
        When it does not run once round the piece, coming to no place twice.
    """
    where = f"{piece.name}, cut line"
    outline = vertices(piece.cut_line, where, decimals, shift)
    seen: set[complex] = set()
    for p in outline.points:
        if p in seen:
            raise DraftError(where, p - shift, "a line that comes to no place twice", "part the piece there")
        seen.add(p)
    ring = np.array([*outline.points, outline.points[0]])
    area = float(np.sum((ring[:-1].conjugate() * ring[1:]).imag)) / 2
    if not area > 0:
        raise DraftError(f"{where}, area in mm2", area, "more than 0 of a counter-clockwise line", "turn it round")
    return outline


def seam_lines(piece: Piece, *, drawn: Callable[[Edge], bool]) -> list[Path]:
    """Sew line in as few runs as there are gaps, without the edges that are not to be drawn."""
    edges = piece.edges
    gaps = [index for index, edge in enumerate(edges) if not drawn(edge)]
    if not gaps:
        return [piece.sew_line]
    runs = pairwise([*gaps, gaps[0] + len(edges)])
    between = [[edges[k % len(edges)].path for k in range(gap + 1, stop)] for gap, stop in runs]
    return [chain(paths).tidy() for paths in between if paths]


# ---- the document


_fixing_dates = Lock()


@contextmanager
def fixed_dates() -> Iterator[None]:
    """While it lasts, documents carry no time of their making: the same pattern gives the same file."""
    options: Any = import_module("ezdxf").options
    with _fixing_dates:
        before = options.write_fixed_meta_data_for_testing
        options.write_fixed_meta_data_for_testing = True
        try:
            yield
        finally:
            options.write_fixed_meta_data_for_testing = before


def new_document() -> Drawing:
    """Empty document of release 12, the form that old cutters and strict readers take."""
    from ezdxf.document import Drawing

    return Drawing.new("AC1009")  # the usual way in warns on every call that this release carries no unit


def add_vertices(layout: BaseLayout, line: Vertices, layer: str, *, repeat_first: bool = False) -> None:
    """Add a line: as LINE when it is one straight stretch, else as POLYLINE.

    A closed one carries the flag for it, or instead of the flag its first vertex again at the end.
    """
    places = [(p.real, p.imag) for p in line.points]
    if len(places) == 2:
        layout.add_line(places[0], places[1], dxfattribs={"layer": layer})
        return
    if line.closed and repeat_first:
        places.append(places[0])
    layout.add_polyline2d(places, close=line.closed and not repeat_first, dxfattribs={"layer": layer})


def add_line(layout: BaseLayout, start: complex, end: complex, layer: str) -> None:
    """Add one straight stretch."""
    layout.add_line((start.real, start.imag), (end.real, end.imag), dxfattribs={"layer": layer})


def add_text(layout: BaseLayout, text: str, at: complex, size: float, layer: str, angle: float = 0.0) -> None:
    """Add one line of text, `at` the start of its baseline, `size` that of the font in mm."""
    place = rounded(at, 2)
    attributes = {
        "layer": layer,
        "insert": (place.real, place.imag),
        "height": round(float(size) * CAPITALS, 2),
        "width": NARROW,
        "rotation": round(float(angle), 2),
    }
    layout.add_text(ascii_text(text), dxfattribs=attributes)
