"""Which file makes which kind; each kind is registered in the package of its file."""

from __future__ import annotations

from typing import Any

from draft.choice import Choice
from draft.errors import DraftError
from draft.pieces import back_pockets, bands, closings, front_pockets, hems, small_parts
from draft.pieces.plan import BackPocketKind, BandKind, ClosingKind, HemKind, PocketKind, SmallPartKind
from draft.style import SmallPart, Style


def _of(kinds: dict[type[Choice], Any], field: str, choice: Choice) -> Any:
    kind = kinds.get(type(choice))
    if kind is None:
        known = " or ".join(k.__name__ for k in kinds)
        raise DraftError(f"style.{field}", choice, f"a {known}", "choose a kind that has pieces")
    return kind


def pocket_of(style: Style) -> PocketKind | None:
    """File that makes the chosen pocket; None without a pocket."""
    kind: PocketKind | None = None if style.pocket is None else _of(front_pockets.KINDS, "pocket", style.pocket)
    return kind


def back_pocket_of(style: Style) -> BackPocketKind | None:
    """File that makes the chosen back pocket; None without one."""
    chosen = style.back_pocket
    kind: BackPocketKind | None = None if chosen is None else _of(back_pockets.KINDS, "back_pocket", chosen)
    return kind


def small_part_of(part: SmallPart) -> SmallPartKind:
    """File that makes a small part."""
    kind: SmallPartKind = _of(small_parts.KINDS, "small_parts", part)
    return kind


def closing_of(style: Style) -> ClosingKind:
    """File that makes the chosen closing."""
    kind: ClosingKind = _of(closings.KINDS, "closing", style.closing)
    return kind


def hem_of(style: Style) -> HemKind:
    """File that makes the chosen hem."""
    kind: HemKind = _of(hems.KINDS, "hem", style.hem)
    return kind


def band_of(style: Style) -> BandKind:
    """File that makes the chosen band."""
    kind: BandKind = _of(bands.KINDS, "band", style.band)
    return kind
