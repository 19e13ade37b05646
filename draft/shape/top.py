"""The top of both panels: pleats spread in, the waist seam at its level, and where the side seams begin."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

from draft.block import Block, PanelBlock
from draft.body import Body
from draft.errors import DraftError
from draft.shape.leg import SideTop
from draft.shape.pleats import pleated
from draft.shape.raised import raised_waist
from draft.shape.shares import difference, shared_out, shares_of, with_centres, with_places
from draft.shape.shell import Waist
from draft.shape.waist import (
    Level,
    Suppression,
    at_level,
    band_ease,
    has_room,
    no_room,
    suppress,
    waist_seam,
    waist_target,
)
from draft.style import Style

NAMES: Final = ("front", "back")
LEAST_BEND = 12.0  # a waist raised by less is drawn without a bend at the natural waist
FOLD_OF = {"darts": "", "pleats": "forward", "tucks": "forward", "gathers": "gathers"}


@dataclass(frozen=True, eq=False)
class PanelTop:
    """Waist seam of a panel, and where its side seam begins."""

    waist: Waist
    side: SideTop


@dataclass(frozen=True, eq=False)
class Top:
    """Both tops, the block they belong to, and where the difference between hip and waist went."""

    block: Block
    front: PanelTop
    back: PanelTop
    shares: Mapping[str, float]


def top_of(block: Block, body: Body, style: Style, drop: float) -> Top:
    """Top of both panels for one body.

    Raises
    ------
    DraftError
        For darts, pleats or shares that this body has no room for.
    """
    level, rise = (drop, 0.0) if drop > -LEAST_BEND else (0.0, -drop)
    girth = waist_target(block, body, level) + (0.0 if rise else band_ease(style))
    hips = {name: _hip_width(getattr(block, name)) for name in NAMES}
    whole = difference(hips, girth)
    if style.waist_shares is not None:
        block = with_centres(with_places(block, style.darts), style.waist_shares, whole, level)
    elif style.darts.front_share or style.darts.back_share:
        block = with_places(block, style.darts)
    block = pleated(block, style.pleats)
    levels = {name: at_level(getattr(block, name), level) for name in NAMES}
    if style.waist_shares is None:
        spread = {name: _hip_width(getattr(block, name)) for name in NAMES}
        waists, nets = _by_method(block, levels, spread, girth, style)
    else:
        height = block.levels["waist"] - level - block.levels["hip"]
        nets = shared_out(levels, hips, whole, style.waist_shares, style.darts, height)
        waists = {name: _drawn(block, levels[name], nets[name], style, name) for name in NAMES}
        _check_room(levels, waists, style)
    if rise:
        more = (waist_target(block, body, drop) + band_ease(style) - girth) / 4
        raised = {name: raised_waist(getattr(block, name), waists[name], rise, nets[name].net + more) for name in NAMES}
        tops = {n: PanelTop(raised[n].waist, SideTop(waists[n].parts[-1].end, raised[n].top)) for n in NAMES}
    else:
        tops = {name: PanelTop(waists[name], SideTop(waists[name].parts[-1].end)) for name in NAMES}
    return Top(block, tops["front"], tops["back"], shares_of(block, levels, nets, hips, girth))


def _by_method(
    block: Block, levels: Mapping[str, Level], hips: Mapping[str, float], girth: float, style: Style
) -> tuple[dict[str, Waist], dict[str, Suppression]]:
    """Waist seams as the method shares them out. Its own darts are left out where the waist has no room for them."""
    darts = style.darts
    while True:
        plan = suppress(levels["front"], levels["back"], dict(hips), girth, darts)
        waists = {name: _drawn(block, levels[name], plan[name], style, name) for name in NAMES}
        crowded = [name for name in NAMES if not _roomy(levels[name], waists[name], style, name)]
        if not crowded:
            return waists, plan
        name = crowded[0]
        fixed = any(plan.fixed for plan in levels[name].plans)
        if _folded(style, name) or fixed or getattr(darts, f"{name}_share") is not None:
            raise _no_room(style, name, waists[name])
        fewer = len(waists[name].darts) - 1
        darts = replace(darts, front=fewer) if name == "front" else replace(darts, back=fewer)


def _drawn(block: Block, level: Level, plan: Suppression, style: Style, name: str) -> Waist:
    panel: PanelBlock = getattr(block, name)
    darts = style.darts
    lengths: tuple[float | None, ...] = (darts.back_centre_length, darts.back_side_length)
    if name == "front":
        lengths = (None,) * len(panel.darts) if _folded(style, name) else (darts.front_length,)
    fold = FOLD_OF[getattr(darts, f"{name}_as")]
    if fold == "gathers" and plan.intakes:
        plan = replace(plan, intakes=(sum(plan.intakes),))
    return waist_seam(panel, level, plan, lengths, fold, style.yoke if name == "back" else None)


def _folded(style: Style, name: str) -> bool:
    return name == "front" and style.pleats is not None


def _roomy(level: Level, seam: Waist, style: Style, name: str) -> bool:
    asked = getattr(style.darts, f"{name}_share") is not None or style.waist_shares is not None
    return has_room(level, seam, *((0.0,) if asked or _folded(style, name) else ()))


def _check_room(levels: Mapping[str, Level], waists: Mapping[str, Waist], style: Style) -> None:
    for name in NAMES:
        if not _roomy(levels[name], waists[name], style, name):
            raise _no_room(style, name, waists[name])


def _no_room(style: Style, name: str, seam: Waist) -> DraftError:
    if not _folded(style, name):
        return no_room(name, seam)
    expected = "12 mm of waist seam beside each pleat"
    return DraftError("style.pleats", len(seam.darts), expected, "take fewer or less deep pleats")


def _hip_width(panel: PanelBlock) -> float:
    return panel.hip_centre.real - panel.hip_side.real
