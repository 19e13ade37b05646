"""Alterations of darts and of what is in their place."""

from __future__ import annotations

from dataclasses import replace

from draft.alter.base import alteration, by
from draft.alter.moves import sewn_darts, waist_side_out
from draft.block import Block, PanelBlock
from draft.choices.bands import ContourBand
from draft.errors import DraftError
from draft.geometry.points import unit
from draft.style import StraightBand, Style

STAYS = ("waist", "hip", "knee", "front_crotch", "back_crotch", "crotch", "inside_leg")
LEAST_DART = 5.0
FRONT_DART_SHARE = 0.2  # of the front's difference between hip and waist (common practice, no source)


def _wider(block: Block, mm: float) -> Block:
    """Back darts that take `mm` more together, the side of the waist out by as much."""
    panel = block.back
    darts = sewn_darts(panel, "back")
    if not darts:
        raise DraftError("alterations", "no back dart", "a method with back darts", "ask for a share of darts instead")
    each = mm / len(darts)
    least = min(dart.intake for dart in darts)
    if least + each < LEAST_DART:
        most = len(darts) * (least - LEAST_DART)
        expected = f"at most {max(0.0, most):.0f} mm: a dart of less than {LEAST_DART:g} is not worth sewing"
        raise DraftError("alterations.by", -mm, expected, "take less, or turn the darts into the seams")
    darts = tuple(replace(dart, intake=dart.intake + each) for dart in darts)
    return replace(block, back=replace(waist_side_out(panel, mm), darts=darts))


@alteration(
    cures="too tight at the darts of the back and too wide at the side: less dart, more side seam",
    moves="waist length from the back darts to the side seam of either back",
    arguments=by(0, 30),
    keeps=STAYS,
    own_darts=True,
)
def darts_to_side(block: Block, by: float) -> Block:
    """Back darts take `by` less together, the side seam of the back as much more."""
    return _wider(block, -by)


@alteration(
    cures="the back stands off above the seat: its darts take too little",
    moves="waist length from the side seam to the back darts of either back",
    arguments=by(0, 30),
    keeps=STAYS,
    own_darts=True,
)
def widen_back_darts(block: Block, by: float) -> Block:
    """Back darts take `by` more together, the side seam of the back as much less."""
    return _wider(block, by)


@alteration(
    cures="the back darts do not point at the fullest place",
    moves="the back darts along the waist, towards the side (negative: towards the centre)",
    arguments=by(-30, 30),
    keeps=STAYS,
    own_darts=True,
)
def move_back_darts(block: Block, by: float) -> Block:
    """Back darts moved along the waist."""
    panel: PanelBlock = block.back
    along = unit(panel.waist_side - panel.waist_centre) * by
    darts = tuple(replace(dart, mouth=dart.mouth + along, point=dart.point + along) for dart in panel.darts)
    return replace(block, back=replace(panel, darts=darts))


@alteration(
    cures="the back darts poke at their points (negative: they end in the fullness)",
    moves="the points of the back darts downwards",
    arguments=by(-40, 30),
    keeps=STAYS,
    own_darts=True,
)
def lengthen_back_darts(block: Block, by: float) -> Block:
    """Longer back darts."""
    panel: PanelBlock = block.back
    darts = tuple(replace(dart, point=dart.point + unit(dart.point - dart.mouth) * by) for dart in panel.darts)
    return replace(block, back=replace(panel, darts=darts))


@alteration(
    cures="vertical slack in the front below the band, the hip bones stand out",
    moves="a fifth of the front's difference between hip and waist into a dart on either front",
    keeps=STAYS,
)
def add_front_dart(style: Style) -> Style:
    """Dart in either front."""
    share = style.darts.front_share or FRONT_DART_SHARE
    return replace(style, darts=replace(style.darts, front=1, front_share=share))


@alteration(
    cures="two short darts pucker where one would do",
    moves="the cloth of one back dart into the other and the side seam",
    keeps=STAYS,
    own_darts=True,
)
def remove_back_dart(style: Style) -> Style:
    """One back dart fewer."""
    if not style.darts.back:
        raise DraftError("alterations.remove_back_dart", 0, "a style with back darts", "leave this alteration out")
    return replace(style, darts=replace(style.darts, back=style.darts.back - 1))


@alteration(
    cures="more room over the seat is wanted below the band",
    moves="the back darts into pleats, released below the band",
    keeps=STAYS,
)
def back_darts_to_pleats(style: Style) -> Style:
    """Back darts folded as pleats."""
    return replace(style, darts=replace(style.darts, back_as="pleats"))


@alteration(
    cures="darts are not wanted, or pucker in this cloth",
    moves="the cloth of the back darts into the side seams",
    keeps=STAYS,
    own_darts=True,
)
def back_darts_to_seams(style: Style) -> Style:
    """No back darts."""
    return replace(style, darts=replace(style.darts, back=0))


@alteration(
    cures="the band digs in below and stands off above",
    moves="the straight band into one that is curved to the body, of the same depth",
    keeps=STAYS,
)
def contour_band(style: Style) -> Style:
    """Curved band instead of a straight one."""
    band = style.band
    if not isinstance(band, StraightBand):
        kind = type(band).__name__
        raise DraftError("alterations.contour_band", kind, "a style with a StraightBand", "leave this alteration out")
    kept = {name: getattr(band, name) for name in ("overlap", "underlap", "button", "button_thickness", "fastener")}
    return replace(style, band=ContourBand(depth=max(20.0, band.depth), **kept))
