"""DXF for pattern systems, after the ASTM standard practice D 6673 (sewn products pattern data interchange).

One block per piece, text keys for what the geometry cannot say, numbered layers. What the standard leaves open is
shaped for strict readers: tags of release 12, an empty header, no tables, no blocks but pieces, no handles, 7-bit text,
coordinates with two decimals. Depth and width of a notch are equal, so that a reader that confuses them does no harm.

The standard's opening pages were read first hand; layers, keys and the codes of a notch are known second hand.
"""

from __future__ import annotations

import os
import pkgutil
import re
from collections.abc import Callable, Iterable
from importlib import import_module, metadata
from io import StringIO
from pathlib import Path
from typing import TYPE_CHECKING, TextIO

import numpy as np

from draft.drawing.label import place_label, place_notes
from draft.drawing.sheet import Made
from draft.export.dxf_common import (
    CURVE,
    FLATTEN_MM,
    PLAIN,
    SHORTEST_MM,
    TURN,
    Vertices,
    add_line,
    add_text,
    add_vertices,
    ascii_text,
    boundary,
    check_piece,
    new_document,
    rounded,
    seam_lines,
    vertices,
)
from draft.export.files import write_text
from draft.geometry.points import cross, dot, unit
from draft.piece import Cut, NotchPlace, Piece

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.layouts.blocklayout import BlockLayout

BOUNDARY, TURNS, CURVES, NOTCHES, MIRROR, GRAIN, INNER, DRILL, SEW, NOTES = (
    "1", "2", "3", "4", "6", "7", "8", "13", "14", "15",
)  # fmt: skip
"""Layers of the standard, by number."""

DECIMALS = 2  # of a millimetre, as the standard has it for metric files
LONGEST_NAME = 31  # of a block in release 12
SURE_NAME = 20  # some readers cut names here
FOLD = "fold"  # name of the edge that lies on the fold of the cloth
ON_LINE_MM = 0.02
SYSTEM_TEXT_MM = 1.5
STYLE_TEXT_MM = 5.0


def save(pattern: Made, path: str | os.PathLike[str], *, date: str = "") -> Path:
    """Write all pieces to one file, all or nothing.

    Parameters
    ----------
    date : str
        Creation date for the file, dd-mm-yyyy; left out unless given, so that the same pattern gives the same file.

    Raises
    ------
    DraftError
        When a piece cannot be written, or the path does not name a file that can be.
    """
    return write_text(path, text_of(pattern, date=date), encoding="ascii")


def text_of(pattern: Made, *, date: str = "") -> str:
    """Content of the file.

    Raises
    ------
    DraftError
        When a line of a piece is open, has no length or holds a coordinate that is no number; it names piece and line.
    """
    document = new_document()
    space = document.modelspace()
    names = block_names(pattern.pieces)
    for key, piece in pattern.pieces.items():
        _add_piece(document.blocks.new(names[key], dxfattribs={"layer": BOUNDARY}), piece, names[key])
        space.add_blockref(names[key], (0, 0), dxfattribs={"layer": BOUNDARY})
    left = min((piece.bounds[0] for piece in pattern.pieces.values()), default=0.0)
    bottom = min((piece.bounds[1] for piece in pattern.pieces.values()), default=0.0)
    for row, text in enumerate(_style_text(pattern.name, date), start=2):
        add_text(space, text, complex(left, bottom - 1.6 * STYLE_TEXT_MM * row), STYLE_TEXT_MM, BOUNDARY)
    stream = StringIO()
    _exporter()(document, stream)
    return stream.getvalue()


def _exporter() -> Callable[[Drawing, TextIO], None]:
    """Writer that leaves out everything a strict reader refuses; the library names the module after the standard."""
    addons = import_module("ezdxf.addons")
    name = next(m.name for m in pkgutil.iter_modules(addons.__path__) if m.name.endswith("_D6673"))
    write: Callable[[Drawing, TextIO], None] = import_module(f"ezdxf.addons.{name}").export_stream
    return write


# ---- text


def block_names(names: Iterable[str]) -> dict[str, str]:
    """Name of the block of every piece: upper case, at most 31 characters, told apart by the first 20.

    >>> block_names(["back", "pocket bag, left and upper", "pocket bag, left and under"])
    {'back': 'BACK', 'pocket bag, left and upper': 'POCKET_BAG__LEFT_AND_UPPER',
     'pocket bag, left and under': 'POCKET_BAG__LEFT_A-2'}
    """
    found: dict[str, str] = {}
    taken: set[str] = set()
    for name in names:
        plain = re.sub(r"[^A-Z0-9_$-]", "_", ascii_text(name).upper())[:LONGEST_NAME] or "PIECE"
        given, number = plain, 1
        while given[:SURE_NAME] in taken:
            number += 1
            ending = f"-{number}"
            given = plain[: SURE_NAME - len(ending)] + ending
        taken.add(given[:SURE_NAME])
        found[name] = given
    return found


def quantity(cut: Cut) -> str:
    """How many to cut as drawn, and how many mirrored.

    >>> quantity(Cut(2, "self", mirrored=True)), quantity(Cut(2, "self"))
    ('1,1', '2,0')
    """
    mirrored = cut.count // 2 if cut.mirrored else 0
    return f"{cut.count - mirrored},{mirrored}"


def _style_text(name: str, date: str) -> tuple[str, ...]:
    dated = (f"Creation Date:{date}",) if date else ()
    return (
        f"Style Name:{name}",
        *dated,
        f"Author:draft;draft;{_version()}",
        "Sample Size:",  # made to measure: there is one size, and no grading
        "Grade Rule Table:",
        "Units:METRIC",
    )


def _version() -> str:
    try:
        return metadata.version("draft")
    except metadata.PackageNotFoundError:  # run from its folder, not installed
        return "0"


# ---- pieces


def _add_piece(block: BlockLayout, piece: Piece, name: str) -> None:
    check_piece(piece)
    outline, notches = with_notches(_from_a_turn(boundary(piece, DECIMALS)), _slits(piece))
    add_vertices(block, outline, BOUNDARY, repeat_first=True)
    drawn = [(SEW, path, "sew line") for path in seam_lines(piece, drawn=lambda edge: not _on_fold(piece, edge.name))]
    drawn += [(INNER, line.path, f"{line.kind} line") for line in piece.lines]
    lines = [outline]
    for layer, path, what in drawn:
        line = vertices(path, f"{piece.name}, {what}", DECIMALS)
        add_vertices(block, _from_a_turn(line), layer, repeat_first=True)
        lines.append(line)
    _add_points(block, lines)
    _add_marks(block, piece, outline, notches)
    _add_words(block, piece, name)


def _on_fold(piece: Piece, edge: str) -> bool:
    return piece.cut.on_fold and edge == FOLD


def _from_a_turn(line: Vertices) -> Vertices:
    """Closed line that starts at a turn point, if it has one."""
    if not line.closed or TURN not in line.marks:
        return line
    first = line.marks.index(TURN)
    return Vertices(line.points[first:] + line.points[:first], line.marks[first:] + line.marks[:first], closed=True)


def _slits(piece: Piece) -> list[NotchPlace]:
    return [slit for _, slits in piece.notch_places for slit in slits]


def with_notches(outline: Vertices, slits: list[NotchPlace]) -> tuple[Vertices, list[complex]]:
    """Outline with a vertex at every notch that lies on it, and where the notches are: exactly on these vertices."""
    points, marks = list(outline.points), list(outline.marks)
    places = []
    for slit in slits:
        at = rounded(slit.on_cut, DECIMALS)
        side, gap = _nearest_side(points, at)
        near = min((side, (side + 1) % len(points)), key=lambda k: abs(points[k] - at))
        if abs(points[near] - at) <= 2 * SHORTEST_MM:
            # One vertex for both: where the notch is, unless that would move a corner.
            at = points[near] = points[near] if marks[near] == TURN else at
        elif gap <= FLATTEN_MM + ON_LINE_MM:
            points.insert(side + 1, at)
            marks.insert(side + 1, PLAIN)
        # Further off it is a fault of the piece, and no reason to bend its outline.
        places.append(at)
    return Vertices(points, marks, outline.closed), places


def _nearest_side(points: list[complex], p: complex) -> tuple[int, float]:
    """Side of a closed polyline nearest to a place, by the vertex where it starts, and how far that side is off."""
    start = np.array(points)
    run = np.roll(start, -1) - start
    t = np.clip(((p - start) * run.conjugate()).real / np.abs(run) ** 2, 0, 1)
    gaps = np.abs(start + t * run - p)
    index = int(np.argmin(gaps))
    return index, float(gaps[index])


def _add_points(block: BlockLayout, lines: list[Vertices]) -> None:
    """Turn points and curve points of all lines, each place once; where lines disagree it is a turn point."""
    turns, curves = (dict.fromkeys(p for line in lines for p in line.marked(mark)) for mark in (TURN, CURVE))
    for layer, places in ((TURNS, turns), (CURVES, [p for p in curves if p not in turns])):
        for p in places:
            block.add_point((p.real, p.imag), dxfattribs={"layer": layer})


def _add_marks(block: BlockLayout, piece: Piece, outline: Vertices, notches: list[complex]) -> None:
    """Notches, grainline, mirror line and drill holes."""
    for at, slit in zip(notches, _slits(piece), strict=True):
        depth = round(float(slit.depth), DECIMALS)
        angle = round(float(np.rad2deg(np.angle(slit.inward))) % 360, 2)
        attributes = {"layer": NOTCHES, "thickness": depth, "angle": angle}
        block.add_point((at.real, at.imag, depth), dxfattribs=attributes)
    grain = piece.grainline
    add_line(block, rounded(grain.p0, DECIMALS), rounded(grain.p1, DECIMALS), GRAIN)
    if piece.cut.on_fold:
        add_line(block, *mirror_line(piece, outline), MIRROR)
    for hole in piece.holes:
        at = rounded(hole.at, DECIMALS)
        block.add_point((at.real, at.imag, float(hole.diameter)), dxfattribs={"layer": DRILL})


def mirror_line(piece: Piece, outline: Vertices) -> tuple[complex, complex]:
    """The two vertices of the outline that lie farthest apart on the fold.

    Raises
    ------
    DraftError
        When a piece is cut on the fold but has no edge of that name.
    """
    fold = piece.edge(FOLD)
    along = unit(fold.end - fold.start)
    on_fold = [p for p in outline.points if abs(cross(along, p - fold.start)) < ON_LINE_MM]
    reach = [dot(p - fold.start, along) for p in on_fold]
    return on_fold[int(np.argmin(reach))], on_fold[int(np.argmax(reach))]


def _add_words(block: BlockLayout, piece: Piece, name: str) -> None:
    """Label and notes as annotation; below the label what a system reads."""
    label = place_label(piece)
    for text, at in zip(label.lines, label.baselines, strict=True):
        add_text(block, text, at, label.height, NOTES, label.angle_deg)
    for note in place_notes(piece):
        add_text(block, note.text, note.at, note.height, NOTES, note.angle_deg)
    keys = (f"Piece Name:{name}", f"Quantity:{quantity(piece.cut)}", f"Material:{piece.cut.cloth}")
    size = min(SYSTEM_TEXT_MM, label.height)
    down = -1j * np.exp(1j * np.deg2rad(label.angle_deg))
    for row, text in enumerate(keys, start=1):
        at = label.baselines[-1] + down * 1.4 * size * row
        add_text(block, text, complex(at), size, BOUNDARY, label.angle_deg)
