"""DXF for cutters and plotters: release 12, all pieces side by side at true size in mm, one layer per operation.

A cutter runs the layers in the order of the file: every mark is made before the first cut is. The format carries no
unit, so two test squares, 100 mm and 4 inch, tell which one was read.
"""

from __future__ import annotations

import os
from collections.abc import Iterable
from io import StringIO
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from draft.drawing.label import place_label, place_notes, shortened
from draft.drawing.sheet import INCH_SQUARE, MM_SQUARE, Made, Place, Sheet, arrange
from draft.export.dxf_common import (
    add_line,
    add_text,
    add_vertices,
    boundary,
    check_piece,
    fixed_dates,
    new_document,
    rounded,
    seam_lines,
    vertices,
)
from draft.export.files import write_text
from draft.geometry.segments import Line

if TYPE_CHECKING:
    from ezdxf.layouts.layout import Modelspace

DECIMALS = 3
COLOURS = {"REF": 8, "TEXT": 7, "DRAW": 5, "DRILL": 6, "NOTCH": 3, "CUT": 1}
"""Layers in the order in which they are written, and the colour by which a laser tells them apart."""

EDGE_MM = 5.0  # all round the sheet nothing is drawn; half the gap between the pieces is wider
ARROW_MM = 5.0
ARROW_DEG = 15.0
TEXT_MM = 5.0
TITLE_LETTERS = 26  # what fits into a test square; every label has the whole
INSET_MM = 4.0


def save(pattern: Made, path: str | os.PathLike[str]) -> Path:
    """Write all pieces to one file, all or nothing.

    Raises
    ------
    DraftError
        When a piece cannot be written, or the path does not name a file that can be.
    """
    return write_text(path, text_of(pattern), encoding="ascii")


def text_of(pattern: Made) -> str:
    """Content of the file: the same pattern gives the same text.

    Raises
    ------
    DraftError
        When a line of a piece is open, has no length or holds a coordinate that is no number; it names piece and line.
    """
    for piece in pattern.pieces.values():
        check_piece(piece)
    sheet = arrange(pattern.pieces.values())
    with fixed_dates():
        document = new_document()
        for name, colour in COLOURS.items():
            document.layers.add(name, color=colour)
        space = document.modelspace()
        space.reset_extents((EDGE_MM, EDGE_MM, 0), (sheet.width - EDGE_MM, sheet.height - EDGE_MM, 0))
        space.reset_limits((0, 0), (sheet.width, sheet.height))
        document.set_modelspace_vport(sheet.height, (sheet.width / 2, sheet.height / 2))
        _add_reference(space, sheet, pattern.name)
        for add in (_add_words, _add_drawn, _add_holes, _add_notches, _add_cut):
            for place in sheet.places:
                add(space, place)
        stream = StringIO()
        document.write(stream)
    return stream.getvalue()


def _add_reference(space: Modelspace, sheet: Sheet, title: str) -> None:
    """Test squares, and whose pattern it is."""
    for corner, side, words in (
        (sheet.mm_square, MM_SQUARE, ("100 mm x 100 mm", "scale 1:1, all in mm", shortened(title, TITLE_LETTERS))),
        (sheet.inch_square, INCH_SQUARE, ("4 in x 4 in", "101.6 mm")),
    ):
        ring = [_placed(corner, p) for p in (0j, side, side * (1 + 1j), 1j * side)]
        space.add_polyline2d([(p.real, p.imag) for p in ring], close=True, dxfattribs={"layer": "REF"})
        for row, text in enumerate(words):
            at = corner + complex(INSET_MM, side - INSET_MM - TEXT_MM * (1 + 1.4 * row))
            add_text(space, text, at, TEXT_MM, "REF")


def _add_words(space: Modelspace, place: Place) -> None:
    """Label, and the notes beside inner lines."""
    label = place_label(place.piece)
    for text, at in zip(label.lines, label.baselines, strict=True):
        add_text(space, text, at + place.shift, label.height, "TEXT", label.angle_deg)
    for note in place_notes(place.piece):
        add_text(space, note.text, note.at + place.shift, note.height, "TEXT", note.angle_deg)


def _add_drawn(space: Modelspace, place: Place) -> None:
    """Sew line where it is not cut, inner lines, grainline with an arrow at either end."""
    piece, shift = place.piece, place.shift
    for path in seam_lines(piece, drawn=lambda edge: edge.allowance > 0):
        add_vertices(space, vertices(path, f"{piece.name}, sew line", DECIMALS, shift), "DRAW")
    for line in piece.lines:
        add_vertices(space, vertices(line.path, f"{piece.name}, {line.kind} line", DECIMALS, shift), "DRAW")
    grain = piece.grainline
    add_line(space, _placed(grain.p0, shift), _placed(grain.p1, shift), "DRAW")
    for arrow in _arrows(grain):
        space.add_polyline2d(
            [(p.real, p.imag) for p in (_placed(q, shift) for q in arrow)], dxfattribs={"layer": "DRAW"}
        )


def _placed(p: complex, shift: complex) -> complex:
    return rounded(p + shift, DECIMALS)


def _arrows(grain: Line) -> Iterable[tuple[complex, complex, complex]]:
    """Heads at both ends of the grainline: the piece may be laid either way up."""
    size = min(ARROW_MM, abs(grain.p1 - grain.p0) / 4)
    barb = size * np.exp(1j * np.deg2rad(ARROW_DEG))
    for tip, inward in ((grain.p0, grain.start_dir), (grain.p1, -grain.start_dir)):
        yield tip + inward * barb, tip, tip + inward * barb.conjugate()


def _add_holes(space: Modelspace, place: Place) -> None:
    for hole in place.piece.holes:
        at = _placed(hole.at, place.shift)
        space.add_circle((at.real, at.imag), hole.diameter / 2, dxfattribs={"layer": "DRILL"})


def _add_notches(space: Modelspace, place: Place) -> None:
    """Every slit as a short line from the cut line into the allowance."""
    for _, slits in place.piece.notch_places:
        for slit in slits:
            inner = slit.on_cut + slit.inward * slit.depth
            add_line(space, _placed(slit.on_cut, place.shift), _placed(inner, place.shift), "NOTCH")


def _add_cut(space: Modelspace, place: Place) -> None:
    add_vertices(space, boundary(place.piece, DECIMALS, place.shift), "CUT")
