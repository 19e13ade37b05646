"""Alterations of crotch depth, forks, curves and seat."""

from __future__ import annotations

from draft.alter.base import alteration, by
from draft.alter.moves import Name, panel_of, reshaped_panel, without_lift
from draft.block import Block
from draft.fitting.change import spread
from draft.fitting.crotch import CrotchShape

FRONT_STAYS = ("waist", "hip", "knee", "back_crotch", "inside_leg")
BACK_STAYS = ("waist", "hip", "knee", "front_crotch", "inside_leg")
# A back opened by 1 at the centre and hinged at the side leans by its height over its width, about 0.8 (computed); a
# third of it more fork keeps the seat round (common practice, no source).
SEAT_LEAN, SEAT_FORK, SEAT_HEIGHT = 0.8, 0.3, 250.0
FULLNESS_PER_MM = 0.01  # about what a crotch seam gains for 1 mm: where the search begins


@alteration(
    cures="the crotch hangs low (negative) or binds upward (positive)",
    moves="everything from the hip line up, on all panels",
    arguments=by(-60, 60),
    changes={"front_crotch": 1.0, "back_crotch": 1.0},
    keeps=("waist", "hip", "knee", "inside_leg"),
)
def crotch_depth(block: Block, by: float) -> Block:
    """Longer between hip line and crotch line, by `by` on each centre seam."""
    return spread(block, by)


@alteration(
    cures="lines rise from the front fork towards the hip (negative: they fall away from it)",
    moves="the front fork away from the centre, fading down the inseam",
    arguments=by(-25, 40),
    changes={"front_crotch": 1.0},
    keeps=FRONT_STAYS,
)
def extend_front_fork(block: Block, by: float) -> Block:
    """Front crotch seam longer by a wider fork."""
    return _by_fork(block, "front", by)


@alteration(
    cures="the seat seam cuts in, the inseam pulls to the back: the back fork is small",
    moves="the back fork away from the centre, fading down the inseam",
    arguments=by(-40, 50),
    changes={"back_crotch": 1.0},
    keeps=BACK_STAYS,
)
def extend_back_fork(block: Block, by: float) -> Block:
    """Back crotch seam longer by a wider fork."""
    return _by_fork(block, "back", by)


@alteration(
    cures="vertical pull lines at the front fork: the curve is too flat (negative: it pouches)",
    moves="the front crotch curve deeper into its corner; its ends stay",
    arguments=by(-10, 15),
    changes={"front_crotch": 1.0},
    keeps=FRONT_STAYS,
)
def scoop_front(block: Block, by: float) -> Block:
    """Front crotch seam longer by a deeper curve."""
    return _by_fullness(block, "front", by)


@alteration(
    cures="folds below the seat, the seam pulled up at its bottom: a low seat (negative: a loose pouch)",
    moves="the back crotch curve deeper into its corner; its ends stay",
    arguments=by(-15, 25),
    changes={"back_crotch": 1.0},
    keeps=BACK_STAYS,
)
def scoop_back(block: Block, by: float) -> Block:
    """Back crotch seam longer by a deeper curve."""
    return _by_fullness(block, "back", by)


@alteration(
    cures="lines from the seat to the front fork or the side, the band dips behind: a full seat",
    moves="the back opened at the centre and hinged at the side, its fork wider",
    arguments=by(0, 50),
    changes={"back_crotch": 1.0},
    keeps=BACK_STAYS,
)
def full_seat(block: Block, by: float) -> Block:
    """Back crotch seam longer by `by` over a full seat."""
    return _seat(block, by)


@alteration(
    cures="slack folds under and across the seat, vertical folds in the back leg: a flat seat",
    moves="the back folded out at the centre and hinged at the side, its fork narrower",
    arguments=by(0, 40),
    changes={"back_crotch": -1.0},
    keeps=BACK_STAYS,
)
def flat_seat(block: Block, by: float) -> Block:
    """Back crotch seam shorter by `by` over a flat seat."""
    return _seat(block, -by)


def _by_fork(block: Block, name: Name, by: float) -> Block:
    shape = CrotchShape.of(panel_of(block, name))
    fork = without_lift(block, name, by, lambda mm: shape.changed(mm, 0.0, 0.0, 0.0))
    return reshaped_panel(block, name, by, fork=fork)


def _by_fullness(block: Block, name: Name, by: float) -> Block:
    shape = CrotchShape.of(panel_of(block, name))
    share = without_lift(block, name, by, lambda mm: shape.changed(0.0, 0.0, 0.0, mm * FULLNESS_PER_MM))
    return reshaped_panel(block, name, by, fullness=share * FULLNESS_PER_MM)


def _seat(block: Block, by: float) -> Block:
    return reshaped_panel(block, "back", by, fork=SEAT_FORK * by, angle=SEAT_LEAN * by / SEAT_HEIGHT)
