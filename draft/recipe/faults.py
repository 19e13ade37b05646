"""What is wrong in a recipe's file, told with the key and the line of every fault at once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import fields
from itertools import islice
from typing import TYPE_CHECKING, Any

from draft.errors import DraftError, collected, nearest
from draft.recipe.entries import Entries
from draft.recipe.lines import Key, Place, line_of, lines_of

if TYPE_CHECKING:
    from cattrs.errors import ForbiddenExtraKeysError

LONGEST_VALUE = 60
MOST_TOLD = 20  # faults at once
KEYS = {"mock_ups": "mock_up"}  # fields that have another name in the file
NEEDED = {
    "body": ("a table of measures", "write [body], and the measures below it"),
    "date": ("the day it was tried on", "write date = 2026-03-01"),
}


def told(error: Exception, tables: dict[str, Any], text: str, name: str) -> DraftError:
    """One error that tells the first faults with their places in the file; what is no fault of the file is raised."""
    lines = lines_of(text)
    found = islice(_faults(error, (), tables), MOST_TOLD)
    return collected(_placed(place, fault, lines, name) for place, fault in found)


def _placed(place: Place, fault: DraftError, lines: dict[Place, int], name: str) -> DraftError:
    line = line_of(place, lines)
    where = name if line is None else f"line {line} of {name}"
    value = fault.value
    if value is not None and len(repr(value)) > LONGEST_VALUE:
        value = f"{repr(value)[: LONGEST_VALUE - 3]}..."
    return DraftError(f"{written(place)} ({where})", value, fault.expected, fault.remedy)


def written(place: Place) -> str:
    """Place as people write it; members of a list count from 1.

    Examples
    --------
    >>> written(("mock_up", 0, "alterations", 1, "by"))
    'mock_up[1].alterations[2].by'
    """
    return "".join(f"[{key + 1}]" if isinstance(key, int) else f".{key}" for key in place).lstrip(".")


def _faults(error: Exception, place: Place, value: Any) -> Iterator[tuple[Place, DraftError]]:
    """Places and faults inside an error that was raised at a place; `value` is what stands there."""
    from cattrs.errors import BaseValidationError, ForbiddenExtraKeysError

    if isinstance(error, BaseValidationError):
        for inner in error.exceptions:
            step = _step(inner)
            yield from _faults(inner, (*place, *step), _inside(value, step))
    elif isinstance(error, ForbiddenExtraKeysError):
        yield from _unknown(error, place, value)
    elif isinstance(error, DraftError):
        whole = ".".join(key for key in place if isinstance(key, str))
        for single in error.many:
            rest = single.field.removeprefix(whole).strip(".")
            yield (*place, *(rest.split(".") if rest else ())), single
    elif isinstance(error, KeyError):
        expected, remedy = NEEDED[str(place[-1])]
        yield place, DraftError("", None, expected, remedy)
    else:
        raise error


def _step(error: BaseException) -> tuple[Key, ...]:
    from cattrs.errors import AttributeValidationNote, IterableValidationNote

    for note in getattr(error, "__notes__", ()):
        if isinstance(note, AttributeValidationNote):
            return (KEYS.get(note.name, note.name),)
        if isinstance(note, IterableValidationNote):
            return (note.index,)
    return ()


def _inside(value: Any, step: tuple[Key, ...]) -> Any:
    try:
        return value[step[0]] if step else value
    except (KeyError, IndexError, TypeError):
        return None


def _unknown(error: ForbiddenExtraKeysError, place: Place, value: Any) -> Iterator[tuple[Place, DraftError]]:
    known = [KEYS.get(entry.name, entry.name) for entry in fields(error.cl)]
    if error.cl is Entries:
        known = ["format", *known]
    for key in sorted(error.extra_fields, key=str):
        near = nearest(key, known)
        remedy = f"write {near!r}" if near else "leave it out"
        yield (*place, key), DraftError("", _inside(value, (key,)), "one of " + (", ".join(known) or "none"), remedy)
