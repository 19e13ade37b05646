"""Pieces side by side on one sheet: where each is drawn, and where the test squares are.

Glossary
--------
sheet       the drawing area, origin at its lower left corner, y up, mm
row         pieces side by side on one base line; rows follow each other downwards
column      low pieces above each other in a row
shift       what is added to a piece's own coordinates to get its place on the sheet
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from math import isfinite, sqrt
from typing import TYPE_CHECKING, Protocol

from draft.errors import DraftError

if TYPE_CHECKING:
    from draft.piece import Piece

MM_SQUARE = 100.0
INCH_SQUARE = 101.6  # 4 inches
SQUARE_GAP = 20.0  # between the two squares
FIRST = ("front", "back")
_BOUNDS_SLACK = 0.5  # the bounds of a piece are those of a polyline within 0.5 mm of its cut line
_SPREAD = 1.35  # sheet width by the root of all areas: with the loss between unequal pieces, wider than high


class Made(Protocol):
    """What is drawn: something with a name and pieces, such as a `Pattern`."""

    @property
    def name(self) -> str:
        """Name for titles."""

    @property
    def pieces(self) -> Mapping[str, Piece]:
        """Pieces by name."""


@dataclass(frozen=True)
class Place:
    """A piece and what to add to its coordinates."""

    piece: Piece
    shift: complex


@dataclass(frozen=True)
class Sheet:
    """Places of all pieces; the 100 mm test square stands at `squares`, the 4 inch one `SQUARE_GAP` right of it."""

    places: tuple[Place, ...]
    width: float
    height: float
    squares: complex

    @property
    def mm_square(self) -> complex:
        """Lower left corner of the 100 mm square."""
        return self.squares

    @property
    def inch_square(self) -> complex:
        """Lower left corner of the 4 inch square."""
        return self.squares + MM_SQUARE + SQUARE_GAP


@dataclass(frozen=True)
class _Box:
    piece: Piece | None  # None: the test squares
    corner: complex
    width: float
    height: float


def arrange(pieces: Iterable[Piece], gap: float = 20.0, width: float | None = None) -> Sheet:
    """Lay pieces side by side in rows: front and back first, then by decreasing height; low ones share a column.

    Parameters
    ----------
    pieces : iterable of Piece
        What to lay out.
    gap : float
        Least distance between two pieces, and half of it to the edge of the sheet, mm.
    width : float, optional
        Width of the sheet in mm; None: so that the sheet becomes a little wider than high.

    Raises
    ------
    DraftError
        When the gap is negative or a piece is wider than the sheet.

    Examples
    --------
    >>> sheet = arrange([])
    >>> sheet.width, sheet.height, sheet.squares
    (241.6, 121.6, (10+10j))
    """
    if not (isfinite(gap) and gap >= 0):
        raise DraftError("gap", gap, "0 mm or more", "leave about 20 mm between the pieces")
    boxes = [_Box(None, 0j, MM_SQUARE + SQUARE_GAP + INCH_SQUARE, INCH_SQUARE), *(_box(piece) for piece in pieces)]
    widest = max(boxes, key=lambda box: box.width)
    if width is None:
        room = sum((box.width + gap) * (box.height + gap) for box in boxes)
        inner = max(widest.width, _SPREAD * sqrt(room) - gap) if len(boxes) > 1 else widest.width
    else:
        inner = width - gap
        if not (isfinite(width) and inner >= widest.width - 1e-9):
            name = widest.piece.name if widest.piece else "the test squares"
            raise DraftError("width", width, f"{widest.width + gap:.0f} mm or more for {name}", "take a wider sheet")
    rows = _rows(sorted(boxes, key=_rank), gap, inner)
    return _stacked(rows, gap, None if width is None else inner)


def _box(piece: Piece) -> _Box:
    left, bottom, right, top = piece.bounds
    s = _BOUNDS_SLACK
    return _Box(piece, complex(left - s, bottom - s), right - left + 2 * s, top - bottom + 2 * s)


def _rank(box: _Box) -> tuple[int, float]:
    if box.piece is not None and box.piece.name in FIRST:
        return FIRST.index(box.piece.name), 0.0
    return len(FIRST), -box.height


@dataclass
class _Column:
    """Boxes above each other, none wider than the first."""

    boxes: list[_Box]

    @property
    def width(self) -> float:
        return self.boxes[0].width

    def height(self, gap: float) -> float:
        return sum(box.height for box in self.boxes) + gap * (len(self.boxes) - 1)


@dataclass
class _Row:
    """Columns side by side, none higher than the first."""

    columns: list[_Column]
    height: float

    def width(self, gap: float) -> float:
        return sum(column.width for column in self.columns) + gap * (len(self.columns) - 1)


def _rows(boxes: list[_Box], gap: float, inner: float) -> list[_Row]:
    """Boxes in rows; what is low enough goes on top of a box before it."""
    rows: list[_Row] = []
    for box in boxes:
        column = _column_for(box, rows, gap)
        if column is not None:
            column.boxes.append(box)
        elif rows and rows[-1].width(gap) + gap + box.width <= inner + 1e-9:
            rows[-1].columns.append(_Column([box]))
            rows[-1].height = max(rows[-1].height, box.height)
        else:
            rows.append(_Row([_Column([box])], box.height))
    return rows


def _column_for(box: _Box, rows: list[_Row], gap: float) -> _Column | None:
    for row in rows:
        for column in row.columns:
            if box.width <= column.width and column.height(gap) + gap + box.height <= row.height:
                return column
    return None


def _stacked(rows: list[_Row], gap: float, inner: float | None) -> Sheet:
    """Place of every box, the first row at the top."""
    height = sum(row.height + gap for row in rows)
    if inner is None:
        inner = max(row.width(gap) for row in rows)
    places: list[Place] = []
    squares, top = 0j, height - gap / 2
    for row in rows:
        corner = complex(gap / 2, top - row.height)
        for column in row.columns:
            at = corner
            for box in column.boxes:
                if box.piece is None:
                    squares = at
                else:
                    places.append(Place(box.piece, at - box.corner))
                at += 1j * (box.height + gap)
            corner += column.width + gap
        top -= row.height + gap
    return Sheet(tuple(places), inner + gap, height, squares)
