"""Ease asked for instead of the method's own, and darts no larger than the body has a use for."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from draft.block import Block, DartPlan, PanelBlock, followed
from draft.methods.base import Measures

LARGEST_DART_SHARE = 0.5
"""Darts may take at most this share of a panel's difference between hip and waist; where the two are nearly alike a
dart has nothing to take (common practice, no source; the books' own figures have more to take)."""


def with_ease(block: Block, measures: Measures, waist: float | None, hip: float | None, seams: float = 0.0) -> Block:
    """Block whose whole girths have the asked ease in cloth, each panel's side seam moved by a quarter.

    Parameters
    ----------
    block : Block
        As the method drafts it.
    measures : Measures
        What it was drafted from.
    waist, hip : float or None
        Ease in mm; None: the method's own, less the seam allowance it draws inside the pattern.
    seams : float
        That allowance, mm of the whole girth.
    """
    own = block.ease or own_ease(block, measures)
    wanted = {
        "waist": own["waist"] - seams if waist is None else waist,
        "hip": own["hip"] - seams if hip is None else hip,
    }
    more_waist, more_hip = ((wanted[name] - own[name]) / 4 for name in ("waist", "hip"))
    front, back = (_moved(panel, more_waist, more_hip) for panel in (block.front, block.back))
    return replace(block, front=front, back=back, ease=wanted)


def own_ease(block: Block, measures: Measures) -> dict[str, float]:
    """What a drawing adds to the whole girths of the body in cloth, darts closed."""
    panels = (block.front, block.back)
    waist = sum(abs(p.waist_side - p.waist_centre) - sum(dart.intake for dart in p.darts) for p in panels)
    hip = sum((p.hip_centre - p.hip_side).real for p in panels)
    return {"waist": 2 * waist - measures.waist, "hip": 2 * hip - measures.hip}


def _moved(panel: PanelBlock, more_waist: float, more_hip: float) -> PanelBlock:
    run = abs(panel.waist_side - panel.waist_centre)
    intake: float = sum(plan.intake for plan in panel.darts)
    net = run - intake + more_waist
    hip_side = panel.hip_side - more_hip
    useful = np.maximum(LARGEST_DART_SHARE * (panel.hip_centre.real - hip_side.real - net), 0.0)
    kept = np.minimum(1.0, useful / intake) if panel.darts else 0.0 * run
    side = side_of_waist(panel.waist_centre, panel.waist_side, net + kept * intake)
    # Several darts keep their shares of the waist line; a single one keeps its place.
    longer = (side - panel.waist_centre) / (panel.waist_side - panel.waist_centre) if len(panel.darts) > 1 else 1.0
    return replace(
        panel,
        hip_side=hip_side,
        waist_side=side,
        points=followed(panel.points, ((panel.hip_side, hip_side), (panel.waist_side, side))),
        darts=tuple(_along(plan, (plan.mouth - panel.waist_centre) * (longer - 1), kept) for plan in panel.darts),
    )


def _along(plan: DartPlan, move: complex, kept: float) -> DartPlan:
    """Dart moved along the waist line, with the share of its intake that is kept."""
    return DartPlan(plan.mouth + move, plan.point + move, plan.intake * kept)


def side_of_waist(centre: complex, side: complex, run: float) -> complex:
    """Side end of the waist at the height it has, `run` mm from the centre."""
    fall = centre.imag - side.imag
    return centre.real - np.sqrt(run**2 - fall**2) + 1j * side.imag  # type: ignore[no-any-return]
