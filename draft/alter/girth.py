"""Alterations of girth and of its share between the seams."""

from __future__ import annotations

from dataclasses import replace

from draft.alter.base import alteration, by
from draft.alter.moves import SIDE, more_ease, shifted, slid, waist_side_out
from draft.block import Block
from draft.fitting.change import leaned

ABOVE_LEG = ("waist", "hip", "front_crotch", "back_crotch", "crotch", "inside_leg")
WHOLE_LEG = ("thigh", "knee", "hem")


@alteration(
    cures="the band is too tight or too loose, the hip is right",
    moves="the waist, at all seams alike, fading to the hip",
    arguments=by(-120, 120),
    changes={"waist": 1.0},
    keeps=("hip", "knee", "front_crotch", "back_crotch", "crotch", "inside_leg"),
)
def waist_ease(block: Block, by: float) -> Block:
    """More of the waist's whole girth."""
    return more_ease(block, waist=by)


@alteration(
    cures="lines across the hip, cloth pushed up under the band; or looseness at the hip only",
    moves="all four side edges at the hip, a quarter each, fading to waist and knee",
    arguments=by(-80, 120),
    changes={"hip": 1.0},
    keeps=("waist", "knee", "front_crotch", "back_crotch", "crotch", "inside_leg"),
)
def hip_ease(block: Block, by: float) -> Block:
    """More of the hip's whole girth."""
    front, back = (shifted(panel, -by / 4, "hip_side") for panel in (block.front, block.back))
    return more_ease(replace(block, front=front, back=back), hip=by)


@alteration(
    cures="too tight or too loose all over: strain across hip and thigh, or vertical folds all round",
    moves="every panel along its crease, from waist to hem, a quarter each",
    arguments=by(-80, 120),
    changes={"waist": 1.0, "hip": 1.0, "thigh": 0.5, "knee": 0.5},
    keeps=("front_crotch", "back_crotch", "crotch", "inside_leg"),
)
def all_girths(block: Block, by: float) -> Block:
    """More of the waist's and hip's whole girth, half as much of the leg's."""
    front, back = (shifted(panel, -by / 4, *SIDE) for panel in (block.front, block.back))
    return slid(more_ease(replace(block, front=front, back=back), waist=by, hip=by), by / 8)


@alteration(
    cures="too tight (negative: too loose) at the sides from the band over the hip; centre and legs are right",
    moves="the side seams from waist to hip, a quarter on each edge, fading to the knee",
    arguments=by(-60, 100),
    changes={"waist": 1.0, "hip": 1.0},
    keeps=("knee", "front_crotch", "back_crotch", "crotch", "inside_leg"),
)
def let_out_side_seams(block: Block, by: float) -> Block:
    """More of the whole girth at the side seams only."""
    front, back = (shifted(panel, -by / 4, "waist_side", "hip_side") for panel in (block.front, block.back))
    return more_ease(replace(block, front=front, back=back), waist=by, hip=by)


@alteration(
    cures="gapes (negative) or strains at the centre back of the band only",
    moves="the centre back seam at the waist, half on each edge, fading to the hip",
    arguments=by(-40, 40),
    changes={"waist": 1.0},
    keeps=("hip", "knee", "front_crotch", "back_crotch", "crotch", "inside_leg"),
)
def let_out_centre_back(block: Block, by: float) -> Block:
    """More of the waist's whole girth at the centre back seam only."""
    made = leaned(block, back=-by / 2)
    return more_ease(replace(made, back=waist_side_out(made.back, by / 2)), waist=by)


@alteration(
    cures="too wide at the side of the waist and too tight at the centre front",
    moves="the centre front out and the side of the front in at the waist, fading to the hip",
    arguments=by(-25, 25),
    keeps=ABOVE_LEG,
)
def side_to_centre_front(block: Block, by: float) -> Block:
    """Waist length moved from the side to the centre of either front."""
    return leaned(block, front=-by)


@alteration(
    cures="too wide at the side of the waist and too tight at the centre back; negative: gapes at the centre back",
    moves="the centre back out and the side of the back in at the waist, fading to the hip",
    arguments=by(-40, 40),
    keeps=ABOVE_LEG,
)
def side_to_centre_back(block: Block, by: float) -> Block:
    """Waist length moved from the side to the centre of either back."""
    return leaned(block, back=-by)


@alteration(
    cures="the side seam lies too far forward (negative: too far back)",
    moves="the side edge of the front out, that of the back in, from waist to hem",
    arguments=by(-40, 40),
    keeps=(*ABOVE_LEG, "knee"),
)
def swing_side_seam(block: Block, by: float) -> Block:
    """Cloth given from the back to the front at the side seam, so that the seam lies as much further back."""
    return replace(block, front=shifted(block.front, -by, *SIDE), back=shifted(block.back, by, *SIDE))
