"""Small parts, one file each; `KINDS` says which file makes which choice."""

from __future__ import annotations

from draft.choice import Choice
from draft.choices.small_parts import AppliedTape, BeltLoops, BiasBinding, Braces, CoinPocket, Lining, StrapTab
from draft.pieces.plan import SmallPartKind
from draft.pieces.small_parts import applied_tape, belt_loops, bias_binding, braces, coin_pocket, lining, strap_tab

KINDS: dict[type[Choice], SmallPartKind] = {
    BeltLoops: belt_loops,
    StrapTab: strap_tab,
    Braces: braces,
    Lining: lining,
    CoinPocket: coin_pocket,
    AppliedTape: applied_tape,
    BiasBinding: bias_binding,
}
