"""Pocket in the side seam: the front is not cut away, the seam is left open between two notches.

Both bags have the outline of the front's corner at waist and side, and hang from the waist seam. Each is sewn to the
side seam allowance of its own panel; front and back have sides of one length, so the bags' sides meet both.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from draft.choices.front_pockets import InSeamPocket
from draft.edge import Corner, Edge
from draft.geometry.construct import hook, smooth
from draft.geometry.meet import along_at_height
from draft.geometry.path import Path
from draft.geometry.points import cross_lines
from draft.geometry.polygon import inside, longest_upright
from draft.geometry.segments import Line
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces import curved_pocket
from draft.pieces.front_pockets.room import fitted
from draft.pieces.hem_level import hem_above
from draft.pieces.mouth import hand_notes
from draft.pieces.plan import FrontOpening, Plan
from draft.seams import Run, Seam
from draft.shape.leg import largest
from draft.units import HAIR

USUAL_START, START_SHARE = 45.0, 0.22  # of the way from waist seam to hip; 30 to 60 was read
USUAL_MOUTH, MOUTH_SHARE = 160.0, 0.8  # of the same; 152 to 165 was read for men
USUAL_BAG, USUAL_WIDTH = 110.0, 180.0
PAST_HIP = 1.2  # bag below the mouth at most this share of the way to the hip
FROM_CENTRE = 2.0  # bag's inner end from the dart or the fly
STRIP_BEYOND = 20.0  # strip of cloth past either end of the mouth
USUAL_STRIP, SMALLEST_STRIP = 45.0, 20.0  # 40 to 50 was read
SMALLEST_MOUTH, SMALLEST_WIDTH = 60.0, 60.0
TOP, LOW = "pocket mouth, upper end", "pocket mouth, lower end"
PARTS = ("front", "back")


@dataclass(frozen=True)
class Sizes:
    """Sizes that the choice and the front together give, mm: places along the side seam, and the bag's waist."""

    start: float
    stop: float
    bottom: float
    inner: float

    @property
    def strip(self) -> tuple[float, float]:
        """Where the strip of cloth begins and ends along the side seam."""
        return max(self.start - STRIP_BEYOND, 0.5 * self.start), min(self.stop + STRIP_BEYOND, self.bottom - 5.0)


def _choice(plan: Plan) -> InSeamPocket:
    pocket = plan.style.pocket
    assert isinstance(pocket, InSeamPocket)
    return pocket


@lru_cache(maxsize=4)
def sizes(plan: Plan) -> Sizes:
    """Sizes of the pocket on this front.

    Raises
    ------
    DraftError
        When mouth and bag end too near to the hem, or the bag is wider than the waist up to the fly or a dart; with
        the largest that works.
    """
    pocket, panel = _choice(plan), plan.shell.front
    to_hip = along_at_height(panel.side, plan.shell.levels["hip"])
    lowest = panel.side.length - curved_pocket.ABOVE_HEM - hem_above(plan)
    start = min(USUAL_START, START_SHARE * to_hip) if pocket.below_waist is None else pocket.below_waist
    most_mouth = lowest - curved_pocket.SMALLEST_BAG - start
    if most_mouth < SMALLEST_MOUTH - HAIR:
        raise curved_pocket.no_bag(plan, SMALLEST_MOUTH - most_mouth)
    mouth = min(USUAL_MOUTH, MOUTH_SHARE * to_hip, most_mouth) if pocket.mouth is None else pocket.mouth
    remedy = "make the mouth shorter, begin it higher or make the leg longer"
    fitted(pocket, "mouth", mouth, SMALLEST_MOUTH, most_mouth, remedy)
    most_bag = lowest - start - mouth
    bag = min(USUAL_BAG, most_bag, PAST_HIP * to_hip) if pocket.bag_depth is None else pocket.bag_depth
    fitted(pocket, "bag_depth", bag, curved_pocket.SMALLEST_BAG, most_bag, "make the bag shallower or the leg longer")
    room = panel.waist.parts[-1].length - FROM_CENTRE
    if not panel.waist.darts:
        room -= curved_pocket._fly_room(plan)
    inner = min(USUAL_WIDTH, room) if pocket.bag_width is None else pocket.bag_width
    fitted(pocket, "bag_width", inner, SMALLEST_WIDTH, room, "make the bag narrower")
    return Sizes(start, start + mouth, start + mouth + bag, inner)


def opening(plan: Plan) -> FrontOpening:
    """Whole front: nothing is cut away."""
    sizes(plan)
    return FrontOpening(plan.shell.front.waist, plan.shell.front.side)


def side_marks(plan: Plan) -> list[tuple[str, float]]:
    """Places along the side seams of front and back, from the waist, where the mouth ends."""
    s = sizes(plan)
    return [(TOP, s.start), (LOW, s.stop)]


def pieces(plan: Plan) -> list[Piece]:
    """Two bags, and a strip of the garment's cloth for each."""
    return [*(_bag(plan, part) for part in PARTS), *(_strip(plan, part) for part in PARTS)]


def _contour(plan: Plan) -> Path:
    """Lower edge of both bags, from the side seam round to the waist: square to both."""
    s, panel = sizes(plan), plan.shell.front
    last = panel.waist.parts[-1]
    bottom, inner = panel.side.point_at(s.bottom), last.point_at(last.length - s.inner)
    across, down = 1j * panel.side.direction_at(s.bottom), 1j * last.direction_at(last.length - s.inner)
    return Path((hook(bottom, cross_lines(bottom, across, inner, down), inner, curved_pocket.BAG_FULLNESS),))


@lru_cache(maxsize=4)
def strip_width(plan: Plan) -> float:
    """Width of the strips, which lie on the bag."""
    bag, asked = Path.join(*(edge.path for edge in _edges(plan))).points(0.5), _choice(plan).strip
    wanted = USUAL_STRIP if asked is None else asked
    most = largest(lambda wide: wide == 0 or bool(inside(_inner_line(plan, wide).points(0.5), bag).all()), wanted)
    usual = min(USUAL_STRIP, most)
    value = usual if asked is None else asked
    return fitted(_choice(plan), "strip", value, SMALLEST_STRIP, most, "make the bag wider or deeper")


def _inner_line(plan: Plan, wide: float) -> Path:
    """Inner edge of strips of that width, upwards: as far from the side seam at both ends as they are wide."""
    start, stop = sizes(plan).strip
    side = plan.shell.front.side
    low_dir, high_dir = -side.direction_at(stop), -side.direction_at(start)
    low, high = side.point_at(stop) - 1j * low_dir * wide, side.point_at(start) - 1j * high_dir * wide
    return Path((smooth(low, low_dir, high, high_dir),))


def _edges(plan: Plan) -> tuple[Edge, ...]:
    """Edges of either bag."""
    s, panel, a = sizes(plan), plan.shell.front, plan.style.allowances
    last = panel.waist.parts[-1]
    waist = last.between(last.length - s.inner, last.length)
    return (
        Edge("side", (panel.side.between(0, s.bottom),), allowance=a.side, corner=Corner("mirrored")),
        Edge("contour", (_contour(plan),), allowance=a.bag, corner=Corner("extended")),
        Edge("waist", (waist,), allowance=a.waist, corner=Corner("mirrored", "next")),
    )


def _bag(plan: Plan, part: str) -> Piece:
    edges = _edges(plan)
    return Piece(
        name=f"pocket_bag_{part}",
        title=f"{part.capitalize()} pocket bag",
        edges=edges,
        cut=Cut(2, "lining", mirrored=True),
        grainline=_upright(edges),
        notches=(*_marks(plan, 0.0), Notch("contour", edges[1].length / 2, "bag contour")),
        lines=(InnerLine("placement", _inner_line(plan, strip_width(plan)), "inner edge of the strip"),),
        made_for=plan.made_for,
    )


def _strip(plan: Plan, part: str) -> Piece:
    start, stop = sizes(plan).strip
    inner, side = _inner_line(plan, strip_width(plan)), plan.shell.front.side.between(start, stop)
    edges = (
        Edge("side", (side,), allowance=plan.style.allowances.side, corner=Corner("squared")),
        Edge("bottom", (Path.line(side.end, inner.start),)),
        Edge("inner", (inner,)),
        Edge("top", (Path.line(inner.end, side.start),), corner=Corner("squared", "next")),
    )
    return Piece(
        name=f"pocket_strip_{part}",
        title=f"Strip for the {part} pocket bag",
        edges=edges,
        cut=Cut(2, "self", mirrored=True),
        grainline=_upright(edges),
        notches=_marks(plan, start),
        made_for=plan.made_for,
        notes=("neaten the three raw edges",),
    )


def _marks(plan: Plan, begins: float) -> tuple[Notch, ...]:
    return tuple(Notch("side", along - begins, name) for name, along in side_marks(plan))


def _upright(edges: tuple[Edge, ...]) -> Line:
    """Grainline parallel to that of the front, along the longest upright."""
    low, high = longest_upright(Path.join(*(edge.path for edge in edges)).points(0.02))
    margin = curved_pocket.GRAIN_INSIDE * (high - low)
    return Line(low + margin, high - margin)


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Mouth on either panel, bags, strips, and the side seam above and below the mouth."""
    s, waist = sizes(plan), plan.shell.front.waist.length
    start, stop = s.strip
    one, two = "pocket_bag_front", "pocket_bag_back"
    runs = [
        ("side seam above the pocket", Run("front", "side", 0, s.start), Run("back", "side", 0, s.start)),
        ("pocket mouth on the front", Run("front", "side", s.start, s.stop), Run(one, "side", s.start, s.stop)),
        ("pocket mouth on the back", Run("back", "side", s.start, s.stop), Run(two, "side", s.start, s.stop)),
        ("side seam", Run("front", "side", s.stop), Run("back", "side", s.stop)),
        ("pocket bag", Run(one, "contour"), Run(two, "contour")),
        ("bags in the side seam above the mouth", Run(one, "side", 0, s.start), Run(two, "side", 0, s.start)),
        ("bags in the side seam below the mouth", Run(one, "side", s.stop), Run(two, "side", s.stop)),
        ("bags in the waist seam", Run(one, "waist"), Run(two, "waist")),
        ("bag on the front at the waist", Run(one, "waist"), Run("front", "waist", waist - s.inner)),
        *(
            (f"strip on the {part} bag", Run(f"pocket_strip_{part}", "side"), Run(bag, "side", start, stop))
            for part, bag in zip(PARTS, (one, two), strict=True)
        ),
    ]
    return [Seam.of(name, a, b, pieces) for name, a, b in runs]


def notes(plan: Plan) -> list[str]:
    """Room for the hand, the stay, and how the ends of the mouth are secured."""
    s = sizes(plan)
    long = s.stop - s.start
    places = plan.shell.front.side.point_at(s.start), plan.shell.front.side.point_at(s.stop)
    return [
        *hand_notes(abs(places[1] - places[0])),
        f"pocket in the side seam: leave it open from {s.start:.0f} to {s.stop:.0f} mm below the waist seam "
        "and backstitch 5 past either end",
        f"stay the front's side seam line along the mouth with a straight strip of {long + 2 * STRIP_BEYOND:.0f} mm, "
        f"{STRIP_BEYOND:.0f} past either end",
    ]
