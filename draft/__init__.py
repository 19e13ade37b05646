"""Trousers and shorts drafted from body measurements: pieces that sew together, files that cut true to size."""

from draft.body import Body
from draft.drafting import shorts, trousers
from draft.errors import DraftError
from draft.pattern import Pattern
from draft.piece import Piece
from draft.style import (
    Allowances,
    CurvedPocket,
    Darts,
    Ease,
    FlyFront,
    Leg,
    PlainHem,
    StraightBand,
    Style,
    TurnedCuff,
)

__version__ = "0.1.0"

__all__ = [
    "Allowances",
    "Body",
    "CurvedPocket",
    "Darts",
    "DraftError",
    "Ease",
    "FlyFront",
    "Leg",
    "Pattern",
    "Piece",
    "PlainHem",
    "StraightBand",
    "Style",
    "TurnedCuff",
    "shorts",
    "trousers",
]
