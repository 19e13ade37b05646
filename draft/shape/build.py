"""The whole way from a block and a style to a shell."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import Literal

from draft.block import Block
from draft.body import Body
from draft.errors import DraftError
from draft.geometry.path import Path
from draft.shape.leg import LegSeams, legs_for
from draft.shape.pleats import fullness, pleated
from draft.shape.shell import Panel, Shell, Waist
from draft.shape.silhouette import shaped
from draft.shape.waist import (
    Level,
    at_level,
    band_ease,
    has_room,
    no_room,
    suppress,
    waist_seam,
    waist_target,
)
from draft.style import Darts, Style

Garment = Literal["shorts", "trousers"]

SHORTS_INSIDE_LEG = 160.0
TROUSERS_ABOVE_FLOOR = 20.0  # hem of trousers above the bare floor (common practice, no source)
STRETCH_SHARE = 0.015  # of the back inseam, at most (common practice, no source)
SMALLEST_DROP = 0.01
SHORTEST_STRAIGHT = 60.0  # what must be left of the straight crotch seam after the waist drop


def shell_of(block: Block, body: Body, style: Style, garment: Garment) -> Shell:
    """Shell for one body.

    Raises
    ------
    DraftError
        For a choice that this body has no room for; it names the largest value that works.
    """
    block, plain = pleated(block, style.pleats), block
    drop = style.waist_drop if style.waist_drop > SMALLEST_DROP else 0.0
    _check_drop(block, body, drop)
    front, back = at_level(block.front, drop), at_level(block.back, drop)
    girth = waist_target(block, body, style)
    hips = {name: _hip_width(panel) for name, panel in (("front", block.front), ("back", block.back))}
    _check_lengths(style, block)
    seam_f, seam_b = _waist_seams(block, (front, back), hips, girth + band_ease(style), style.darts)

    inside_leg = _inside_leg(style, body, garment)
    stretch = _stretch(style, inside_leg)
    sides = (seam_f.parts[-1].end, seam_b.parts[-1].end)
    finished_hip = body.hip + block.ease["hip"]
    below_knee = inside_leg + block.levels["knee"]
    cut = partial(legs_for, block, sides, inside_leg, stretch)
    legs = shaped(style.leg, finished_hip, below_knee, cut)
    targets = {"waist": girth, "hip": finished_hip + fullness(plain, style.pleats), "inside_leg": inside_leg}
    if style.leg.hem is not None:
        targets["hem"] = style.leg.hem
    if style.leg.knee is not None and -inside_leg < block.levels["knee"]:
        targets["knee"] = style.leg.knee
    targets["outside_leg"] = legs.front[0].length
    levels = dict(block.levels) | {"waist": block.levels["waist"] - drop, "hem": legs.front[0].end.imag}
    return Shell(
        _panel(block, "front", seam_f, legs, drop),
        _panel(block, "back", seam_b, legs, drop),
        levels,
        block.crease,
        targets,
        stretch,
    )


def _waist_seams(
    block: Block, levels: tuple[Level, Level], hips: dict[str, float], girth: float, darts: Darts
) -> tuple[Waist, Waist]:
    """Waist seams of front and back. The method's own darts are left out where the waist has no room for them."""
    plan = suppress(*levels, hips, girth, darts)
    pleats = any(dart.pleat for dart in block.front.darts)
    lengths = (None,) * len(block.front.darts) if pleats else (darts.front_length,)
    front = waist_seam(block.front, levels[0], plan["front"], lengths)
    back = waist_seam(block.back, levels[1], plan["back"], (darts.back_centre_length, darts.back_side_length))
    for name, level, seam in (("front", levels[0], front), ("back", levels[1], back)):
        asked = getattr(darts, f"{name}_share") is not None
        folded = name == "front" and pleats
        if not has_room(level, seam, *((0.0,) if asked or folded else ())):
            if folded:
                raise DraftError(
                    "style.pleats",
                    len(seam.darts),
                    "12 mm of waist seam beside each pleat",
                    "take fewer or less deep pleats",
                )
            if asked:
                raise no_room(name, seam)
            fewer = replace(darts, **{name: len(seam.darts) - 1})
            return _waist_seams(block, levels, hips, girth, fewer)
    return front, back


def _panel(block: Block, name: Literal["front", "back"], waist: Waist, legs: LegSeams, drop: float) -> Panel:
    source = block.front if name == "front" else block.back
    side, hem, inseam = legs.front if name == "front" else legs.back
    crotch: Path = source.crotch
    if drop:
        crotch, _ = crotch.split_at(crotch.length - drop)
    return Panel(side, hem, inseam, crotch, waist, source.straight - drop, source.hip_side)


def _hip_width(panel: object) -> float:
    return panel.hip_centre.real - panel.hip_side.real  # type: ignore[attr-defined, no-any-return]


def _check_drop(block: Block, body: Body, drop: float) -> None:
    most = min(
        block.front.straight - SHORTEST_STRAIGHT, block.back.straight - SHORTEST_STRAIGHT, 0.6 * body.waist_to_hip
    )
    if drop > max(0.0, most):
        raise DraftError(
            "style.waist_drop", drop, f"at most {max(0.0, most):.0f} mm on this body", "choose a smaller drop"
        )


def _check_lengths(style: Style, block: Block) -> None:
    most = block.levels["waist"] - block.levels["hip"] - 10
    for field in ("front_length", "back_centre_length", "back_side_length"):
        value = getattr(style.darts, field)
        if value is not None and not style.waist_drop + 25 <= value <= most:
            raise DraftError(
                f"style.darts.{field}",
                value,
                f"{style.waist_drop + 25:.0f} to {most:.0f} mm: the point lies above the hip line",
                "choose a length inside these limits",
            )


def _inside_leg(style: Style, body: Body, garment: Garment) -> float:
    most = body.inside_leg
    wanted = style.leg.inside_leg
    if wanted is None:
        return most - TROUSERS_ABOVE_FLOOR if garment == "trousers" else min(SHORTS_INSIDE_LEG, 0.4 * most)
    if wanted > most:
        raise DraftError(
            "style.leg.inside_leg", wanted, f"at most {most:.0f} mm, the body's inside leg", "choose a shorter leg"
        )
    return wanted


def _stretch(style: Style, inside_leg: float) -> float:
    most, wanted = STRETCH_SHARE * inside_leg, style.leg.stretch or 0.0
    if wanted > most:
        raise DraftError("style.leg.stretch", wanted, f"at most {most:.1f} mm (1.5 % of the inseam)", "stretch it less")
    return wanted
