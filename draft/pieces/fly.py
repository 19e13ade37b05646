"""Fly front with zip: separate facing for the overlapping front, folded shield for the other.

The front of the shell is drawn as the wearer's right front (side seam left, centre front right, right side of the
cloth up). The facing lies face down on the overlapping front; cut out and seen from its right side it is therefore the
image of that front: for left over right it looks as the front is drawn.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from draft.edge import Corner, Edge, mirrored_outline
from draft.errors import DraftError
from draft.geometry.path import Path
from draft.geometry.points import unit
from draft.geometry.segments import Cubic, Line, Motion
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces.plan import FrontOpening, Opens, Plan
from draft.seams import Run, Seam
from draft.style import LONGEST_FLY, FlyFront
from draft.units import HAIR, at_least, at_most, fmt

USUAL_WIDTH, WIDTH_SHARE = 42.0, 0.27  # of the front waist
SHIELD_OVER_FACING = 3.0
TOPSTITCH_SHARE = 32 / 42
TOPSTITCH_PAST_STOP = 8.0
CURVE_DEPTH = 40.0  # semi-axis of the topstitched curve along the fly
FACING_OVER_TOPSTITCH = 5.0
LEFT_IN_CROTCH = 40.0  # crotch seam between the stop and the inseam
FOLD_PAST_CENTRE = 5.0  # the underlapping front is folded this far beyond the centre front
QUARTER_ELLIPSE = 0.5523
ZIP_BELOW_WAIST = 5.0
STOCK_STEP = 10.0


@dataclass(frozen=True)
class Sizes:
    """Sizes that the choice and the front together give, mm; all lengths from the waist seam down the centre front."""

    stop: float
    width: float
    shield: float
    topstitch: float

    @property
    def zip_length(self) -> float:
        """Longest zip in steps of 10 mm whose slider rests below the band."""
        return STOCK_STEP * ((self.stop - ZIP_BELOW_WAIST) // STOCK_STEP)


def _choice(plan: Plan) -> FlyFront:
    closing = plan.style.closing
    assert isinstance(closing, FlyFront)
    return closing


@lru_cache(maxsize=4)
def sizes(plan: Plan) -> Sizes:
    """Sizes of the fly on this front.

    Raises
    ------
    DraftError
        When the fly is longer than the straight of the crotch seam, or too wide; with the largest that works.
    """
    fly, panel = _choice(plan), plan.shell.front
    most = min(panel.straight, panel.crotch.length - LEFT_IN_CROTCH)
    raised = max(0.0, -plan.style.waist_drop)
    usual = max(0.25 * plan.body.hip - 50 + raised, 0.5 * most)
    stop = float(min(usual, most, LONGEST_FLY)) if fly.length is None else fly.length
    if stop > most + HAIR:
        raise DraftError(
            "style.closing.length", stop, f"at most {at_most(most)} mm, the straight of the crotch seam", "shorten it"
        )
    first = panel.waist.parts[0].length
    usual_width = min(USUAL_WIDTH, WIDTH_SHARE * panel.waist.length)
    width = usual_width if fly.width is None else fly.width
    most_width = first - 5.0
    if width > most_width + HAIR:
        raise DraftError(
            "style.closing.width", width, f"at most {at_most(most_width)} mm on this front", "make it narrower"
        )
    shield = width + SHIELD_OVER_FACING if fly.shield_width is None else fly.shield_width
    topstitch = TOPSTITCH_SHARE * width if fly.topstitch is None else fly.topstitch
    for name, value in (("width", width), ("shield_width", shield)):
        if value < topstitch + FACING_OVER_TOPSTITCH:
            least = topstitch + FACING_OVER_TOPSTITCH
            raise DraftError(
                f"style.closing.{name}",
                value,
                f"at least {at_least(least)} mm: 5 more than the topstitching",
                "widen it",
            )
    return Sizes(stop, width, shield, topstitch)


def opens() -> Opens:
    """At the centre front."""
    return "centre front"


def crotch_edges(plan: Plan) -> tuple[Edge, ...]:
    """Crotch seam up to the stop, and above it the seam of facing and shield."""
    a, whole = plan.style.allowances, plan.shell.front.crotch
    crotch, fly = whole.split_at(whole.length - sizes(plan).stop)
    return (
        Edge("crotch", (crotch,), allowance=a.crotch),
        Edge("fly", (fly,), allowance=a.fly, corner=Corner("extended")),
    )


def side_marks(plan: Plan, opening: FrontOpening) -> list[Notch]:
    """Nothing at the side."""
    return []


def underlap(plan: Plan) -> float:
    """Finished width of the shield."""
    return sizes(plan).shield


def j_line(plan: Plan, across: float, end: float) -> Path:
    """Line beside the centre front at the distance `across`, from the waist, its lower end rounded into the seam.

    The lower curve is a quarter of an ellipse that ends on the seam at the distance `end` from the waist.
    """
    crotch, waist = plan.front_crotch, plan.shell.front.waist.parts[0]
    top = waist.point_at(across)
    down = crotch.direction_at(0)
    foot = crotch.point_at(end)
    depth = min(CURVE_DEPTH, 0.45 * end)
    turn = top + down * (((foot - top) / down).real - depth)
    inward = unit(top - waist.start)
    curve = Cubic(
        turn, turn + down * depth * QUARTER_ELLIPSE, foot + inward * across * QUARTER_ELLIPSE, foot
    )  # fmt: skip
    return Path((Line(top, turn), curve))


def front_marks(plan: Plan) -> tuple[list[InnerLine], list[Notch]]:
    """Topstitching, the fold of the underlapping front, and the notches of centre front and stop."""
    s = sizes(plan)
    crotch = plan.front_crotch
    straight = crotch.between(0, s.stop)
    shift = FOLD_PAST_CENTRE * 1j * straight.start_dir  # towards the allowance
    over, under = ("left", "right") if _choice(plan).lap == "left_over_right" else ("right", "left")
    lines = [
        InnerLine(
            "topstitch", j_line(plan, s.topstitch, s.stop + TOPSTITCH_PAST_STOP), f"topstitch, {over} front only"
        ),
        InnerLine("fold", straight.moved(Motion(shift=shift)), f"fold, {under} front only"),
    ]
    return lines, [Notch("fly", 0.0, "zip stop"), Notch("waist", 0.0, "centre front")]


def pieces(plan: Plan) -> list[Piece]:
    """Facing and shield."""
    return [_facing(plan), _shield(plan)]


def _facing(plan: Plan) -> Piece:
    s, fly, a = sizes(plan), _choice(plan), plan.style.allowances
    crotch, waist = plan.front_crotch, plan.shell.front.waist.parts[0]
    end = s.stop + fly.facing_beyond
    outer = j_line(plan, s.width, end)
    edges = (
        Edge("tail", (crotch.between(s.stop, end).reversed(),), allowance=a.fly),
        Edge("fly", (crotch.between(0, s.stop).reversed(),), allowance=a.fly, corner=Corner("extended")),
        Edge("waist", (waist.between(0, s.width),), allowance=a.waist, corner=Corner("squared", "next")),
        Edge("outer", (outer,), allowance=0.0, corner=Corner("squared", "next")),
    )
    mirror = None if fly.lap == "left_over_right" else _upright(crotch.start.real)
    return Piece(
        name="fly_facing",
        title="Fly facing",
        edges=edges if mirror is None else mirrored_outline(edges, mirror),
        cut=Cut(1, "self"),
        grainline=_moved_line(_beside(crotch, 0.55 * s.width, 0.12 * end, 0.8 * end), mirror),
        notches=(Notch("fly", 0.0 if mirror is None else s.stop, "zip stop"),),
        made_for=plan.made_for,
        notes=("neaten the outer edge",),
    )


def _shield(plan: Plan) -> Piece:
    """Folded shield: the shape of the front beside the centre front, and its image beyond the fold."""
    s, fly, a = sizes(plan), _choice(plan), plan.style.allowances
    crotch = plan.front_crotch
    end = s.stop + fly.shield_beyond
    down = crotch.direction_at(0)
    at_fold = crotch.start - 1j * down * s.shield  # the waist is square to the centre front, so is the shield's top
    image = Motion.mirror(at_fold, at_fold + down)
    raw = Path.line(crotch.start + down * end, crotch.start)  # straight, as the fly is; below the stop it hangs free
    other = raw.moved(image).reversed()
    bottom = Path.line(other.end, raw.start)
    edges = (
        Edge("zip", (raw,), allowance=a.fly, corner=Corner("extended")),
        Edge("waist", (Path.line(raw.end, other.start),), allowance=a.waist, corner=Corner("extended")),
        Edge("under", (other,), allowance=a.fly, corner=Corner("extended")),
        Edge("bottom", (bottom,), allowance=a.fly, corner=Corner("extended")),
    )
    fold_foot = (bottom.start + bottom.end) / 2
    return Piece(
        name="fly_shield",
        title="Fly shield",
        edges=edges,
        cut=Cut(1, "self"),
        grainline=_beside(crotch, 0.5 * s.shield, 0.15 * end, 0.8 * end),
        notches=(Notch("zip", end - s.stop, "zip stop"), Notch("under", s.stop, "zip stop")),
        lines=(InnerLine("fold", Path.line(at_fold, fold_foot), "fold"),),
        made_for=plan.made_for,
        notes=("folded lengthwise",),
    )


def _upright(x: float) -> Motion:
    return Motion.mirror(x + 0j, x + 1j)


def _moved_line(line: Line, motion: Motion | None) -> Line:
    return line if motion is None else line.moved(motion)


def _beside(crotch: Path, across: float, top: float, bottom: float) -> Line:
    """Line parallel to the centre front, `across` inside it, drawn upwards."""
    down = crotch.direction_at(0)
    start = crotch.start - 1j * down * across
    return Line(start + down * bottom, start + down * top)


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Facing and shield on the front edge; the shield on itself; the centre front below the stop."""
    s, fly = sizes(plan), _choice(plan)
    end = s.stop + fly.shield_beyond
    half = pieces["fly_shield"].edge("bottom").length / 2
    runs = [
        ("fly facing", Run("front", "fly"), Run("fly_facing", "fly", back=fly.lap == "right_over_left")),
        ("zip on shield", Run("front", "fly"), Run("fly_shield", "zip", end - s.stop)),
        ("shield, long edges", Run("fly_shield", "zip"), Run("fly_shield", "under", back=True)),
        ("shield, lower end", Run("fly_shield", "bottom", 0, half), Run("fly_shield", "bottom", half, back=True)),
        ("front crotch", Run("front", "crotch"), Run("front", "crotch")),
    ]
    return [Seam.of(name, one, two, pieces) for name, one, two in runs]


def notes(plan: Plan) -> list[str]:
    """Zip to buy."""
    s = sizes(plan)
    return [f"zip: {fmt(s.zip_length, 0)} mm from stop to stop (opening {fmt(s.stop, 0)} mm)"]
