"""Which file makes which kind: the one place where a new kind is registered."""

from __future__ import annotations

from typing import Any

from draft.errors import DraftError
from draft.pieces import (
    back_pockets,
    bands,
    closings,
    cuff,
    curved_pocket,
    fly,
    front_pockets,
    hems,
    plain_hem,
    small_parts,
    straight_band,
)
from draft.pieces.plan import BackPocketKind, BandKind, ClosingKind, HemKind, PocketKind, SmallPartKind
from draft.style import Choice, CurvedPocket, FlyFront, PlainHem, SmallPart, StraightBand, Style, TurnedCuff

POCKETS: dict[type[Choice], PocketKind] = {CurvedPocket: curved_pocket, **front_pockets.KINDS}
BACK_POCKETS: dict[type[Choice], BackPocketKind] = dict(back_pockets.KINDS)
SMALL_PARTS: dict[type[Choice], SmallPartKind] = dict(small_parts.KINDS)
CLOSINGS: dict[type[Choice], ClosingKind] = {FlyFront: fly, **closings.KINDS}
HEMS: dict[type[Choice], HemKind] = {TurnedCuff: cuff, PlainHem: plain_hem, **hems.KINDS}
BANDS: dict[type[Choice], BandKind] = {StraightBand: straight_band, **bands.KINDS}


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


def back_pocket_of(style: Style) -> BackPocketKind | None:
    """File that makes the chosen back pocket; None without one."""
    chosen = style.back_pocket
    kind: BackPocketKind | None = None if chosen is None else _of(BACK_POCKETS, "back_pocket", chosen)
    return kind


def small_part_of(part: SmallPart) -> SmallPartKind:
    """File that makes a small part."""
    kind: SmallPartKind = _of(SMALL_PARTS, "small_parts", part)
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
