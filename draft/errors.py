"""The one exception of the library: what was given, what was expected, what to do."""

from __future__ import annotations

from typing import Any


class DraftError(ValueError):
    """A wrong input or an impossible choice, told in one sentence.

    Parameters
    ----------
    field : str
        Which input is wrong, e.g. ``"body.waist"``.
    value : object
        The value that was given, or ``None`` when it is missing.
    expected : str
        What would have been right, with its limits in mm.
    remedy : str
        What to do now.

    Examples
    --------
    >>> raise DraftError("style.leg.inside_leg", 5.0, "40 mm or more", "choose a longer leg")
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: style.leg.inside_leg is 5.0, expected 40 mm or more: choose a longer leg.
    """

    def __init__(self, field: str, value: object, expected: str, remedy: str) -> None:
        self.field = field
        self.value = value
        self.expected = expected
        self.remedy = remedy
        super().__init__(self._sentence())

    def _sentence(self) -> str:
        said = "is missing" if self.value is None else f"is {self.value!r}"
        return f"{self.field} {said}, expected {self.expected}: {self.remedy}."

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), (self.field, self.value, self.expected, self.remedy)
