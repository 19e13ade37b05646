"""From TOML text to a recipe; everything that is wrong is told with its key and its line.

The tables are taken apart by cattrs along the types of the classes. Lengths, words and limits are left to the classes
themselves, which say best what they expect.
"""

from __future__ import annotations

import os
import re
import tomllib
from datetime import date
from functools import cache
from pathlib import Path
from types import GenericAlias, UnionType
from typing import TYPE_CHECKING, Any, Literal, Union, get_args, get_origin

from draft.alter.base import Alteration
from draft.alter.catalogue import alteration
from draft.body import Body
from draft.choice import Choice
from draft.errors import DraftError, nearest
from draft.recipe.entries import FORMAT, Entries, Fitting
from draft.recipe.faults import told
from draft.recipe.kinds import FAMILIES, kinds_of

if TYPE_CHECKING:
    from cattrs import Converter
    from cattrs.dispatch import StructureHook

LARGEST_FILE = 256 * 1024  # bytes; a recipe with ten mock-ups has about 5 thousand
MOST_DOTS = 16  # in one key; the time to read a key grows with the square of its dots
DOTTED = re.compile(
    rf"""(?:(?:(?<![\w-])[\w-]++|"(?:[^"\\\n]|\\.)*+"|'[^'\n]*+')[ \t]*+\.[ \t]*+){{{MOST_DOTS}}}""", re.ASCII
)
ABSENT = "none"
"""What a file says for a part that the garment does not have, where the default has one."""


def text_of_file(path: str | os.PathLike[str]) -> tuple[str, str]:
    """Text of a recipe's file, and the name of the file."""
    try:
        file = Path(path)
    except TypeError:
        raise DraftError("path", type(path).__name__, "the name of a file", "write it as text") from None
    try:
        if not file.is_file():
            here = "this is a folder" if file.is_dir() else "there is none of this name"
            raise DraftError("path", str(file), "a recipe file", f"check the name: {here}")
        with file.open("rb") as opened:
            content = opened.read(LARGEST_FILE + 1)
    except (OSError, ValueError) as error:
        if isinstance(error, DraftError):
            raise
        reason = getattr(error, "strerror", None) or str(error)
        raise DraftError("path", str(file), "a file that can be read", f"check it ({reason.lower()})") from None
    if len(content) > LARGEST_FILE:
        expected = f"a recipe of at most {LARGEST_FILE // 1024} kB"
        raise DraftError("path", str(file), expected, "check that this is the right file")
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        byte = content[error.start : error.start + 1]
        raise DraftError(f"line {line} of {file.name}", byte, "text in UTF-8", "save the file as UTF-8") from None
    return text, file.name


def entries_of(text: str, name: str) -> Entries:
    """Entries of a text; `name` says in errors what was read."""
    tables = _parsed(text, name)
    try:
        _check_format(tables)
        del tables["format"]
        entries: Entries = _converter().structure(tables, Entries)
    except Exception as error:
        raise told(error, tables, text, name) from None
    return entries


def _parsed(text: str, name: str) -> dict[str, Any]:
    if dotted := DOTTED.search(text):
        line = text.count("\n", 0, dotted.start()) + 1
        expected = f"fewer than {MOST_DOTS} words joined by dots"
        raise DraftError(f"line {line} of {name}", f"{dotted[0][:30]}...", expected, "part them by blanks")
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        lines = text.rstrip().split("\n")
        reason = str(error).split(" (at ")[0]
        at = re.search(r"at line (\d+)", str(error))
        number = min(int(at[1]), len(lines)) if at else len(lines)
        said = lines[number - 1].strip()[:60]
        remedy = f"correct it ({reason[:1].lower()}{reason[1:]})"
        raise DraftError(f"line {number} of {name}", said, "TOML", remedy) from None
    except (RecursionError, ValueError) as error:  # nested without end; a number or a date that cannot be
        reason = "nested too deeply" if isinstance(error, RecursionError) else str(error)
        raise DraftError(name, f"{text[:30]}...", "TOML", f"correct it ({reason})") from None


def _check_format(tables: dict[str, Any]) -> None:
    version = tables.get("format")
    if version is None:
        raise DraftError("format", None, f"{FORMAT}", f"write format = {FORMAT} on top of the file")
    if isinstance(version, bool) or not isinstance(version, int) or version < 1:
        raise DraftError("format", version, f"{FORMAT}", f"write format = {FORMAT}")
    if version > FORMAT:
        raise DraftError("format", version, f"at most {FORMAT}", "update draft: the file is of a newer version")


@cache
def _converter() -> Converter:
    """What takes tables apart, along the types."""
    from cattrs import Converter
    from cattrs.gen import make_dict_structure_fn, override

    converter = Converter(detailed_validation=True, forbid_extra_keys=True)
    for leaf in (str, int, float, bool):
        converter.register_structure_hook(leaf, _as_it_is)
    converter.register_structure_hook_func(lambda t: _origin(t) is Literal, _as_it_is)
    converter.register_structure_hook_func(lambda t: _origin(t) is tuple, lambda v, t: _tuple(converter, v, t))
    converter.register_structure_hook_factory(
        lambda t: isinstance(t, type) and issubclass(t, Choice), lambda t: _choice(converter, t)
    )
    converter.register_structure_hook_func(_maybe_part, lambda v, t: _part_or_none(converter, v, t))
    converter.register_structure_hook(Body, lambda v, _: Body(**_table(v, "write [body], and the measures below it")))
    converter.register_structure_hook(Alteration, lambda v, _: _alteration(v))
    converter.register_structure_hook(date, _as_it_is)
    converter.register_structure_hook(Fitting, _of_table(make_dict_structure_fn(Fitting, converter), "[[mock_up]]"))
    renamed = make_dict_structure_fn(Entries, converter, mock_ups=override(rename="mock_up"))
    converter.register_structure_hook(Entries, renamed)
    return converter


def _as_it_is(value: Any, _: Any) -> Any:
    return value


def _origin(kind: Any) -> Any:
    """What a generic type is made of: tuple of ``tuple[int, ...]``, Union of ``int | None``."""
    return get_origin(kind)


def _table(value: object, remedy: str) -> dict[str, Any]:
    if not isinstance(value, dict):
        raise DraftError("", value, "a table", remedy)
    return value


def _of_table(hook: StructureHook, head: str) -> StructureHook:
    return lambda value, kind: hook(_table(value, f"write {head}"), kind)


def _tuple(converter: Converter, value: object, kind: Any) -> tuple[Any, ...]:
    if not isinstance(value, list):
        table = isinstance(value, dict)
        remedy = "write its head in double brackets, [[...]]" if table else "write it in brackets, [...]"
        raise DraftError("", value, "a list", remedy)
    members: Any = GenericAlias(list, get_args(kind)[:1])
    return tuple(converter.structure(value, members))


def _choice(converter: Converter, choice: type[Choice]) -> StructureHook:
    from cattrs.gen import make_dict_structure_fn

    if choice not in FAMILIES:
        return _of_table(make_dict_structure_fn(choice, converter), f"[{choice.where}]")

    def hook(value: object, _: Any) -> Choice:
        if isinstance(value, str):
            value = {"kind": value}
        parts = dict(_table(value, f'write [{choice.where}], and kind = "..." below it'))
        kinds = kinds_of(choice)
        name = parts.pop("kind", None)
        if not isinstance(name, str) or name not in kinds:
            near = nearest(str(name), kinds) or next(iter(kinds))
            raise DraftError("kind", name, "one of " + ", ".join(kinds), f'write kind = "{near}"')
        return converter.structure(parts, kinds[name])

    return hook


def _maybe_part(kind: Any) -> bool:
    return _origin(kind) in (Union, UnionType) and any(
        isinstance(arg, type) and issubclass(arg, Choice) for arg in get_args(kind)
    )


def _part_or_none(converter: Converter, value: object, kind: Any) -> Any:
    if value == ABSENT:
        return None
    return converter.structure(value, next(arg for arg in get_args(kind) if arg is not type(None)))


def _alteration(value: object) -> Alteration:
    amounts = dict(_table(value, 'write [[mock_up.alterations]], and name = "..." below it'))
    name = amounts.pop("name", None)
    if not isinstance(name, str):
        raise DraftError("name", name, "the name of an alteration", 'write it as name = "sway_back"')
    try:
        return alteration(name, **amounts)
    except DraftError as error:
        where = error.field.split(".")[-1]
        raise DraftError(
            where if where in amounts or error.value is None else "name", error.value, error.expected, error.remedy
        ) from None
