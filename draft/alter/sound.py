"""What a block must still be after an alteration. The limits are common practice, no source."""

from __future__ import annotations

from draft.block import Block, PanelBlock
from draft.fitting.crotch import CrotchShape
from draft.geometry.points import dot, unit

LEAST_STRAIGHT = 30.0  # of a centre seam
HANDLES = (0.28, 0.93)  # reach of the crotch curve's handles, shares of the way to the corner
LEAST_RADIUS = 14.0  # of the crotch curve at the fork
LEAST_FORK = {"front": 15.0, "back": 30.0}
LEAN = {"front": (-0.25, 0.30), "back": (-0.05, 0.60)}  # of a centre seam, mm per mm towards the side
STEEPEST_WAIST = 0.5
LEAST_WIDTH = {"hip": 60.0, "knee": 50.0, "hem": 45.0}
LEAST_HEIGHT, LEAST_BELOW_HIP = 40.0, 20.0  # from hip to waist, and from crotch to hip
BESIDE_DART = 8.0
ABOVE_HIP = 5.0


def unsound(block: Block) -> set[str]:
    """Faults of a block in words; empty when it is sound."""
    found = set()
    for name, panel in (("front", block.front), ("back", block.back)):
        found |= {f"the {name}'s {fault}" for fault in _faults(name, panel)}
    if block.levels["waist"] - block.levels["hip"] < LEAST_HEIGHT or block.levels["hip"] < LEAST_BELOW_HIP:
        found.add("waist, hip and crotch lie too near to each other")
    return found


def _faults(name: str, panel: PanelBlock) -> set[str]:
    shape = CrotchShape.of(panel)
    low, high = LEAN[name]
    run = panel.waist_centre - panel.waist_side
    widths = {
        "hip": panel.hip_centre - panel.hip_side,
        "knee": panel.knee_inseam - panel.knee_side,
        "hem": panel.hem_inseam - panel.hem_side,
    }
    tests = {
        "centre seam is too short above its curve": shape.straight >= LEAST_STRAIGHT,
        "crotch curve is too flat or too sharp": min(shape.near, shape.far) >= HANDLES[0]
        and max(shape.near, shape.far) <= HANDLES[1],
        "crotch curve is too sharp at the fork": shape.radius_at_fork >= LEAST_RADIUS,
        "fork is too narrow": (shape.fork - shape.corner).real >= LEAST_FORK[name],
        "centre seam leans too far": low <= -shape.lean <= high,
        "waist is too steep": abs(run.imag) <= STEEPEST_WAIST * abs(run),
        "darts leave the waist": all(
            BESIDE_DART + dart.intake / 2 <= dot(dart.mouth - panel.waist_centre, -unit(run)) <= abs(run) - BESIDE_DART
            for dart in panel.darts
        ),
        "darts reach the hip line": all(dart.point.imag >= panel.hip_side.imag + ABOVE_HIP for dart in panel.darts),
    }
    tests |= {f"{at} is too narrow": across.real >= LEAST_WIDTH[at] for at, across in widths.items()}
    return {fault for fault, kept in tests.items() if not kept}
