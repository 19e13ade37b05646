"""Change: the seven numbers by which a block may be moved towards a body, and the block after the change.

What the change does not name follows: the straight part keeps its tangent curve, the waist keeps its length, the hip
its width (the side seam moves with the crotch seam), darts keep their place on the waist line and their points their
place on the body.
"""

from __future__ import annotations

from dataclasses import dataclass, fields, replace

import numpy as np

from draft.block import Block, DartPlan, PanelBlock, at_height, followed
from draft.fitting.crotch import CrotchShape
from draft.geometry.arrays import Floats
from draft.geometry.points import unit
from draft.methods.ease import side_of_waist
from draft.table import Table
from draft.units import fmt

TURNED_SHARE = 0.75
DART_ABOVE_HIP = 15.0  # the point of a dart stays this far above the hip line (common practice, no source)
SHORTEST_DART = 30.0  # or, where the waist dips that low, the dart is this long


@dataclass(frozen=True, eq=False)
class Change:
    """How far a block is moved, in mm; fullness as a share of the way to the corner.

    Parameters
    ----------
    front_fork, back_fork : float
        The fork point, away from the centre line.
    front_lift, back_rise : float
        The waist at the centre, up along the centre seam (front: a dip when negative).
    front_fullness, back_fullness : float
        What the handles of the crotch curve gain.
    seat_slant : float
        The back seam above the curve, leaning towards the side; told at the level of the waist.
    """

    front_fork: float = 0.0
    front_lift: float = 0.0
    front_fullness: float = 0.0
    back_fork: float = 0.0
    back_rise: float = 0.0
    back_fullness: float = 0.0
    seat_slant: float = 0.0

    @classmethod
    def of(cls, values: Floats) -> Change:
        """Change from its numbers in the order of the fields, on the last axis."""
        return cls(*np.moveaxis(values, -1, 0))

    @property
    def numbers(self) -> Floats:
        """The seven numbers on a new last axis."""
        return np.stack([np.asarray(getattr(self, f.name), dtype=float) for f in fields(self)], axis=-1)

    def __str__(self) -> str:
        decimals = {"front_fullness": 3, "back_fullness": 3}
        rows = tuple(
            (f.name.replace("_", " "), fmt(float(getattr(self, f.name)), decimals.get(f.name, 1))) for f in fields(self)
        )
        return str(Table("Change of the block (mm; fullness as a share)", ("what", "by"), rows))


NAMES = tuple(f.name for f in fields(Change))


def raised(block: Block, rise: float) -> Block:
    """Block whose whole waist line lies `rise` mm higher: the centre slides along its seam, girths stay."""

    def panel(source: PanelBlock) -> PanelBlock:
        shape = CrotchShape.of(source)
        centre = source.waist_centre + (shape.lean + 1j) * rise
        return _rebuilt(source, replace(shape, waist_centre=centre), source.waist_side + 1j * rise, block.levels["hip"])

    levels = dict(block.levels) | {"waist": block.levels["waist"] + rise}
    return replace(block, front=panel(block.front), back=panel(block.back), levels=levels)


def spread(block: Block, by: float) -> Block:
    """Block that is longer between hip line and crotch line; each centre seam gains `by` mm, the sides rise as much."""
    hip = block.levels["hip"] + by

    def panel(source: PanelBlock) -> PanelBlock:
        names = ("waist_centre", "waist_side", "hip_side")
        higher = replace(source, **{name: getattr(source, name) + 1j * by for name in names})
        darts = tuple(replace(plan, mouth=plan.mouth + 1j * by, point=plan.point + 1j * by) for plan in source.darts)
        shape = CrotchShape.of(source).changed(0.0, by, 0.0, 0.0)
        return _changed(replace(higher, darts=darts), hip, shape)

    levels = dict(block.levels) | {name: block.levels[name] + by for name in ("waist", "hip")}
    return replace(block, front=panel(block.front), back=panel(block.back), levels=levels)


def reshaped(panel: PanelBlock, y_hip: float, by: float, *, fork: float, angle: float, fullness: float) -> PanelBlock:
    """Panel whose crotch seam is `by` mm longer.

    Parameters
    ----------
    panel : PanelBlock
    y_hip : float
        Height of the hip line.
    by, fork : float
        How much longer the seam becomes, and how far its fork moves out, mm; what fork, angle and fullness do not give
        of the length is given at the waist.
    angle : float
        Turn of the straight part towards the side, radians.
    fullness : float
        What the handles of the curve gain.
    """
    old = CrotchShape.of(panel)
    new = old.changed(fork, 0.0, 0.0, fullness).turned(angle)
    lift = by - (new.path.length - old.path.length)
    return _changed(panel, y_hip, new.changed(0.0, lift, 0.0, 0.0))


def leaned(block: Block, *, front: float = 0.0, back: float = 0.0) -> Block:
    """Block whose centre seams lean further towards the side, by mm at the waist; their lengths and the hip stay."""

    def panel(source: PanelBlock, mm: float) -> PanelBlock:
        angle = mm / (block.levels["waist"] - CrotchShape.of(source).top.imag)
        return reshaped(source, block.levels["hip"], 0.0, fork=0.0, angle=angle, fullness=0.0)

    return replace(block, front=panel(block.front, front), back=panel(block.back, back))


def changed(block: Block, change: Change) -> Block:
    """Block after a change."""
    c, hip = change, block.levels["hip"]
    none = 0.0 * c.front_fork
    front_shape, back_shape = CrotchShape.of(block.front, yielding=True), CrotchShape.of(block.back)
    front_shape = front_shape.changed(c.front_fork, c.front_lift, none, c.front_fullness)
    back_shape = back_shape.changed(c.back_fork, c.back_rise, c.seat_slant, c.back_fullness)
    front, back = _changed(block.front, hip, front_shape), _changed(block.back, hip, back_shape)
    return replace(block, front=front, back=back)


def _changed(panel: PanelBlock, y_hip: float, shape: CrotchShape) -> PanelBlock:
    moved = _rebuilt(panel, shape, panel.waist_side, y_hip)
    centre = at_height(moved.crotch, y_hip)
    hip_side = panel.hip_side + (centre - panel.hip_centre).real
    points = followed(moved.points, ((panel.hip_centre, centre), (panel.hip_side, hip_side)))
    return replace(moved, hip_centre=centre, hip_side=hip_side, points=points)


def _rebuilt(panel: PanelBlock, shape: CrotchShape, side: complex, y_hip: float) -> PanelBlock:
    """Panel with another crotch seam, its waist as long as before, its darts on the new waist line."""
    centre = shape.waist_centre
    run = abs(panel.waist_side - panel.waist_centre)
    waist_side = side_of_waist(centre, side, run)
    turn = (waist_side - centre) / (panel.waist_side - panel.waist_centre)
    return replace(
        panel,
        waist_centre=centre,
        waist_side=waist_side,
        fork=shape.fork,
        crotch=shape.path,
        darts=tuple(_on_line(plan, panel.waist_centre, centre, turn, y_hip) for plan in panel.darts),
        points=followed(
            panel.points,
            ((panel.fork, shape.fork), (panel.waist_centre, centre), (panel.waist_side, waist_side)),
        ),
    )


def _on_line(plan: DartPlan, old: complex, new: complex, turn: complex, y_hip: float) -> DartPlan:
    """Dart that keeps its share of the waist line and ends above the hip line.

    It turns by three quarters of what the line turns: all of it would lean the darts of a much raised seat over the
    centre seam, less would leave a wave in the waist beside them.
    """
    mouth, run = new + (plan.mouth - old) * turn, (plan.point - plan.mouth) * unit(turn) ** TURNED_SHARE
    room = (mouth.imag - y_hip - DART_ABOVE_HIP) / -unit(run).imag
    shorter = np.minimum(1.0, np.maximum(room, np.minimum(SHORTEST_DART, abs(run))) / abs(run))
    return replace(plan, mouth=mouth, point=mouth + run * shorter)
