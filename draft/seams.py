"""Seams: which edge is sewn to which, how much ease was planned, and what is left over.

Glossary
--------
run         a stretch of one edge of one piece, from one place along it to another
ease        how much longer run `a` is than run `b` on purpose: `a` is eased in, or `b` stretched
difference  what is left over after the ease; 0 when the seam closes
joint       two corners that become one line when the seam between them is sewn
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from draft.geometry.points import angle_deg
from draft.piece import Piece


@dataclass(frozen=True)
class Run:
    """A stretch of one edge; `stop` None: to its end. `back` when it is walked from stop to start."""

    piece: str
    edge: str
    start: float = 0.0
    stop: float | None = None
    back: bool = False

    def length(self, pieces: Mapping[str, Piece]) -> float:
        """Length in mm."""
        whole = pieces[self.piece].edge(self.edge).length
        return (whole if self.stop is None else self.stop) - self.start

    def walked(self, along: float, pieces: Mapping[str, Piece]) -> float:
        """Distance from the start of the walk to a place given along the edge."""
        return self.start + self.length(pieces) - along if self.back else along - self.start

    def __str__(self) -> str:
        where = (
            ""
            if self.start == 0 and self.stop is None
            else f"[{self.start:.0f}:{'' if self.stop is None else f'{self.stop:.0f}'}]"
        )
        return f"{self.piece}.{self.edge}{where}"


@dataclass(frozen=True)
class Seam:
    """Two runs that are sewn together; lengths are those of the pieces it was made for."""

    name: str
    a: Run
    b: Run
    ease: float
    length_a: float
    length_b: float

    @property
    def difference(self) -> float:
        """What is left over after the planned ease, mm."""
        return self.length_a - self.length_b - self.ease

    @classmethod
    def of(cls, name: str, a: Run, b: Run, pieces: Mapping[str, Piece], ease: float = 0.0) -> Seam:
        """Seam between two runs, walked on the pieces as they are."""
        return cls(name, a, b, ease, a.length(pieces), b.length(pieces))


@dataclass(frozen=True)
class Joint:
    """Corners that lie beside each other when a seam is sewn; their angles must add up to `total` degrees.

    Each corner is a piece and the edge that ends there. A corner on a centre line stands twice.
    """

    name: str
    a: tuple[str, str]
    b: tuple[str, str]
    total: float = 180.0

    def angle(self, pieces: Mapping[str, Piece]) -> float:
        """Sum of both inside angles in degrees."""
        return sum(inside_angle(pieces[piece], edge) for piece, edge in (self.a, self.b))


def inside_angle(piece: Piece, edge: str) -> float:
    """Angle inside the piece, in degrees, at the corner where `edge` ends."""
    names = [e.name for e in piece.edges]
    index = names.index(edge)
    one, two = piece.edges[index], piece.edges[(index + 1) % len(names)]
    return 180.0 - angle_deg(one.end_dir, two.start_dir)
