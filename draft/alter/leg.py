"""Alterations of the leg."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from draft.alter.base import Spec, alteration, by
from draft.alter.moves import shifted
from draft.block import Block, PanelBlock
from draft.style import Style

ABOVE = ("waist", "hip", "front_crotch", "back_crotch", "crotch", "inside_leg")
KNEE, HEM = ("knee_side", "knee_inseam"), ("hem_side", "hem_inseam")


@alteration(
    cures="strain across the thigh, the legs ride up (negative: vertical slack at a slim thigh)",
    moves="the side seams of front and back outwards at the thigh, fading to hip and knee",
    arguments=by(-60, 80),
    changes={"thigh": 1.0},
    keeps=ABOVE,
    exact="thigh",
)
def fuller_thigh(block: Block, by: float) -> Block:
    """Thigh wider: the side seams are less hollow below the hip."""
    front, back = (replace(panel, side_hollow=panel.side_hollow - by / 2) for panel in (block.front, block.back))
    return replace(block, front=front, back=back)


@alteration(
    cures="lines aim at the inner knee, slack outside it: knock knees",
    moves="both knees inwards, inseam and side alike; hem and hip stay",
    arguments=by(0, 40),
    keeps=(*ABOVE, "knee"),
    past_knee=True,
)
def knock_knees(block: Block, by: float) -> Block:
    """Knee of every panel moved inwards."""
    return _both(block, lambda panel: shifted(panel, by, *KNEE))


@alteration(
    cures="folds from the outer knee to the inner hem, the side seam hugs the leg: bow legs",
    moves="both knees outwards, inseam and side alike; hem and hip stay",
    arguments=by(0, 40),
    keeps=(*ABOVE, "knee"),
    past_knee=True,
)
def bow_legs(block: Block, by: float) -> Block:
    """Knee of every panel moved outwards."""
    return _both(block, lambda panel: shifted(panel, -by, *KNEE))


@alteration(
    cures="creases from the top of the inseam down, the bottoms cling inside: the legs slope out (negative: in)",
    moves="the whole leg below the fork inwards at the hem, in proportion above",
    arguments=by(-50, 50),
    keeps=(*ABOVE, "knee"),
)
def leg_slope(block: Block, by: float) -> Block:
    """Hem of every panel moved inwards by `by` at the length of full trousers, the knee in proportion."""

    def sloped(panel: PanelBlock) -> PanelBlock:
        at_knee = by * panel.knee_side.imag / panel.hem_side.imag
        return shifted(shifted(panel, by, *HEM), at_knee, *KNEE)

    return _both(block, sloped)


@alteration(
    cures="the knee strains in bending (negative: it flaps)",
    moves="all four edges at the knee, a quarter each, fading to hip and hem",
    arguments=by(-80, 150),
    changes={"knee": 1.0},
    keeps=ABOVE,
    past_knee=True,
)
def widen_knee(block: Block, by: float) -> Block:
    """Wider knee."""
    return _both(block, lambda panel: shifted(shifted(panel, -by / 4, "knee_side"), by / 4, "knee_inseam"))


@alteration(
    cures="folds behind the knee, the back catches on the calf, the hem rides up: a prominent calf",
    moves="both edges of the back outwards from the knee to the hem",
    arguments=by(0, 60),
    changes={"hem": 1.0},
    keeps=(*ABOVE, "knee"),
    exact="hem",
    past_knee=True,
)
def prominent_calf(block: Block, by: float) -> Block:
    """Back leg wider at the hem."""
    back = shifted(shifted(block.back, -by / 2, "hem_side"), by / 2, "hem_inseam")
    return replace(block, back=back)


@alteration(
    cures="the hem is too narrow (negative: too wide)",
    moves="all four edges at the hem, a quarter each, fading upwards",
    arguments=by(-200, 300),
    changes={"hem": 1.0},
    keeps=ABOVE,
)
def widen_hem(style: Style, by: float) -> Style:
    """Wider bottom edge."""
    return replace(style, leg=replace(style.leg, wider=style.leg.wider + by))


@alteration(
    cures="the leg is too short (negative: too long); its line runs on as it was",
    moves="the hem along the seams",
    arguments=by(-400, 400),
    changes={"inside_leg": 1.0},
    keeps=("waist", "hip", "front_crotch", "back_crotch", "crotch"),
)
def lengthen_at_hem(style: Style, by: float) -> Style:
    """Hem lower; the style's inside leg has to be a number (the draft sees to that)."""
    return replace(style, leg=replace(style.leg, inside_leg=(style.leg.inside_leg or 0.0) + by))


def _lengthened(block: Block, by: float) -> Block:
    def lower(panel: PanelBlock) -> PanelBlock:
        return shifted(shifted(panel, -0.5j * by, *KNEE), -1j * by, *HEM)

    levels = dict(block.levels) | {"knee": block.levels["knee"] - by / 2, "hem": block.levels["hem"] - by}
    return replace(_both(block, lower), levels=levels)


lengthen_at_knee = Spec(
    name="lengthen_at_knee",
    cures="the leg is too short (negative: too long), and so is the way to the knee",
    moves="the knee by half and the hem by all of it; widths stay where they were along the leg",
    arguments=by(-80, 80),
    changes={"inside_leg": 1.0},
    keeps=("waist", "hip", "front_crotch", "back_crotch", "crotch", "knee"),
    on_block=_lengthened,
    on_style=lengthen_at_hem.on_style,
)


def _both(block: Block, change: Callable[[PanelBlock], PanelBlock]) -> Block:
    front, back = (change(panel) for panel in (block.front, block.back))
    return replace(block, front=front, back=back)
