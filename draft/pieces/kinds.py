"""Which file makes which kind: the one place where a new kind is registered."""

from __future__ import annotations

from typing import Any

from draft.errors import DraftError
from draft.pieces import cuff, curved_pocket, fly, plain_hem, straight_band
from draft.pieces.plan import BandKind, ClosingKind, HemKind, PocketKind
from draft.style import Choice, CurvedPocket, FlyFront, PlainHem, StraightBand, Style, TurnedCuff

POCKETS: dict[type[Choice], PocketKind] = {CurvedPocket: curved_pocket}
CLOSINGS: dict[type[Choice], ClosingKind] = {FlyFront: fly}
HEMS: dict[type[Choice], HemKind] = {TurnedCuff: cuff, PlainHem: plain_hem}
BANDS: dict[type[Choice], BandKind] = {StraightBand: straight_band}


def _of(kinds: dict[type[Choice], Any], field: str, choice: Choice) -> Any:
    kind = kinds.get(type(choice))
    if kind is None:
        known = " or ".join(k.__name__ for k in kinds)
        raise DraftError(f"style.{field}", choice, f"a {known}", "choose a kind that has pieces")
    return kind


def pocket_of(style: Style) -> PocketKind | None:
    """File that makes the chosen pocket; None without a pocket."""
    kind: PocketKind | None = None if style.pocket is None else _of(POCKETS, "pocket", style.pocket)
    return kind


def closing_of(style: Style) -> ClosingKind:
    """File that makes the chosen closing."""
    kind: ClosingKind = _of(CLOSINGS, "closing", style.closing)
    return kind


def hem_of(style: Style) -> HemKind:
    """File that makes the chosen hem."""
    kind: HemKind = _of(HEMS, "hem", style.hem)
    return kind


def band_of(style: Style) -> BandKind:
    """File that makes the chosen band."""
    kind: BandKind = _of(BANDS, "band", style.band)
    return kind
