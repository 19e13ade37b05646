"""Trousers and shorts drafted from body measurements: pieces that sew together, files that cut true to size."""

from draft.advice.advise import Advice, Suggestion, advise
from draft.advice.note import Note
from draft.advice.symptoms import Symptom, Symptoms, symptoms
from draft.alter.base import Alteration
from draft.alter.catalogue import alteration, alterations
from draft.block import Block, DartPlan, PanelBlock, crotch_seam
from draft.body import Body
from draft.choices.back_pockets import PatchPocket, WeltPocket
from draft.choices.bands import ContourBand, DrawstringBand, ElasticCasing, FacedWaist
from draft.choices.closings import ButtonFly, GrownOnFly, NoClosing, SideZip
from draft.choices.front_pockets import FrontPatchPocket, InSeamPocket, SlantedPocket
from draft.choices.hems import (
    BlindHem,
    CutOnTurnUp,
    ElasticHem,
    FacedHem,
    GatheredHem,
    KneeBand,
    RuffledHem,
    VentedHem,
)
from draft.choices.small_parts import AppliedTape, BeltLoops, BiasBinding, Braces, CoinPocket, Lining, StrapTab
from draft.drafting import shorts, trousers
from draft.drawing.overlay import Overlay
from draft.errors import DraftError
from draft.guide.show import Guide, how_to_measure
from draft.many import Blocks, blocks
from draft.methods.base import Measures, Method
from draft.methods.catalogue import methods
from draft.pattern import MockUp, Pattern
from draft.piece import Piece
from draft.presets import presets
from draft.recipe.comparison import Comparison
from draft.recipe.entries import Fitting
from draft.recipe.recipe import Recipe, load
from draft.sensitivity import Sensitivity, sensitivity
from draft.style import (
    Allowances,
    CurvedPocket,
    Darts,
    Ease,
    FlyFront,
    Leg,
    PlainHem,
    Pleats,
    StraightBand,
    Style,
    TurnedCuff,
    WaistShares,
    Yoke,
)

__version__ = "0.1.0"

__all__ = [
    "Advice",
    "Allowances",
    "Alteration",
    "AppliedTape",
    "BeltLoops",
    "BiasBinding",
    "BlindHem",
    "Block",
    "Blocks",
    "Body",
    "Braces",
    "ButtonFly",
    "CoinPocket",
    "Comparison",
    "ContourBand",
    "CurvedPocket",
    "CutOnTurnUp",
    "DartPlan",
    "Darts",
    "DraftError",
    "DrawstringBand",
    "Ease",
    "ElasticCasing",
    "ElasticHem",
    "FacedHem",
    "FacedWaist",
    "Fitting",
    "FlyFront",
    "FrontPatchPocket",
    "GatheredHem",
    "GrownOnFly",
    "Guide",
    "InSeamPocket",
    "KneeBand",
    "Leg",
    "Lining",
    "Measures",
    "Method",
    "MockUp",
    "NoClosing",
    "Note",
    "Overlay",
    "PanelBlock",
    "PatchPocket",
    "Pattern",
    "Piece",
    "PlainHem",
    "Pleats",
    "Recipe",
    "RuffledHem",
    "Sensitivity",
    "SideZip",
    "SlantedPocket",
    "StraightBand",
    "StrapTab",
    "Style",
    "Suggestion",
    "Symptom",
    "Symptoms",
    "TurnedCuff",
    "VentedHem",
    "WaistShares",
    "WeltPocket",
    "Yoke",
    "advise",
    "alteration",
    "alterations",
    "blocks",
    "crotch_seam",
    "how_to_measure",
    "load",
    "methods",
    "presets",
    "sensitivity",
    "shorts",
    "symptoms",
    "trousers",
]
