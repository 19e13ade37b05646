"""Sheet of A4 that goes with a mock-up: what was drafted, what is measured on the body, and what is seen.

What to write down between two mock-ups was read as common practice; the layout is our own. One user unit is one
millimetre; the sheet carries no ids, no script and no background.
"""

from __future__ import annotations

from collections.abc import Iterator
from html import escape
from typing import TYPE_CHECKING

from draft.advice.symptoms import SHORT_LIST
from draft.drawing.label import advance, clean
from draft.drawing.strokes import FONT, Frame, Ink, curve, written
from draft.geometry.path import Path
from draft.units import fmt

if TYPE_CHECKING:
    from draft.pattern import Pattern

WIDE, HIGH, MARGIN = 210.0, 297.0, 12.0  # A4; printers leave out 5 at most edges
RIGHT = WIDE - MARGIN
TITLE, PLAIN, SMALL = 5.0, 3.0, 2.4
ROW, NOTE_ROW, LIST_ROW = 6.0, 7.5, 3.25
NOTES, LIST_COLUMNS = 10, 3
PICTURE_LEFT = 112.0
HAIR, RULE = 0.2, 0.35
GAP = 6.0
MEASURED = (("where", 0.0), ("drafted", 30.0), ("mock-up", 48.0), ("body", 71.0), ("", 94.0))
COLUMNS = (
    ("no.", 0.0),
    ("where: piece, edge or level", 8.0),
    ("what: from the list below", 56.0),
    ("mm", 116.0),
    ("fold, side, total", 128.0),
    ("left, right", 160.0),
    ("", RIGHT - MARGIN),
)
LEVELS = ("waist to floor: front", "left side", "right side", "back")
COMFORT = ("comfort, 1 to 5: standing", "sitting", "squatting", "step up")


def sheet_text(pattern: Pattern) -> str:
    """SVG of the sheet, 210 x 297 mm, the same text every time."""
    parts: list[str] = []
    y = _head(parts, pattern)
    below = _sizes(parts, pattern, y)
    _picture(parts, pattern, y, below)
    y = _notes(parts, below + 5)
    for words in (LEVELS, COMFORT):
        y = _blanks(parts, words, y + 6.5)
    y = _list(parts, y + 6.5)
    parts.append(_text("Point pins away from the body; take them out before anyone sits down.", MARGIN, y + 5, SMALL))
    title = escape(clean(f"Fitting sheet: {pattern.name}"))
    size = f'width="{WIDE:g}mm" height="{HIGH:g}mm" viewBox="0 0 {WIDE:g} {HIGH:g}"'
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" {size} role="img" aria-label="{title}" font-family="{FONT}">'
        f"<title>{title}</title>\n" + "\n".join(parts) + "\n</svg>\n"
    )


def _head(parts: list[str], pattern: Pattern) -> float:
    """Title, whom and what, and the blanks of the day; gives where they end."""
    parts.append(_text("Fitting sheet", MARGIN, MARGIN + 4, TITLE, bold=True))
    garment = f"garment: {pattern.style.name or pattern.garment_name}"
    body, method = f"body: {pattern.body.name or 'no name given'}", f"method: {pattern.method.name}"
    y = MARGIN + 11
    for words, x, room in ((garment, 0.0, 72.0), (body, 74.0, 64.0), (method, 140.0, 46.0)):
        parts.append(_text(_short(words, room, PLAIN), MARGIN + x, y, PLAIN))
    y = _blanks(parts, ("date", "mock-up no.", "pinned by"), y + 7)
    return _blanks(parts, ("cloth", "its stretch", "washed before"), y + 7) + 5


def _blanks(parts: list[str], words: tuple[str, ...], y: float) -> float:
    """Words with a line to write on behind each, on one base line."""
    widths = [advance(word) * PLAIN + 1 for word in words]
    room, x = (RIGHT - MARGIN - sum(widths)) / len(words), MARGIN
    for word, width in zip(words, widths, strict=True):
        parts.append(_text(word, x, y, PLAIN))
        parts.append(_rule(x + width, y + 0.6, x + width + room - 3, y + 0.6, HAIR))
        x += width + room
    return y


def _sizes(parts: list[str], pattern: Pattern, y: float) -> float:
    """Table of the drafted sizes, with boxes for what is measured; gives where it ends."""
    sizes = pattern.measure()
    places = [x for _, x in MEASURED]
    rows = [(name.replace("_", " "), fmt(value, 0)) for name, value in sizes.items()]
    parts += _grid(places, y, ROW, len(rows) + 1)
    for word, x in MEASURED:
        parts.append(_text(word, MARGIN + x + 1, y + ROW - 2, SMALL, bold=True))
    for number, (name, value) in enumerate(rows, 2):
        at = y + number * ROW - 1.9
        parts += [_text(name, MARGIN + 1, at, PLAIN), _text(value, MARGIN + places[2] - 1.5, at, PLAIN, end=True)]
    end = y + ROW * (len(rows) + 1)
    parts.append(_text("finished sizes in mm, girths all round", MARGIN, end + 3.4, SMALL))
    return end + 3.4


def _grid(places: list[float], y: float, row: float, rows: int) -> Iterator[str]:
    """Lines of a table with columns at these places and so many rows, its head the first."""
    left, right, end = MARGIN + places[0], MARGIN + places[-1], y + row * rows
    for number in range(rows + 1):
        yield _rule(left, y + row * number, right, y + row * number, RULE if number in (0, 1, rows) else HAIR)
    for place in places:
        yield _rule(MARGIN + place, y, MARGIN + place, end, HAIR)


def _picture(parts: list[str], pattern: Pattern, top: float, bottom: float) -> None:
    """Front and back of the shell side by side, as large as the place beside the sizes lets them be."""
    shell, room = pattern.shell, RIGHT - PICTURE_LEFT
    outlines = [panel.outline for panel in (shell.front, shell.back)]
    reaches = [_reach(outline) for outline in outlines]
    high = max(r[3] for r in reaches) - min(r[1] for r in reaches)
    wide = sum(r[2] - r[0] for r in reaches)
    scale = min((room - GAP) / wide, (bottom - top - 5) / high)
    x, upper = PICTURE_LEFT + (room - GAP - wide * scale) / 2, max(r[3] for r in reaches) * scale
    for name, outline, reach in zip(("front", "back"), outlines, reaches, strict=True):
        frame = Frame(complex(x - reach[0] * scale), top + upper)
        parts.append(_drawn(outline, scale, frame, RULE, ""))
        for level in (shell.levels["hip"], shell.levels["crotch"]):
            line = Path.line(complex(reach[0], level), complex(reach[2], level))
            parts.append(_drawn(line, scale, frame, HAIR, "1 1"))
        middle = x + (reach[2] - reach[0]) * scale / 2
        parts.append(_text(name, middle - advance(name) * SMALL / 2, bottom, SMALL))
        x += (reach[2] - reach[0]) * scale + GAP


def _reach(path: Path) -> tuple[float, float, float, float]:
    points = path.points(0.5)
    return (
        float(points.real.min()), float(points.imag.min()), float(points.real.max()), float(points.imag.max())
    )  # fmt: skip


def _drawn(path: Path, scale: float, frame: Frame, width: float, dash: str) -> str:
    ink = curve(path)
    (data,) = written([Ink(ink.form, [point * scale for point in ink.points])], frame)
    dashes = f' stroke-dasharray="{dash}"' if dash else ""
    return f'<path d="{data}" fill="none" stroke="#000000" stroke-width="{width:g}"{dashes}/>'


def _notes(parts: list[str], y: float) -> float:
    """Rows for notes; gives where they end."""
    parts += _grid([x for _, x in COLUMNS], y, NOTE_ROW, NOTES + 1)
    for word, x in COLUMNS:
        parts.append(_text(word, MARGIN + x + 1, y + NOTE_ROW - 2.6, SMALL, bold=True))
    for number in range(1, NOTES + 1):
        parts.append(_text(str(number), MARGIN + 2, y + (number + 1) * NOTE_ROW - 2.6, PLAIN))
    return y + NOTE_ROW * (NOTES + 1)


def _list(parts: list[str], y: float) -> float:
    """Symptoms in columns; gives the last base line."""
    parts.append(_text("What may be seen (as draft.symptoms() tells at length)", MARGIN, y, PLAIN, bold=True))
    rows = -(-len(SHORT_LIST) // LIST_COLUMNS)
    room = (RIGHT - MARGIN) / LIST_COLUMNS
    for number, name in enumerate(SHORT_LIST):
        column, row = divmod(number, rows)
        parts.append(_text(name, MARGIN + column * room, y + 4 + row * LIST_ROW, SMALL))
    return y + 4 + (rows - 1) * LIST_ROW


def _short(words: str, room: float, size: float) -> str:
    """Words as far as they have room, mm."""
    words = clean(words)
    if advance(words) * size <= room:
        return words
    while words and advance(words + "...") * size > room:
        words = words[:-1]
    return words.rstrip() + "..."


def _text(words: str, x: float, y: float, size: float, *, bold: bool = False, end: bool = False) -> str:
    more = (' font-weight="bold"' if bold else "") + (' text-anchor="end"' if end else "")
    return f'<text x="{x:.2f}" y="{y:.2f}" font-size="{size:g}"{more}>{escape(words)}</text>' if words else ""


def _rule(x: float, y: float, x2: float, y2: float, width: float) -> str:
    return f'<line x1="{x:.2f}" y1="{y:.2f}" x2="{x2:.2f}" y2="{y2:.2f}" stroke="#000000" stroke-width="{width:g}"/>'
