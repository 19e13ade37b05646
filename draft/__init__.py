"""Trousers and shorts drafted from body measurements: pieces that sew together, files that cut true to size."""

from draft.block import Block, DartPlan, PanelBlock, crotch_seam
from draft.body import Body
from draft.drafting import shorts, trousers
from draft.drawing.overlay import Overlay
from draft.errors import DraftError
from draft.guide.show import Guide, how_to_measure
from draft.many import Blocks, blocks
from draft.methods.base import Measures, Method
from draft.methods.catalogue import methods
from draft.pattern import Pattern
from draft.piece import Piece
from draft.sensitivity import Sensitivity, sensitivity
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
    "Block",
    "Blocks",
    "Body",
    "CurvedPocket",
    "DartPlan",
    "Darts",
    "DraftError",
    "Ease",
    "FlyFront",
    "Guide",
    "Leg",
    "Measures",
    "Method",
    "Overlay",
    "PanelBlock",
    "Pattern",
    "Piece",
    "PlainHem",
    "Sensitivity",
    "StraightBand",
    "Style",
    "TurnedCuff",
    "blocks",
    "crotch_seam",
    "how_to_measure",
    "methods",
    "sensitivity",
    "shorts",
    "trousers",
]
