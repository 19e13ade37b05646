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
from draft.trace.compare import compare
from draft.trace.corners import Corners, propose_corners
from draft.trace.dxf_file import read_dxf
from draft.trace.outline import Outline
from draft.trace.points import from_photo, from_points
from draft.trace.refit import refit
from draft.trace.svg_file import read_svg
from draft.trace.traced import Traced

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
    "Corners",
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
    "Outline",
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
    "Traced",
    "TurnedCuff",
    "VentedHem",
    "WaistShares",
    "WeltPocket",
    "Yoke",
    "advise",
    "alteration",
    "alterations",
    "blocks",
    "compare",
    "crotch_seam",
    "from_photo",
    "from_points",
    "how_to_measure",
    "load",
    "methods",
    "presets",
    "propose_corners",
    "read_dxf",
    "read_svg",
    "refit",
    "sensitivity",
    "shorts",
    "symptoms",
    "trousers",
]
