"""The block before and after the fit, one over the other: what the measured body changed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from html import escape

import numpy as np

from draft.block import Block, PanelBlock
from draft.drawing.strokes import FONT
from draft.drawing.view import INK, LETTERS, PATTERN_WIDTH
from draft.geometry.arrays import Points
from draft.geometry.path import Path

BEFORE, AFTER = (INK, 1.2, "6 4"), ("#367ccd", 1.8, "")  # colour, width, dash: told apart without colour too
LEVEL = (INK, 0.8, "1 4")
SHOWN_BELOW = 150.0  # of the leg, mm below the crotch line
NAME_BELOW = 60.0  # mm below the crotch line
LEGEND = 70.0  # mm of room under the hem
GAP, MARGIN = 60.0, 40.0
STEP_MM = 0.2


@dataclass(frozen=True, eq=False)
class Overlay:
    """Front and back of two blocks, the first dashed, the second solid. Shows itself in a notebook.

    Examples
    --------
    >>> import draft
    >>> body = draft.Body(waist=740, hip=1000, crotch_depth=270, waist_to_hip=200, inside_leg=770, back_crotch=390)
    >>> draft.shorts(body).overlay().svg().startswith("<svg")
    True
    """

    before: Block
    after: Block
    words: tuple[str, str] = ("formula", "fitted")
    title: str = "Block before and after the fit"

    def svg(self) -> str:
        """Picture about 900 pixels wide, from the waist to a hand below the crotch line."""
        return _picture(self)

    def _repr_svg_(self) -> str:
        return self.svg()


def _picture(overlay: Overlay) -> str:
    panels = [(getattr(overlay.before, side), getattr(overlay.after, side)) for side in ("front", "back")]
    lines = [(_outlines(before), _outlines(after)) for before, after in panels]
    levels = [overlay.after.levels[name] for name in ("hip", "crotch")]
    return drawn_over(lines, levels, overlay.words, overlay.title, SHOWN_BELOW)


def drawn_over(
    lines: Sequence[tuple[list[Points], list[Points]]],
    levels: Iterable[float],
    words: tuple[str, str],
    title: str,
    shown_below: float | None = None,
) -> str:
    """Picture of front and back, each before (dashed) and after (solid), about 900 pixels wide.

    Parameters
    ----------
    lines : sequence of pairs
        Polylines of the front before and after, then those of the back; mm, y up, the crotch line at 0.
    levels : iterable of float
        Heights at which a level line is drawn.
    words : tuple of str
        What the legend says of before and after.
    title : str
    shown_below : float, optional
        How much of the leg is shown, mm below the crotch line; None: all of it, with the legend underneath.
    """
    seen = [np.concatenate([p for outlines in pair for p in outlines]) for pair in lines]
    below = shown_below
    if below is None:
        below = LEGEND - min(points.imag.min() for points in seen)
    seen = [points[points.imag > -below] for points in seen]
    top = max(points.imag.max() for points in seen) + MARGIN
    shifts, x = [], MARGIN
    for points in seen:
        shifts.append(x - points.real.min())
        x += float(np.ptp(points.real)) + GAP
    width, height = x - GAP + MARGIN, top + below
    unit = width / PATTERN_WIDTH
    levels = list(levels)
    parts: list[str] = []
    for (before, after), shift, points, name in zip(lines, shifts, seen, ("Front", "Back"), strict=True):
        edges = points.real.min() + shift, points.real.max() + shift
        parts += [_line(f"M{edges[0]:.1f} {top - level:.1f}H{edges[1]:.1f}", LEVEL) for level in levels]
        parts += [_drawn(line, shift, top, BEFORE) for line in before]
        parts += [_drawn(line, shift, top, AFTER) for line in after]
        parts.append(_text(name, (edges[0] + edges[1]) / 2 - 2 * LETTERS * unit, top + NAME_BELOW, unit))
    middle = shifts[0] + (seen[0].real.min() + seen[0].real.max()) / 2
    parts += _legend(words, middle - 5 * LETTERS * unit, unit, height)
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{PATTERN_WIDTH}" height="{height / unit:.0f}" '
        f'viewBox="0 0 {width:.1f} {height:.1f}" role="img" aria-label="{escape(title)}" font-family="{FONT}" '
        f'style="max-width:100%;height:auto"><title>{escape(title)}</title>{"".join(parts)}</svg>'
    )


def _outlines(panel: PanelBlock) -> list[Points]:
    """Seams as polylines; what lies below the picture is cut off by its frame."""
    darts = [
        Path.line(dart.mouth + side * dart.intake / 2 * _along(panel), dart.point)
        for dart in panel.darts
        if dart.intake > 0
        for side in (1, -1)
    ]
    return [path.points(STEP_MM) for path in (panel.side, panel.inseam, panel.crotch, panel.waist, *darts)]


def _along(panel: PanelBlock) -> complex:
    run = panel.waist_side - panel.waist_centre
    return run / abs(run)


def _drawn(points: Points, shift: float, top: float, look: tuple[str, float, str]) -> str:
    return _line("M" + "L".join(f"{p.real + shift:.1f} {top - p.imag:.1f}" for p in points), look)


def _line(path: str, look: tuple[str, float, str]) -> str:
    colour, width, dash = look
    dashes = f' stroke-dasharray="{dash}"' if dash else ""
    return (
        f'<path d="{path}" fill="none" stroke="{colour}" stroke-width="{width:g}"{dashes} stroke-linejoin="round" '
        'vector-effect="non-scaling-stroke"/>'
    )


def _legend(words: tuple[str, str], x: float, unit: float, height: float) -> Iterator[str]:
    for row, (word, look) in enumerate(zip(words, (BEFORE, AFTER), strict=True)):
        y = height - (3.2 - 1.6 * row) * LETTERS * unit
        yield _line(f"M{x:.1f} {y:.1f}h{40 * unit:.1f}", look)
        yield _text(word, x + 50 * unit, y + 0.35 * LETTERS * unit, unit)


def _text(words: str, x: float, y: float, unit: float) -> str:
    size = LETTERS * unit
    return f'<text x="{x:.1f}" y="{y:.1f}" font-size="{size:.2f}" fill="{INK}">{escape(words)}</text>'
