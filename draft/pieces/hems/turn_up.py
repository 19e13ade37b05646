"""Turn-up cut in one with the leg: the cloth below the bottom edge is folded up inside, then up outside.

Glossary
--------
u    distance below the bottom edge in the flat piece, square to it
v    height above it at which a layer comes to lie

The seam lines below the bottom edge are the leg's own, mirrored at u = 0, again at u = depth and again at
u = 2 depth, so each layer is as wide as the leg where it comes to lie (geometry). The outer layers are wider by the
clearance, the hem inside narrower; both fade to nothing at the folds beside the leg's bottom edge. A depth of 32 to 38
for trousers, and a hem inside that is 6 less, were read; at least 20 inside, 30 to 50 for shorts, and the clearance are
common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping

from draft.choices.hems import CutOnTurnUp
from draft.edge import Corner
from draft.errors import DraftError
from draft.geometry.meet import meet_line
from draft.geometry.path import Path
from draft.geometry.points import cross, dot, unit
from draft.piece import InnerLine, Piece
from draft.pieces.hems.strip import PARTS, panel_of, room_for
from draft.pieces.plan import Plan
from draft.seams import Joint, Seam
from draft.shape.shell import Panel
from draft.units import fmt

MOST_BOW = 2.0  # of the bottom edge: folds are straight lines (read: beyond it a separate cuff)
LESS_INSIDE, LEAST_INSIDE = 6.0, 20.0
PAST_RAW_EDGE = 40.0  # the seam lines are drawn on past the raw edge, which cuts them off


def _choice(plan: Plan) -> CutOnTurnUp:
    """Choice, refused when the bottom edge is no straight line or the leg too short."""
    hem = plan.style.hem
    assert isinstance(hem, CutOnTurnUp)
    room_for(plan, hem.depth)
    if hem.inside is not None:
        try:
            room_for(plan, hem.inside)
        except DraftError as error:
            raise DraftError("style.hem.inside", error.value, error.expected, error.remedy) from error
    for part in PARTS:
        bowed = bow_of(panel_of(plan, part))
        if bowed > MOST_BOW:
            expected = (
                f"a bottom edge bowed by at most {MOST_BOW:g} mm, as folds are straight; the {part}'s is {bowed:.2f}"
            )
            remedy = "take draft.TurnedCuff, which is shaped, or a longer leg whose seams run upright at the hem"
            raise DraftError("style.hem", hem, expected, remedy)
    return hem


def bow_of(panel: Panel) -> float:
    """How far the bottom edge of a panel strays from a straight line, mm."""
    along = unit(panel.hem.end - panel.hem.start)
    return float(max(abs(cross(along, p - panel.hem.start)) for p in panel.hem.points(0.05)))


def inside(hem: CutOnTurnUp) -> float:
    """Hem inside the leg, mm.

    >>> inside(CutOnTurnUp(depth=40)), inside(CutOnTurnUp(depth=22))
    (34.0, 20.0)
    """
    return max(hem.depth - LESS_INSIDE, LEAST_INSIDE) if hem.inside is None else hem.inside


def allowance(plan: Plan) -> float:
    """Twice the depth and the hem inside."""
    hem = _choice(plan)
    return 2 * hem.depth + inside(hem)


def corner() -> Corner:
    """Corner of a turning that is folded onto the leg."""
    return Corner("folded")


def above(plan: Plan) -> float:
    """Depth of the turn-up."""
    return _choice(plan).depth


def turning(plan: Plan, name: str) -> tuple[tuple[Path, ...], tuple[Path, ...]]:
    """Seam lines below the bottom edge, at the side and at the inseam, walked down, from fold to fold."""
    hem, panel = _choice(plan), panel_of(plan, name)
    return (
        folded_layers(hem, panel.hem, panel.side.reversed(), -1),
        folded_layers(hem, panel.hem, panel.inseam, 1),
    )


def folded_layers(hem: CutOnTurnUp, bottom: Path, seam: Path, out: int) -> tuple[Path, Path, Path]:
    """Three layers of one seam, walked down from the end of the bottom edge where the seam begins.

    Parameters
    ----------
    hem : CutOnTurnUp
    bottom : Path
        Bottom edge of the panel; its chord is the fold.
    seam : Path
        Side seam or inseam, walked upwards, mm.
    out : int
        -1 at the start of the bottom edge, 1 at its end: away from the leg.
    """
    c, d, h = hem.depth, hem.clearance, inside(hem)
    along, foot = unit(bottom.end - bottom.start), seam.start
    down = -1j * along

    def up_to(height: float) -> Path:
        return seam.between(0, min(meet_line(seam, foot - down * height, along), default=seam.length))

    def layer(path: Path, fold: float, sign: int, wider: float) -> Path:
        """Leg at the height v laid to u = fold + sign v, moved outwards by `wider` per mm of height."""

        def placed(p: complex) -> complex:
            across, v = dot(p - foot, along), -dot(p - foot, down)
            return foot + along * (across + out * wider * v) + down * (fold + sign * v)

        return Path(tuple(type(s)(*(placed(p) for p in s.controls)) for s in path.segments))

    strip = up_to(c)
    c = -dot(strip.end - foot, down)  # as exactly as it was met, so that the layers meet at their fold
    return (
        layer(strip, 0.0, 1, d / c),
        layer(strip.reversed(), 2 * c, -1, d / c),
        layer(up_to(h + PAST_RAW_EDGE), 2 * c, 1, -d / h),
    )


def leg_lines(plan: Plan, name: str) -> list[InnerLine]:
    """Three folds: the bottom edge, the top of the turn-up, and the bottom edge again inside."""
    panel = panel_of(plan, name)
    at_side, at_inseam = turning(plan, name)
    first, second = (Path.line(at_side[i].end, at_inseam[i].end) for i in (0, 1))
    return [
        InnerLine("fold", panel.hem, "bottom edge, second fold"),
        InnerLine("fold", first, "top of the turn-up, first fold"),
        InnerLine("fold", second, "bottom edge inside, second fold"),
    ]


def pieces(plan: Plan) -> list[Piece]:
    """No pieces of its own."""
    return []


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> tuple[list[Seam], list[Joint]]:
    """No seam with another piece; the corners of its folds flow when the seams are sewn."""
    return [], []


def notes(plan: Plan) -> list[str]:
    """In which order it is folded."""
    hem = _choice(plan)
    return [
        f"turn-up: neaten the raw edge; fold all of it inside at the first fold and fix the raw edge "
        f"{fmt(inside(hem), 0)} above the bottom edge; fold {fmt(hem.depth, 0)} up outside; tack at both seams"
    ]
