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

FORK_REACH_MM, FORK_REACH_SHARE = 75.0, 0.45  # how far down the inseam is turned square to the crotch seam
KNEE_REACH_MM = 90.0
NEAR_KNEE_MM = 60.0  # a hem this little below the knee makes no bend at the knee
STRAIGHTEN_MM = 10.0  # added at each inseam of a shorts leg (common practice, no source)
STRAIGHTEN_FADE_MM = 100.0  # above the knee
STEEPEST_LEAN = 0.55  # a seam may lean at most this much per mm of length
LENGTH_TOL_MM = 1e-4


@dataclass(frozen=True)
class Widths:
    """How far each seam is moved out at the hem and at the knee, mm; at the hem inseam and side apart."""

    hem_inseam: float = 0.0
    hem_side: float = 0.0
    knee: float = 0.0


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


def inseam_to(panel: PanelBlock, y: float, widths: Widths) -> Path:
    """Inseam from the hem at height `y` to the fork, square to the crotch seam at its end."""
    knee = panel.knee_inseam + widths.knee
    if y >= panel.knee_inseam.imag:
        whole = bow(panel.knee_inseam, panel.fork, panel.inseam_hollow)
        _, raw = whole.split(line_crossings(whole, 1j * y, 1 + 0j)[0])
        path = Path((_leaned(raw, widths.hem_inseam),))
    else:
        hem = with_y(panel.knee_inseam, panel.hem_inseam, y) + widths.hem_inseam
        if panel.knee_inseam.imag - y < NEAR_KNEE_MM:
            share = abs(hem - panel.fork) / abs(panel.knee_inseam - panel.fork)
            path = Path((bow(hem, panel.fork, panel.inseam_hollow * share**2),))
        else:
            path = Path(bow_into(hem, knee, panel.fork, 0.0, panel.inseam_hollow))
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
    knee = panel.knee_side - widths.knee
    hem = with_y(panel.knee_side, panel.hem_side, y) - widths.hem_side
    if panel.knee_side.imag - y < NEAR_KNEE_MM:
        return panel.side_to(waist_side, hem)
    upper = panel.side_to(waist_side, knee)
    return flow_through(Path.join(upper, Line(knee, hem)), upper.length, KNEE_REACH_MM)


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
    at_knee = 0.0
    if knee is not None:
        front, back = block.front, block.back
        own = sum(p.knee_inseam.real - p.knee_side.real for p in (front, back))
        at_knee = (knee - own) / 4
    return Widths(hem_inseam=more, knee=at_knee)


def legs_for(
    block: Block,
    waist_sides: tuple[complex, complex],
    inside_leg: float,
    stretch: float,
    hem: float | None,
    knee: float | None,
) -> LegSeams:
    """Legs of the asked length, hem girth and knee girth (None: the method's)."""
    own = own_widths(block, inside_leg, knee)
    if hem is None:
        return cut_legs(block, waist_sides, inside_leg, stretch, own)

    def moved(out: float) -> Widths:
        return Widths(own.hem_inseam + out, own.hem_side + out, own.knee)

    start = cut_legs(block, waist_sides, inside_leg, stretch, own).hem
    out = (hem - start) / 4
    limit = STEEPEST_LEAN * inside_leg
    if abs(out) > limit:
        word, edge = ("at most", start + 4 * limit) if out > 0 else ("at least", start - 4 * limit)
        raise DraftError(
            "style.leg.hem", hem, f"{word} {edge:.0f} mm for an inside leg of {inside_leg:.0f}", "choose another width"
        )
    found = cut_legs(block, waist_sides, inside_leg, stretch, moved(out))
    for _ in range(6):
        miss = hem - found.hem
        if abs(miss) < 0.01:
            break
        out += miss / 4
        found = cut_legs(block, waist_sides, inside_leg, stretch, moved(out))
    return found
