"""Moves that several alterations share: of a panel's waist, of its crotch seam to a length, of the leg's points."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Literal

from draft.block import Block, DartPlan, PanelBlock, mapped
from draft.fitting.change import reshaped
from draft.fitting.crotch import CrotchShape
from draft.methods.ease import side_of_waist
from draft.shape.waist import USUAL_INTAKE

Name = Literal["front", "back"]
LENGTH_TOL_MM = 1e-4
SIDE = ("waist_side", "hip_side", "knee_side", "hem_side")


def panel_of(block: Block, name: str) -> PanelBlock:
    """Front or back."""
    return block.front if name == "front" else block.back


def with_panel(block: Block, name: str, panel: PanelBlock) -> Block:
    """Block with another front or back."""
    return replace(block, front=panel) if name == "front" else replace(block, back=panel)


def more_ease(block: Block, **mm: float) -> Block:
    """Block with more ease at whole girths."""
    return replace(block, ease={name: value + mm.get(name, 0.0) for name, value in block.ease.items()})


def reshaped_panel(
    block: Block, name: Name, by: float, *, fork: float = 0.0, angle: float = 0.0, fullness: float = 0.0
) -> Block:
    """Block with one crotch seam `by` mm longer; see :func:`draft.fitting.change.reshaped`."""
    y_hip = block.levels["hip"]
    return with_panel(
        block, name, reshaped(panel_of(block, name), y_hip, by, fork=fork, angle=angle, fullness=fullness)
    )


def without_lift(block: Block, name: Name, by: float, shape: Callable[[float], CrotchShape]) -> float:
    """Amount at which a shape of the crotch seam is `by` mm longer than it is now (secant method)."""
    wanted = panel_of(block, name).crotch.length + by
    one, two = 0.0, by
    miss_one, miss_two = -by, shape(two).path.length - wanted
    for _ in range(30):
        if abs(miss_two) < LENGTH_TOL_MM or miss_two == miss_one:
            break
        one, two, miss_one = two, two - miss_two * (two - one) / (miss_two - miss_one), miss_two
        miss_two = shape(two).path.length - wanted
    return float(two)


def waist_side_out(panel: PanelBlock, by: float, before: float | None = None) -> PanelBlock:
    """Panel whose waist reaches `by` mm further at the side than before, at the height it has there."""
    run = (abs(panel.waist_side - panel.waist_centre) if before is None else before) + by
    return replace(panel, waist_side=side_of_waist(panel.waist_centre, panel.waist_side, run))


def shifted(panel: PanelBlock, mm: complex, *names: str) -> PanelBlock:
    """Panel with some of its points moved."""
    return replace(panel, **{name: getattr(panel, name) + mm for name in names})


def slid(block: Block, mm: float) -> Block:
    """Whole block moved across, so that the crease is in the middle of the leg again."""
    return replace(mapped(block, lambda number: number, lambda p: p + mm), levels=block.levels, crease=block.crease)


def sewn_darts(panel: PanelBlock, name: Name) -> tuple[DartPlan, ...]:
    """Darts with the intakes that are sewn: what a method plans beyond the usual goes to the side seam."""
    if any(plan.fixed for plan in panel.darts):
        return panel.darts
    return tuple(replace(plan, intake=min(plan.intake, USUAL_INTAKE[name]), fixed=True) for plan in panel.darts)
