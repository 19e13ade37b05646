"""Coin pocket: a small patch on the facing of the right front pocket, where the mouth leaves it in sight.

It is caught in the side seam on one side; its two other edges are folded under and stitched onto the facing, clear of
the facing's neatened edge, before the facing is laid on its bag. Only the right facing has one (common practice).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from draft.choices.small_parts import CoinPocket
from draft.edge import Corner, Edge
from draft.errors import DraftError
from draft.geometry.path import Path
from draft.geometry.polygon import inside, longest_upright
from draft.geometry.segments import Line
from draft.piece import Cut, InnerLine, Piece
from draft.pieces.plan import Plan
from draft.pieces.small_parts.front_room import pocket_pieces
from draft.seams import Run, Seam
from draft.shape.leg import largest
from draft.style import SmallPart
from draft.units import at_most

USUAL_WIDTH, USUAL_DEPTH, USUAL_BELOW = 65.0, 75.0, 25.0  # common practice, no source
BELOW_SHARE = 0.33  # of the way down to the pocket mouth's end at the side
SEEN = 15.0  # of the side seam, between the mouths of both pockets
WIDTH_SHARE = 0.6  # of the widest that leaves room for the least depth
CLEAR = 4.0  # from the facing's inner edge
SMALLEST = 25.0
GRAIN_INSIDE = 0.15


@dataclass(frozen=True, eq=False)
class Place:
    """The patch in the frame of the facing."""

    side: Path
    corners: tuple[complex, complex]  # lower and upper inner corner
    below: float

    @property
    def sewn(self) -> Path:
        """Line along which it lies on the facing: its mouth, inner and lower edge."""
        return Path.line(self.side.start, self.corners[1], self.corners[0], self.side.end)


def _choice(part: SmallPart) -> CoinPocket:
    assert isinstance(part, CoinPocket)
    return part


def _facing(plan: Plan, part: SmallPart) -> Piece:
    facing = pocket_pieces(plan).get("pocket_facing")
    if facing is None:
        raise DraftError(
            "style.pocket", plan.style.pocket, "a curved or slanted pocket: a coin pocket lies on its facing",
            "choose one, or leave the coin pocket out",
        )  # fmt: skip
    return facing


@lru_cache(maxsize=4)
def place(plan: Plan, part: SmallPart) -> Place:
    """The patch on the facing of this front.

    Raises
    ------
    DraftError
        Without a facing, or where it has no room, with the largest size that works.
    """
    asked, facing = _choice(part), _facing(plan, part)
    mouth = next(notch.along for notch in facing.notches if notch.edge == "side")
    most = mouth - SEEN
    below = min(USUAL_BELOW, BELOW_SHARE * mouth) if asked.below is None else asked.below
    _fitted("below", below, most, "set it higher, or end the pocket mouth lower")

    room = largest(lambda wide: _fits(facing, below, wide, SMALLEST), 300.0)
    width = min(USUAL_WIDTH, max(SMALLEST, WIDTH_SHARE * room)) if asked.width is None else asked.width
    _fitted("width", width, room, "make it narrower, or the facing of the pocket larger")
    room = largest(lambda deep: _fits(facing, below, width, deep), 400.0)
    depth = min(USUAL_DEPTH, room) if asked.depth is None else asked.depth
    _fitted("depth", depth, room, "make it shallower or narrower, or the facing of the pocket larger")
    return _placed(facing, below, width, depth)


def _fitted(field: str, value: float, most: float, remedy: str) -> None:
    if value > most + 1e-9 or most < (0 if field == "below" else SMALLEST):
        expected = f"at most {at_most(max(0.0, most))} mm on this pocket facing"
        raise DraftError(f"style.small_parts.{field}", value, expected, f"{remedy}, or leave it out")


def _placed(facing: Piece, below: float, width: float, depth: float) -> Place:
    (line,) = facing.edge("side").parts
    side = line.between(below, below + depth)
    low, high = (p + 1j * d * width for p, d in ((side.end, side.end_dir), (side.start, side.start_dir)))
    return Place(side, (low, high), below)


def _fits(facing: Piece, below: float, width: float, depth: float) -> bool:
    """Whether a patch lies on the facing, its inner corners clear of the facing's edge."""
    if width <= 0 or depth <= 0:
        return True
    if below + depth > facing.edge("side").length - 2 * CLEAR:
        return False
    larger = _placed(facing, below, width + CLEAR, depth + CLEAR)  # the facing's edge bends round the lower corner
    return bool(inside(larger.sewn.points(0.5)[1:-1], facing.sew_line.points(0.2)).all())


def pieces(plan: Plan, part: SmallPart) -> list[Piece]:
    """The patch, for the right front."""
    asked, made = _choice(part), place(plan, part)
    low, high = made.corners
    edges = (
        Edge("side", (made.side,), allowance=plan.style.allowances.side, corner=Corner("mitred")),
        Edge("lower", (Path.line(made.side.end, low),), allowance=asked.turn, corner=Corner("mitred")),
        Edge("inner", (Path.line(low, high),), allowance=asked.turn, corner=Corner("folded")),
        Edge(
            "mouth",
            (Path.line(high, made.side.start),),
            allowance=asked.hem + asked.turn,
            corner=Corner("folded", "next"),
        ),
    )
    return [
        Piece(
            name="coin_pocket",
            title="Coin pocket",
            edges=edges,
            cut=Cut(1, "self"),
            grainline=_upright(edges),
            lines=(InnerLine("fold", edges[-1].parts[0], "mouth, hem fold"),),
            made_for=plan.made_for,
            notes=("for the right front",),
        )
    ]


def _upright(edges: tuple[Edge, ...]) -> Line:
    low, high = longest_upright(Path.join(*(edge.path for edge in edges)).points(1.0))
    margin = GRAIN_INSIDE * (high - low)
    return Line(low + margin, high - margin)


def marks(plan: Plan, part: SmallPart, pieces: Mapping[str, Piece]) -> dict[str, list[InnerLine]]:
    """Where it lies on the facing."""
    return {"pocket_facing": [InnerLine("placement", place(plan, part).sewn, "coin pocket, right side only")]}


def seams(plan: Plan, part: SmallPart, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Its side edge, basted to that of the facing."""
    made = place(plan, part)
    facing = Run("pocket_facing", "side", made.below, made.below + made.side.length)
    return [Seam.of("coin pocket in the side seam", Run("coin_pocket", "side"), facing, pieces)]


def notes(plan: Plan, part: SmallPart) -> list[str]:
    """Order of work."""
    made = place(plan, part)
    return [
        f"coin pocket: hem its mouth, fold the lower and the inner edge under, stitch them to the right pocket facing "
        f"{made.below:.0f} mm below the waist seam, baste its side edge; then lay the facing on its bag"
    ]
