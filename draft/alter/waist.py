"""Alterations of the level and tilt of the waist."""

from __future__ import annotations

from dataclasses import replace

from draft.alter.base import Argument, alteration, by
from draft.alter.moves import reshaped_panel, shifted, waist_side_out
from draft.block import Block
from draft.style import Style

BELOW = ("hip", "knee", "inside_leg")
ABDOMEN_LEAN, ABDOMEN_HEIGHT = 0.3, 220.0  # the centre front moves out by this per mm that it rises (common practice)


@alteration(
    cures="the band wants to sit higher (negative: lower) all round",
    moves="the waist seam, along centre and side seams; it is cut to the body's girth at the new level",
    arguments=by(-90, 90),
    changes={"front_crotch": 1.0, "back_crotch": 1.0},
    keeps=("hip", "knee", "inside_leg"),
)
def raise_waist(style: Style, by: float) -> Style:
    """Waist seam higher all round."""
    return replace(style, waist_drop=style.waist_drop - by)


@alteration(
    cures="the centre front is pulled down: the front rise is short (negative: the fly bubbles)",
    moves="the waist at the centre front, fading to the side",
    arguments=by(-40, 40),
    changes={"front_crotch": 1.0},
    keeps=("waist", *BELOW, "back_crotch"),
)
def raise_front_waist(block: Block, by: float) -> Block:
    """Centre front higher."""
    return reshaped_panel(block, "front", by)


@alteration(
    cures="the back slides down in sitting: the back rise is short",
    moves="the waist at the centre back, fading to the side",
    arguments=by(-40, 40),
    changes={"back_crotch": 1.0},
    keeps=("waist", *BELOW, "front_crotch"),
)
def raise_back_waist(block: Block, by: float) -> Block:
    """Centre back higher."""
    return reshaped_panel(block, "back", by)


@alteration(
    cures="a horizontal fold just under the back of the band: a hollow back",
    moves="the waist at the centre back down, fading to the side",
    arguments=by(0, 40),
    changes={"back_crotch": -1.0},
    keeps=("waist", *BELOW, "front_crotch"),
)
def sway_back(block: Block, by: float) -> Block:
    """Fold of `by` mm taken out below the back of the band."""
    return reshaped_panel(block, "back", -by)


@alteration(
    cures="the band dips or is pulled down at the sides (negative: it stands up there)",
    moves="the waist at the side seams, fading to the centres",
    arguments=by(-30, 30),
    changes={"outside_leg": 1.0},
    keeps=("waist", *BELOW, "front_crotch", "back_crotch", "crotch"),
    exact="outside_leg",
)
def raise_sides(block: Block, by: float) -> Block:
    """Waist higher at the sides."""
    return _sides(block, by)


@alteration(
    cures="diagonal folds from one hip, the band tilts: that hip stands higher",
    moves="the waist at the side seam of one side, fading to the centres; left and right pieces then differ",
    arguments=(Argument("side", choices=("left", "right")), Argument("by", 0, 30)),
    keeps=("waist", *BELOW, "front_crotch", "back_crotch", "crotch"),
    exact="outside_leg",
)
def high_hip(block: Block, side: str, by: float) -> Block:
    """Side seam of one side longer by `by` above the hip."""
    del side  # the draft applies it to the block of that side only
    return _sides(block, by)


@alteration(
    cures="strain below the front of the band, which dips at the centre: a full abdomen",
    moves="the centre front up and out at the waist, as if opened from the centre and hinged at the side",
    arguments=by(0, 40),
    changes={"front_crotch": 1.0, "waist": 0.5},
    keeps=("hip", "knee", "back_crotch", "inside_leg"),
)
def full_abdomen(block: Block, by: float) -> Block:
    """Front longer by `by` at the centre, and both fronts together wider by half of it at the waist."""
    return _abdomen(block, by)


@alteration(
    cures="a slack fold below the front of the band: a flat abdomen",
    moves="the centre front down and in at the waist",
    arguments=by(0, 30),
    changes={"front_crotch": -1.0, "waist": -0.5},
    keeps=("hip", "knee", "back_crotch", "inside_leg"),
)
def flat_abdomen(block: Block, by: float) -> Block:
    """Front shorter by `by` at the centre, and both fronts together narrower by half of it at the waist."""
    return _abdomen(block, -by)


def _sides(block: Block, by: float) -> Block:
    """Block whose waist ends `by` mm higher at the sides, as long as before."""
    front, back = (
        waist_side_out(shifted(panel, 1j * by, "waist_side"), 0.0, abs(panel.waist_side - panel.waist_centre))
        for panel in (block.front, block.back)
    )
    return replace(block, front=front, back=back)


def _abdomen(block: Block, by: float) -> Block:
    made = reshaped_panel(block, "front", by, angle=-ABDOMEN_LEAN * by / ABDOMEN_HEIGHT)
    wider = replace(made, front=waist_side_out(made.front, by / 4))
    return replace(wider, ease={**wider.ease, "waist": wider.ease["waist"] + by / 2})
