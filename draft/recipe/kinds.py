"""Kinds of bands, closings, pockets, hems and small parts by name, as the choice classes that exist give them."""

from __future__ import annotations

import pkgutil
from collections.abc import Iterator
from functools import cache
from importlib import import_module

from draft import choices
from draft.choice import Choice
from draft.style import BackPocket, Band, Closing, Hem, Pocket, SmallPart

FAMILIES: tuple[type[Choice], ...] = (Band, Closing, Pocket, BackPocket, Hem, SmallPart)


@cache
def _all_choices() -> None:
    """Import every file of choices, so that its classes exist."""
    for module in pkgutil.iter_modules(choices.__path__, f"{choices.__name__}."):
        import_module(module.name)


def kinds_of(family: type[Choice]) -> dict[str, type[Choice]]:
    """Kinds of a family by name, those of your own among them.

    Examples
    --------
    >>> sorted(kinds_of(Pocket))[:2]
    ['CurvedPocket', 'FrontPatchPocket']
    """
    _all_choices()
    return {kind.__name__: kind for kind in _below(family)}


def _below(family: type[Choice]) -> Iterator[type[Choice]]:
    for kind in family.__subclasses__():
        yield kind
        yield from _below(kind)
