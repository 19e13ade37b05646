"""Pleats of the front: cloth spread in along lines from the waist, folded there and released below.

The front is parted along a line from the waist to the knee line and opened at the waist like a wedge, hinged at the
knee, so the leg keeps its width from there down. The fold is a dart to that hinge which is sewn only near the waist.

Depths of 35 to 50 mm for a first pleat and 25 to 45 for a second are read in a tailoring handbook's example (1 1/2 to 2
and 1 to 1 3/4 in); places and what is sewn down: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

from draft.block import Block, DartPlan, PanelBlock
from draft.geometry.points import unit
from draft.style import Pleats

SECOND_SHARE = 0.5  # a second pleat lies this far from the first towards the side


def pleated(block: Block, pleats: Pleats | None) -> Block:
    """Block whose front is spread for its pleats; the first lies on the crease, in place of the method's dart."""
    if pleats is None:
        return block
    front = block.front
    hinge = block.levels["knee"]
    first = block.crease + 0j
    places = [first] + [first + SECOND_SHARE * (front.waist_side.real - first.real)] * (pleats.count - 1)
    depths = [pleats.depth, pleats.second][: pleats.count]
    plans, opened = [], 0.0
    along = unit(front.waist_side - front.waist_centre)
    for place, depth in zip(places, depths, strict=True):
        on_line = front.waist_centre + along * ((place.real - front.waist_centre.real) / along.real)
        mouth = on_line + along * (opened + depth / 2)
        plans.append(DartPlan(mouth, place.real + 1j * hinge, depth, pleats.direction))
        opened += depth
    return replace(block, front=_spread(front, hinge, opened, tuple(plans)))


def fullness(block: Block, pleats: Pleats | None) -> float:
    """What the pleats add to the whole girth of the hip, mm."""
    if pleats is None:
        return 0.0
    opened = sum([pleats.depth, pleats.second][: pleats.count])
    return 2 * opened * _share(block.levels["hip"], block.levels["waist"], block.levels["knee"])


def _share(y: float, top: float, hinge: float) -> float:
    return (y - hinge) / (top - hinge)


def _spread(front: PanelBlock, hinge: float, opened: float, plans: tuple[DartPlan, ...]) -> PanelBlock:
    along = unit(front.waist_side - front.waist_centre)
    at_hip = opened * _share(front.hip_side.imag, front.waist_side.imag, hinge)
    return replace(front, waist_side=front.waist_side + along * opened, hip_side=front.hip_side - at_hip, darts=plans)
