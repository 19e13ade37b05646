"""SVG at true size: one user unit is one millimetre, every piece a group, every kind of line a group inside it.

Coordinates are flipped once, when they are written; curves stay curves. Plain attributes, no style sheet.
"""

from __future__ import annotations

import os
from collections.abc import Iterator
from itertools import islice
from pathlib import Path
from typing import Any
from xml.etree.ElementTree import Element, SubElement

from draft.drawing.label import advance, clean, place_label, place_notes
from draft.drawing.sheet import INCH_SQUARE, MM_SQUARE, Made, Place, Sheet, arrange
from draft.drawing.strokes import FONT, LOOKS, Frame, Ink, identifier, strokes, written
from draft.export.files import write_text
from draft.piece import Piece
from draft.units import fmt

TEXT_COLOUR = "#000000"
BOLD_WIDER = 1.15
SQUARE_TEXT, SMALL_TEXT = 6.0, 4.0


def save(pattern: Made, path: str | os.PathLike[str]) -> Path:
    """Write all pieces to one SVG file, all or nothing; returns the path.

    Raises
    ------
    DraftError
        When the file cannot be written; nothing is left behind.
    """
    return write_text(path, text_of(pattern))


def text_of(pattern: Made) -> str:
    """SVG of all pieces of a pattern at true size, the same text every time.

    Parameters
    ----------
    pattern : Pattern
        Its ``name`` becomes the title, its ``pieces`` are laid out side by side.

    Returns
    -------
    str
        A whole document. Width and height are given in mm, equal to the view box.
    """
    import svgwrite

    sheet = arrange(pattern.pieces.values())
    wide, high = fmt(sheet.width, 3), fmt(sheet.height, 3)
    drawing = svgwrite.Drawing(
        size=(f"{wide}mm", f"{high}mm"),
        viewBox=f"0 0 {wide} {high}",
        debug=False,
        role="img",
        aria_labelledby="sheet-title sheet-desc",
        font_family=FONT,
    )
    writer = _Writer(drawing)
    writer.describe(drawing, "sheet", clean(pattern.name), _description(pattern, sheet))
    drawing.set_metadata(_metadata(clean(pattern.name)))
    drawing.add(writer.squares(sheet))
    for name, place in zip(_ids(sheet), sheet.places, strict=True):
        drawing.add(writer.piece(name, place, Frame(place.shift, sheet.height)))
    text: str = drawing.tostring()
    # one element to a line: within text and attributes ">" is always escaped
    return '<?xml version="1.0" encoding="utf-8"?>\n' + text.replace("><", ">\n<") + "\n"


def _description(pattern: Made, sheet: Sheet) -> str:
    return (
        f"{len(sheet.places)} pattern pieces at true size, scale 1:1, units mm, "
        f"{fmt(sheet.width, 0)} x {fmt(sheet.height, 0)} mm: {', '.join(clean(name) for name in pattern.pieces)}"
    )


def _ids(sheet: Sheet) -> Iterator[str]:
    """Readable ids of the pieces, each once."""
    taken = {"sheet", "test-squares"}
    for place in sheet.places:
        plain = name = identifier(place.piece.name)
        count = 1
        while name in taken:
            count += 1
            name = f"{plain}-{count}"
        taken.add(name)
        yield name


def _metadata(title: str) -> Element:
    rdf = Element("rdf:RDF")
    rdf.set("xmlns:rdf", "http://www.w3.org/1999/02/22-rdf-syntax-ns#")
    rdf.set("xmlns:dc", "http://purl.org/dc/elements/1.1/")
    about = SubElement(rdf, "rdf:Description")
    about.set("rdf:about", "")
    for name, words in (
        ("title", title),
        ("format", "image/svg+xml"),
        ("type", "sewing pattern"),
        ("description", "units: mm; scale 1:1"),
    ):
        SubElement(about, f"dc:{name}").text = words
    return rdf


class _Marked:
    """Title or description with an id, which the drawing library has no place for."""

    def __init__(self, elementname: str, name: str, words: str) -> None:
        self.elementname = elementname
        self.xml = Element(elementname)
        self.xml.set("id", name)
        self.xml.text = words

    def get_xml(self) -> Element:
        """Return the element."""
        return self.xml


class _Writer:
    """Makes the elements of one drawing."""

    def __init__(self, drawing: Any) -> None:
        self.drawing = drawing

    def describe(self, element: Any, name: str, title: str, desc: str) -> None:
        """Title and description first in an element."""
        element.elements[:0] = [_Marked("title", f"{name}-title", title), _Marked("desc", f"{name}-desc", desc)]

    def piece(self, name: str, place: Place, frame: Frame) -> Any:
        """Group of one piece."""
        piece = place.piece
        group = self.drawing.g(id=name, role="group", aria_labelledby=f"{name}-title {name}-desc")
        label = [clean(line) for line in piece.label]
        self.describe(group, name, label[0], "; ".join(label[1:]))
        kinds = list(strokes(piece))
        data = iter(written([ink for _, inks in kinds for ink in inks], frame))
        for kind, inks in kinds:
            lines = self.drawing.g(id=f"{name}-{kind}")
            lines.attribs.update(LOOKS[kind].attributes)
            for d in islice(data, len(inks)):
                lines.add(self.drawing.path(d=d))
            group.add(lines)
        group.add(self.texts(name, piece, frame))
        return group

    def texts(self, name: str, piece: Piece, frame: Frame) -> Any:
        """Label and notes."""
        group = self.drawing.g(id=f"{name}-text", fill=TEXT_COLOUR, stroke="none")
        label, notes = place_label(piece), place_notes(piece)
        places = written([Ink("%.3f %.3f", [at]) for at in (*label.baselines, *(note.at for note in notes))], frame)
        for line, at in zip(label.lines, places, strict=False):
            group.add(self.text(line, at, label.height, label.angle_deg))
        for note, at in zip(notes, places[len(label.lines) :], strict=True):
            group.add(self.text(note.text, at, note.height, note.angle_deg))
        widths = [advance(line) for line in label.lines]
        if widths[0] * BOLD_WIDER <= max(widths):
            group.elements[0].attribs["font-weight"] = "bold"  # the name, where there is room
        return group

    def text(self, words: str, at: str, height: float, angle_deg: float = 0.0) -> Any:
        """One line of text from a place "x y" on; the angle is counter-clockwise."""
        element = self.drawing.text(words)
        x, y = at.split()
        element.attribs.update({"x": x, "y": y, "font-size": f"{height:g}"})
        if angle_deg:
            element.attribs["transform"] = f"rotate({fmt(-angle_deg, 3)} {at})"
        return element

    def squares(self, sheet: Sheet) -> Any:
        """Test squares with their sizes."""
        group = self.drawing.g(id="test-squares")
        frame = Frame(0j, sheet.height)
        for corner, side, words, name in (
            (sheet.mm_square, MM_SQUARE, "100 mm", "test-square-100-mm"),
            (sheet.inch_square, INCH_SQUARE, "4 in (101.6 mm)", "test-square-4-in"),
        ):
            corners = (corner + 1j * (side - down) + across for down, across in ((0, 0), (10, 5), (20, 5), (26, 5)))
            top, *rows = written([Ink("%.3f %.3f", [at]) for at in corners], frame)
            square = self.drawing.rect(insert=top.split(), size=(fmt(side, 3), fmt(side, 3)), id=name)
            square.attribs.update(LOOKS["cut"].attributes)
            group.add(square)
            group.add(self.text(words, rows[0], SQUARE_TEXT))
            group.add(self.text("Measure before cutting:", rows[1], SMALL_TEXT))
            group.add(self.text(f"each side {fmt(side)} mm", rows[2], SMALL_TEXT))
        return group
