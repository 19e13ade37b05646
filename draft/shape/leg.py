"""The leg: inseam and side seam down to the hem, trued so that front and back close.

Front and back are cut at equal lengths along the seams, not at equal heights: then they are equal by construction. The
hem is drawn square to both seams, so front and back hems run on into each other.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from math import copysign

from draft.block import Block, PanelBlock
from draft.errors import DraftError
from draft.geometry.construct import bow, bow_into, smooth
from draft.geometry.flow import end_square, flow_through
from draft.geometry.meet import along_at_height, line_crossings
from draft.geometry.path import Path
from draft.geometry.points import unit, with_y
from draft.geometry.segments import Cubic, Line
from draft.shape.blend import blended
from draft.units import at_least, at_most

FORK_REACH_MM, FORK_REACH_SHARE = 75.0, 0.45  # how far down the inseam is turned square to the crotch seam
KNEE_REACH_MM = 90.0
NEAR_KNEE_MM = 60.0  # a hem just below the knee makes no bend there; from this depth it makes the method's
STRAIGHTEN_MM = 10.0  # added at each inseam of a shorts leg (common practice, no source)
STRAIGHTEN_FADE_MM = 100.0  # above the knee
STEEPEST_LEAN = 0.55  # a seam may be moved at most this much per mm of the length over which it is moved
NARROWEST_HEM = 60.0  # of a panel
STEEPEST_SLANT = 0.75  # and may lie across by at most this much per mm of its length
STRAIGHT_SHARE = 0.45  # of the inseam, at most, over which a straight hem turns the seams
LEAST_BEND = 1e-6  # a bend at the knee below this share is none
CURVED_SHARE = 1.04  # length of an inseam from fork to knee over its chord, with a margin
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


def largest(fits: Callable[[float], bool], most: float) -> float:
    """Largest value from 0 to `most` that still fits, when all below it fit too."""
    if fits(most):
        return most
    low, high = 0.0, most
    for _ in range(30):
        middle = (low + high) / 2
        low, high = (middle, high) if fits(middle) else (low, middle)
    return low


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


@dataclass(frozen=True, eq=False)
class SideTop:
    """Where a side seam begins: at a point of the waist level, and how it runs on above it."""

    at: complex
    above: Callable[[Path], Path] = field(default=lambda path: path)


def cut_legs(
    block: Block,
    sides: tuple[SideTop, SideTop],
    inside_leg: float,
    stretch: float,
    widths: Widths,
    straight_over: float = 0.0,
) -> LegSeams:
    """Both legs cut at the length `inside_leg` along the front inseam; the back inseam is `stretch` shorter.

    The front's hem ends level at side and inseam; the back is cut where its seams are as long as the front's. Over the
    last `straight_over` mm the seams are turned square to the hem's chord.
    """
    if straight_over:
        plain = cut_legs(block, sides, inside_leg, stretch, widths)
        down = [-1j * unit(hem.end - hem.start) for _, hem, _ in (plain.front, plain.back)]
        reach = min(straight_over, STRAIGHT_SHARE * inside_leg)
    else:
        down, reach = [0j, 0j], 0.0
    front, back = block.front, block.back

    def squared(seam: Path, down: complex) -> Path:
        return end_square(seam, down, reach) if reach else seam

    def front_inseam(y: float) -> Path:
        return squared(inseam_to(front, y, widths).reversed(), down[0]).reversed()

    def back_inseam(y: float) -> Path:
        return squared(inseam_to(back, y, widths).reversed(), down[1]).reversed()

    y_front = solve(lambda y: front_inseam(y).length, inside_leg, front.fork.imag - inside_leg * 0.99)
    inseam_f = front_inseam(y_front)
    y_back = solve(lambda y: back_inseam(y).length, inside_leg - stretch, back.fork.imag - inside_leg * 0.97)
    inseam_b = back_inseam(y_back)
    top_f, top_b = sides

    def back_side(y: float) -> Path:
        return squared(top_b.above(side_from(back, top_b.at, y, widths)), down[1])

    side_f = squared(top_f.above(side_from(front, top_f.at, y_front, widths)), down[0])
    side_b = back_side(solve(lambda y: back_side(y).length, side_f.length, y_front))
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
    """Refuse a knee girth on a leg that ends too little below the knee, or that slants its seams too much.

    A leg that ends above the knee has none, and the girth is left unused.
    """
    if inside_leg <= -block.levels["knee"]:
        return
    least = _to_knee(block, 0.0) + NEAR_KNEE_MM
    if inside_leg < least:
        expected = f"an inside leg of {at_least(least)} mm or more on this body, 60 below the knee"
        raise DraftError("style.leg.knee", knee, expected, "leave the knee out or make the leg longer")
    own = _own_knee(block)
    most = largest(lambda room: _knee_fits(block, inside_leg, hem, copysign(room, knee - own)), abs(knee - own) / 4)
    if most < abs(knee - own) / 4:
        edge = f"at most {at_most(own + 4 * most)}" if knee > own else f"at least {at_least(own - 4 * most)}"
        expected = f"{edge} mm for an inside leg of {inside_leg:.0f} (the method's own is {own:.0f})"
        raise DraftError("style.leg.knee", knee, expected, "choose another width")


def _knee_fits(block: Block, inside_leg: float, hem: float | None, out: float) -> bool:
    """Whether the seams may be moved out by `out` at the knee; a hem that is not asked for stays where it is."""
    below = inside_leg - _to_knee(block, out)
    room = STEEPEST_LEAN * (-block.levels["knee"] if hem is not None else min(-block.levels["knee"], below))
    return below >= NEAR_KNEE_MM and abs(out) <= room


def _to_knee(block: Block, out: float) -> float:
    """Length of the longer inseam from the fork to a knee moved out by `out`, mm, on the safe side."""
    return CURVED_SHARE * max(abs(panel.fork - panel.knee_inseam - out) for panel in (block.front, block.back))


def hem_room(block: Block, own: LegSeams, inside_leg: float, *, narrower: bool) -> float:
    """How far each seam may be moved at the hem, mm; below the knee only the stretch below it is moved."""
    depth = -block.levels["knee"]
    bend = knee_bend(inside_leg - depth)
    below = max(inside_leg - _to_knee(block, 0.0), 0.5 * (inside_leg - depth))
    moving = inside_leg if bend <= LEAST_BEND else 1 / (bend / below + (1 - bend) / inside_leg)
    if not narrower:
        return STEEPEST_LEAN * moving
    # The inseam slants inwards by itself, on large bodies much: all in all it may not lie down, nor meet the side.
    across = max(
        panel.fork.real - leg[2].start.real for panel, leg in ((block.front, own.front), (block.back, own.back))
    )
    widths = [abs(leg[1].end - leg[1].start) for leg in (own.front, own.back)]
    slant = STEEPEST_SLANT * inside_leg - across if bend <= LEAST_BEND else STEEPEST_LEAN * moving
    return max(0.0, min(STEEPEST_LEAN * moving, slant, (min(widths) - NARROWEST_HEM) / 2))


def legs_for(
    block: Block,
    sides: tuple[SideTop, SideTop],
    inside_leg: float,
    stretch: float,
    straight_over: float,
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
        return cut_legs(block, sides, inside_leg, stretch, widths, straight_over)

    if hem is None:
        return moved(0.0)
    # A knee that was asked for carries the hem along: from there the room is counted.
    begun = moved(own.at_knee)
    side = 1 if hem > begun.hem else -1
    farthest = own.at_knee + side * hem_room(block, begun, inside_leg, narrower=side < 0)
    edge = moved(farthest).hem
    if side * (hem - edge) > 0:
        limit = f"at most {at_most(edge)}" if side > 0 else f"at least {at_least(edge)}"
        expected = f"{limit} mm for an inside leg of {inside_leg:.0f}"
        raise DraftError("style.leg.hem", hem, expected, "choose another width")
    share = (hem - begun.hem) / (edge - begun.hem) if edge != begun.hem else 0.0
    return moved(solve(lambda out: moved(out).hem, hem, own.at_knee + share * (farthest - own.at_knee)))
