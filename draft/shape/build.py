"""The whole way from a block and a style to a shell."""

from __future__ import annotations

from functools import partial
from typing import Literal

from draft.block import Block
from draft.body import Body
from draft.errors import DraftError
from draft.geometry.path import Path
from draft.geometry.segments import Line
from draft.shape.leg import LegSeams, legs_for
from draft.shape.pleats import fullness
from draft.shape.shell import Panel, Shell, Waist
from draft.shape.silhouette import shaped
from draft.shape.top import top_of
from draft.shape.waist import waist_target
from draft.style import Style
from draft.units import HAIR, at_least, at_most

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
    drop = style.waist_drop if abs(style.waist_drop) > SMALLEST_DROP else 0.0
    _check_drop(block, body, drop)
    _check_lengths(style, block)
    top = top_of(block, body, style, drop)
    block, plain = top.block, block

    inside_leg = inside_leg_of(style, body, garment)
    stretch = _stretch(style, inside_leg)
    sides = (top.front.side, top.back.side)
    finished_hip = body.hip + block.ease["hip"]
    below_knee = inside_leg + block.levels["knee"]
    cut = partial(legs_for, block, sides, inside_leg, stretch, style.hem.straight_over)
    legs = shaped(style.leg, finished_hip, below_knee, cut)
    targets = {
        "waist": waist_target(plain, body, style.waist_drop),
        "hip": finished_hip + fullness(plain, style.pleats),
        "inside_leg": inside_leg,
    }
    if style.leg.hem is not None:
        targets["hem"] = style.leg.hem + style.leg.wider
    if style.leg.knee is not None and -inside_leg < block.levels["knee"]:
        targets["knee"] = style.leg.knee
    targets["outside_leg"] = legs.front[0].length
    levels = dict(block.levels) | {"waist": block.levels["waist"] - drop, "hem": legs.front[0].end.imag}
    return Shell(
        _panel(block, "front", top.front.waist, legs, drop),
        _panel(block, "back", top.back.waist, legs, drop),
        levels,
        block.crease,
        targets,
        stretch,
        shares=top.shares,
    )


def _panel(block: Block, name: Literal["front", "back"], waist: Waist, legs: LegSeams, drop: float) -> Panel:
    source = block.front if name == "front" else block.back
    side, hem, inseam = legs.front if name == "front" else legs.back
    crotch: Path = source.crotch
    if drop > 0:
        crotch, _ = crotch.split_at(crotch.length - drop)
    elif drop < 0:
        below, straight = crotch.segments
        crotch = Path((below, Line(straight.controls[0], waist.parts[0].start)))
    return Panel(side, hem, inseam, crotch, waist, source.straight - drop, source.hip_side)


def _check_drop(block: Block, body: Body, drop: float) -> None:
    most = min(
        block.front.straight - SHORTEST_STRAIGHT, block.back.straight - SHORTEST_STRAIGHT, 0.6 * body.waist_to_hip
    )
    if drop > max(0.0, most):
        expected = f"at most {at_most(max(0.0, most))} mm on this body"
        raise DraftError("style.waist_drop", drop, expected, "choose a smaller drop")


def _check_lengths(style: Style, block: Block) -> None:
    least, most = max(0.0, style.waist_drop) + 25, block.levels["waist"] - block.levels["hip"] - 10
    for field in ("front_length", "back_centre_length", "back_side_length"):
        value = getattr(style.darts, field)
        if value is not None and not least <= value <= most:
            raise DraftError(
                f"style.darts.{field}",
                value,
                f"{at_least(least)} to {at_most(most)} mm: the point lies above the hip line",
                "choose a length inside these limits",
            )


def inside_leg_of(style: Style, body: Body, garment: Garment) -> float:
    """Finished inside leg in mm: the asked one, or what the garment usually has."""
    most = body.inside_leg
    wanted = style.leg.inside_leg
    if wanted is None:
        return most - TROUSERS_ABOVE_FLOOR if garment == "trousers" else min(SHORTS_INSIDE_LEG, 0.4 * most)
    if wanted > most:
        raise DraftError(
            "style.leg.inside_leg", wanted, f"at most {at_most(most)} mm, the body's inside leg", "choose a shorter leg"
        )
    return wanted


def _stretch(style: Style, inside_leg: float) -> float:
    most, wanted = STRETCH_SHARE * inside_leg, style.leg.stretch or 0.0
    if wanted > most + HAIR:
        expected = f"at most {at_most(most, 1)} mm (1.5 % of the inseam)"
        raise DraftError("style.leg.stretch", wanted, expected, "stretch it less")
    return wanted
