"""Back pockets, one file each; `KINDS` says which file makes which choice."""

from __future__ import annotations

from draft.choice import Choice
from draft.choices.back_pockets import PatchPocket, WeltPocket
from draft.pieces.back_pockets import patch, welt
from draft.pieces.plan import BackPocketKind

KINDS: dict[type[Choice], BackPocketKind] = {PatchPocket: patch, WeltPocket: welt}
