"""The lengths of a block after a change, with their slopes: what the least change is solved with."""

from __future__ import annotations

from dataclasses import dataclass, fields, replace
from typing import Any, TypeVar

import numpy as np
from numpy.typing import NDArray

from draft.block import Block
from draft.fitting.change import NAMES
from draft.fitting.crotch import CrotchShape
from draft.fitting.thigh import ThighOf
from draft.geometry.arrays import Floats, Real

_FRONT = {"fork": "front_fork", "lift": "front_lift", "fullness": "front_fullness"}
_BACK = {"fork": "back_fork", "lift": "back_rise", "fullness": "back_fullness", "slant": "seat_slant"}
T = TypeVar("T")
Rows = NDArray[np.intp]


@dataclass(frozen=True, eq=False)
class Side:
    """Front or back: its crotch seam, the height at which a slant is told, the hip on the seam, the thigh."""

    shape: CrotchShape
    height: Real
    hip_x: Real
    thigh: ThighOf


@dataclass(frozen=True, eq=False)
class Lengths:
    """Front crotch, back crotch, thigh girth and width of both forks, for many blocks at once."""

    front: Side
    back: Side
    y_hip: Real

    @classmethod
    def of(cls, block: Block) -> Lengths:
        """Lengths of a block whose numbers are arrays of one axis."""
        y_hip, sides = block.levels["hip"], []
        for panel in (block.front, block.back):
            shape = CrotchShape.of(panel, yielding=panel is block.front)
            height = (shape.waist_centre - shape.top).imag
            hip_x, _ = shape.at_height(y_hip, height)
            sides.append(Side(shape, height, hip_x, ThighOf.of(panel, y_hip)))
        return cls(sides[0], sides[1], y_hip)

    def rows(self, chosen: Rows) -> Lengths:
        """Lengths of some of the blocks."""
        return _rows(self, chosen)

    def __call__(self, change: Floats) -> tuple[Floats, Floats]:
        """Lengths (rows, 4) after a change (rows, 7), and their slopes (rows, 4, 7)."""
        values = np.zeros((*change.shape[:-1], 4))
        slopes = np.zeros((*change.shape[:-1], 4, len(NAMES)))
        for row, (side, names) in enumerate(((self.front, _FRONT), (self.back, _BACK))):
            by = {part: change[..., NAMES.index(name)] for part, name in names.items()}
            moved = side.shape.changed(by["fork"], by["lift"], by.get("slant", 0.0), by["fullness"])
            values[..., row], grown = moved.length_and_slopes(side.height)
            x, hip_grown = moved.at_height(self.y_hip, side.height)
            width, widened = side.thigh.width(by["fork"], x - side.hip_x)
            values[..., 2] += width
            values[..., 3] += moved.fork.real - x
            for part, name in names.items():
                at, own = NAMES.index(name), 1.0 if part == "fork" else 0.0
                slopes[..., row, at] = grown[part]
                slopes[..., 2, at] = own * widened - side.thigh.share * hip_grown[part]
                slopes[..., 3, at] = own - hip_grown[part]
        return values, slopes


def _rows(thing: T, chosen: Rows) -> T:
    """Chosen rows of every array in a dataclass."""
    parts: dict[str, Any] = {}
    for field in fields(thing):  # type: ignore[arg-type]
        value = getattr(thing, field.name)
        if isinstance(value, np.ndarray) and value.ndim:
            parts[field.name] = value[chosen]
        elif isinstance(value, Side | CrotchShape | ThighOf):
            parts[field.name] = _rows(value, chosen)
    return replace(thing, **parts)  # type: ignore[type-var]
