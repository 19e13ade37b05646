"""What a recipe consists of, checked: the entries of its file.

Glossary
--------
mock-up   a garment sewn from cheap cloth to see how the pattern fits; also: muslin, toile
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date, datetime
from typing import Literal
from unicodedata import category

from draft.alter.base import Alteration
from draft.body import Body
from draft.drafting import checked_style
from draft.errors import DraftError
from draft.fitting.fit import checked_fit
from draft.methods.catalogue import method_of
from draft.style import Style

Garment = Literal["shorts", "trousers"]
FORMAT = 1
"""Version of the file format; a file of a newer one is refused."""
UNWRITTEN = ("Cc", "Cs")  # control characters and halves of characters


@dataclass(frozen=True)
class Fitting:
    """One mock-up: when it was tried on, what was seen, and the alterations that were learned from it."""

    date: date
    notes: str = ""
    alterations: tuple[Alteration, ...] = ()

    def __post_init__(self) -> None:
        if not isinstance(self.date, date) or isinstance(self.date, datetime):
            raise DraftError("mock_up.date", self.date, "a date without a time", "write it as 2026-03-01")
        if not isinstance(self.notes, str):
            raise DraftError("mock_up.notes", self.notes, "text", "write what was seen, or leave it out")
        wrong = next((c for c in self.notes if category(c) in UNWRITTEN and c not in "\n\t"), None)
        if wrong is not None:
            raise DraftError("mock_up.notes", wrong, "characters that a file can hold", "leave this character out")
        if not isinstance(self.alterations, tuple) or not all(isinstance(a, Alteration) for a in self.alterations):
            expected = "a tuple of alterations"
            remedy = 'write (draft.alteration("sway_back", by=12),)'
            raise DraftError("mock_up.alterations", self.alterations, expected, remedy)


@dataclass(frozen=True)
class Entries:
    """Everything that a pattern is made from, checked; see :class:`draft.recipe.Recipe`."""

    body: Body
    style: Style = field(default_factory=Style)
    garment: Garment = "shorts"
    method: str = "centre_line"
    fit: str = "measured"
    mock_ups: tuple[Fitting, ...] = ()

    def __post_init__(self) -> None:
        if not isinstance(self.body, Body):
            raise DraftError("body", self.body, "a draft.Body", "write draft.Body(waist=..., hip=..., ...)")
        checked_style(self.style)
        if not isinstance(self.garment, str) or self.garment not in ("shorts", "trousers"):
            raise DraftError("garment", self.garment, "'shorts' or 'trousers'", "choose one of these")
        if not isinstance(self.method, str):
            expected = "the name of a method, which a file can hold"
            raise DraftError("method", self.method, expected, "draft.methods() lists them")
        method_of(self.method)
        checked_fit(self.fit)
        if not isinstance(self.mock_ups, tuple) or not all(isinstance(m, Fitting) for m in self.mock_ups):
            raise DraftError("mock_up", self.mock_ups, "a tuple of mock-ups", "write (draft.Fitting(date=...),)")
