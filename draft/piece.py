"""Piece: what lies on the cutting table. Edges, cut line, notches, darts, inner lines, grainline, what to cut.

Glossary
--------
sew line     the closed line of all seams
cut line     the closed line that is cut: sew line plus allowances
notch        a short cut into the allowance; it marks a place on the seam that meets its partner's notch
inner line   a line drawn inside the piece: fold, placement, topstitching, buttonhole
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal

from draft.allowance import cut_line
from draft.dart import Dart
from draft.drawing.view import piece_svg
from draft.edge import Edge
from draft.errors import DraftError
from draft.geometry.meet import meet_line
from draft.geometry.path import Path, chain
from draft.geometry.points import unit
from draft.geometry.segments import Line

Cloth = Literal["self", "lining", "interfacing"]
LineKind = Literal["fold", "placement", "topstitch", "button", "buttonhole", "guide", "dart"]

NOTCH_DEPTH = 4.0  # at most half the allowance, see `Piece.notch_depth`
DOUBLE_NOTCH_GAP = 10.0
PLEAT_MARK = 60.0
DRILL_BACK = 12.0  # drill hole of a dart, back from its point (common practice; 13 read)


@dataclass(frozen=True)
class Cut:
    """How many to cut, of which cloth; `mirrored`: in pairs; `on_fold`: the piece is a half."""

    count: int
    cloth: Cloth
    mirrored: bool = False
    on_fold: bool = False

    def __str__(self) -> str:
        how = " on the fold" if self.on_fold else " (one pair, mirrored)" if self.mirrored else ""
        return f"cut {self.count} {self.cloth}{how}"


@dataclass(frozen=True)
class Notch:
    """One notch; `count` 2 is a double notch, centred on the place. `match` names the place it shares with others."""

    edge: str
    along: float
    match: str
    count: int = 1


@dataclass(frozen=True)
class NotchPlace:
    """Where one slit of a notch lies: on the seam line, on the cut line, and the direction into the piece."""

    on_seam: complex
    on_cut: complex
    inward: complex
    depth: float


@dataclass(frozen=True, eq=False)
class InnerLine:
    """A line drawn inside the piece."""

    kind: LineKind
    path: Path
    note: str = ""


@dataclass(frozen=True)
class Hole:
    """A drill hole, diameter in mm."""

    at: complex
    note: str
    diameter: float = 2.0


@dataclass(frozen=True, eq=False)
class Piece:
    """One pattern piece, in mm, y up, its outline counter-clockwise, seen from the right side of the cloth.

    ``title`` is what its label says first; ``made_for`` names body and style.
    """

    name: str
    title: str
    edges: tuple[Edge, ...]
    cut: Cut
    grainline: Line
    notches: tuple[Notch, ...] = ()
    lines: tuple[InnerLine, ...] = ()
    holes: tuple[Hole, ...] = ()
    made_for: str = ""
    notes: tuple[str, ...] = field(default=())

    def edge(self, name: str) -> Edge:
        """Edge of that name.

        Raises
        ------
        DraftError
            When the piece has no such edge; it lists those it has.
        """
        for edge in self.edges:
            if edge.name == name:
                return edge
        raise DraftError(
            f"edge of {self.name}", name, "one of " + ", ".join(e.name for e in self.edges), "name one of them"
        )

    @cached_property
    def sew_line(self) -> Path:
        """Closed line of all seams, along the caps of open darts."""
        return chain(edge.path for edge in self.edges).tidy()

    @cached_property
    def cut_line(self) -> Path:
        """Closed line to cut along."""
        return cut_line(self.edges, self.name)

    @property
    def darts(self) -> tuple[Dart, ...]:
        """All darts."""
        return tuple(dart for edge in self.edges for dart in edge.darts)

    @cached_property
    def notch_places(self) -> tuple[tuple[Notch, tuple[NotchPlace, ...]], ...]:
        """Every notch with its slits: one, or two for a double notch."""
        return tuple((notch, self._slits(notch)) for notch in self.notches)

    def _slits(self, notch: Notch) -> tuple[NotchPlace, ...]:
        edge = self.edge(notch.edge)
        if notch.count == 1:
            return (self._slit(edge, notch.along),)
        half = min(DOUBLE_NOTCH_GAP, edge.length / 10) / 2
        centre = min(max(notch.along, half), edge.length - half)
        return self._slit(edge, centre - half), self._slit(edge, centre + half)

    def _slit(self, edge: Edge, along: float) -> NotchPlace:
        at, outward = edge.point_at(along), -1j * edge.direction_at(along)
        on_cut = at + outward * edge.allowance
        reach = 2.5 * max(e.allowance for e in self.edges)
        if min(along, edge.length - along) < reach and edge.allowance:
            on_cut = self._on_cut_line(at, outward, on_cut)
        return NotchPlace(at, on_cut, -outward, min(NOTCH_DEPTH, edge.allowance / 2))

    def _on_cut_line(self, at: complex, outward: complex, guess: complex) -> complex:
        """Where the way out of the piece meets the cut line; near corners that is not one allowance away."""
        places = [self.cut_line.point_at(s) for s in meet_line(self.cut_line, at, outward)]
        return min(places, key=lambda p: abs(p - guess), default=guess)

    @property
    def allowances(self) -> str:
        """Allowances in words, for the label."""
        widths = sorted({edge.allowance for edge in self.edges})
        if widths == [0.0]:
            return "no allowance"
        if len(widths) == 1:
            return f"allowance {widths[0]:g} mm included"
        return "allowances included: " + ", ".join(
            f"{edge.name.replace('_', ' ')} {edge.allowance:g}" for edge in self.edges if edge.allowance
        )

    @property
    def label(self) -> tuple[str, ...]:
        """Lines of the label: name, cut count and cloth, whom for, allowance, scale."""
        lines = [self.title, str(self.cut), self.made_for, *self.notes, self.allowances, "scale 1:1, mm"]
        return tuple(line for line in lines if line)

    @cached_property
    def bounds(self) -> tuple[float, float, float, float]:
        """Left, bottom, right, top of the cut line."""
        points = self.cut_line.points(0.5)
        return (
            float(points.real.min()), float(points.imag.min()), float(points.real.max()), float(points.imag.max())
        )  # fmt: skip

    def _repr_svg_(self) -> str:
        return piece_svg(self)

    def __repr__(self) -> str:
        left, bottom, right, top = self.bounds
        return f"<Piece {self.name}: {right - left:.0f} x {top - bottom:.0f} mm, {self.cut}>"


def dart_marks(edge: Edge) -> tuple[tuple[InnerLine, ...], tuple[Hole, ...]]:
    """Legs of the darts of an edge as inner lines, and their drill holes."""
    lines, holes = [], []
    for dart in (dart for dart in edge.darts if not dart.pleat):
        centre, side = dart.runs
        lines.append(InnerLine("dart", Path.join(centre.reversed(), side)))
        holes.append(Hole(dart.point + unit(dart.fold_dir) * min(DRILL_BACK, dart.length / 3), "dart"))
    return tuple(lines), tuple(holes)


def pleat_marks(edge: Edge, sewn: float, name: str = "pleat") -> tuple[InnerLine, ...]:
    """Fold lines of the pleats or tucks of an edge, as far as they are marked: what is sewn, and at least 60 mm."""
    lines = []
    for dart in (dart for dart in edge.darts if dart.pleat in ("forward", "reverse")):
        towards = "side" if dart.pleat == "reverse" else "centre"
        whose = f"{name}: fold towards the {towards}" + (f", sew {sewn:g} down" if sewn else "")
        for run, note in zip(dart.runs, (whose, ""), strict=True):
            down = run.reversed()
            lines.append(InnerLine("fold", down.between(0, min(max(sewn, PLEAT_MARK), down.length)), note))
    return tuple(lines)
