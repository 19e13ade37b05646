"""The one exception of the library: what was given, what was expected, what to do."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches
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

    @property
    def many(self) -> tuple[DraftError, ...]:
        """The single complaints; one that stands alone holds itself."""
        return (self,)

    def _sentence(self) -> str:
        said = "is missing" if self.value is None else f"is {self.value!r}"
        return f"{self.field} {said}, expected {self.expected}: {self.remedy}."

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), (self.field, self.value, self.expected, self.remedy)


class CollectedError(DraftError):
    """Several wrong inputs told at once, one sentence each.

    ``field``, ``expected`` and ``remedy`` join those of the single complaints, ``value`` is the tuple of their values,
    and ``many`` holds the complaints themselves.

    Parameters
    ----------
    many : tuple of DraftError
        The single complaints, in the order of telling.
    """

    def __init__(self, many: tuple[DraftError, ...]) -> None:
        self._many = many
        super().__init__(
            ", ".join(error.field for error in many),
            tuple(error.value for error in many),
            "; ".join(error.expected for error in many),
            "; ".join(error.remedy for error in many),
        )

    @property
    def many(self) -> tuple[DraftError, ...]:
        """The single complaints, in the order of telling."""
        return self._many

    def _sentence(self) -> str:
        return "\n".join([f"{len(self.many)} inputs are wrong.", *map(str, self.many)])

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), (self.many,)


def collected(errors: Iterable[DraftError]) -> DraftError:
    """Join complaints into one error to raise; a single complaint stays what it is.

    Parameters
    ----------
    errors : iterable of DraftError
        At least one complaint; collected ones are taken apart first.

    Returns
    -------
    DraftError
        The complaint itself, or a `CollectedError`.

    Examples
    --------
    >>> print(collected([DraftError("a", 1, "2", "write 2"), DraftError("b", None, "3", "write 3")]))
    2 inputs are wrong.
    a is 1, expected 2: write 2.
    b is missing, expected 3: write 3.
    """
    many = tuple(single for error in errors for single in error.many)
    return many[0] if len(many) == 1 else CollectedError(many)


def nearest(word: str, choices: Iterable[str]) -> str | None:
    """Find the choice that a misspelt word most likely meant, or ``None`` when nothing is near.

    Examples
    --------
    >>> nearest("wasit", ["waist", "hip"])
    'waist'
    >>> nearest("shoulder", ["waist", "hip"]) is None
    True
    """
    return next(iter(get_close_matches(word, list(choices), n=1)), None)
