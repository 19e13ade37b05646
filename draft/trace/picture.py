"""Two outlines of front and back one over the other, told apart by dash and colour."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

import numpy as np

from draft.drawing.strokes import FONT
from draft.drawing.view import INK, LETTERS, PATTERN_WIDTH
from draft.geometry.arrays import Points

FIRST, SECOND = (INK, 1.2, "7 4"), ("#367ccd", 1.8, "")  # colour, width in pixels, dash
GAP, MARGIN = 60.0, 40.0  # mm
HIGHEST = 1.1  # of the picture, times its width


def pair_svg(pairs: Sequence[tuple[str, Points, Points]], words: tuple[str, str], title: str) -> str:
    """Picture about 900 pixels wide: for each (name, points, points) both closed outlines in one place.

    >>> pair_svg([("Front", np.array([0, 9, 9j]), np.array([0, 9, 8j]))], ("traced", "drafted"), "a <b>")[:4]
    '<svg'
    """
    seen = [np.concatenate(pair[1:]) for pair in pairs]
    top, low = max(p.imag.max() for p in seen), min(p.imag.min() for p in seen)
    shifts, x = [], MARGIN
    for points in seen:
        shifts.append(x - float(points.real.min()))
        x += float(np.ptp(points.real)) + GAP
    high = float(top - low) + 2 * MARGIN
    width = max(x - GAP + MARGIN, high / HIGHEST)
    unit = width / PATTERN_WIDTH
    high += 5 * LETTERS * unit  # for the words below
    down = float(top) + MARGIN
    parts: list[str] = []
    for (name, one, two), shift, points in zip(pairs, shifts, seen, strict=True):
        parts += [_line(_ring(ring, shift, down), look) for ring, look in ((one, FIRST), (two, SECOND))]
        middle = shift + float(points.real.min() + points.real.max()) / 2
        parts.append(_text(name, middle - 2 * LETTERS * unit, down - float(top + low) / 2, unit))
    for row, (word, look) in enumerate(zip(words, (FIRST, SECOND), strict=True)):
        y = high - (3.2 - 1.6 * row) * LETTERS * unit
        parts.append(_line(f"M{MARGIN:.1f} {y:.1f}h{40 * unit:.1f}", look))
        parts.append(_text(word, MARGIN + 50 * unit, y + 0.35 * LETTERS * unit, unit))
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{PATTERN_WIDTH}" height="{high / unit:.0f}" '
        f'viewBox="0 0 {width:.1f} {high:.1f}" role="img" aria-label="{escape(title)}" font-family="{FONT}" '
        f'style="max-width:100%;height:auto"><title>{escape(title)}</title>{"".join(parts)}</svg>'
    )


def _ring(points: Points, shift: float, down: float) -> str:
    return "M" + "L".join(f"{p.real + shift:.1f} {down - p.imag:.1f}" for p in points) + "Z"


def _line(path: str, look: tuple[str, float, str]) -> str:
    colour, width, dash = look
    dashes = f' stroke-dasharray="{dash}"' if dash else ""
    return (
        f'<path d="{path}" fill="none" stroke="{colour}" stroke-width="{width:g}"{dashes} stroke-linejoin="round" '
        'vector-effect="non-scaling-stroke"/>'
    )


def _text(words: str, x: float, y: float, unit: float) -> str:
    size = LETTERS * unit
    return f'<text x="{x:.1f}" y="{y:.1f}" font-size="{size:.2f}" fill="{INK}">{escape(words)}</text>'
