"""Published drafting methods: one file each, ``(measures) -> block``, with its source on top.

To add one: write its file, decorate nothing, and add one line to ``METHODS``.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from draft.errors import DraftError
from draft.methods import centre_line, seat_sixths, ten_degrees, tenths_of_hip, third_of_hip
from draft.methods.base import Method

METHODS: Mapping[str, Method] = MappingProxyType(
    {
        "centre_line": centre_line.METHOD,
        "seat_sixths": seat_sixths.METHOD,
        "ten_degrees": ten_degrees.METHOD,
        "tenths_of_hip": tenths_of_hip.METHOD,
        "third_of_hip": third_of_hip.METHOD,
    }
)


def method_named(name: str) -> Method:
    """Method of that name.

    >>> method_named("centre_line").unit
    'cm'
    """
    if not isinstance(name, str) or name not in METHODS:
        raise DraftError("method", name, "one of " + ", ".join(METHODS), "choose a method that exists")
    return METHODS[name]
