"""Choice: a small frozen class whose fields know their limits, and what every kind of choice is made with."""

from __future__ import annotations

from dataclasses import dataclass, field, fields
from difflib import get_close_matches
from functools import wraps
from typing import Any, ClassVar, TypeVar, dataclass_transform

from draft.errors import DraftError
from draft.units import to_mm


def mm(default: float | None, low: float, high: float) -> Any:
    """Field in mm between two limits; a default of None lets None be chosen."""
    return field(default=default, metadata={"low": low, "high": high, "optional": default is None})


def whole(default: int, low: int, high: int) -> Any:
    """Whole number between two limits."""
    return field(default=default, metadata={"low": low, "high": high, "whole": True})


def share(default: float | None = None) -> Any:
    """Share from 0 to 1; a default of None lets None be chosen."""
    return field(default=default, metadata={"low": 0.0, "high": 1.0, "optional": default is None, "share": True})


def one_of(default: str | None, *names: str) -> Any:
    """One of a few names; None is allowed when it is the default."""
    return field(default=default, metadata={"names": names, "optional": default is None})


def yes_no(*, default: bool) -> Any:
    """Field that is True or False."""
    return field(default=default, metadata={"flag": True})


C = TypeVar("C", bound=type)


@dataclass_transform(kw_only_default=True, frozen_default=True, field_specifiers=(field,))
def choice(cls: C) -> C:
    """Class decorator: a frozen dataclass with keywords only, whose misspelt keyword is told with the nearest name."""
    made: Any = dataclass(frozen=True, kw_only=True)(cls)
    plain = made.__init__
    names = [entry.name for entry in fields(made)]

    @wraps(plain)
    def init(self: Any, *positional: Any, **given: Any) -> None:
        if positional:
            example = f"{names[0]}=..." if names else ""
            raise DraftError(made.where, positional, "choices by name", f"write {cls.__name__}({example})")
        for name in [n for n in given if n not in names]:
            near = get_close_matches(name, names, n=1)
            remedy = f"write {near[0]!r}" if near else "choose one of these"
            raise DraftError(f"{made.where}.{name}", given[name], "one of " + ", ".join(names), remedy)
        plain(self, **given)

    made.__init__ = init
    return made  # type: ignore[no-any-return]


@choice
class Choice:
    """Base of all choices: reads text with units, refuses what lies outside the limits of a field."""

    where: ClassVar[str] = "style"

    def __post_init__(self) -> None:
        for entry in fields(self):
            value = getattr(self, entry.name)
            name = f"{self.where}.{entry.name}"
            checked = _checked(name, value, dict(entry.metadata))
            object.__setattr__(self, entry.name, checked)


def _checked(name: str, value: Any, rule: dict[str, Any]) -> Any:
    if not rule or (value is None and rule.get("optional")):
        return value
    if "names" in rule:
        return _named(name, value, rule["names"])
    if "flag" in rule:
        if not isinstance(value, bool):
            raise DraftError(name, value, "True or False", "choose one of the two")
        return value
    if "whole" in rule:
        return _counted(name, value, rule)
    if rule.get("share"):
        number = _plain_number(name, value)
        unit = ""
    else:
        number, unit = to_mm(value, name), " mm"
    if not rule["low"] <= number <= rule["high"]:
        expected = f"{rule['low']:g} to {rule['high']:g}{unit}"
        raise DraftError(name, value, expected, "choose a value inside these limits")
    return number


def _named(name: str, value: object, names: tuple[str, ...]) -> object:
    if not isinstance(value, str) or value not in names:
        raise DraftError(name, value, " or ".join(repr(n) for n in names), "choose one of these")
    return value


def _counted(name: str, value: object, rule: dict[str, Any]) -> int:
    if isinstance(value, bool) or not isinstance(value, int) or not rule["low"] <= value <= rule["high"]:
        raise DraftError(name, value, f"a whole number from {rule['low']} to {rule['high']}", "choose one of these")
    return value


def _plain_number(name: str, value: object) -> float:
    if isinstance(value, bool) or not isinstance(value, float | int):
        raise DraftError(name, value, "a number from 0 to 1", "give a share, e.g. 0.4")
    return float(value)
