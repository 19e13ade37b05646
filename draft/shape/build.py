"""The whole way from a block and a style to a shell."""

from __future__ import annotations

from typing import Literal

from draft.block import Block
from draft.body import Body
from draft.errors import DraftError
from draft.geometry.path import Path
from draft.shape.leg import LegSeams, legs_for
from draft.shape.shell import Panel, Shell, Waist
from draft.shape.waist import (
    at_level,
    band_ease,
    check_room,
    suppress,
    waist_seam,
    waist_target,
)
from draft.style import Style

Garment = Literal["shorts", "trousers"]

SHORTS_INSIDE_LEG = 160.0
TROUSERS_ABOVE_FLOOR = 20.0  # hem of trousers above the bare floor (common practice, no source)
STRETCH_SHARE, STRETCH_MOST = 0.015, 6.0  # of the back inseam (common practice, no source)
SMALLEST_DROP = 0.01
SHORTEST_STRAIGHT = 60.0  # what must be left of the straight crotch seam after the waist drop


def shell_of(block: Block, body: Body, style: Style, garment: Garment) -> Shell:
    """Shell for one body.

    Raises
    ------
    DraftError
        For a choice that this body has no room for; it names the largest value that works.
    """
    drop = style.waist_drop if style.waist_drop > SMALLEST_DROP else 0.0
    _check_drop(block, body, drop)
    front, back = at_level(block.front, drop), at_level(block.back, drop)
    girth = waist_target(block, body, style)
    hips = {name: _hip_width(panel) for name, panel in (("front", block.front), ("back", block.back))}
    plan = suppress(front, back, hips, girth + band_ease(style), style.darts)
    d = style.darts
    _check_lengths(style, body)
    seam_f = waist_seam(block.front, front, plan["front"], (d.front_length,))
    seam_b = waist_seam(block.back, back, plan["back"], (d.back_centre_length, d.back_side_length))
    check_room("front", front, seam_f)
    check_room("back", back, seam_b)

    inside_leg = _inside_leg(style, body, garment)
    stretch = _stretch(style, inside_leg)
    sides = (seam_f.parts[-1].end, seam_b.parts[-1].end)
    legs = legs_for(block, sides, inside_leg, stretch, style.leg.hem, style.leg.knee)
    targets = {"waist": girth, "hip": body.hip + block.ease["hip"], "inside_leg": inside_leg}
    if style.leg.hem is not None:
        targets["hem"] = style.leg.hem
    if style.leg.knee is not None and -inside_leg < block.levels["knee"]:
        targets["knee"] = style.leg.knee
    if style.ease.thigh is not None:
        targets["thigh"] = body.known("thigh") + style.ease.thigh
    levels = dict(block.levels) | {"waist": block.levels["waist"] - drop, "hem": legs.front[0].end.imag}
    return Shell(
        _panel(block, "front", seam_f, legs, drop),
        _panel(block, "back", seam_b, legs, drop),
        levels,
        block.crease,
        targets,
        stretch,
    )


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


def _check_lengths(style: Style, body: Body) -> None:
    most = body.waist_to_hip - 10
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
    most = STRETCH_SHARE * inside_leg
    wanted = style.leg.stretch
    if wanted is None:
        return min(STRETCH_MOST, most)
    if wanted > most:
        raise DraftError("style.leg.stretch", wanted, f"at most {most:.1f} mm (1.5 % of the inseam)", "stretch it less")
    return wanted
