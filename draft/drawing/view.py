"""Small pictures of a pattern and of a piece for notebooks: sized for the screen, legible on light and dark pages.

They carry no ids, no script and no background, and they never fail: what cannot be drawn is told in words.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from html import escape
from math import isfinite
from typing import TYPE_CHECKING

from draft.drawing.label import advance, clean, place_name, wrap
from draft.drawing.sheet import MM_SQUARE, Made, Sheet, arrange
from draft.drawing.strokes import FONT, Frame, strokes, written

if TYPE_CHECKING:
    from draft.piece import Piece

PATTERN_WIDTH, PIECE_WIDTH = 900, 480  # pixels
HIGHEST = 1.4  # of a picture, times its width
LETTERS = 13  # pixels
MARGIN_SHARE = 0.04

# Every colour stands out from white and from #111 alike: its contrast with either is 4 or more (WCAG 2.1).
INK, FAULT = "#7a7a7a", "#d4524f"
LOOKS = {
    "cut": (INK, 1.6, ""),
    "sew": ("#367ccd", 1.0, "5 3"),
    "grain": (INK, 1.0, ""),
    "notches": (INK, 1.6, ""),
    "fold-edge": ("#9462cc", 1.2, ""),
    "fold": ("#9462cc", 1.2, "9 3 2 3"),
    "placement": ("#1f8a5f", 1.0, "4 2"),
    "topstitch": ("#c2662d", 1.2, "2 2"),
    "dart": ("#367ccd", 1.2, "8 2 2 2"),
    "guide": (INK, 1.0, "1 4"),
    "buttonhole": (FAULT, 1.6, "3 1"),
    "button": (FAULT, 1.2, ""),
    "holes": (INK, 1.0, ""),
}


def pattern_svg(pattern: Made) -> str:
    """Picture of all pieces of a pattern, about 900 pixels wide; never raises.

    Returns
    -------
    str
        An SVG element. A piece with a fault is drawn as far as it can be, and the fault is written below.
    """
    try:
        return _pattern(pattern)
    except Exception as error:
        return _told("pattern", error)


def piece_svg(piece: Piece) -> str:
    """Picture of one piece, about 480 pixels wide; never raises."""
    try:
        return _piece(piece)
    except Exception as error:
        return _told("piece", error)


def _pattern(pattern: Made) -> str:
    seen = [_seen(piece, name) for name, piece in pattern.pieces.items()]
    sheet = arrange(one.piece for one in seen if one.piece is not None)
    unit = sheet.width / PATTERN_WIDTH
    faults = [one.fault for one in seen if one.fault]
    parts = list(_scale(sheet, unit))
    for place in sheet.places:
        drawn, fault = _drawn(place.piece, Frame(place.shift, sheet.height), unit)
        parts.append(drawn)
        faults += [fault] if fault else []
    title = f"{clean(str(pattern.name))}: {len(seen)} piece{'s' * (len(seen) != 1)}"
    return _picture(title, sheet.width, sheet.height, PATTERN_WIDTH, parts, faults)


def _piece(piece: Piece) -> str:
    seen = _seen(piece, piece.name)
    title = clean(f"{piece.title}: {piece.cut}")
    if seen.piece is None:
        return _picture(title, PIECE_WIDTH, 0.0, PIECE_WIDTH, [], [seen.fault])
    left, bottom, right, top = seen.piece.bounds
    margin = MARGIN_SHARE * max(right - left, top - bottom) + 1.0
    high = top - bottom + 2 * margin
    wide = max(right - left + 2 * margin, high / HIGHEST)
    frame = Frame(complex(wide / 2 - (left + right) / 2, margin - bottom), high)
    drawn, fault = _drawn(seen.piece, frame, wide / PIECE_WIDTH)
    return _picture(title, wide, high, PIECE_WIDTH, [drawn], [text for text in (seen.fault, fault) if text])


@dataclass(frozen=True)
class _Seen:
    """What of a piece can be drawn, and what is wrong with it."""

    piece: Piece | None
    fault: str = ""


def _seen(piece: Piece, name: str) -> _Seen:
    """Return the piece; without allowances when it has no cut line, nothing when it has no outline at all."""
    try:
        _check_bounds(piece)
    except Exception as error:
        fault = _sentence(name, error)
    else:
        return _Seen(piece)
    try:
        bare = replace(piece, edges=tuple(replace(edge, allowance=0.0) for edge in piece.edges))
        _check_bounds(bare)
    except Exception:
        return _Seen(None, fault)
    return _Seen(bare, fault)


def _check_bounds(piece: Piece) -> None:
    if not all(isfinite(bound) for bound in piece.bounds):
        raise ValueError("its outline is not finite")


def _sentence(name: str, error: Exception) -> str:
    return clean(f"{name} cannot be drawn in full: {error or type(error).__name__}")


def _drawn(piece: Piece, frame: Frame, unit: float) -> tuple[str, str]:
    """Group of one piece, and what went wrong on the way; `unit` is a pixel in mm."""
    parts, faults = ["<g>"], []
    for elements in (_title(piece), _lines(piece, frame), _name(piece, frame, unit)):
        try:
            parts.extend(elements)  # what was drawn before a fault stays
        except Exception as error:
            faults.append(_sentence(piece.name, error))
    return "".join([*parts, "</g>"]), " ".join(faults)


def _title(piece: Piece) -> Iterator[str]:
    yield f"<title>{escape(clean('; '.join(piece.label)))}</title>"


def _lines(piece: Piece, frame: Frame) -> Iterator[str]:
    for kind, inks in strokes(piece):
        colour, width, dash = LOOKS[kind]
        dashes = f' stroke-dasharray="{dash}"' if dash else ""
        yield (
            f'<path d="{"".join(written(inks, frame))}" fill="none" stroke="{colour}" stroke-width="{width:g}"{dashes}'
            ' stroke-linejoin="round" vector-effect="non-scaling-stroke"/>'
        )


def _name(piece: Piece, frame: Frame, unit: float) -> Iterator[str]:
    name = place_name(piece, LETTERS * unit)
    for line, at in zip(name.lines, name.baselines, strict=True):
        yield _text(line, frame([at]), name.height, INK, name.angle_deg)


def _scale(sheet: Sheet, unit: float) -> Iterator[str]:
    """Square of 100 mm, to show how large the pieces are."""
    corner = sheet.mm_square + 1j * MM_SQUARE
    x, y = Frame(0j, sheet.height)([corner])
    yield (
        f'<rect x="{x:.1f}" y="{y:.1f}" width="{MM_SQUARE:g}" height="{MM_SQUARE:g}" fill="none" stroke="{INK}" '
        'stroke-width="1" vector-effect="non-scaling-stroke"/>'
    )
    yield _text("100 mm", (x + 5 * unit, y + 1.5 * LETTERS * unit), LETTERS * unit, INK)


def _text(words: str, at: tuple[float, ...], height: float, colour: str, angle_deg: float = 0.0) -> str:
    x, y = at
    turn = f' transform="rotate({-angle_deg:g} {x:.1f} {y:.1f})"' if angle_deg else ""
    return f'<text x="{x:.1f}" y="{y:.1f}" font-size="{height:.2f}" fill="{colour}"{turn}>{escape(words)}</text>'


def _picture(title: str, wide: float, high: float, pixels: int, parts: list[str], faults: list[str]) -> str:
    """Frame around a drawing, its faults written below."""
    unit = wide / pixels
    letters, step = LETTERS * unit, 1.5 * LETTERS * unit
    most = int(wide / (letters * advance("n"))) - 2
    lines = [line for fault in faults for line in wrap(fault, most)]
    words = [_text(line, (letters, high + (i + 1) * step), letters, FAULT) for i, line in enumerate(lines)]
    whole = high + (len(lines) + 0.5) * step if lines else high
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{pixels}" height="{whole / unit:.0f}" '
        f'viewBox="0 0 {wide:.1f} {whole:.1f}" role="img" aria-label="{escape(title)}" font-family="{FONT}" '
        f'style="max-width:100%;height:auto"><title>{escape(title)}</title>{"".join(parts)}{"".join(words)}</svg>'
    )


def _told(what: str, error: Exception) -> str:
    """Picture of words only."""
    return _picture(f"{what} without a picture", PIECE_WIDTH, 0.0, PIECE_WIDTH, [], [_sentence(f"this {what}", error)])
