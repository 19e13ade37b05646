"""The outline of a patch or a flap: straight top, two sides, and a shaped lower edge."""

from __future__ import annotations

from dataclasses import dataclass

from draft.geometry.construct import hook
from draft.geometry.path import Path
from draft.geometry.points import unit
from draft.geometry.segments import Line, Motion

ROUND = 25.0  # corner of a rounded lower edge: below 25 it is hard to turn evenly (common practice, no source)
QUARTER_CIRCLE = 0.5523


@dataclass(frozen=True, eq=False)
class Shield:
    """Outline in the pocket's frame, walked counter-clockwise: side down, lower edge, centre side up, top."""

    side: Path
    lower: tuple[Path, ...]
    centre: Path
    top: Path

    def moved(self, motion: Motion) -> Shield:
        """Outline in another place."""
        lower = tuple(part.moved(motion) for part in self.lower)
        return Shield(self.side.moved(motion), lower, self.centre.moved(motion), self.top.moved(motion))

    @property
    def lower_names(self) -> tuple[str, ...]:
        """Names of the lower edges."""
        return ("lower",) if len(self.lower) == 1 else ("lower_side", "lower_centre")


def shield(width: float, height: float, top: float, taper: float, shape: str, point: float) -> Shield:
    """Outline of `width` at the top, which lies at the height `top`, and `height` to its lowest point.

    A pointed edge rises by at most four tenths of the height to its corners.

    Examples
    --------
    >>> made = shield(120, 140, 0, 5, "pointed", 20)
    >>> made.side.end, made.lower[0].end
    ((-55-120j), -140j)
    """
    half, foot = width / 2, width / 2 - taper
    rise = min(point, 0.4 * height) if shape == "pointed" else 0.0
    up = 1j * top
    a, b = -half + up, half + up
    low_a, low_b = -foot + up - 1j * (height - rise), foot + up - 1j * (height - rise)
    lower: tuple[Path, ...] = (Path.line(low_a, low_b),)
    if shape == "pointed":
        tip = up - 1j * height
        lower = (Path.line(low_a, tip), Path.line(tip, low_b))
    elif shape == "rounded":
        reach = min(ROUND, 0.4 * height, 0.8 * foot)
        down = unit(low_a - a)
        one, two = low_a - down * reach, low_b - unit(low_b - b) * reach
        left, right = hook(one, low_a, low_a + reach, QUARTER_CIRCLE), hook(low_b - reach, low_b, two, QUARTER_CIRCLE)
        lower = (Path.join(left, Line(left.p3, right.p0), right),)
    return Shield(Path.line(a, lower[0].start), lower, Path.line(lower[-1].end, b), Path.line(b, a))
