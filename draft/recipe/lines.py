"""Where each key of a TOML text stands: the line on which its statement begins.

The parser of Python tells no lines, so the text is read once more, one statement at a time, by that same parser.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator, Mapping
from typing import Any, TypeAlias

Key: TypeAlias = str | int
Place: TypeAlias = tuple[Key, ...]
"""Keys from the top of the file down; members of a list count from 0."""

LONGEST_STATEMENT = 300  # lines; after a longer one no more lines are told


def lines_of(text: str) -> dict[Place, int]:
    r"""Lines, counted from 1, of every table and every key of a text that is sound TOML.

    Examples
    --------
    >>> lines_of('a = 1\n[[b]]\nc = 2\n[[b]]\n')
    {('a',): 1, ('b',): 2, ('b', 0): 2, ('b', 0, 'c'): 3, ('b', 1): 4}
    """
    found: dict[Place, int] = {}
    members: dict[Place, int] = {}
    table: Place = ()
    for line, head, statement in _statements(text):
        if head:
            table = _table(statement, members)
            for depth in range(1, len(table) + 1):
                found.setdefault(table[:depth], line)
        else:
            for place in _keys(statement, table):
                found.setdefault(place, line)
    return found


def line_of(place: Place, lines: Mapping[Place, int]) -> int | None:
    """Line of a place, or of what it lies in; None where not even that is in the file."""
    return next((lines[place[:depth]] for depth in range(len(place), 0, -1) if place[:depth] in lines), None)


def _statements(text: str) -> Iterator[tuple[int, bool, dict[str, Any]]]:
    """Line, whether it opens a table, and content of each statement."""
    chunk: list[str] = []
    for number, line in enumerate(text.replace("\r\n", "\n").split("\n"), 1):
        chunk.append(line)
        if len(chunk) > LONGEST_STATEMENT:
            return
        try:
            statement = tomllib.loads("\n".join(chunk))
        except tomllib.TOMLDecodeError:
            continue  # it goes on in the next line
        if statement:
            yield number - len(chunk) + 1, re.match(r"\s*\[", chunk[0]) is not None, statement
        chunk = []


def _table(head: dict[str, Any], members: dict[Place, int]) -> Place:
    """Place of the table that a head opens; `members` counts those of each list of tables."""
    place: Place = ()
    inside: Any = head
    while inside:
        ((key, inside),) = inside.items()
        place = (*place, key)
        if isinstance(inside, list):
            members[place] = members.get(place, 0) + 1
            inside = inside[0]
        if place in members:
            place = (*place, members[place] - 1)
    return place


def _keys(value: object, place: Place) -> Iterator[Place]:
    parts = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, part in parts:
        yield (*place, key)
        yield from _keys(part, (*place, key))
