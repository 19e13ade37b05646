"""Recipe: everything that a pattern is made from, with what each mock-up taught.

Glossary
--------
number   of a mock-up: 1 is the first; state 0 of a recipe is the first draft, before any mock-up
"""

from __future__ import annotations

import os
from collections.abc import Iterable
from dataclasses import dataclass, field, fields, replace
from datetime import date
from pathlib import Path

from draft.alter.base import Alteration
from draft.drafting import shorts, trousers
from draft.errors import DraftError
from draft.export.files import write_text
from draft.pattern import Pattern
from draft.recipe.comparison import Comparison
from draft.recipe.entries import Entries, Fitting
from draft.recipe.reading import entries_of, text_of_file
from draft.recipe.writing import written


@dataclass(frozen=True)
class Recipe(Entries):
    """Everything that a pattern is made from; :func:`load` reads it from a file.

    Parameters
    ----------
    body : Body
    style : Style
    garment : {"shorts", "trousers"}
    method : str
        Name of a drafting method, see :func:`draft.methods`. A function of your own cannot be kept in a file.
    fit : {"measured", "formula"}
    mock_ups : tuple of Fitting
        In the order in which they were sewn.
    text : str
        The file that it was read from, so that comments, order and spacing outlive a change; not compared.

    Raises
    ------
    DraftError
        For a wrong input.

    Examples
    --------
    >>> from draft.body import Body
    >>> body = Body(waist="74 cm", hip=1000, crotch_depth=270, waist_to_hip=200, inside_leg=770)
    >>> print(Recipe(body, fit="formula").toml())
    # Lengths are millimetres, or text with a unit: "72 cm", "28 3/8 in".
    format = 1
    garment = "shorts"
    method = "centre_line"
    fit = "formula"
    <BLANKLINE>
    [body]
    waist = 740
    hip = 1000
    crotch_depth = 270
    waist_to_hip = 200
    inside_leg = 770
    <BLANKLINE>
    """

    text: str = field(default="", compare=False, repr=False)

    @property
    def name(self) -> str:
        """Name of the garment: that of its style, else what it is."""
        return self.style.name or self.garment.capitalize()

    def pattern(self, upto: int | None = None) -> Pattern:
        """Pattern with everything that was learned up to a mock-up.

        Parameters
        ----------
        upto : int, optional
            Number of the last mock-up that counts: 0 for the first draft; None: all of them.

        Raises
        ------
        DraftError
            For a number that does not exist, and what drafting itself raises.

        Examples
        --------
        >>> from draft.body import Body
        >>> body = Body(waist=740, hip=1000, crotch_depth=270, waist_to_hip=200, inside_leg=770)
        >>> Recipe(body).pattern().check()
        []
        """
        number = len(self.mock_ups) if upto is None else self._number("upto", upto)
        learned = [one for mock_up in self.mock_ups[:number] for one in mock_up.alterations]
        make = shorts if self.garment == "shorts" else trousers
        return make(self.body, self.style, method=self.method, fit=self.fit, alterations=learned)

    def _number(self, field: str, number: object) -> int:
        last = len(self.mock_ups)
        if isinstance(number, bool) or not isinstance(number, int) or not 0 <= number <= last:
            numbers = f"the number of a mock-up, 0 (the first draft) to {last}" if last else "0: there is no mock-up"
            raise DraftError(field, "None" if number is None else number, numbers, "choose one of these")
        return number

    def with_mock_up(self, alterations: Iterable[Alteration] = (), *, notes: str = "", date: date) -> Recipe:
        """Recipe with one more mock-up at its end.

        Parameters
        ----------
        alterations : iterable of Alteration
            What was learned, in the order of application; see :func:`draft.alteration`.
        notes : str
            What was seen; several lines, if you like.
        date : datetime.date
            When it was tried on.

        Examples
        --------
        >>> from datetime import date
        >>> from draft.alter.catalogue import alteration
        >>> from draft.body import Body
        >>> body = Body(waist=740, hip=1000, crotch_depth=270, waist_to_hip=200, inside_leg=770)
        >>> recipe = Recipe(body).with_mock_up(
        ...     [alteration("lengthen_at_hem", by=20)], notes="Short when sitting.", date=date(2026, 3, 1)
        ... )
        >>> [round(recipe.pattern(number).measure()["inside_leg"]) for number in (0, 1)]
        [160, 180]
        """
        if isinstance(alterations, Alteration):
            alterations = (alterations,)
        elif not isinstance(alterations, Iterable):
            raise DraftError("mock_up.alterations", alterations, "alterations", "write [draft.alteration(...)]")
        return replace(self, mock_ups=(*self.mock_ups, Fitting(date, notes, tuple(alterations))))

    def compare(self, i: int, j: int) -> Comparison:
        """Two states of the recipe, by the numbers of their mock-ups: a picture, and what changed in mm.

        Raises
        ------
        DraftError
            As :meth:`pattern`.
        """
        first, second = self._number("i", i), self._number("j", j)
        return Comparison(self.pattern(first), self.pattern(second), (_state(first), _state(second)))

    def toml(self) -> str:
        """Text of the file: what differs from the defaults, and what the file that it was read from says."""
        return written(self, self.text)

    def save(self, path: str | os.PathLike[str]) -> Path:
        """Write the recipe to a TOML file, all or nothing; returns the path.

        The file is made from the text that the recipe was read from, with its comments and order, and what has changed
        since; what somebody else wrote to the file in the meantime is lost.

        Raises
        ------
        DraftError
            When the file cannot be written; an old file stays as it was.
        """
        return write_text(path, self.toml())


def load(path: str | os.PathLike[str]) -> Recipe:
    """Read a recipe from a TOML file. Nothing in the file is run.

    Raises
    ------
    DraftError
        For a file that cannot be read, broken TOML, and whatever is wrong in it, with the place and the line; several
        wrong entries are told at once.

    Examples
    --------
    >>> from tempfile import TemporaryDirectory
    >>> from draft.body import Body
    >>> body = Body(waist=740, hip=1000, crotch_depth=270, waist_to_hip=200, inside_leg=770)
    >>> with TemporaryDirectory() as folder:
    ...     load(Recipe(body).save(f"{folder}/shorts.toml")) == Recipe(body)
    True
    """
    text, name = text_of_file(path)
    return of_text(text, name)


def of_text(text: str, name: str = "the text") -> Recipe:
    """Recipe of the text of a file; `name` says in errors what was read."""
    entries = entries_of(text, name)
    return Recipe(**{entry.name: getattr(entries, entry.name) for entry in fields(entries)}, text=text)


def _state(number: int) -> str:
    return f"after mock-up {number}" if number else "first draft"
