"""Closed outlines of an SVG file, in mm.

Units and transforms are those of the format: a plain number is a pixel of 1/96 inch unless the view box says otherwise.
The file is parsed with entities refused, and counted before any of it is expanded.
"""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path as FilePath
from typing import TYPE_CHECKING, Any
from xml.etree.ElementTree import ParseError

import numpy as np

from draft.errors import DraftError
from draft.geometry.arrays import Points
from draft.geometry.flatten import flatten
from draft.geometry.segments import Cubic, Line, Segment
from draft.trace.outline import JOIN_MM, Outline, Run, gathered

if TYPE_CHECKING:
    from xml.etree.ElementTree import Element

MM_PER_PIXEL = 25.4 / 96  # CSS and SVG 2 (read)
LARGEST_FILE = 8_000_000  # bytes
LARGEST_DATA = 800_000  # characters of path data
MOST_NUMBERS = 120_000
MOST_ELEMENTS = 10_000
DEEPEST = 200
FLAT_MM = 0.01
_NUMBERS = re.compile(r"[MmZzLlHhVvCcSsQqTtAaEe0-9+\-.,\s]*")
_TRANSFORMS = re.compile(r"[A-Za-z0-9+\-.,()%\s]*")
_NUMBER = re.compile(r"\d*\.?\d+")
_NO_NUMBER = re.compile(r"\b(nan|inf|infinity)\b", re.IGNORECASE)
_HREF = "{http://www.w3.org/1999/xlink}href"


def read_svg(path: str | os.PathLike[str], *, join: float = JOIN_MM) -> tuple[Outline, ...]:
    """Closed outlines of an SVG file, the largest first.

    Parameters
    ----------
    path : str or path-like
        The file. Read are paths, polygons, polylines, lines, rectangles, circles, ellipses and uses, with all their
        transforms; text and pictures are left out.
    join : float
        Loose lines of one group are joined where their ends lie within this distance, mm.

    Returns
    -------
    tuple of Outline
        In mm, y up, counter-clockwise, within 0.01 mm of the drawn curves. ``source`` names file, element and group.

    Raises
    ------
    DraftError
        When the file cannot be read, is no SVG, is damaged or holds no closed outline.

    Examples
    --------
    >>> from tempfile import TemporaryDirectory
    >>> text = ('<svg xmlns="http://www.w3.org/2000/svg" width="10cm" height="10cm" viewBox="0 0 50 50">'
    ...         '<rect id="pocket" width="25" height="40"/></svg>')
    >>> with TemporaryDirectory() as folder:
    ...     _ = (FilePath(folder) / "one.svg").write_text(text)
    ...     read_svg(FilePath(folder) / "one.svg")
    (<Outline one.svg, pocket: 50 x 80 mm, 4 points>,)
    """
    where = FilePath(path).name
    data = read_bytes(path, LARGEST_FILE)
    _check_tree(_parsed(data, where), where)
    import svgelements

    try:
        drawing = svgelements.SVG.parse(BytesIO(data), ppi=96.0, reify=True)
        runs = list(_runs(drawing, svgelements, where, ""))
    except DraftError:
        raise
    except Exception as error:
        raise DraftError(where, f"damaged ({type(error).__name__}: {error})", "a whole SVG file", _SAVE) from error
    return gathered(runs, where, join)


_SAVE = "save or export it again from the program that drew it"


def read_bytes(path: str | os.PathLike[str], largest: int) -> bytes:
    """Content of a file that is not larger than `largest` bytes."""
    file = FilePath(path)
    try:
        size = file.stat().st_size
        if size > largest:
            raise DraftError(file.name, f"{size} bytes", f"at most {largest}", "export the outlines only")
        data = file.read_bytes()
    except OSError as error:
        reason = error.strerror or type(error).__name__
        raise DraftError("path", str(path), f"a file that can be read ({reason})", "look at the name") from error
    if not data.strip():
        raise DraftError(file.name, "empty", "a drawing", _SAVE)
    return data


def _parsed(data: bytes, where: str) -> Element:

    import defusedxml
    import defusedxml.ElementTree as SafeTree

    try:
        root: Element = SafeTree.fromstring(data, forbid_entities=True, forbid_external=True)
    except defusedxml.DefusedXmlException as error:
        what = f"a file with entities ({type(error).__name__})"
        raise DraftError(where, what, "an SVG file without entity declarations", "save it as plain SVG") from error
    except (ParseError, ValueError, LookupError) as error:
        raise DraftError(where, f"damaged or no SVG ({error})", "a whole SVG file", _SAVE) from error
    if _tag(root) != "svg":
        raise DraftError(where, f"a file of <{_tag(root)[:40]}>", "an SVG file", "choose the drawing itself")
    return root


def _tag(element: Element) -> str:
    return str(element.tag).rpartition("}")[2]


def _check_tree(root: Element, where: str) -> None:
    """Data small enough, numbers only, and uses that end and do not multiply."""
    known: dict[str, Element] = {}
    length = numbers = 0
    for element in root.iter():
        known.setdefault(element.get("id", ""), element)
        for name in ("d", "points"):
            text = element.get(name, "")
            length += len(text)
            numbers += 0 if length > LARGEST_DATA else len(_NUMBER.findall(text))
            if not _NUMBERS.fullmatch(text):
                wrong = _NO_NUMBER.search(text)
                told = wrong.group() if wrong else _NUMBERS.sub("", text, count=1)[:20]
                raise DraftError(f"{where}, {name} of <{_tag(element)}>", told, "finite numbers and commands", _SAVE)
        for name in ("transform", "x", "y", "width", "height", "cx", "cy", "r", "rx", "ry", "x1", "x2", "y1", "y2"):
            text = element.get(name, "")
            if _NO_NUMBER.search(text) or not _TRANSFORMS.fullmatch(text):
                raise DraftError(f"{where}, {name} of <{_tag(element)}>", text[:40], "finite numbers", _SAVE)
    if length > LARGEST_DATA or numbers > MOST_NUMBERS:
        told = f"{length} characters of path data"
        expected = f"at most {LARGEST_DATA}, and at most {MOST_NUMBERS} numbers in them"
        raise DraftError(where, told, expected, "smooth the lines, or export the outlines only")
    _count(root, known, {}, (), where)


def _count(
    element: Element, known: dict[str, Element], seen: dict[int, int], above: tuple[int, ...], where: str
) -> int:
    """How many elements an element stands for when all uses in it are put in."""
    if id(element) in above or len(above) > DEEPEST:
        raise DraftError(where, f"<{_tag(element)}> inside itself", "uses and groups that end", _SAVE)
    if id(element) not in seen:
        inner = list(element)
        if _tag(element) == "use":
            target = known.get((element.get("href") or element.get(_HREF) or "").lstrip("#"))
            inner += [] if target is None else [target]
        total = 1 + sum(_count(child, known, seen, (*above, id(element)), where) for child in inner)
        if total > MOST_ELEMENTS:
            raise DraftError(
                where, f"more than {MOST_ELEMENTS} elements", "a drawing of a pattern", "export less of it"
            )
        seen[id(element)] = total
    return seen[id(element)]


def _runs(node: Any, kit: Any, where: str, group: str) -> Iterator[Run]:
    """Runs of an element and of all below it; only runs directly in one group may be joined."""
    if isinstance(node, kit.Group | kit.Use):
        name = f"{group}/{node.id or ''}#{id(node)}"
        for child in node:
            yield from _runs(child, kit, where, name)
        return
    if not isinstance(node, kit.Shape) or str(node.values.get("display", "")) == "none":
        return
    outline = abs(kit.Path(node))  # a turned shape keeps its transform until then
    inside = group.rpartition("/")[2].partition("#")[0]
    name = node.id or inside or type(node).__name__.lower()
    for part in outline.as_subpaths():
        segments, closed = _segments(kit.Path(part), kit)
        if segments:
            yield Run(_flat(segments), closed, f"{where}, {name}", group)


def _segments(subpath: Any, kit: Any) -> tuple[list[Segment], bool]:
    found: list[Segment] = []
    closed = False
    for part in subpath:
        if isinstance(part, kit.Close):
            closed = True
        if isinstance(part, kit.Move) or part.start is None or part.end is None:
            continue
        if isinstance(part, kit.CubicBezier):
            found.append(_cubic(part))
        elif isinstance(part, kit.QuadraticBezier):
            a, b, c = (_mm(p) for p in (part.start, part.control, part.end))
            found.append(Cubic(a, a + (b - a) * 2 / 3, c + (b - c) * 2 / 3, c))
        elif isinstance(part, kit.Arc):
            found += [_cubic(piece) for piece in part.as_cubic_curves()]
        elif part.start != part.end:
            found.append(Line(_mm(part.start), _mm(part.end)))
    return found, closed


def _cubic(part: Any) -> Cubic:
    return Cubic(*(_mm(p) for p in (part.start, part.control1, part.control2, part.end)))


def _mm(p: Any) -> complex:
    return complex(float(p.x), -float(p.y)) * MM_PER_PIXEL


def _flat(segments: list[Segment]) -> Points:
    controls = np.array([p for s in segments for p in s.controls])
    if not np.isfinite(controls).all() or np.abs(controls).max() > 1e9:
        return controls  # told by whoever checks the run
    if all(isinstance(s, Line) for s in segments):
        return np.array([segments[0].controls[0], *(s.controls[1] for s in segments)])
    return np.asarray(flatten(segments, FLAT_MM, closed=False))
