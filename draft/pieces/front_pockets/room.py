"""Whether a front has room for a size of its pocket."""

from __future__ import annotations

from draft.errors import DraftError
from draft.style import Pocket
from draft.units import HAIR, at_most


def fitted(pocket: Pocket, field: str, value: float, least: float, most: float, remedy: str) -> float:
    """Return a size of the pocket again, mm, if the front has room for it.

    Raises
    ------
    DraftError
        When it is larger than `most`, the largest that this front has room for; or, when that is less than `least`, so
        that no value works, about the pocket itself.

    >>> from draft.style import CurvedPocket
    >>> fitted(CurvedPocket(), "width", 120, 50, 130, "make it narrower")
    120
    >>> fitted(CurvedPocket(), "width", 140, 50, 130.7, "make it narrower")
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: style.pocket.width is 140.0, expected at most 130 mm on this front: make it narrower.
    >>> fitted(CurvedPocket(), "width", 30, 50, 40, "make it deeper")
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: style.pocket is 'CurvedPocket', expected 50 mm for its width on this front, which has 40:
    make it deeper, or leave the pocket out.
    """
    if most < least - HAIR:
        what = field.replace("_", " ")
        expected = f"{least:g} mm for its {what} on this front, which has {at_most(max(0.0, most))}"
        raise DraftError("style.pocket", type(pocket).__name__, expected, f"{remedy}, or leave the pocket out")
    if value > most + HAIR:
        raise DraftError(f"style.pocket.{field}", float(value), f"at most {at_most(most)} mm on this front", remedy)
    return value
