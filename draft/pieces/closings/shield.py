"""Seams of the folded shield, which several flies share."""

from __future__ import annotations

from collections.abc import Mapping

from draft.piece import Piece
from draft.seams import Run


def shield_runs(pieces: Mapping[str, Piece], edge: str) -> list[tuple[str, Run, Run]]:
    """Shield on itself: its long edges, the first of which is called `edge`, and its lower end."""
    half = pieces["fly_shield"].edge("bottom").length / 2
    lower = Run("fly_shield", "bottom", 0, half), Run("fly_shield", "bottom", half, back=True)
    return [
        ("shield, long edges", Run("fly_shield", edge), Run("fly_shield", "under", back=True)),
        ("shield, lower end", *lower),
    ]
