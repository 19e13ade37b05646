"""Ways to finish the bottom edge, one file each; `KINDS` says which file makes which choice."""

from __future__ import annotations

from draft.choice import Choice
from draft.choices.hems import BlindHem, CutOnTurnUp, ElasticHem, FacedHem, GatheredHem, KneeBand, RuffledHem, VentedHem
from draft.pieces import cuff, plain_hem
from draft.pieces.hems import blind_hem, elastic_hem, faced_hem, gathered_hem, knee_band, ruffle, turn_up, vented_hem
from draft.pieces.plan import HemKind
from draft.style import PlainHem, TurnedCuff

KINDS: dict[type[Choice], HemKind] = {
    TurnedCuff: cuff,
    PlainHem: plain_hem,
    CutOnTurnUp: turn_up,
    FacedHem: faced_hem,
    BlindHem: blind_hem,
    RuffledHem: ruffle,
    KneeBand: knee_band,
    VentedHem: vented_hem,
    GatheredHem: gathered_hem,
    ElasticHem: elastic_hem,
}
