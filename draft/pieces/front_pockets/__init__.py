"""Front pockets, one file each; `KINDS` says which file makes which choice."""

from __future__ import annotations

from draft.choice import Choice
from draft.choices.front_pockets import FrontPatchPocket, InSeamPocket, SlantedPocket
from draft.pieces import curved_pocket
from draft.pieces.front_pockets import in_seam_pocket, patch_pocket, slanted_pocket
from draft.pieces.plan import PocketKind
from draft.style import CurvedPocket

KINDS: dict[type[Choice], PocketKind] = {
    CurvedPocket: curved_pocket,
    SlantedPocket: slanted_pocket,
    InSeamPocket: in_seam_pocket,
    FrontPatchPocket: patch_pocket,
}
