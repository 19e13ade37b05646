"""Flat hook and bar of a band: nothing of them is seen outside.

The hook is sewn to the inner layer of the end that lies on top, the bar to the outer layer of the end underneath. Both
marks are centred on one place: where they lie on each other when the band is closed. A hook centred 10 from the end
was read as the usage of dress trousers; the sizes of hook and bar are common practice, no source.
"""

from __future__ import annotations

from draft.errors import DraftError
from draft.geometry.path import Path
from draft.piece import InnerLine
from draft.units import HAIR, at_least, fmt

HOOK_AT = 10.0  # its centre from the end of the overlap
HOOK_HIGH = 13.0  # across the band
HOOK_LONG = 12.0  # along it
AROUND_HOOK = 3.0  # of the band above and below
BEHIND_BAR = 6.0  # of the underlap beyond the middle of the bar


def check_room(depth: float, under: float, overlap: float = 0.0) -> None:
    """Refuse a band without room for the hook, or an underlap without room for the bar.

    Parameters
    ----------
    depth, under, overlap : float
        Finished depth of the band, and how far its ends run past the seam that opens, mm.

    Raises
    ------
    DraftError
        With the least depth or underlap, mm.

    Examples
    --------
    >>> check_room(depth=40, under=10)
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: style.band.underlap is 10, expected at least 16 mm to carry the bar: make it wider.
    """
    least = HOOK_HIGH + 2 * AROUND_HOOK
    if depth < least - HAIR:
        raise DraftError(
            "style.band.depth", depth, f"at least {least:g} mm for a flat hook", "make it deeper or take a button"
        )
    least = max(0.0, HOOK_AT - overlap + BEHIND_BAR)
    if under < least - HAIR:
        raise DraftError(
            "style.band.underlap", under, f"at least {at_least(least)} mm to carry the bar", "make it wider"
        )


def hook_marks(centre: complex, along: complex) -> tuple[InnerLine, ...]:
    """Cross where the hook is sewn; `along` is the direction of the band there."""
    return _cross(centre, along * HOOK_LONG / 2, "hook, inside")


def bar_marks(centre: complex, along: complex) -> tuple[InnerLine, ...]:
    """Cross where the bar is sewn."""
    return _cross(centre, along * HOOK_LONG / 2, "bar")


def _cross(centre: complex, half: complex, note: str) -> tuple[InnerLine, ...]:
    up = 1j * half * HOOK_HIGH / HOOK_LONG
    return (
        InnerLine("placement", Path.line(centre - half, centre + half), note),
        InnerLine("placement", Path.line(centre - up, centre + up)),
    )


def hook_notes() -> list[str]:
    """What to buy, and how it is sewn."""
    return [
        f"hook and bar: 1 flat hook with bar, at most {fmt(HOOK_HIGH, 0)} high; sew the hook to the inner layer of the "
        "overlap and to the interfacing, not through the outer layer, and the bar through all of the underlap; both "
        "before the band is closed where they are clinched"
    ]
