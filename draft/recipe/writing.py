"""From a recipe to TOML text: only what differs from the defaults, written into the text it was read from.

tomlkit keeps what it is not asked to change: comments, order, spacing, and lengths in the units they were written in.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import MISSING, Field, fields
from typing import TYPE_CHECKING, Any, TypeAlias

from draft.alter.base import Alteration
from draft.body import Body
from draft.choice import Choice
from draft.errors import DraftError
from draft.recipe.entries import FORMAT, Entries
from draft.recipe.kinds import FAMILIES
from draft.recipe.reading import ABSENT, entries_of

if TYPE_CHECKING:
    from tomlkit.items import AoT

HEAD = '# Lengths are millimetres, or text with a unit: "72 cm", "28 3/8 in".\n'
Merge: TypeAlias = Callable[[Any, Mapping[str, Any], Mapping[str, Any]], None]
"""What brings a document from the old values to the new ones."""


def written(entries: Entries, source: str) -> str:
    """Text of the file: the source, which may be empty, with what has changed since."""
    old: dict[str, Any] = {}
    if source:
        read = entries_of(source, "the text")
        if _same(read, entries):
            return source
        old = plain(read)
    before = source or HEAD
    # Few layouts cannot take a change where it belongs, as a list of tables among dotted keys: there the whole table
    # is written anew. What comes out of a file must be what went in, so it is read once more.
    for merge in (_merge, _anew):
        text = _merged(before.replace("\r\n", "\n"), old, plain(entries), merge)
        if _reads_as(text, entries):
            return text.replace("\n", "\r\n") if "\r\n" in before else text
    expected = "text into which the changes can be written"
    raise DraftError("recipe.text", "its layout", expected, "save dataclasses.replace(recipe, text='') instead")


def _same(one: Entries, two: Entries) -> bool:
    return all(getattr(one, entry.name) == getattr(two, entry.name) for entry in fields(Entries))


def _reads_as(text: str, entries: Entries) -> bool:
    try:
        return _same(entries_of(text, "the text"), entries)
    except DraftError:
        return False


def plain(entries: Entries) -> dict[str, Any]:
    """Entries as tables of plain values, without what is a default of body and style."""
    tables: dict[str, Any] = {
        "format": FORMAT,
        "garment": entries.garment,
        "method": entries.method,
        "fit": entries.fit,
        "body": _body(entries.body),
    }
    if style := _choice(entries.style):
        tables["style"] = style
    if entries.mock_ups:
        tables["mock_up"] = [
            {
                "date": mock_up.date,
                **({"notes": mock_up.notes} if mock_up.notes else {}),
                **({"alterations": [_alteration(one) for one in mock_up.alterations]} if mock_up.alterations else {}),
            }
            for mock_up in entries.mock_ups
        ]
    return tables


def _body(body: Body) -> dict[str, Any]:
    defaults = {"crotch_depth_taken": "seated", "name": ""}
    told = {entry.name: getattr(body, entry.name) for entry in fields(body)}
    told = {"name": told.pop("name"), **told}
    return {name: _value(v) for name, v in told.items() if v is not None and v != defaults.get(name)}


def _choice(choice: Choice) -> dict[str, Any]:
    kind = {"kind": type(choice).__name__} if isinstance(choice, FAMILIES) else {}
    told = {entry.name: (getattr(choice, entry.name), _default(entry)) for entry in fields(choice)}
    return kind | {name: _value(value) for name, (value, default) in told.items() if value != default}


def _default(entry: Field[Any]) -> Any:
    return entry.default if entry.default_factory is MISSING else entry.default_factory()


def _value(value: Any) -> Any:
    if value is None:
        return ABSENT
    if isinstance(value, Choice):
        return _choice(value)
    if isinstance(value, tuple):
        return [_value(one) for one in value]
    if isinstance(value, float):
        return int(value) if value.is_integer() else float(value)
    return value


def _alteration(one: Alteration) -> dict[str, Any]:
    return {"name": one.name, **{name: _value(value) for name, value in one.amounts.items()}}


def _merged(text: str, old: Mapping[str, Any], new: Mapping[str, Any], merge: Merge) -> str:
    """Text with every change from the old values to the new ones."""
    import tomlkit
    from tomlkit.exceptions import TOMLKitError

    try:
        document = tomlkit.parse(text if text.endswith("\n") else f"{text}\n")
        merge(document, old, new)
        merged: str = tomlkit.dumps(document)
    except (TOMLKitError, TypeError, ValueError, AttributeError, IndexError, KeyError):
        return ""  # a layout that tomlkit cannot change; told when the text is read
    return merged.rstrip("\n") + "\n"


def _anew(document: Any, old: Mapping[str, Any], new: Mapping[str, Any]) -> None:
    """Write every table that changed anew, at the end."""
    for key in {**old, **new}:
        if old.get(key) != new.get(key) and key in document:
            del document[key]
    for key, value in new.items():
        if old.get(key) != value:
            document.add(key, _item(value))


def _merge(table: Any, old: Mapping[str, Any], new: Mapping[str, Any]) -> None:
    """Write every value that changed where it stands."""
    from tomlkit.container import OutOfOrderTableProxy
    from tomlkit.items import AoT, Table

    other_kind = old.get("kind") != new.get("kind")  # no field of the old kind may stay
    for key in list(table if other_kind else old):
        if key not in new and key in table:
            del table[key]
    for key, value in new.items():
        if key in old and old[key] == value:
            continue
        there = table.get(key)
        if isinstance(value, dict) and isinstance(there, Table | OutOfOrderTableProxy):
            before = old.get(key)
            _merge(there, before if isinstance(before, dict) else {}, value)
        elif isinstance(there, AoT) and _of_tables(value):
            _merge_list(there, old.get(key, []), value)
        elif there is None:
            table.add(key, _item(value))
        else:
            table[key] = _item(value)


def _merge_list(tables: AoT, old: list[Any], new: list[Any]) -> None:
    for _ in range(len(new), len(tables)):
        del tables[-1]
    for index, value in enumerate(new):
        if index < len(tables):
            _merge(tables[index], old[index], value)
        else:
            added = _item(value)
            added.trivia.indent = "\n"  # an empty line before it
            tables.append(added)


def _of_tables(value: object) -> bool:
    return isinstance(value, list) and bool(value) and all(isinstance(one, dict) for one in value)


def _item(value: Any) -> Any:
    """Value as tomlkit writes it: plain values before tables, text of several lines in lines."""
    import tomlkit

    if isinstance(value, dict):
        table = tomlkit.table()
        for key, one in sorted(value.items(), key=lambda entry: isinstance(entry[1], dict) or _of_tables(entry[1])):
            table.add(key, _item(one))
        return table
    if _of_tables(value):
        tables = tomlkit.aot()
        for one in value:
            tables.append(_item(one))
        return tables
    if isinstance(value, str) and "\n" in value:
        escaped = tomlkit.string(f".{value}", multiline=True).as_string()[4:]  # the dot: a first line end is dropped
        return tomlkit.value(f'"""\n{escaped}')
    return tomlkit.item(value)
