"""The leg: inseam and side seam down to the hem, trued so that front and back close.

Front and back are cut at equal lengths along the seams, not at equal heights: then they are equal by construction. The
hem is drawn square to both seams, so front and back hems run on into each other.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from draft.block import Block, PanelBlock
from draft.errors import DraftError
from draft.geometry.construct import bow, bow_into, smooth
from draft.geometry.flow import end_square, flow_through
from draft.geometry.meet import along_at_height, line_crossings
from draft.geometry.path import Path
from draft.geometry.points import with_y
from draft.geometry.segments import Cubic, Line
from draft.shape.blend import blended

FORK_REACH_MM, FORK_REACH_SHARE = 75.0, 0.45  # how far down the inseam is turned square to the crotch seam
KNEE_REACH_MM = 90.0
NEAR_KNEE_MM = 60.0  # a hem just below the knee makes no bend there; from this depth it makes the method's
STRAIGHTEN_MM = 10.0  # added at each inseam of a shorts leg (common practice, no source)
STRAIGHTEN_FADE_MM = 100.0  # above the knee
STEEPEST_LEAN = 0.55  # a seam may be moved at most this much per mm of the length over which it is moved
LEAST_BEND = 1e-6  # a bend at the knee below this share is none
KNEE_LEG_SHARE = 0.95  # height over length of the steepest inseam, with a margin
LENGTH_TOL_MM = 1e-4


@dataclass(frozen=True)
class Widths:
    """How far each seam is moved out at the hem and at the knee, mm; at the hem inseam and side apart.

    A knee of None is the method's, and goes out of the seams when they end just below it.
    """

    hem_inseam: float = 0.0
    hem_side: float = 0.0
    knee: float | None = None

    @property
    def at_knee(self) -> float:
        """How far each seam is moved out at the knee."""
        return self.knee or 0.0

    def bend(self, below_knee: float) -> float:
        """How much of its bend at the knee a seam has that ends `below_knee` mm below."""
        return knee_bend(below_knee) if self.knee is None else float(below_knee > 0)


def solve(length_at: Callable[[float], float], wanted: float, guess: float) -> float:
    """Value at which a nearly linear function reaches `wanted` (secant method)."""
    a, b = guess, guess + 1.0
    fa, fb = length_at(a) - wanted, length_at(b) - wanted
    for _ in range(30):
        if abs(fb) < LENGTH_TOL_MM or fb == fa:
            break
        a, b, fa = b, b - fb * (b - a) / (fb - fa), fb
        fb = length_at(b) - wanted
    return b


def knee_bend(below_knee: float) -> float:
    """How much of its bend at the knee a seam has when it ends `below_knee` mm below: 0 at the knee, 1 from 60 mm on.

    >>> knee_bend(-5), knee_bend(30), knee_bend(80)
    (0.0, 0.5, 1.0)
    """
    share = min(1.0, max(0.0, below_knee / NEAR_KNEE_MM))
    return share * share * (3 - 2 * share)


def inseam_to(panel: PanelBlock, y: float, widths: Widths) -> Path:
    """Inseam from the hem at height `y` to the fork, square to the crotch seam at its end."""
    knee, foot = panel.knee_inseam, with_y(panel.knee_inseam, panel.hem_inseam, y)
    bend = widths.bend(knee.imag - y)
    if y >= knee.imag:
        whole = bow(knee, panel.fork, panel.inseam_hollow)
        _, raw = whole.split(line_crossings(whole, 1j * y, 1 + 0j)[0])
    else:
        share = abs(foot - panel.fork) / abs(knee - panel.fork)
        raw = bow(foot, panel.fork, panel.inseam_hollow * share**2)
    path = Path((_leaned(raw, widths.hem_inseam),))
    if bend > LEAST_BEND:
        bent = bow_into(foot + widths.hem_inseam, knee + widths.at_knee, panel.fork, 0.0, panel.inseam_hollow)
        path = blended(path, Path(bent), bend)
    reach = min(FORK_REACH_MM, FORK_REACH_SHARE * path.length)
    return end_square(path, -1j * panel.crotch.start_dir, reach)


def _leaned(cubic: Cubic, out: float) -> Cubic:
    """Curve whose lower end is moved sideways by `out`, fading to nothing at its upper end."""
    top, bottom = cubic.p3.imag, cubic.p0.imag
    p = [c + out * (top - c.imag) / (top - bottom) for c in cubic.controls]
    return Cubic(p[0], p[1], p[2], cubic.p3)


def side_from(panel: PanelBlock, waist_side: complex, y: float, widths: Widths) -> Path:
    """Side seam from the waist to the hem at height `y`."""
    if y >= panel.knee_side.imag:
        below = panel.side.point_at(along_at_height(panel.side, y)) - widths.hem_side
        return panel.side_to(waist_side, below)
    bend = widths.bend(panel.knee_side.imag - y)
    hem = with_y(panel.knee_side, panel.hem_side, y) - widths.hem_side
    straight = panel.side_to(waist_side, hem)
    if bend <= LEAST_BEND:
        return straight
    knee = panel.knee_side - widths.at_knee
    upper = panel.side_to(waist_side, knee)
    return blended(straight, flow_through(Path.join(upper, Line(knee, hem)), upper.length, KNEE_REACH_MM), bend)


def hem_between(side: Path, inseam: Path) -> Path:
    """Hem from side to inseam, square to both."""
    return Path((smooth(side.end, 1j * side.end_dir, inseam.start, -1j * inseam.start_dir),))


@dataclass(frozen=True, eq=False)
class LegSeams:
    """Side, hem and inseam of front and back."""

    front: tuple[Path, Path, Path]
    back: tuple[Path, Path, Path]

    @property
    def hem(self) -> float:
        """Girth of the bottom edge."""
        return self.front[1].length + self.back[1].length


def cut_legs(
    block: Block, waist_sides: tuple[complex, complex], inside_leg: float, stretch: float, widths: Widths
) -> LegSeams:
    """Both legs cut at the length `inside_leg` along the front inseam; the back inseam is `stretch` shorter.

    The front's hem ends level at side and inseam; the back is cut where its seams are as long as the front's.
    """
    front, back = block.front, block.back

    def front_inseam(y: float) -> Path:
        return inseam_to(front, y, widths)

    def back_inseam(y: float) -> Path:
        return inseam_to(back, y, widths)

    y_front = solve(lambda y: front_inseam(y).length, inside_leg, front.fork.imag - inside_leg * 0.99)
    inseam_f = front_inseam(y_front)
    y_back = solve(lambda y: back_inseam(y).length, inside_leg - stretch, back.fork.imag - inside_leg * 0.97)
    inseam_b = back_inseam(y_back)
    side_f = side_from(front, waist_sides[0], y_front, widths)
    y_side = solve(lambda y: side_from(back, waist_sides[1], y, widths).length, side_f.length, y_front)
    side_b = side_from(back, waist_sides[1], y_side, widths)
    return LegSeams(
        (side_f, hem_between(side_f, inseam_f), inseam_f), (side_b, hem_between(side_b, inseam_b), inseam_b)
    )


def own_widths(block: Block, inside_leg: float, knee: float | None) -> Widths:
    """Widths of the method, for a hem above the knee straightened at the inseams."""
    above_knee = -inside_leg - block.levels["knee"]
    more = STRAIGHTEN_MM * min(1.0, max(0.0, above_knee / STRAIGHTEN_FADE_MM))
    at_knee = None if knee is None or above_knee >= 0 else (knee - _own_knee(block)) / 4
    return Widths(hem_inseam=more, knee=at_knee)


def _own_knee(block: Block) -> float:
    return sum(panel.knee_inseam.real - panel.knee_side.real for panel in (block.front, block.back))


def check_knee(block: Block, inside_leg: float, hem: float | None, knee: float) -> None:
    """Refuse a knee girth on a leg that ends too little below the knee, or that bends its seams too much.

    A leg that ends above the knee has none, and the girth is left unused.
    """
    depth = -block.levels["knee"]
    if inside_leg <= depth:
        return
    least = (depth + NEAR_KNEE_MM) / KNEE_LEG_SHARE
    if inside_leg < least:
        raise DraftError(
            "style.leg.knee",
            knee,
            f"an inside leg of {least:.0f} mm or more on this body, 60 below the knee",
            "leave the knee out or make the leg longer",
        )
    room = STEEPEST_LEAN * (min(depth, _below_knee(block, inside_leg)) if hem is None else depth)
    own = _own_knee(block)
    if abs(knee - own) > 4 * room:
        raise DraftError(
            "style.leg.knee",
            knee,
            f"{own - 4 * room:.0f} to {own + 4 * room:.0f} mm on this body (the method's own is {own:.0f})",
            "choose another width",
        )


def hem_room(block: Block, inside_leg: float) -> float:
    """How far each seam may be moved at the hem, mm; below the knee only the stretch below it is moved."""
    bend = knee_bend(inside_leg + block.levels["knee"])
    if bend <= LEAST_BEND:
        return STEEPEST_LEAN * inside_leg
    return STEEPEST_LEAN / (bend / _below_knee(block, inside_leg) + (1 - bend) / inside_leg)


def _below_knee(block: Block, inside_leg: float) -> float:
    """Height of the leg below the knee, mm, on the safe side."""
    depth = -block.levels["knee"]
    return max(KNEE_LEG_SHARE * inside_leg - depth, 0.5 * (inside_leg - depth))


def legs_for(
    block: Block,
    waist_sides: tuple[complex, complex],
    inside_leg: float,
    stretch: float,
    hem: float | None,
    knee: float | None,
) -> LegSeams:
    """Legs of the asked length, hem girth and knee girth (None: the method's).

    Raises
    ------
    DraftError
        When the seams would have to lean too much; it names the limit.
    """
    if knee is not None:
        check_knee(block, inside_leg, hem, knee)
    own = own_widths(block, inside_leg, knee)

    def moved(out: float) -> LegSeams:
        widths = Widths(own.hem_inseam + out, own.hem_side + out, own.knee)
        return cut_legs(block, waist_sides, inside_leg, stretch, widths)

    if hem is None:
        return moved(0.0)
    # A knee that was asked for carries the hem along: from there the room is counted.
    middle, room = own.at_knee, hem_room(block, inside_leg)
    start = moved(middle).hem
    out = (hem - start) / 4
    if abs(out) > room:
        word, edge = ("at most", start + 4 * room) if out > 0 else ("at least", start - 4 * room)
        raise DraftError(
            "style.leg.hem", hem, f"{word} {edge:.0f} mm for an inside leg of {inside_leg:.0f}", "choose another width"
        )
    return moved(solve(lambda more: moved(more).hem, hem, middle + out))
