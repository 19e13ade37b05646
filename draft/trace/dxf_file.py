"""Closed outlines of a DXF file, in mm.

The unit is the drawing's own (``$INSUNITS``); releases before 2000 carry none, and then it is mm unless it is said.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterable, Iterator
from io import StringIO
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, Any

import numpy as np

from draft.errors import DraftError, nearest
from draft.trace.outline import JOIN_MM, Outline, Run, gathered
from draft.trace.svg_file import FLAT_MM, read_bytes

if TYPE_CHECKING:
    from ezdxf.document import Drawing

LARGEST_FILE = 6_000_000  # bytes
MOST_ENTITIES = 10_000
DEEPEST = 8
UNITS = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": 25.4, "ft": 304.8}
INSUNITS = {1: "in", 2: "ft", 4: "mm", 5: "cm", 6: "m"}  # codes of the format (read)
DRAWN = {"LINE", "LWPOLYLINE", "POLYLINE", "SPLINE", "ARC", "CIRCLE", "ELLIPSE"}
_TAG = re.compile(rb"(?:^|\n)[ \t]*0[ \t]*\r?\n[ \t]*[A-Z]")
_SECTION = re.compile(rb"^(?:\s*999\r?\n[^\n]*\n)*\s*0[ \t]*\r?\n[ \t]*SECTION")
_POINT = re.compile(rb"\n[ \t]*10[ \t]*\r?\n")
_EOF = re.compile(rb"\n[ \t]*0[ \t]*\r?\n[ \t]*EOF\s*$")
_NO_NUMBER = re.compile(rb"\n[ \t]*[1-5][0-9][ \t]*\r?\n[ \t]*([+-]?(?:nan|inf)[a-z]*)", re.IGNORECASE)
MOST_VERTICES = 60_000


def read_dxf(path: str | os.PathLike[str], *, unit: str | None = None, join: float = JOIN_MM) -> tuple[Outline, ...]:
    """Closed outlines of a DXF file, the largest first.

    Parameters
    ----------
    path : str or path-like
        The file (text form). Read are lines, polylines with their bulges, splines, arcs, circles, ellipses and inserted
        blocks of the model space.
    unit : {"mm", "cm", "m", "in", "ft"}, optional
        Unit of the drawing; None: what the file says, else mm.
    join : float
        Loose lines of one layer are joined where their ends lie within this distance, mm.

    Returns
    -------
    tuple of Outline
        In mm, y up, counter-clockwise, within 0.01 mm of the drawn curves. ``source`` names file, layer, block and
        entity.

    Raises
    ------
    DraftError
        When the file cannot be read, is no DXF, is damaged or holds no closed outline.
    """
    where = FilePath(path).name
    if unit is not None and unit not in UNITS:
        near = nearest(str(unit), UNITS)
        raise DraftError("unit", unit, "one of " + ", ".join(UNITS), f"write {near!r}" if near else "choose one")
    data = read_bytes(path, LARGEST_FILE)
    _check_text(data, where)
    try:
        document = _loaded(data)
        told = int(document.header.get("$INSUNITS", 0)) if b"$INSUNITS" in data else 0  # not the reader's own default
        scale = UNITS[unit or INSUNITS.get(told, "mm")]
        runs = list(_runs(document.modelspace(), scale, where, "", []))
    except DraftError:
        raise
    except Exception as error:
        raise DraftError(where, f"damaged ({type(error).__name__}: {error})", "a whole DXF file", _SAVE) from error
    return gathered(runs, where, join)


_SAVE = "save it again from the program that drew it, as DXF text"


def _check_text(data: bytes, where: str) -> None:
    if data.startswith(b"AutoCAD Binary DXF"):
        raise DraftError(where, "a binary DXF file", "a DXF file in text form", _SAVE)
    if not _SECTION.match(data.removeprefix(b"\xef\xbb\xbf")):
        raise DraftError(
            where, f"bytes that begin {data[:12]!r}", "a DXF file in text form", "choose the drawing itself"
        )
    if not _EOF.search(data[-200:]):
        raise DraftError(where, "a file that stops before its end", "a whole DXF file, up to EOF", _SAVE)
    if wrong := _NO_NUMBER.search(data):
        raise DraftError(f"{where}, coordinate", wrong[1].decode("ascii"), "finite numbers", _SAVE)
    for pattern, most, what in ((_TAG, 3 * MOST_ENTITIES, "entities"), (_POINT, MOST_VERTICES, "points")):
        count = sum(1 for _ in pattern.finditer(data))
        if count > most:
            raise DraftError(
                where, f"{count} {what}", f"at most {most}", "smooth the lines, or export the outlines only"
            )


def _loaded(data: bytes) -> Drawing:

    import ezdxf

    found = re.search(rb"\$DWGCODEPAGE\s+3\s+(\S+)", data[:20_000])
    version = re.search(rb"\$ACADVER\s+1\s+AC(\d+)", data[:20_000])
    modern = version is not None and int(version[1]) >= 1021
    page = "cp" + found[1].decode("ascii", "replace").lower().removeprefix("ansi_") if found else "cp1252"
    encoding = "utf-8" if modern else page
    try:
        text = data.decode(encoding, "replace")
    except LookupError:
        text = data.decode("cp1252", "replace")
    return ezdxf.read(StringIO(text.removeprefix("\ufeff").replace("\r\n", "\n")))  # type: ignore[attr-defined]


def _runs(entities: Iterable[Any], scale: float, where: str, block: str, counted: list[int]) -> Iterator[Run]:
    """Runs of entities and of the blocks they insert, each block as deep as it goes; `counted` guards the total."""
    from ezdxf import path as curves

    for entity in entities:
        counted.append(1)
        if len(counted) > MOST_ENTITIES:
            raise DraftError(
                where, f"more than {MOST_ENTITIES} entities", "a drawing of a pattern", "export less of it"
            )
        kind = entity.dxftype()
        if kind == "INSERT":
            name = f"{block}/{entity.dxf.get('name', '')}"
            if name.count("/") > DEEPEST:
                raise DraftError(where, f"blocks in blocks {DEEPEST} deep", "blocks that end", "explode the blocks")
            copies = max(1, entity.dxf.get("row_count", 1)) * max(1, entity.dxf.get("column_count", 1))
            if copies > MOST_ENTITIES:
                expected = f"at most {MOST_ENTITIES} copies of a block"
                raise DraftError(where, copies, expected, "insert it less often")
            for one in entity.multi_insert() if copies > 1 else (entity,):
                yield from _runs(one.virtual_entities(), scale, where, name, counted)
        elif kind in DRAWN and not (kind == "POLYLINE" and not (entity.is_2d_polyline or entity.is_3d_polyline)):
            drawn = curves.make_path(entity)
            corners = [complex(v.x, v.y) for v in drawn.control_vertices()]
            layer = f"layer {entity.dxf.get('layer', '0')}" + block.replace("/", ", block ", 1)
            source = f"{where}, {layer}, {kind.lower()}"
            if np.isfinite(corners).all() and np.abs(corners).max(initial=0) < 1e9:
                corners = [complex(v.x, v.y) for v in drawn.flattening(FLAT_MM / scale)]
            if len(corners) > 1:
                yield Run(np.array([p * scale for p in corners], dtype=complex), drawn.is_closed, source, layer)
