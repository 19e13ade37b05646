"""What several hems share: the panel of a part, how deep a strip of the leg may be, and marks at the side seam."""

from __future__ import annotations

from functools import partial
from math import floor

from draft.errors import DraftError
from draft.geometry.path import Path
from draft.geometry.polygon import inside
from draft.piece import InnerLine
from draft.pieces.cuff import top_of
from draft.pieces.plan import Plan
from draft.shape.leg import largest
from draft.shape.shell import Panel

PARTS = ("front", "back")
LARGEST_SHARE = 0.6  # of the inseam; above it the leg is shaped for the fork
MARK = 12.0  # length of a mark square to a seam, mm


def panel_of(plan: Plan, part: str) -> Panel:
    """Front or back panel."""
    return plan.shell.front if part == "front" else plan.shell.back


def lies_on_leg(panel: Panel, depth: float) -> bool:
    """Whether a line across the leg at `depth` mm above its bottom edge stays inside it."""
    return depth <= 0 or bool(inside(top_of(panel, depth).points(0.5)[1:-1], panel.outline.points(0.5)).all())


def room_for(plan: Plan, depth: float, more: float = 0.0) -> None:
    """Refuse a hem that is deeper than the leg has room for.

    ``more`` is what is turned under besides.

    Raises
    ------
    DraftError
        With the largest depth in mm that works.
    """
    most = LARGEST_SHARE * min(plan.shell.front.inseam.length, plan.shell.back.inseam.length) - more
    panels = (plan.shell.front, plan.shell.back)
    if depth > most or not all(lies_on_leg(panel, depth) for panel in panels):
        most = min(largest(partial(lies_on_leg, panel), most) for panel in panels)
        expected = f"at most {floor(10 * most) / 10:.1f} mm on this leg"
        raise DraftError("style.hem.depth", depth, expected, "make the hem shallower or the leg longer")


def side_mark(panel: Panel, above_hem: float, note: str) -> InnerLine:
    """Short mark square to the side seam, `above_hem` mm along it from its lower end: there the seam stops."""
    along = panel.side.length - above_hem
    at = panel.side.point_at(along)
    inward = 1j * panel.side.direction_at(along)
    return InnerLine("placement", Path.line(at, at + MARK * inward), note)
