"""What the front pocket leaves of the front, and its own pieces: for parts that lie there.

The registry of all kinds imports the small parts, so the pockets are asked here directly.
"""

from __future__ import annotations

from draft.geometry.path import Path
from draft.piece import Piece
from draft.pieces import front_pockets
from draft.pieces.plan import FrontOpening, Plan, PocketKind


def pocket_kind(plan: Plan) -> PocketKind | None:
    """File that makes the chosen front pocket; None without one."""
    return None if plan.style.pocket is None else front_pockets.KINDS.get(type(plan.style.pocket))


def pocket_pieces(plan: Plan) -> dict[str, Piece]:
    """Pieces of the front pocket by name."""
    kind = pocket_kind(plan)
    return {} if kind is None else {piece.name: piece for piece in kind.pieces(plan)}


def front_outline(plan: Plan) -> Path:
    """Seam lines of the front as it is cut, darts open: without what a pocket takes away."""
    panel, kind = plan.shell.front, pocket_kind(plan)
    cut = FrontOpening(panel.waist, panel.side) if kind is None else kind.opening(plan)
    parts = [cut.side, panel.hem, panel.inseam, panel.crotch, cut.waist.outline]
    return Path.join(*parts, *([] if cut.mouth is None else [cut.mouth]))
