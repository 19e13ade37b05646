"""Whether a front has room for a size of its pocket."""

from __future__ import annotations

from math import floor

from draft.errors import DraftError


def fitted(field: str, value: float, least: float, most: float, remedy: str) -> float:
    """Return the size again, mm, if the front has room for it.

    Raises
    ------
    DraftError
        When it is larger than `most`, the largest that this front has room for, or when that is less than `least`.

    >>> fitted("width", 120, 50, 130, "make it narrower")
    120
    >>> fitted("width", 140, 50, 130.7, "make it narrower")
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: style.pocket.width is 140.0, expected at most 130 mm on this front: make it narrower.
    """
    if most < least:
        expected = f"room for {least:g} mm on this front, which has {max(0, floor(most))}"
        raise DraftError(
            f"style.pocket.{field}", float(max(value, least)), expected, f"{remedy}, or leave the pocket out"
        )
    if value > most:
        raise DraftError(f"style.pocket.{field}", float(value), f"at most {floor(most)} mm on this front", remedy)
    return value
