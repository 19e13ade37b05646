"""Note: one thing seen in a mock-up, with the cloth that was pinned, and what that comes to.

A bare "20 off here" can mean three things, so a note says which it is:

fold   the depth of a pinned fold, as it stands off the cloth: it takes up twice as much
side   on one half of the body; the other half has the same
total  all of it: around the body or the leg, or along the body
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from draft.advice.symptoms import SYMPTOMS, Symptom
from draft.errors import DraftError, collected, nearest
from draft.units import fmt, to_mm

PER = ("fold", "side", "total")
SIDES = ("both", "left", "right")
ALLOWED = {"girth": PER, "leg": ("fold", "total"), "length": ("fold", "total"), "shift": (None, "side"), "none": ()}
MOST_MM = 400.0
_TWICE = "a fold takes up twice its depth"


@dataclass(frozen=True)
class Note:
    """One thing seen in a mock-up.

    Parameters
    ----------
    symptom : str
        Its name, as :func:`draft.symptoms` lists it.
    amount : float or str, optional
        What was pinned, slit or measured, in mm or text with a unit; more than 0. The symptom says which way it goes.
    per : str, optional
        ``"fold"``, ``"side"`` or ``"total"``, see above; needed with an amount, but for one that is a ``shift``.
    folds : int, optional
        How many such folds were pinned around the body or the leg; needed around the body away from its centre.
    side : str
        ``"left"`` or ``"right"`` of the wearer, when only one side has it; of the higher hip for a band that tilts.

    Raises
    ------
    DraftError
        For an unknown symptom, with the nearest ones; for an amount that could mean several things.

    Examples
    --------
    >>> Note("horizontal fold under the back band", "1 cm", per="fold").cloth
    20.0
    >>> Note("horizontal fold under the back band", 10)
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: note.per is missing, expected 'fold' (a fold takes up twice its depth) or 'total' for
    'horizontal fold under the back band': say how the 10 mm were taken.
    """

    symptom: str
    amount: float | str | None = None
    per: str | None = None
    folds: int | None = None
    side: str = "both"

    def __post_init__(self) -> None:
        kind = known(self.symptom)
        if self.side not in SIDES:
            raise DraftError("note.side", self.side, "'both', 'left' or 'right'", "choose one of these")
        if self.amount is None:
            return
        amount = to_mm(self.amount, "note.amount")
        object.__setattr__(self, "amount", amount)
        if not 0 < amount <= MOST_MM:
            expected = f"more than 0 and at most {MOST_MM:g} mm"
            raise DraftError("note.amount", amount, expected, "write its size; the symptom says which way it goes")
        self._check_meaning(kind, amount)

    def _check_meaning(self, kind: Symptom, amount: float) -> None:
        allowed = ALLOWED[kind.noted]
        if not allowed:
            raise DraftError("note.amount", amount, f"None for {kind.name!r}", "leave it out: there is nothing to pin")
        if self.per not in allowed:
            told = {"fold": f"'fold' ({_TWICE})", "side": "'side' (one half of the body)", None: "nothing"}
            words = " or ".join(told.get(name, repr(name)) for name in allowed)
            raise DraftError(
                "note.per", self.per, f"{words} for {kind.name!r}", f"say how the {fmt(amount, 0)} mm were taken"
            )
        if self.per == "fold" and self.folds is None and kind.noted == "girth" and not kind.where.startswith("centre"):
            raise DraftError(
                "note.folds",
                None,
                "how many such folds were pinned around the body",
                "write folds=2 for one on each side",
            )
        if self.folds is not None and (self.per != "fold" or not isinstance(self.folds, int) or self.folds < 1):
            raise DraftError(
                "note.folds", self.folds, "a whole number, for folds only", "leave it out or write per='fold'"
            )

    @property
    def kind(self) -> Symptom:
        """Symptom with all that is known of it."""
        return SYMPTOMS[self.symptom]

    @property
    def cloth(self) -> float | None:
        """Cloth in mm: around the whole body or leg, along the body, or the shift; None without an amount."""
        if self.amount is None:
            return None
        amount = float(self.amount)
        return amount * {"fold": 2.0 * (self.folds or 1), "side": 1.0 if self.kind.noted == "shift" else 2.0}.get(
            self.per or "", 1.0
        )

    @property
    def reckoned(self) -> str:
        """How the cloth follows from the amount."""
        if self.cloth is None:
            return "no amount noted"
        amount = fmt(float(self.amount or 0))
        if self.kind.noted == "shift":
            return f"{amount} mm at that place"
        if self.per == "fold":
            times = f" x {self.folds} folds" if self.folds else ""
            return f"fold of {amount} mm x 2{times} = {fmt(self.cloth)} mm of cloth"
        if self.per == "side":
            return f"{amount} mm on each side x 2 = {fmt(self.cloth)} mm in all"
        return f"{amount} mm in all"


def known(name: object) -> Symptom:
    """Symptom of that name.

    Raises
    ------
    DraftError
        For an unknown one, with the nearest names.
    """
    if isinstance(name, str) and name in SYMPTOMS:
        return SYMPTOMS[name]
    near = _near(name) if isinstance(name, str) else ()
    remedy = f"did you see {' or '.join(map(repr, near))}?" if near else "choose one"
    raise DraftError("note.symptom", name, "a name that draft.symptoms() lists", remedy.rstrip("?"))


def _near(words: str) -> tuple[str, ...]:
    """Names that look like the words, then those that share the most words with them; three at most."""
    first = nearest(words, SYMPTOMS)
    given = set(words.lower().split())
    shared = {name: len(given & set(name.lower().replace(",", "").split()) - _SMALL) for name in SYMPTOMS}
    rest = sorted((name for name in SYMPTOMS if shared[name]), key=lambda name: -shared[name])
    return tuple(dict.fromkeys([*([first] if first else []), *rest]))[:3]


_SMALL = {"the", "at", "of", "to", "in", "from", "and", "too", "on", "over", "a"}


def read_notes(notes: object) -> tuple[Note, ...]:
    """Notes given as notes, as names, or as tuples of a name and what follows it; all faults at once.

    Raises
    ------
    DraftError
        When there are none, and for every note that cannot be read.
    """
    if isinstance(notes, str | Note):
        notes = [notes]
    if not isinstance(notes, Iterable):
        raise DraftError(
            "notes", notes, "a list of notes", 'write [draft.Note("gapes at centre back", 15, per="fold")]'
        )
    found, faults = [], []
    for number, given in enumerate(notes):
        try:
            found.append(_one(given))
        except DraftError as error:
            field = error.field.replace("note", f"notes[{number}]", 1)
            faults.append(DraftError(field, error.value, error.expected, error.remedy))
    if faults:
        raise collected(faults)
    if not found:
        raise DraftError("notes", [], "at least one note", "write what was seen; draft.symptoms() lists the words")
    return tuple(found)


def _one(given: object) -> Note:
    if isinstance(given, Note):
        return given
    if isinstance(given, tuple) and 1 <= len(given) <= 3:
        return Note(*given)
    if isinstance(given, str):
        return Note(given)
    raise DraftError("note", given, "a draft.Note, a name, or (name, amount, per)", "write one of these")
