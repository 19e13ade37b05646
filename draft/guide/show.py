"""The guide that a person looks at: figures with their captions on one sheet, and the same as plain text.

Colours and their reason are those of `draft.drawing.view`: they stand out from light and dark pages alike. The sheet
carries no ids, no script, no font and no background.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from html import escape
from itertools import groupby

from draft.body_checks import MEASURES
from draft.drawing.label import wrap
from draft.drawing.strokes import FONT, Frame, Ink, curve, polylines, written
from draft.drawing.view import INK
from draft.errors import DraftError, collected, nearest
from draft.geometry.path import Path
from draft.geometry.segments import Segment
from draft.guide.figure import HIGH, LEADING, LETTERS, WIDE, Figure, Mark, figure_of
from draft.guide.lessons import FIRST, SOURCES, Lesson, Miss, lessons_of

COLUMNS, FEWEST_COLUMNS = 3, 2
TITLE, SMALL, STEP, PAD = 15, 12, 16, 10  # pixels
HEAD = 20  # size of the sheet's title
LETTER_WIDE = 0.57  # of its size, at most, over a line of a caption in DejaVu Sans, the widest of FONT
ARROW, ARROW_HALF = 9.0, 4.0  # head of an arrow

TAPE = "#c2662d"
LOOKS = {
    "body": (INK, 1.8, ""),
    "plain": (INK, 0.9, ""),
    "prop": (INK, 1.2, ""),
    "level": (INK, 1.0, "1 4"),
    "lead": (TAPE, 0.8, ""),
    "behind": (TAPE, 1.4, "2 3"),
    "tape": (TAPE, 2.6, "8 3"),
}
"""Look of a line -> colour, width and dash."""

_SIZE = re.compile(r"(\d) mm\b")


@dataclass(frozen=True)
class Guide:
    """How to take some measures, drawn and in words; a notebook shows the sheet.

    Examples
    --------
    >>> guide = how_to_measure("calf")
    >>> guide
    Guide(calf)
    >>> print(str(guide).split("Before")[0].strip())
    Calf girth (calf)
      Tape: Level round the fullest part of the lower leg: move the tape up and down until it reads most.
      Posture: Standing, legs slightly apart.
      Slip: Standing on the toes, which swells the calf; a tape that is not level.
      Error: trained 4 mm (second-hand), home 5 mm (assumed).
      Alone: yes; a mirror at the side.
    """

    lessons: tuple[Lesson, ...]

    def __repr__(self) -> str:
        return f"Guide({', '.join(dict.fromkeys(lesson.field for lesson in self.lessons))})"

    def __str__(self) -> str:
        blocks = [_words(lesson) for lesson in self.lessons]
        blocks.append("\n".join(["Before you start", *(f"  {text}" for text in FIRST)]))
        blocks.append("\n".join(["Where the numbers come from", *(f"  {text}" for text in SOURCES)]))
        return "\n\n".join(blocks)

    def svg(self) -> str:
        """Sheet of all figures with captions: one SVG element that needs nothing beside it.

        Returns
        -------
        str
            600 or 900 pixels wide, as there are figures.
        """
        columns = min(COLUMNS, max(FEWEST_COLUMNS, len(self.lessons)))
        wide = columns * WIDE
        parts = [_line("How to measure", PAD, PAD + HEAD, HEAD, bold=True)]
        y = float(PAD + HEAD + 8)
        y = _paragraphs(parts, FIRST, y, wide) + STEP
        for i in range(0, len(self.lessons), columns):
            row = self.lessons[i : i + columns]
            parts += [_picture(lesson, j * WIDE, y) for j, lesson in enumerate(row)]
            y = max(_caption(parts, lesson, j * WIDE, y + HIGH) for j, lesson in enumerate(row)) + 2 * STEP
        parts.append(_line("Where the numbers come from; the body is invented", PAD, y + STEP, SMALL, bold=True))
        y = _paragraphs(parts, SOURCES, y + STEP, wide) + PAD
        return (
            f'<svg xmlns="http://www.w3.org/2000/svg" width="{wide}" height="{y:.0f}" viewBox="0 0 {wide} {y:.0f}" '
            f'role="img" aria-label="How to measure" font-family="{FONT}" style="max-width:100%;height:auto">'
            f"<title>How to measure</title>{''.join(parts)}</svg>"
        )

    def _repr_svg_(self) -> str:
        return self.svg()


def how_to_measure(*fields: str) -> Guide:
    """Show how measures are taken: a drawing of each, where the tape goes, the usual slip, and how far off it may be.

    Parameters
    ----------
    *fields : str
        Measures by their names in `draft.body.Body`, told in this order; none: all of them. Errors are mm.

    Raises
    ------
    DraftError
        For a name that is no measure, with the nearest that is one; several are told at once.

    Examples
    --------
    >>> how_to_measure("thigh", "crotch_depth")
    Guide(thigh, crotch_depth)
    >>> len(how_to_measure().lessons)
    14
    >>> how_to_measure("tigh")  # doctest: +ELLIPSIS
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: field is 'tigh', expected one of waist, ..., hip_depth: ask for thigh instead of tigh.
    """
    wrong = [_unknown(field) for field in fields if field not in MEASURES]
    if wrong:
        raise collected(wrong)
    return Guide(lessons_of(*(dict.fromkeys(fields) or MEASURES)))


def _unknown(field: object) -> DraftError:
    near = nearest(field, MEASURES) if isinstance(field, str) else None
    remedy = f"ask for {near} instead of {field}" if near else "ask for one of these, or for none to see all"
    return DraftError("field", field, f"one of {', '.join(MEASURES)}", remedy)


def _told(lesson: Lesson) -> tuple[tuple[str, str], ...]:
    """What is said of a measure: head word and text."""
    return (
        ("Tape", lesson.tape),
        ("Posture", lesson.posture),
        ("Slip", lesson.slip),
        ("Error", f"trained {_size(lesson.trained)}, home {_size(lesson.home)}."),
        ("Alone", f"{'yes' if lesson.alone else 'no'}; {lesson.aid}."),
    )


def _size(miss: Miss) -> str:
    return f"{miss.mm:g} mm ({miss.known})"


def _words(lesson: Lesson) -> str:
    lines = (f"  {head}: {text}" for head, text in _told(lesson))
    return "\n".join([f"{lesson.title} ({lesson.field})", *lines])


def _wrapped(text: str, wide: float) -> list[str]:
    text = _SIZE.sub("\\1\N{NO-BREAK SPACE}mm", text)
    return wrap(text, int((wide - 2 * PAD) / (SMALL * LETTER_WIDE)))


def _paragraphs(parts: list[str], texts: tuple[str, ...], y: float, wide: float) -> float:
    """Write paragraphs below `y`; gives where they end."""
    for text in texts:
        for line in _wrapped(text, wide):
            y += STEP
            parts.append(_line(line, PAD, y, SMALL))
        y += 4
    return y


def _caption(parts: list[str], lesson: Lesson, x: float, y: float) -> float:
    """Write the words of a lesson below `y`; gives where they end."""
    y += STEP + 6
    parts.append(_line(lesson.title, x + PAD, y, TITLE, bold=True))
    y += 2
    for head, text in _told(lesson):
        for i, line in enumerate(_wrapped(f"{head}: {text}", WIDE)):
            y += STEP
            parts.append(_line(line, x + PAD, y, SMALL, lead=len(head) + 1 if i == 0 else 0))
        y += 2
    return y


def _line(text: str, x: float, y: float, size: float, *, bold: bool = False, lead: int = 0) -> str:
    """One line of text; its first `lead` letters are bold."""
    weight = ' font-weight="bold"' if bold else ""
    first = f'<tspan font-weight="bold">{escape(text[:lead])}</tspan>' if lead else ""
    return f'<text x="{x:g}" y="{y:.1f}" font-size="{size:g}" fill="{INK}"{weight}>{first}{escape(text[lead:])}</text>'


def _picture(lesson: Lesson, x: float, y: float) -> str:
    """Figure of a lesson; what lies outside its window is cut off."""
    figure = figure_of(lesson.field, lesson.taken)
    return (
        f'<svg x="{x:g}" y="{y:.1f}" width="{WIDE}" height="{HIGH}" overflow="hidden">'
        f"<title>{escape(lesson.title)}</title>"
        f"{''.join(_lines(figure))}{''.join(_labels(figure))}</svg>"
    )


def _lines(figure: Figure) -> Iterator[str]:
    for mark in figure.marks:
        colour, width, dash = LOOKS[mark.look]
        dashes = f' stroke-dasharray="{dash}"' if dash else ""
        for path in _seen(mark.path, figure):
            yield _stroke(_data(curve(path), figure), colour, width, dashes)
        if mark.heads:
            yield _stroke(_data(polylines(_heads(mark, ARROW / figure.scale)), figure), colour, width, "")


def _stroke(data: str, colour: str, width: float, dashes: str) -> str:
    return f'<path d="{data}" fill="none" stroke="{colour}" stroke-width="{width:g}"{dashes} stroke-linejoin="round"/>'


def _data(ink: Ink, figure: Figure) -> str:
    """Path data in pixels from the upper left corner of the window."""
    scale = figure.scale
    scaled = Ink(ink.form.replace("%.3f", "%.1f"), [point * scale for point in ink.points])
    return written([scaled], Frame(complex(-figure.left * scale), figure.top * scale))[0]


def _seen(path: Path, figure: Figure) -> Iterator[Path]:
    """Stretches of a path that reach into the window."""
    for inside, run in groupby(path.segments, lambda segment: _reaches(segment, figure)):
        if inside:
            yield Path(tuple(run))


def _reaches(segment: Segment, figure: Figure) -> bool:
    x, y = [p.real for p in segment.controls], [p.imag for p in segment.controls]
    return min(x) <= figure.right and max(x) >= figure.left and min(y) <= figure.top and max(y) >= figure.bottom


def _heads(mark: Mark, size: float) -> Iterator[list[complex]]:
    """Arrowheads at both ends of a tape, each seen along the chord over its own length."""
    path = mark.path
    aside = 1j * ARROW_HALF / ARROW
    reach = min(size, path.length / 4)
    for tip, foot in ((path.start, path.point_at(reach)), (path.end, path.point_at(path.length - reach))):
        back = foot - tip
        yield [tip + back * (1 + aside), tip, tip + back * (1 - aside)]


def _labels(figure: Figure) -> Iterator[str]:
    for label in figure.labels:
        x, y = (label.at.real - figure.left) * figure.scale, (figure.top - label.at.imag) * figure.scale
        colour, weight = (TAPE, ' font-weight="bold"') if label.tape else (INK, "")
        anchor = "" if label.anchor == "start" else f' text-anchor="{label.anchor}"'
        for i, line in enumerate(label.lines):
            yield (
                f'<text x="{x:.1f}" y="{y + i * LEADING:.1f}" font-size="{LETTERS}" fill="{colour}"{weight}{anchor}>'
                f"{escape(line)}</text>"
            )
