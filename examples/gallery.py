"""Writes all presets, drafted for one invented body, as ``gallery.svg`` beside this script.

usage: python examples/gallery.py
"""

from __future__ import annotations

import re
from pathlib import Path

import draft
from draft.export.files import write_text
from draft.presets import Preset

BODY = draft.Body(name="invented", waist=760, hip=1010, crotch_depth=268, waist_to_hip=208, inside_leg=775)
COLUMNS, CELL, GAP, TITLE = 2, (900.0, 640.0), 40.0, 70.0


def cell(preset: Preset, left: float, top: float) -> str:
    """Picture of one preset with its name and words, at a place of the sheet."""
    picture = preset.draft(BODY)._repr_svg_()
    placed = f'<svg x="{left:g}" y="{top + TITLE:g}" width="{CELL[0]:g}" height="{CELL[1] - TITLE:g}"'
    nested = re.sub(r'<svg[^>]*?(viewBox="[^"]*")[^>]*>', rf"{placed} \1>", picture, count=1)
    name = f'<text x="{left:g}" y="{top + 26:g}" font-size="26" font-weight="bold">{preset.name}</text>'
    words = f'<text x="{left:g}" y="{top + 54:g}" font-size="19">{preset.words}</text>'
    return "\n".join([name, words, nested])


def gallery() -> str:
    """All presets, two beside each other."""
    across, down = CELL[0] + GAP, CELL[1] + GAP
    presets = draft.presets()
    rows = -(-len(presets) // COLUMNS)
    width, height = COLUMNS * across + GAP, rows * down + GAP
    cells = [cell(p, GAP + (i % COLUMNS) * across, GAP + i // COLUMNS * down) for i, p in enumerate(presets)]
    box, font = f"0 0 {width:g} {height:g}", "Arial, DejaVu Sans, sans-serif"
    head = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="{box}" font-family="{font}">'
    return "\n".join([head, '<rect width="100%" height="100%" fill="#ffffff"/>', *cells, "</svg>\n"])


def main(path: Path) -> Path:
    """Write the picture and give its path."""
    return write_text(path, gallery())


if __name__ == "__main__":
    main(Path(__file__).with_name("gallery.svg"))
