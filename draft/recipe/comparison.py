"""Two states of a recipe side by side: what a mock-up changed, drawn and in mm."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from draft.drawing.overlay import drawn_over
from draft.geometry.arrays import Points
from draft.pattern import Pattern
from draft.table import Table
from draft.units import fmt

STEP_MM = 0.2
UNCHANGED_MM = 0.05
"""A length that changed by less is left out of the table, which shows tenths."""


@dataclass(frozen=True, eq=False)
class Comparison:
    """Two patterns of one garment, before and after. Shows itself in a notebook; prints as a table.

    Examples
    --------
    >>> import draft
    >>> body = draft.Body(waist=740, hip=1000, crotch_depth=270, waist_to_hip=200, inside_leg=770)
    >>> two = [draft.shorts(body, draft.Style(ease=draft.Ease(waist=mm))) for mm in (10, 20)]
    >>> told = Comparison(*two, words=("close", "loose"))
    >>> print(told.table().rows[0])
    ('waist', '750.0', '760.0', '10.0')
    """

    before: Pattern
    after: Pattern
    words: tuple[str, str] = ("before", "after")

    @property
    def title(self) -> str:
        """Whose pattern, and which two states."""
        return f"{self.after.name}: {self.words[0]} and {self.words[1]}"

    def svg(self) -> str:
        """Picture of the sew lines and darts of front and back, the first state dashed, the second solid.

        The creases lie on each other, and the fork points at the same height.
        """
        lines = [(_lines(self.before, name), _lines(self.after, name)) for name in ("front", "back")]
        return drawn_over(lines, [0.0], self.words, self.title)

    def _repr_svg_(self) -> str:
        return self.svg()

    def table(self) -> Table:
        """Every finished size, seam and dart whose length changed: before, after and difference in mm.

        A length that only one of the two has stands alone in its row.
        """
        one, two = _lengths(self.before), _lengths(self.after)
        rows = []
        for name in dict.fromkeys([*one, *two]):
            first, second = one.get(name), two.get(name)
            change = None if first is None or second is None else second - first
            if change is None or abs(change) >= UNCHANGED_MM:
                cells = ("" if mm is None else fmt(mm, 1) for mm in (first, second, change))
                rows.append((name, *cells))
        return Table("Finished lengths that changed, mm", ("where", *self.words, "difference"), tuple(rows))

    def __str__(self) -> str:
        return f"{self.title}\n\n{self.table()}"

    def __repr__(self) -> str:
        return f"<Comparison {self.title}: {len(self.table().rows)} lengths changed>"


def _lines(pattern: Pattern, name: str) -> list[Points]:
    """Sew line and darts of a piece, moved until its crease is at x = 0 and its fork point at y = 0."""
    piece = (pattern.garment.half or pattern.pieces)[name]
    inseam = piece.edge("inseam")
    fork = max(inseam.start.imag, inseam.end.imag)
    origin = complex(pattern.shell.crease, fork)
    outline = piece.sew_line.points(STEP_MM)
    darts = [line.path.points(STEP_MM) for line in piece.lines if line.kind == "dart"]
    return [points - origin for points in (np.append(outline, outline[0]), *darts)]


def _lengths(pattern: Pattern) -> dict[str, float]:
    """Finished sizes, then the seams, then the darts, by names that stay the same from one state to the next."""
    found = {name.replace("_", " "): value for name, value in pattern.measure().items()}
    times: Counter[str] = Counter()
    for name, value in (*_seams(pattern), *_darts(pattern)):
        times[name] += 1
        found[name if times[name] == 1 else f"{name} ({times[name]})"] = value
    return found


def _seams(pattern: Pattern) -> Iterator[tuple[str, float]]:
    for seam in pattern.seams:
        yield f"seam: {seam.name}", seam.length_a


def _darts(pattern: Pattern) -> Iterator[tuple[str, float]]:
    for piece in pattern.pieces.values():
        for number, dart in enumerate((dart for dart in piece.darts if not dart.pleat), 1):
            yield f"{piece.title.lower()} dart {number}, length", dart.length
            yield f"{piece.title.lower()} dart {number}, intake", dart.intake
