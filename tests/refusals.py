"""What a refusal must tell, and how to do what it tells."""

from __future__ import annotations

import re
from dataclasses import fields, is_dataclass, replace
from math import inf

import draft

# Refusals of kinds that contradict each other tell no number but what goes together instead: field and words.
WITHOUT_NUMBER = (
    ("style.closing", "one that opens"),
    ("style.band", "a StraightBand with an opening at the side"),
    ("style.band.sections", "'one' with an opening at the side"),
    ("style.pocket", "leaves the side seam whole"),
    ("style.pocket", "a front without pleats"),
    ("style.pocket", "a coin pocket lies on its facing"),
    ("style.closing.lap", "for a lapped zip"),
    ("style.band.back", "with an opening at the side"),
    ("style.darts.front_as", "'darts' with"),
    ("style.darts.back_as", "'darts' with"),
    ("style.waist_shares", "a hip larger than the waist"),
)
LIMIT = re.compile(r"(at most|at least) (-?\d+(?:\.\d+)?)")


def limit_told(refusal: draft.DraftError) -> bool:
    """Whether a person knows what to do: a field of the style, a remedy, and a limit or what goes together."""
    if not refusal.field.startswith("style.") or not refusal.remedy:
        return False
    if any(c.isdigit() for c in refusal.expected):
        return True
    return any(refusal.field == field and words in refusal.expected for field, words in WITHOUT_NUMBER)


def followed(refusal: draft.DraftError, style: draft.Style) -> draft.Style | None:
    """Style with the refused field at the limit that the refusal names.

    None where it names no such limit, or two that exclude each other: then another field has to change.
    """
    limits = {word: float(number) for word, number in LIMIT.findall(refusal.expected)}
    path = refusal.field.split(".")[1:]
    if not limits or not path or limits.get("at least", -inf) > limits.get("at most", inf):
        return None
    try:
        return _with(style, path, next(iter(limits.values())))
    except draft.DraftError:  # the limit lies outside the field's own range, so no value of this field works
        return None


def refused_again(refusal: draft.DraftError, again: draft.DraftError) -> bool:
    """Whether a field that was set to its limit is refused by the same limit; another limit may still exclude it."""
    words = [LIMIT.search(one.expected) for one in (refusal, again)]
    same = words[0] is not None and words[1] is not None and words[0][1] == words[1][1]
    return refusal.field == again.field and same


def _with(style: draft.Style, path: list[str], value: float) -> draft.Style | None:
    if len(path) == 1:
        return replace(style, **{path[0]: value}) if isinstance(getattr(style, path[0], None), float) else None
    part, field = path[0], path[1]
    chosen = getattr(style, part, None)
    if isinstance(chosen, tuple):
        return replace(style, **{part: tuple(_set(one, field, value) or one for one in chosen)})
    changed = _set(chosen, field, value)
    return None if changed is None else replace(style, **{part: changed})


def _set(chosen: object, field: str, value: float) -> object | None:
    if not is_dataclass(chosen) or field not in [entry.name for entry in fields(chosen)]:
        return None
    return replace(chosen, **{field: value})  # type: ignore[type-var]
