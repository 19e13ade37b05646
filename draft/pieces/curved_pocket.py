"""Front pocket with a curved mouth: front bag, back bag, and the facing that shows at the mouth.

Every line is taken from the front before it was cut, so the pieces lie on each other along mouth, waist and side.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache, partial

import numpy as np

from draft.edge import Corner, Edge
from draft.errors import DraftError
from draft.geometry.construct import hook
from draft.geometry.meet import along_at_height
from draft.geometry.path import Path
from draft.geometry.points import cross_lines
from draft.geometry.polygon import inside, longest_upright
from draft.geometry.segments import Cubic, Line
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces.hem_level import hem_above
from draft.pieces.mouth import hand_notes, stay_piece
from draft.pieces.plan import FrontOpening, Plan
from draft.seams import Run, Seam
from draft.shape.leg import largest
from draft.shape.shell import Panel, Waist
from draft.style import CurvedPocket
from draft.units import HAIR, at_least, at_most

USUAL_WIDTH, WIDTH_SHARE = 100.0, 0.55  # of the front waist
USUAL_DEPTH, DEPTH_SHARE = 75.0, 0.55  # of the way from waist seam to hip
USUAL_BAG, SMALLEST_BAG = 110.0, 40.0
ABOVE_HEM = 30.0  # bag bottom above the hem or the top of the cuff
SURELY_LONGER = 1.1  # so that the inside leg told works: the side seam may grow less than the leg
SHARPEST_MOUTH = 15.0  # radius of the mouth: its allowance still turns
CLEAR_OF_DART = 10.0
CLEAR_OF_HIP = 10.0
MOUTH_FULLNESS = 0.5523  # a quarter of an ellipse
BAG_FULLNESS, FULLEST = 0.72, 0.97  # fuller where the facing would not lie on the bag
FINE_MM = 0.5
GRAIN_INSIDE = 0.15  # ends of a grainline from the edges, as a share of the way across


@dataclass(frozen=True)
class Sizes:
    """Sizes that the choice and the front together give, mm."""

    width: float
    depth: float
    bag: float
    inner: float  # from the side seam to the inner end of the bag, along the waist
    facing: float  # the same for the facing


@lru_cache(maxsize=4)
def sizes(plan: Plan) -> Sizes:
    """Sizes of the pocket on this front.

    Raises
    ------
    DraftError
        When the mouth runs past the hip line, into a dart or the fly, or the bag past the hem; with the largest that
        works.
    """
    pocket = _choice(plan)
    panel = plan.shell.front
    last = panel.waist.parts[-1].length
    to_hip = along_at_height(panel.side, plan.shell.levels["hip"])
    most_width = last - (CLEAR_OF_DART if panel.waist.darts else _fly_room(plan) + 5.0)
    most_depth = to_hip - CLEAR_OF_HIP
    depth = min(USUAL_DEPTH, DEPTH_SHARE * to_hip) if pocket.depth is None else pocket.depth
    roundest = depth**2 / SHARPEST_MOUTH  # a quarter of an ellipse is sharpest at the end of its longer side
    usual = min(USUAL_WIDTH, WIDTH_SHARE * panel.waist.length, most_width, roundest)
    width = usual if pocket.width is None else pocket.width
    if width > most_width + HAIR:
        raise DraftError(
            "style.pocket.width", width, f"at most {at_most(most_width)} mm on this front", "make the mouth narrower"
        )
    if depth > most_depth + HAIR:
        raise DraftError(
            "style.pocket.depth",
            depth,
            f"at most {at_most(most_depth)} mm: the mouth ends above the hip line",
            "end it higher",
        )
    most_bag = panel.side.length - depth - ABOVE_HEM - hem_above(plan)
    bag = min(USUAL_BAG, most_bag, 1.2 * to_hip) if pocket.bag_depth is None else pocket.bag_depth
    if most_bag < SMALLEST_BAG - HAIR:
        raise no_bag(plan, SMALLEST_BAG - most_bag)
    if bag > most_bag + HAIR:
        raise DraftError(
            "style.pocket.bag_depth",
            bag,
            f"at most {at_most(most_bag)} mm above this hem",
            "make the bag shallower or the leg longer",
        )
    room = last - 2.0
    return Sizes(width, depth, bag, min(width + pocket.bag_beyond, room), min(width + pocket.facing_depth, room))


def no_bag(plan: Plan, missing: float) -> DraftError:
    """Say that the leg is `missing` mm too short for any bag between the mouth and the hem."""
    leg = plan.style.leg.inside_leg
    least = plan.shell.targets["inside_leg"] + missing * SURELY_LONGER
    if least > plan.body.inside_leg:
        kind, expected = type(plan.style.pocket).__name__, f"{at_least(missing)} mm more above the hem, for its bag"
        return DraftError("style.pocket", kind, expected, "end the mouth or begin the hem elsewhere, or leave it out")
    expected = f"{at_least(least)} mm or more for a pocket bag above this hem"
    remedy = "make the leg longer, end the mouth higher, or leave the pocket out"
    return DraftError("style.leg.inside_leg", leg, expected, remedy)


def _choice(plan: Plan) -> CurvedPocket:
    pocket = plan.style.pocket
    assert isinstance(pocket, CurvedPocket)
    return pocket


def _fly_room(plan: Plan) -> float:
    from_choice = getattr(plan.style.closing, "width", None)
    return 0.3 * plan.shell.front.waist.length if from_choice is None else float(from_choice)


@dataclass(frozen=True, eq=False)
class Lines:
    """The lines of the pocket in the frame of the front, all walked counter-clockwise around the front."""

    side_point: complex
    mouth: Path
    waist_end: Path  # the front's waist from the dart (or the centre) to the side
    under: Path  # inner edge of the facing, waist to side
    contour: Path  # of both bags, from the side seam round to the waist


@lru_cache(maxsize=4)
def lines(plan: Plan) -> Lines:
    """All lines of the pocket."""
    s, panel = sizes(plan), plan.shell.front
    last = panel.waist.parts[-1]
    mouth = _scoop(last, panel.side, s.width, s.depth)
    under = _scoop(last, panel.side, s.facing, s.depth + _choice(plan).facing_depth)
    return Lines(last.end, mouth, last, under, _contour(s, panel, under))


def _contour(s: Sizes, panel: Panel, under: Path) -> Path:
    """Lower edge of both bags, square to side seam and waist: so full, and so far in, that the facing lies on them."""
    last, low = panel.waist.parts[-1], s.depth + s.bag
    at_inner = last.length - s.inner
    bottom, inner = panel.side.point_at(low), last.point_at(at_inner)
    across, down = 1j * panel.side.direction_at(low), 1j * last.direction_at(at_inner)
    beside, on_bag = Path.join(last.between(at_inner, last.length), panel.side.between(0, low)), under.points(FINE_MM)

    def drawn(less: float, down: complex) -> Path:
        return Path((hook(bottom, cross_lines(bottom, across, inner, down), inner, FULLEST - less),))

    def holds(less: float, down: complex) -> bool:
        outline = Path.join(beside, drawn(less, down)).points(FINE_MM)
        return bool(inside(on_bag[1:-1], outline).all())

    if not holds(0.0, down):  # a side seam that leans in downwards: the bag runs beside the facing, not square
        down = under.start_dir
    return drawn(largest(partial(holds, down=down), FULLEST - BAG_FULLNESS), down)


def _scoop(waist: Path, side: Path, width: float, depth: float) -> Path:
    """Curve from the waist to the side seam: at its ends along the side seam and along the waist."""
    at_waist, at_side = waist.point_at(waist.length - width), side.point_at(depth)
    corner = at_waist + at_side - waist.end
    return Path((hook(at_waist, corner, at_side, MOUTH_FULLNESS),))


def opening(plan: Plan) -> FrontOpening:
    """Front cut away along the mouth."""
    s, panel = sizes(plan), plan.shell.front
    ease = _choice(plan).mouth_ease
    last = panel.waist.parts[-1]
    kept, _ = last.split_at(last.length - s.width + ease)
    _, side = panel.side.split_at(s.depth)
    mouth = _eased_mouth(plan, kept.end) if ease else lines(plan).mouth
    return FrontOpening(Waist((*panel.waist.parts[:-1], kept), panel.waist.darts), side, mouth, s.depth, s.width, ease)


def _eased_mouth(plan: Plan, at_waist: complex) -> Path:
    """Mouth of a front that lies loose: its waist end stands further out by the ease, fading to the side seam."""
    (drawn,) = lines(plan).mouth.segments
    assert isinstance(drawn, Cubic)
    out = at_waist - drawn.p0
    return Path((Cubic(drawn.p0 + out, drawn.p1 + out, drawn.p2, drawn.p3),))


def pieces(plan: Plan) -> list[Piece]:
    """Front bag, back bag and facing."""
    s, drawn, a = sizes(plan), lines(plan), plan.style.allowances
    panel = plan.shell.front
    front = opening(plan)
    assert front.mouth is not None
    waist = drawn.waist_end
    to_bottom = panel.side.between(0, s.depth + s.bag)
    inner_waist = waist.between(waist.length - s.inner, waist.length - s.width + front.ease)
    flush = Corner("mirrored", "next")
    bag_front = Piece(
        name="pocket_bag_front",
        title="Front pocket bag",
        edges=(
            Edge("side", (panel.side.between(s.depth, s.depth + s.bag),), allowance=a.side, corner=Corner("mirrored")),
            Edge("contour", (drawn.contour,), allowance=a.bag, corner=Corner("extended")),
            Edge("waist", (inner_waist,), allowance=a.waist, corner=Corner("squared", "next")),
            Edge("mouth", (front.mouth,), allowance=a.mouth, corner=Corner("squared")),
        ),
        cut=Cut(2, "lining", mirrored=True),
        grainline=_grain(plan, s, drawn, part="bag_front"),
        notches=(
            Notch("mouth", front.mouth.length / 2, "middle of the mouth"),
            Notch("contour", drawn.contour.length / 2, "bag contour"),
        ),
        made_for=plan.made_for,
    )
    bag_back = Piece(
        name="pocket_bag_back",
        title="Back pocket bag",
        edges=(
            Edge("side", (to_bottom,), allowance=a.side, corner=Corner("mirrored")),
            Edge("contour", (drawn.contour,), allowance=a.bag, corner=Corner("extended")),
            Edge("waist", (waist.between(waist.length - s.inner, waist.length),), allowance=a.waist, corner=flush),
        ),
        cut=Cut(2, "lining", mirrored=True),
        grainline=_grain(plan, s, drawn, part="bag_back"),
        notches=(
            Notch("waist", s.inner - s.width, "pocket mouth at the waist"),
            Notch("side", s.depth, "pocket mouth at the side"),
            Notch("contour", drawn.contour.length / 2, "bag contour"),
        ),
        lines=(InnerLine("placement", drawn.under, "inner edge of the facing"),),
        made_for=plan.made_for,
    )
    facing_waist = waist.between(waist.length - s.facing, waist.length)
    facing = Piece(
        name="pocket_facing",
        title="Pocket facing",
        edges=(
            Edge(
                "side",
                (panel.side.between(0, s.depth + _choice(plan).facing_depth),),
                allowance=a.side,
                corner=Corner("squared"),
            ),
            Edge("inner", (drawn.under.reversed(),), allowance=0.0, corner=Corner("squared", "next")),
            Edge("waist", (facing_waist,), allowance=a.waist, corner=flush),
        ),
        cut=Cut(2, "self", mirrored=True),
        grainline=_grain(plan, s, drawn, part="facing"),
        notches=(
            Notch("waist", s.facing - s.width, "pocket mouth at the waist"),
            Notch("side", s.depth, "pocket mouth at the side"),
        ),
        lines=(InnerLine("placement", drawn.mouth, "edge of the front"),),
        made_for=plan.made_for,
        notes=("neaten the inner edge",),
    )
    found = [_with_grain(piece) for piece in (bag_front, bag_back, facing)]
    stay = _choice(plan).stay
    return found if stay is None else [*found, stay_piece(plan, front.mouth, stay)]


def _with_grain(piece: Piece) -> Piece:
    """Piece whose grainline lies inside: where the side seam leans much, along the longest upright."""
    outline, line = piece.sew_line.points(1.0), piece.grainline
    if inside(line.points(np.linspace(0, 1, 9)), outline).all():
        return piece
    low, high = longest_upright(outline)
    return replace(piece, grainline=Line(low + GRAIN_INSIDE * (high - low), high - GRAIN_INSIDE * (high - low)))


def _grain(plan: Plan, s: Sizes, drawn: Lines, *, part: str) -> Line:
    """Upright line inside a bag or the facing, parallel to the grain of the front."""
    panel = plan.shell.front
    inner = drawn.waist_end.point_at(drawn.waist_end.length - s.inner).real
    top = drawn.side_point.imag
    at_mouth, at_bottom = panel.side.point_at(s.depth), panel.side.point_at(s.depth + s.bag)
    if part == "facing":
        x = panel.side.point_at(0.3 * s.depth).real + 0.3 * s.width
        return Line(x + 1j * (at_mouth.imag + 0.15 * s.depth), x + 1j * (top - 0.1 * s.depth))
    x = at_bottom.real + 0.45 * (inner - at_bottom.real)
    high = at_mouth.imag - 0.12 * s.bag if part == "bag_front" else top - 0.15 * s.depth
    return Line(x + 1j * (at_bottom.imag + 0.2 * s.bag), x + 1j * high)


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Mouth, bag contour, and the layers that are basted as one at waist and side."""
    s = sizes(plan)
    to_side = s.depth + _choice(plan).facing_depth
    visible, under = Run("pocket_facing", "side", 0, s.depth), Run("pocket_bag_back", "waist", s.inner - s.facing)
    inner = Run("pocket_bag_back", "waist", 0, s.inner - s.width)
    runs = [
        ("pocket mouth", Run("front", "mouth"), Run("pocket_bag_front", "mouth"), 0.0),
        ("pocket bag", Run("pocket_bag_front", "contour"), Run("pocket_bag_back", "contour"), 0.0),
        ("facing on bag, side", Run("pocket_facing", "side"), Run("pocket_bag_back", "side", 0, to_side), 0.0),
        ("facing on bag, waist", Run("pocket_facing", "waist"), under, 0.0),
        ("bag in the waist seam", Run("pocket_bag_front", "waist"), inner, _choice(plan).mouth_ease),
        ("bag in the side seam", Run("pocket_bag_front", "side"), Run("pocket_bag_back", "side", s.depth), 0.0),
        ("side seam above the pocket", visible, Run("back", "side", 0, s.depth), 0.0),
        ("side seam", Run("front", "side"), Run("back", "side", s.depth), 0.0),
    ]  # fmt: skip
    if _choice(plan).stay is not None:
        runs.append(("stay on the mouth", Run("front", "mouth"), Run("pocket_stay", "mouth"), 0.0))
    return [Seam.of(name, one, two, pieces, ease) for name, one, two, ease in runs]


def notes(plan: Plan) -> list[str]:
    """Room for the hand: straight across the mouth, from end to end."""
    mouth = lines(plan).mouth
    return hand_notes(abs(mouth.end - mouth.start))
