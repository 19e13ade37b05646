"""Button of a flap: its buttonhole in the flap and its place on the pocket underneath, in the pocket's frame.

The hole is as long as the button's diameter and thickness together and ends 3 beyond the button's centre, and the
flap laps it by half its diameter and 6, at least 15 (all read for waistbands, taken over). It stands upright in the
middle, in the direction in which the flap pulls; what stays clear above it, common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache, partial

from draft.errors import DraftError
from draft.geometry.nearest import nearest
from draft.geometry.path import Path
from draft.piece import InnerLine
from draft.pieces.back_pockets.patch_place import FLAP_ABOVE, Sizes, chosen, flap_outline, frame_of
from draft.pieces.plan import Plan
from draft.pieces.straight_band import BUTTON_CLEARANCE, BUTTON_FROM_END, HOLE_PAST_BUTTON
from draft.shape.leg import largest
from draft.units import at_least, at_most

CLEAR_OF_SEAM = 10.0  # from the flap's seam to the hole: what a buttonhole wants of interfacing beyond its ends (read)
CLEAR_OF_MOUTH = 3.0  # from the pocket's mouth to the button
SMALLEST, DEEPEST = 8.0, 200.0


def hole_length(plan: Plan) -> float:
    """Length of the buttonhole: diameter and thickness, mm."""
    pocket = chosen(plan)
    assert pocket.flap_button is not None
    return pocket.flap_button + pocket.flap_button_thickness


@lru_cache(maxsize=4)
def button_height(plan: Plan, s: Sizes) -> float:
    """Height of the button's centre in the pocket's frame: below the mouth, so negative.

    Raises
    ------
    DraftError
        When flap or pocket have no room for the button, with the largest that they have room for.
    """
    pocket = chosen(plan)
    assert pocket.flap_button is not None
    button = pocket.flap_button
    if not _fits(plan, s, button):
        most = largest(lambda d: d <= 0 or _fits(plan, s, d), button)
        deeper = largest(lambda depth: not _fits(plan, replace(s, flap=depth), button), DEEPEST)
        room = f"at most {at_most(most)} mm" if most >= SMALLEST else "no button"
        expected = f"{room} on a flap {s.flap:g} deep; {button:g} wants one of {at_least(deeper)}"
        remedy = "take a smaller button, or set style.back_pocket.flap_depth"
        raise DraftError("style.back_pocket.flap_button", button, expected, remedy)
    return _height(plan, s, pocket.flap_button)


def _fits(plan: Plan, s: Sizes, button: float) -> bool:
    centre = _height(plan, s, button)
    top = centre - HOLE_PAST_BUTTON + button + chosen(plan).flap_button_thickness
    return top <= FLAP_ABOVE - CLEAR_OF_SEAM and centre + button / 2 <= -CLEAR_OF_MOUTH


def _height(plan: Plan, s: Sizes, button: float) -> float:
    """Lowest height in the middle at which the flap laps a button far enough on all sides."""
    lap = max(BUTTON_FROM_END, button / 2 + BUTTON_CLEARANCE)
    made = flap_outline(plan, s)
    edges = [made.side, *made.lower, made.centre]
    high, low = FLAP_ABOVE, FLAP_ABOVE - s.flap
    return high - largest(partial(_lapped, edges, high, lap), high - low)


def _lapped(edges: list[Path], high: float, lap: float, down: float) -> bool:
    at = 1j * (high - down)
    return down <= 0 or all(nearest(edge, at)[1] >= lap for edge in edges)


def hole_lines(plan: Plan, s: Sizes) -> list[InnerLine]:
    """Buttonhole on the flap and on its lining."""
    low = button_height(plan, s) - HOLE_PAST_BUTTON
    frame, long = frame_of(plan, s), hole_length(plan)
    path = Path.line(frame.closed(1j * low), frame.closed(1j * (low + long)))
    return [InnerLine("buttonhole", path, f"buttonhole {long:g}")]


def button_lines(plan: Plan, s: Sizes) -> list[InnerLine]:
    """Button on the pocket."""
    button = chosen(plan).flap_button
    assert button is not None
    frame, centre, half = frame_of(plan, s), 1j * button_height(plan, s), button / 2
    across, upright = (Path.line(frame.closed(centre - d), frame.closed(centre + d)) for d in (half, 1j * half))
    return [InnerLine("button", across, f"button {button:g}"), InnerLine("button", upright)]


def button_notes(plan: Plan, s: Sizes) -> list[str]:
    """What to buy, and in which order."""
    pocket = chosen(plan)
    below = -button_height(plan, s)
    on_hem = below <= pocket.hem - 2
    backed = "through the turned hem" if on_hem else "with a scrap of interfacing behind it"
    return [
        f"flap buttons: 2, {pocket.flap_button:g} mm across; buttonhole {hole_length(plan):g} through flap and lining, "
        "upright, when the flap is made; try it on a scrap of the same layers",
        f"sew each button to the pocket alone, before that is sewn on, {below:.0f} below the mouth, {backed}",
    ]
