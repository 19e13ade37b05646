"""Patch pocket on the front: drawn in the frame of the front where it will lie, so both have one grain."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from draft.choices.front_pockets import FrontPatchPocket
from draft.edge import Corner, Edge
from draft.errors import DraftError
from draft.geometry.arrays import Points
from draft.geometry.meet import meet_line
from draft.geometry.path import Path
from draft.geometry.segments import Line
from draft.piece import Cut, Hole, InnerLine, Piece
from draft.pieces import curved_pocket
from draft.pieces.front_pockets.room import fitted
from draft.pieces.hem_level import hem_above
from draft.pieces.mouth import hand_notes
from draft.pieces.plan import FrontOpening, Plan
from draft.seams import Run, Seam
from draft.units import HAIR, at_least

USUAL_WIDTH, USUAL_HEIGHT = 140.0, 150.0  # read for the back: 130 to 150 and 140 to 160
HEIGHT_SHARE = 0.57  # of the way from waist seam to crotch level
USUAL_BELOW, BELOW_SHARE = 70.0, 0.35  # of the same; read for the back: 60 to 80
USUAL_FROM_SIDE, SIDE_SHARE = 30.0, 0.15  # of the front waist; common practice, no source
BELOW_WAIST, BELOW_DART = 15.0, 10.0
SMALLEST = 50.0
BEYOND_FLY = 5.0
HOLE_INSIDE = 3.0  # drill holes from both edges, so that the stitching hides them (read)
FINE_MM = 0.5


@dataclass(frozen=True)
class Sizes:
    """Where the patch lies in the frame of the front, and its sizes, mm."""

    outer: float  # x of the edge beside the side seam
    top: float  # y of the mouth
    width: float
    height: float

    @property
    def corners(self) -> tuple[complex, complex, complex, complex]:
        """Upper outer, lower outer, lower inner and upper inner corner."""
        a, b = complex(self.outer, self.top), complex(self.outer + self.width, self.top)
        return a, a - 1j * self.height, b - 1j * self.height, b


def _choice(plan: Plan) -> FrontPatchPocket:
    pocket = plan.style.pocket
    assert isinstance(pocket, FrontPatchPocket)
    return pocket


@lru_cache(maxsize=4)
def sizes(plan: Plan) -> Sizes:
    """Place and sizes of the patch on this front.

    Raises
    ------
    DraftError
        When the patch reaches into a dart, the fly, the hem or past a seam; with the largest or smallest that works.
    """
    pocket, panel = _choice(plan), plan.shell.front
    below = _below(plan)
    top = panel.side.start.imag - below
    lowest = panel.hem.points(FINE_MM).imag.max() + hem_above(plan) + curved_pocket.ABOVE_HEM
    most = top - pocket.point - lowest
    rise = panel.side.start.imag - plan.shell.levels["crotch"]
    height = min(USUAL_HEIGHT, HEIGHT_SHARE * rise, most) if pocket.height is None else pocket.height
    fitted(pocket, "height", height, SMALLEST, most, "make the patch lower, place it higher or make the leg longer")
    low = top - height - pocket.point
    usual = min(USUAL_FROM_SIDE, SIDE_SHARE * panel.waist.length)
    outer = _between(panel.side, low, top).real.max() + (usual if pocket.from_side is None else pocket.from_side)
    centre = Path.join(panel.inseam, panel.crotch)
    inner = _between(centre, low, top).real.min() - curved_pocket._fly_room(plan) - BEYOND_FLY
    room = float(inner - outer)
    width = min(USUAL_WIDTH, room) if pocket.width is None else pocket.width
    fitted(pocket, "width", width, SMALLEST, room, "make the patch narrower or place it nearer to the side seam")
    return Sizes(float(outer), top, width, height)


def _below(plan: Plan) -> float:
    """Level of the mouth below the waist at the side: below the waist seam all along, and below a dart."""
    pocket, panel = _choice(plan), plan.shell.front
    if any(dart.pleat for dart in panel.waist.darts):
        expected = "a front without pleats: a patch would stitch them shut"
        raise DraftError("style.pocket", type(pocket).__name__, expected, "choose another pocket or no pleats")
    high = panel.side.start.imag
    lowest = min(part.points(FINE_MM).imag.min() for part in panel.waist.parts)
    least = max(high - float(lowest) + BELOW_WAIST, *(high - d.point.imag + BELOW_DART for d in panel.waist.darts), 0.0)
    usual = max(min(USUAL_BELOW, BELOW_SHARE * (high - plan.shell.levels["crotch"])), least)
    below = usual if pocket.below_waist is None else pocket.below_waist
    if below < least - HAIR:
        expected = f"at least {at_least(least)} mm on this front, clear of the waist seam and of a dart"
        raise DraftError("style.pocket.below_waist", below, expected, "place the patch lower")
    return below


def _between(path: Path, low: float, high: float) -> Points:
    """Points of a seam line between two heights, and at them."""
    points = path.points(FINE_MM)
    ends = [path.point_at(along) for y in (low, high) for along in meet_line(path, 1j * y, 1 + 0j)]
    return np.array([*points[(points.imag >= low) & (points.imag <= high)], *ends])


def opening(plan: Plan) -> FrontOpening:
    """Whole front: nothing is cut away."""
    sizes(plan)
    return FrontOpening(plan.shell.front.waist, plan.shell.front.side)


def front_marks(plan: Plan) -> tuple[list[InnerLine], list[Hole]]:
    """Where the patch is sewn on, and drill holes inside its four corners."""
    upper_outer, *below, upper_inner = _outline(plan)
    line = InnerLine("placement", Path.line(upper_outer, *below, upper_inner), "patch pocket")
    inwards = (1 - 1j, 1 + 1j, -1 + 1j, -1 - 1j)
    corners = zip(sizes(plan).corners, inwards, strict=True)
    return [line], [Hole(corner + HOLE_INSIDE * way, "patch pocket") for corner, way in corners]


def _outline(plan: Plan) -> list[complex]:
    """Corners from the upper outer one down and round to the upper inner one."""
    a, b, c, d = sizes(plan).corners
    point = _choice(plan).point
    return [a, b, (b + c) / 2 - 1j * point, c, d] if point else [a, b, c, d]


def pieces(plan: Plan) -> list[Piece]:
    """The patch: its mouth hem is turned along the fold, the other edges are folded under."""
    pocket, s, corners = _choice(plan), sizes(plan), _outline(plan)
    names = ("outer", "bottom_outer", "bottom_inner", "inner") if pocket.point else ("outer", "bottom", "inner")
    fold = Path.line(corners[-1], corners[0])
    edges = [
        Edge(name, (Path.line(one, two),), allowance=pocket.turn)
        for name, one, two in zip(names, corners[:-1], corners[1:], strict=True)
    ]
    edges[-1] = replace(edges[-1], corner=Corner("folded"))
    edges.append(Edge("mouth", (fold,), allowance=pocket.mouth_hem, corner=Corner("folded", "next")))
    middle = s.outer + s.width / 2
    patch = Piece(
        name="pocket_patch",
        title="Patch pocket",
        edges=tuple(edges),
        cut=Cut(2, "self", mirrored=True),
        grainline=Line(complex(middle, s.top - 0.85 * s.height), complex(middle, s.top - 0.15 * s.height)),
        lines=(InnerLine("fold", fold, "fold of the mouth hem"),),
        made_for=plan.made_for,
        notes=("turn the mouth hem inside, fold the other edges under",),
    )
    return [patch]


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Side seam only: the patch lies flat on the front and meets no edge."""
    return [Seam.of("side seam", Run("front", "side"), Run("back", "side"), pieces)]


def notes(plan: Plan) -> list[str]:
    """Room for the hand, where the patch lies, and what to mind."""
    s, panel = sizes(plan), plan.shell.front
    low = s.top - s.height - _choice(plan).point
    nearest = s.outer - float(_between(panel.side, low, s.top).real.max())
    below = panel.side.start.imag - s.top
    return [
        *hand_notes(s.width),
        f"patch pocket: mouth {below:.0f} mm below the waist at the side seam, square to the grain; outer edge "
        f"upright, {nearest:.0f} mm from the side seam where that comes nearest",
        "pierce drill holes with the front flat on a board, never against the hand",
    ]
