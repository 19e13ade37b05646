"""Folded strip around the waist: the casing of an elastic or a cord.

Its frame is that of the straight band: x along the waist as seen from outside, y = 0 on the waist seam, right side up,
so the outer half lies below the fold. A waist that opens begins at the centre front of the wearer's left; one that
does not is a ring, joined at the centre back.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from draft.edge import Corner, Edge
from draft.geometry.path import Path
from draft.geometry.segments import Line
from draft.piece import Cut, Hole, InnerLine, Notch, Piece
from draft.pieces.bands.around import Half, check_not_at_side, half_of, left_over_right, opens, stretches, turned
from draft.pieces.plan import Plan, WaistEdges
from draft.seams import Run, Seam

NAME = "casing"


@dataclass(frozen=True)
class Strip:
    """Where things lie along the strip, mm."""

    half: Half
    before: float  # what runs past the centre front at the left end
    after: float  # and at the right end
    depth: float
    open: bool

    @property
    def length(self) -> float:
        """Length of the seam line, over- and underlap included."""
        return self.before + 2 * self.half.back + self.after

    def left(self, along: float) -> float:
        """Place on the strip of a place on the wearer's left half."""
        return self.before + along if self.open else self.half.back + along

    def right(self, along: float) -> float:
        """Place on the strip of a place on the wearer's right half."""
        return self.before + 2 * self.half.back - along if self.open else self.half.back - along


def strip_of(plan: Plan, waist: WaistEdges, depth: float) -> Strip:
    """Strip for this waist."""
    check_not_at_side(plan, waist)
    if not opens(plan):
        return Strip(half_of(waist), 0.0, 0.0, depth, open=False)
    under_left = not left_over_right(plan)
    before, after = (waist.underlap, 0.0) if under_left else (0.0, waist.underlap)
    return Strip(half_of(waist), before, after, depth, open=True)


def strip_piece(
    plan: Plan,
    s: Strip,
    title: str,
    lines: tuple[InnerLine, ...] = (),
    holes: tuple[Hole, ...] = (),
    notes: tuple[str, ...] = (),
) -> Piece:
    """Casing as a piece."""
    a, long, high = plan.style.allowances, s.length, 2 * s.depth
    corners = (0j, complex(long, 0), complex(long, high), complex(0, high))
    names = (("waist", a.waist), ("right_end", a.band), ("inner", a.band), ("left_end", a.band))
    edges = tuple(
        Edge(name, (Path.line(corners[i], corners[(i + 1) % 4]),), allowance=width, corner=Corner("extended"))
        for i, (name, width) in enumerate(names)
    )
    fold = InnerLine("fold", Path.line(complex(0, s.depth), complex(long, s.depth)), "fold")
    return Piece(
        name=NAME,
        title=title,
        edges=edges,
        cut=Cut(1, "self"),
        grainline=Line(complex(0.3 * long, 1.5 * s.depth), complex(0.7 * long, 1.5 * s.depth)),
        notches=_notches(s),
        lines=(fold, *lines),
        holes=holes,
        made_for=plan.made_for,
        notes=notes,
    )


def _notches(s: Strip) -> tuple[Notch, ...]:
    """Notch at each place; one that both halves share stands once, a join at the ends has none."""
    middle, ends = ("centre back", "centre front") if s.open else ("centre front", "centre back")
    found = [Notch("waist", s.left(s.half.places[middle]), middle, 2 if middle == "centre back" else 1)]
    for name, along in s.half.places.items():
        if name != middle and (s.open or name != ends):
            found += [Notch("waist", s.left(along), name), Notch("waist", s.right(along), f"other {name}")]
    return tuple(found)


def strip_seams(waist: WaistEdges, s: Strip, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Waist seam, both halves, and the join of a ring."""
    found = []
    placed: tuple[tuple[str, Callable[[float], float]], ...] = (("left", s.left), ("right", s.right))
    for side, place in placed:
        for part in stretches(waist, pieces):
            run = part.run if side == "left" else turned(part.run)
            start, stop = sorted((place(part.start), place(part.stop)))
            name = f"waist, {side} {part.name}"
            found.append(Seam.of(name, run, Run(NAME, "waist", start, stop), pieces, part.ease))
    if not s.open:
        found.append(Seam.of("casing, centre back", Run(NAME, "right_end"), Run(NAME, "left_end", back=True), pieces))
    return found
