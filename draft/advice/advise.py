"""Which alterations to try first for what was seen, and how to tell their causes apart."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from html import escape
from math import copysign
from types import MappingProxyType
from typing import Any, Protocol

from draft.advice.causes import CAUSES, ORDER
from draft.advice.note import Note, read_notes
from draft.advice.symptoms import Cure
from draft.errors import DraftError
from draft.table import Table
from draft.units import fmt

KNEE_PLACES = ("knee", "knee and below", "calf")
BACK_DARTS = ("move_back_darts", "widen_back_darts", "lengthen_back_darts", "remove_back_dart")
RESIZED = {
    "waist_ease": "waist",
    "hip_ease": "hip",
    "fuller_thigh": "thigh",
    "widen_hem": "hem",
    "lengthen_at_hem": "inside_leg",
}
"""Alteration -> finished size that grows by its amount."""


class Drafted(Protocol):
    """What advice looks at in a pattern."""

    @property
    def style(self) -> Any:
        """Choices, of which the back darts are looked at."""

    def measure(self) -> Mapping[str, float]:
        """Finished sizes, mm."""


@dataclass(frozen=True)
class Suggestion:
    """One alteration worth a test.

    name : of the alteration.
    amounts : argument -> mm, or text for a side; what the notes do not give is named in `needs`.
    first : whether it is the best supported cause of one of the notes.
    negative : whether its amount is, or would be, less than 0.
    weight : sum of the weights of all notes that speak for it.
    seen : the symptoms that speak for it.
    because : the fault that it cures.
    derived : how its amount follows from each note.
    others : other alterations that could cure the same notes.
    test : what tells it apart from them.
    """

    name: str
    amounts: Mapping[str, float | str] = field(hash=False)
    needs: tuple[str, ...]
    first: bool
    step: int
    negative: bool
    weight: int
    seen: tuple[str, ...]
    because: str
    derived: tuple[str, ...]
    others: tuple[str, ...]
    test: str

    def _below(self, argument: str) -> bool:
        return argument == "by" and self.negative

    def __str__(self) -> str:
        known = [f"{k}={v!r}" if isinstance(v, str) else f"{k}={v:g}" for k, v in self.amounts.items()]
        wanted = [f"{name}=-?" if self._below(name) else f"{name}=?" for name in self.needs]
        return f"{self.name}({', '.join([*known, *wanted])})"


@dataclass(frozen=True)
class Advice(Sequence[Suggestion]):
    """Suggestions, those to try first in front, in the order of work. Prints as a table with the reasons below."""

    suggestions: tuple[Suggestion, ...]
    notes: tuple[Note, ...]
    remarks: tuple[str, ...] = ()

    def __len__(self) -> int:
        return len(self.suggestions)

    def __getitem__(self, index: Any) -> Any:
        return self.suggestions[index]

    @property
    def first(self) -> tuple[Suggestion, ...]:
        """What to try first: for every note its best supported cause."""
        return tuple(s for s in self.suggestions if s.first)

    def table(self) -> Table:
        """Rank, place in the order of work, alteration, weight and what speaks for it."""
        rows = tuple(
            (str(i), "try first" if s.first else "or", ORDER[s.step - 1], str(s), str(s.weight), "; ".join(s.seen))
            for i, s in enumerate(self, 1)
        )
        return Table("Advice", ("rank", "when", "order of work", "alteration", "weight", "seen"), rows)

    def __str__(self) -> str:
        blocks = [str(self.table())]
        for i, s in enumerate(self, 1):
            blocks.append("\n".join([f"{i}. {s}", *(f"   {head}: {text}" for head, text in _told(s))]))
        return "\n\n".join([*blocks, *self.remarks, RULE])

    def _repr_html_(self) -> str:
        heads = ("rank", "when", "order of work", "alteration", "weight", "seen", "reason", "amount", "else", "test")
        rows = (
            (*row, *(text for _, text in _told(s))) for row, s in zip(self.table().rows, self.suggestions, strict=True)
        )
        ends = "".join(f"<p>{escape(text)}</p>" for text in (*self.remarks, RULE))
        return Table("Advice", heads, tuple(rows)).html() + ends


RULE = (
    "Nothing has been altered. Do the test first, change one thing at a time in the order of work, and fit again after "
    "the first four steps before the rest is judged."
)


def _told(s: Suggestion) -> tuple[tuple[str, str], ...]:
    return (
        ("reason", s.because),
        ("amount", "; ".join(s.derived)),
        ("else", ", ".join(s.others) or "nothing in the vocabulary"),
        ("test", s.test),
    )


def advise(notes: Iterable[Note | str | tuple[Any, ...]], pattern: Drafted | None = None) -> Advice:
    """Suggest alterations for what was seen in a mock-up. Nothing is altered.

    Parameters
    ----------
    notes : list
        Notes, see :class:`draft.Note`; a name alone, or a tuple of name, amount and ``per``, will do. Amounts are mm
        or text with a unit.
    pattern : Pattern, optional
        What was sewn: tells the sizes that would come out, and leaves out what the garment does not have.

    Returns
    -------
    Advice
        Suggestions with name and amounts as :func:`draft.alteration` takes them. For every note the cause with the most
        weight over all notes comes first; these, and then the rest, stand in the order of work. Where notes give
        different amounts, the smallest is taken: more can be let out or taken in at the next fitting.

    Raises
    ------
    DraftError
        For an unknown symptom, with the nearest names, or an amount that does not say what it is of.

    Examples
    --------
    >>> advice = advise([Note("horizontal fold under the back band", "6 mm", per="fold"), "gapes at centre back"])
    >>> print(*advice.first, sep=", ")
    sway_back(by=12)
    >>> advice[0].derived
    ('horizontal fold under the back band: fold of 6.0 mm x 2 = 12.0 mm of cloth, by = 1 x 12.0 = 12.0 mm', 'gapes at
    centre back: the amount does not follow from this note')
    >>> advise(["gaps at center back"])
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: notes[0].symptom is 'gaps at center back', expected a name that draft.symptoms() lists:
    did you see 'gapes at centre back' or ...
    """
    read = read_notes(notes)
    if pattern is not None:
        _check_knee(read, pattern)
    cases: dict[tuple[str, bool], list[tuple[Note, Cure]]] = {}
    for note in read:
        for cure in note.kind.cures:
            if pattern is None or _possible(cure, pattern):
                cases.setdefault(_case(cure), []).append((note, cure))
    weights = {case: sum(cure.weight for _, cure in found) for case, found in cases.items()}
    best = {max((c for c in map(_case, note.kind.cures) if c in cases), key=weights.__getitem__) for note in read}
    made = [_suggestion(case, found, read, pattern, first=case in best) for case, found in cases.items()]
    made.sort(key=lambda s: (not s.first, s.step, -s.weight))
    return Advice(tuple(made), read, _remarks(read, cases))


def _case(cure: Cure) -> tuple[str, bool]:
    """Alteration, and whether its amount is negative."""
    return cure.alteration, copysign(1, cure.factor) < 0


def _check_knee(notes: tuple[Note, ...], pattern: Drafted) -> None:
    if "knee" in pattern.measure():
        return
    for number, note in enumerate(notes):
        if note.kind.where in KNEE_PLACES:
            expected = "a symptom above the knee: this garment ends there"
            raise DraftError(
                f"notes[{number}].symptom", note.symptom, expected, "leave it out, or advise without pattern"
            )


def _possible(cure: Cure, pattern: Drafted) -> bool:
    """Whether the garment has what the alteration changes."""
    if cure.alteration in BACK_DARTS:
        return bool(pattern.style.darts.back)
    return cure.alteration != "lengthen_at_knee" or "knee" in pattern.measure()


def _suggestion(
    case: tuple[str, bool],
    found: list[tuple[Note, Cure]],
    notes: tuple[Note, ...],
    pattern: Drafted | None,
    *,
    first: bool,
) -> Suggestion:
    name, negative = case
    cause = CAUSES[name]
    derived: list[str] = []
    by: list[float] = []
    for note, cure in found:
        amount, words = _derived(note, cure, pattern)
        derived.append(f"{note.symptom}: {words}")
        by += [] if amount is None else [amount]
    amounts: dict[str, float | str] = {}
    needs: list[str] = []
    if cause.amount != "none":
        if by:
            smallest: float = min(by, key=abs)
            amounts["by"] = round(smallest, 1)
            if len(set(by)) > 1:
                derived.append(f"the smallest of {len(by)} is taken")
            derived += _size_after(name, float(amounts["by"]), pattern)
        else:
            needs.append("by")
    if name == "high_hip":
        sides = {note.side for note, _ in found}
        if len(sides) == 1 and sides != {"both"}:
            amounts = {"side": sides.pop(), **amounts}
        else:
            needs.insert(0, "side")
    seen = {note.symptom for note, _ in found}
    others = {c.alteration for note in notes if note.symptom in seen for c in note.kind.cures} - {name}
    return Suggestion(
        name=name,
        amounts=MappingProxyType(amounts),
        needs=tuple(needs),
        first=first,
        step=cause.step,
        negative=negative,
        weight=sum(cure.weight for _, cure in found),
        seen=tuple(dict.fromkeys(note.symptom for note, _ in found)),
        because=cause.because(-1.0 if negative else 1.0),
        derived=tuple(derived),
        others=tuple(sorted(others)),
        test=cause.test,
    )


def _derived(note: Note, cure: Cure, pattern: Drafted | None) -> tuple[float | None, str]:
    """Amount that one note gives, and how."""
    if CAUSES[cure.alteration].amount == "none":
        return None, "this alteration has no amount"
    if cure.factor == 0 or (note.cloth is None and note.kind.noted == "none"):
        return None, "the amount does not follow from this note"
    if note.cloth is None:
        return None, "no amount noted: pin it and write how much, per fold, per side or in all"
    if cure.alteration == "leg_slope" and pattern is not None and "knee" not in pattern.measure():
        return None, "it is told at the length of full trousers, and this leg ends above the knee"
    factor, amount = cure.factor, cure.factor * note.cloth
    return amount, f"{note.reckoned}, by = {factor:g} x {fmt(note.cloth)} = {fmt(amount)} mm"


def _size_after(name: str, by: float, pattern: Drafted | None) -> list[str]:
    size = RESIZED.get(name)
    if pattern is None or size is None:
        return []
    now = pattern.measure()[size]
    return [f"{size.replace('_', ' ')} {fmt(now)} now, {fmt(now + by)} mm after it"]


def _remarks(notes: tuple[Note, ...], cases: Mapping[tuple[str, bool], object]) -> tuple[str, ...]:
    """What is to be minded: advice of the symptoms, notes of one side only, notes that speak against each other."""
    told = [f"{note.symptom}: {note.kind.advice}" for note in notes if note.kind.advice]
    told += [
        f"{note.symptom}: seen on the {note.side} side only; both sides of the pattern are alike, but for a high hip"
        for note in notes
        if note.side != "both" and all(cure.alteration != "high_hip" for cure in note.kind.cures)
    ]
    told += [
        f"{name}: some notes ask for more of it, some for less; look again before either is done"
        for name, negative in cases
        if not negative and (name, True) in cases
    ]
    return tuple(dict.fromkeys(told))
