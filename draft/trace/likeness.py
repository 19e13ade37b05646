"""How alike two panels are: places on their seams, laid on each other, and the distances that remain.

Each seam is looked at in equal shares of its sewn length, so that a place on one has its like on the other.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TypeAlias

import numpy as np

from draft.geometry.arrays import Floats, Points
from draft.geometry.path import Path
from draft.piece import Piece
from draft.shape.shell import Panel, Shell
from draft.trace.sewline import EDGES

Seams: TypeAlias = Mapping[str, tuple[Path, ...]]
"""Sewn stretches of each edge by its name."""

PER_EDGE = 16
FLAT_MM = 0.05
SIZE_WEIGHT = 2.0
GIRTH_WEIGHT = 10.0  # of half the waist and half the hip: a body has these before it has the shape of an edge


def seams_of_piece(piece: Piece) -> Seams:
    """Seams of a traced piece."""
    return {name: piece.edge(name).parts for name in EDGES}


def seams_of_panel(panel: Panel) -> Seams:
    """Seams of a drafted panel."""
    waist = panel.waist.parts
    return {"side": (panel.side,), "hem": (panel.hem,), "inseam": (panel.inseam,), "crotch": (panel.crotch,),
            "waist": waist}  # fmt: skip


def panel_of(shell: Shell, name: str) -> Panel:
    """Front or back of a shell."""
    return shell.front if name == "front" else shell.back


def places(edges: Seams) -> Points:
    """Places on every seam at equal shares of its sewn length, ends included."""
    return np.concatenate([_shared(edges[name]) for name in EDGES])


def _shared(parts: tuple[Path, ...]) -> Points:
    points, along, before = [], [], 0.0
    for part in parts:
        line = np.append(part.points(FLAT_MM), [part.end] if part.closed else [])
        steps = np.append(0.0, np.cumsum(np.abs(np.diff(line))))
        points.append(line)
        along.append(before + steps)
        before += steps[-1]
    line, marks = np.concatenate(points), np.concatenate(along)
    at = np.linspace(0, before, PER_EDGE)
    return np.asarray(np.interp(at, marks, line.real) + 1j * np.interp(at, marks, line.imag))


def weighed_sizes(panels: Sequence[Seams], heights: tuple[float, float]) -> Floats:
    """Lengths of all seams, and half of waist and hip, as they weigh."""
    lengths = [[sum(part.length for part in edges[name]) for name in EDGES] for edges in panels]
    waist = sum(each[EDGES.index("waist")] for each in lengths)
    hip = sum(_width_above(edges, height) for edges, height in zip(panels, heights, strict=True))
    return np.concatenate([SIZE_WEIGHT * np.ravel(lengths), GIRTH_WEIGHT * np.array([waist, hip])])


def _width_above(edges: Seams, height: float) -> float:
    """Width of a panel between side and crotch seam at a height above its fork."""
    side, crotch = edges["side"][0].points(FLAT_MM)[::-1], edges["crotch"][0].points(FLAT_MM)
    y = crotch[0].imag + height
    ends = [np.interp(y, np.maximum.accumulate(line.imag), line.real) for line in (side, crotch)]
    return float(ends[1] - ends[0])


def laid(mine: Points, theirs: Points) -> tuple[complex, complex]:
    """Turn and shift that lay the second set of places on the first with the least squares.

    >>> turn, shift = laid(np.array([5, 5 + 2j, 4 + 2j]), np.array([0, 2, 2 + 1j]) + 0j)
    >>> bool(abs(turn - 1j) < 1e-9), bool(abs(shift - 5) < 1e-9)
    (True, True)
    """
    a, b = mine - mine.mean(), theirs - theirs.mean()
    turn = complex(np.sum(np.conj(b) * a))
    turn /= abs(turn)
    return turn, complex(mine.mean() - turn * theirs.mean())


def distances(shell: Shell, piece: Piece, name: str) -> Floats:
    """Distance from places on a traced panel to the nearest place on the draft's seams, mm."""
    panel = panel_of(shell, name)
    theirs = places(seams_of_piece(piece))
    turn, shift = laid(places(seams_of_panel(panel)), theirs)
    p = (turn * theirs + shift)[:, None]
    lines = [part.points(FLAT_MM) for parts in seams_of_panel(panel).values() for part in parts]
    a = np.concatenate([line[:-1] for line in lines])[None, :]
    b = np.concatenate([line[1:] for line in lines])[None, :]
    t = np.clip(((p - a) * np.conj(b - a)).real / np.maximum(np.abs(b - a) ** 2, 1e-12), 0, 1)
    return np.asarray(np.min(np.abs(a + t * (b - a) - p), axis=1))
