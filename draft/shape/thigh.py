"""Thigh girth of a shell."""

from __future__ import annotations

from draft.fitting.thigh import THIGH_BELOW_CROTCH
from draft.geometry.meet import meet_line
from draft.geometry.path import Path
from draft.shape.shell import Panel, Shell


def thigh_of(shell: Shell) -> float:
    """Thigh girth of a shell, 25 mm below the crotch line."""
    y = shell.levels["crotch"] - THIGH_BELOW_CROTCH
    return sum(_width_at(panel, y) for panel in (shell.front, shell.back))


def _width_at(panel: Panel, y: float) -> float:
    sides = [_crossings(path, y) for path in (panel.side, panel.inseam)]
    if not all(sides):  # a very short leg: its hem crosses the level of the thigh
        sides = [_crossings(panel.outline, y)]
    places = [x for side in sides for x in side]
    return max(places) - min(places)


def _crossings(path: Path, y: float) -> list[float]:
    return [float(path.point_at(at).real) for at in meet_line(path, 1j * y, 1 + 0j)]
