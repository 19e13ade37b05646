"""What an alteration is: a named change of a block or of a style, with its amount and what it promises.

Glossary
--------
fault    what is seen on the mock-up, and what the alteration cures
promise  which finished sizes change, by how much for each millimetre of the amount, and which stay as they were
exact    a size that depends on the whole leg: the amount is found so that this size changes by what was asked
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

from draft.block import Block
from draft.errors import DraftError, nearest
from draft.style import Style
from draft.units import to_mm

OnBlock = Callable[..., Block]
OnStyle = Callable[..., Style]
CROTCH = ("front_crotch", "back_crotch")


@dataclass(frozen=True)
class Argument:
    """One amount: its limits in mm, or the words to choose from; `default` None: it has to be given."""

    name: str
    low: float = 0.0
    high: float = 0.0
    default: float | None = None
    choices: tuple[str, ...] = ()

    def checked(self, where: str, value: object) -> float | str:
        """Amount in mm, or a word; refused outside its limits."""
        place = f"{where}.{self.name}"
        if self.choices:
            if value not in self.choices:
                raise DraftError(place, value, " or ".join(map(repr, self.choices)), "choose one of these")
            return str(value)
        number = to_mm(value, place)
        if not self.low <= number <= self.high:
            expected = f"{self.low:g} to {self.high:g} mm"
            raise DraftError(place, value, expected, "take less at once, and look at the next mock-up")
        return number


@dataclass(frozen=True)
class Spec:
    """What an alteration is called, what it cures, what it moves and what it keeps.

    ``changes`` are mm of finished size for each mm of ``by``; ``keeps`` sizes that stay within 0.1 mm. ``own_darts``:
    it works on the method's own darts, not on shares that the style asks for.
    """

    name: str
    cures: str
    moves: str
    arguments: tuple[Argument, ...] = ()
    changes: Mapping[str, float] = field(default_factory=dict)
    keeps: tuple[str, ...] = ()
    on_block: OnBlock | None = None
    on_style: OnStyle | None = None
    exact: str = ""
    own_darts: bool = False
    past_knee: bool = False

    def __call__(self, *given: object, **amounts: object) -> Alteration:
        """Alteration of this kind; a single amount may be given without its name."""
        where, names = f"alterations.{self.name}", [argument.name for argument in self.arguments]
        if len(given) > len(names):
            raise DraftError(where, given, f"at most {len(names)} amounts", "give them by name")
        amounts = {**dict(zip(names, given, strict=False)), **amounts}
        for name in amounts:
            if name not in names:
                near = nearest(name, names)
                known = ", ".join(names) or "no amounts"
                raise DraftError(f"{where}.{name}", amounts[name], known, f"write {near!r}" if near else "leave it out")
        found: list[tuple[str, float | str]] = []
        for argument in self.arguments:
            value = amounts.get(argument.name, argument.default)
            if value is None:
                expected = " or ".join(argument.choices) or f"{argument.low:g} to {argument.high:g} mm"
                raise DraftError(f"{where}.{argument.name}", None, expected, "say how much")
            found.append((argument.name, argument.checked(where, value)))
        return Alteration(self.name, tuple(found), self)

    @property
    def promise(self) -> str:
        """Changes and constancies in words."""
        told = [f"{name.replace('_', ' ')} {factor:+g} mm per mm" for name, factor in self.changes.items()]
        kept = ", ".join(name.replace("_", " ") for name in self.keeps)
        return "; ".join([*told, *([f"keeps {kept}"] if kept else [])])


@dataclass(frozen=True)
class Alteration:
    """One alteration with its amounts in mm.

    Examples
    --------
    >>> from draft.alter.waist import sway_back
    >>> sway_back(by="1.2 cm")
    sway_back(by=12)
    """

    name: str
    values: tuple[tuple[str, float | str], ...]
    spec: Spec = field(compare=False, repr=False)

    @property
    def amounts(self) -> Mapping[str, float | str]:
        """Amounts by name."""
        return MappingProxyType(dict(self.values))

    @property
    def side(self) -> str:
        """``"left"`` or ``"right"`` when it is of one side only; empty: both."""
        return str(self.amounts.get("side", ""))

    @property
    def promised(self) -> Mapping[str, float]:
        """Finished sizes that change, and by how many mm."""
        by = self.amounts.get("by", 0.0)
        found = {name: factor * float(by) for name, factor in self.spec.changes.items()}
        if any(name in found for name in CROTCH):
            found["crotch"] = sum(found.get(name, 0.0) for name in CROTCH)
        return MappingProxyType(found)

    def with_by(self, by: float) -> Alteration:
        """The same with another amount, whatever its limits."""
        values = tuple((name, by if name == "by" else value) for name, value in self.values)
        return Alteration(self.name, values, self.spec)

    def on_block(self, block: Block) -> Block:
        """Block after the alteration."""
        made: Any = self.spec.on_block
        return block if made is None else made(block, **dict(self.values))

    def on_style(self, style: Style) -> Style:
        """Style after the alteration."""
        made: Any = self.spec.on_style
        return style if made is None else made(style, **dict(self.values))

    def __repr__(self) -> str:
        told = ", ".join(f"{n}={v:g}" if isinstance(v, float) else f"{n}={v!r}" for n, v in self.values)
        return f"{self.name}({told})"

    __str__ = __repr__


def by(low: float, high: float) -> tuple[Argument, ...]:
    """Limits of the amount of an alteration that has one."""
    return (Argument("by", low, high),)


def alteration(**told: Any) -> Callable[[Callable[..., Any]], Spec]:
    """Decorator: the function becomes an alteration of its name; of a block or a style, as its first parameter says."""

    def made(function: Callable[..., Any]) -> Spec:
        told[f"on_{function.__code__.co_varnames[0]}"] = function
        return Spec(name=function.__name__, **told)

    return made
