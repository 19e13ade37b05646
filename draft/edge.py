"""Edge: one seam line of a piece, from corner to corner, with its allowance and the corner at its end.

Glossary
--------
edge    the stretch of a piece's outline that is one seam line; a waist edge may hold darts
along   distance on the sewn edge from its start, darts closed, mm
corner  how the allowances are shaped where an edge ends and the next begins
        extended  both cut lines run on until they meet; an overlong point is cut off
        mitred    as extended, cut off square to the corner's middle, for corners that are turned
        squared   the allowance of the seam sewn first ends square to that seam
        mirrored  the allowance of the seam sewn first ends as the image of the other cut line, so that it lies flush
                  when pressed open and nothing is short
        folded    the edge is a turned hem: the seam sewn first runs on as the image of itself beyond the fold
turning the seam lines beyond a folded edge at its start and at its end, walked away from it, one path from fold to
        fold; None: the images of the seams
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise
from typing import Literal

from draft.dart import Dart
from draft.errors import DraftError
from draft.geometry.path import Path, chain
from draft.geometry.segments import Motion

CornerKind = Literal["extended", "mitred", "squared", "mirrored", "folded"]
First = Literal["this", "next"]


@dataclass(frozen=True)
class Corner:
    """Shape of the allowances at the end of an edge; `first` says which of the two seams is sewn first."""

    kind: CornerKind = "extended"
    first: First = "this"

    def swapped(self) -> Corner:
        """Return the same corner seen from the other side (the outline walked the other way)."""
        return Corner(self.kind, "next" if self.first == "this" else "this")


@dataclass(frozen=True, eq=False)
class Edge:
    """One seam line of a piece.

    Examples
    --------
    >>> edge = Edge("side", (Path.line(0j, 300j),), allowance=12)
    >>> edge.length, edge.point_at(100)
    (300.0, 100j)
    """

    name: str
    parts: tuple[Path, ...]
    darts: tuple[Dart, ...] = ()
    allowance: float = 0.0
    corner: Corner = Corner()
    turning: tuple[tuple[Path, ...], tuple[Path, ...]] | None = None

    @cached_property
    def length(self) -> float:
        """Sewn length in mm, darts closed."""
        return sum(part.length for part in self.parts)

    @cached_property
    def path(self) -> Path:
        """The seam line as it lies in the open piece, along the caps of its darts."""
        runs = [self.parts[0]]
        for dart, (before, after) in zip(self.darts, pairwise(self.parts), strict=True):
            runs += [dart.across(before, after), after]
        return chain(runs)

    @property
    def start(self) -> complex:
        """First point."""
        return self.parts[0].start

    @property
    def end(self) -> complex:
        """Last point."""
        return self.parts[-1].end

    @property
    def start_dir(self) -> complex:
        """Direction of travel at the start."""
        return self.parts[0].start_dir

    @property
    def end_dir(self) -> complex:
        """Direction of travel at the end."""
        return self.parts[-1].end_dir

    def _part_at(self, along: float) -> tuple[Path, float]:
        if not -1e-6 <= along <= self.length + 1e-6:
            raise DraftError(
                f"edge {self.name}", along, f"0 to {self.length:.1f} mm along it", "measure from its start"
            )
        rest = along
        for part in self.parts[:-1]:
            if rest <= part.length:
                return part, rest
            rest -= part.length
        return self.parts[-1], min(rest, self.parts[-1].length)

    def point_at(self, along: float) -> complex:
        """Point at a sewn distance from the start."""
        part, rest = self._part_at(along)
        return part.point_at(rest)

    def direction_at(self, along: float) -> complex:
        """Direction of travel at a sewn distance from the start."""
        part, rest = self._part_at(along)
        return part.direction_at(rest)

    def mirrored(self, motion: Motion) -> Edge:
        """Image in a mirror, walked the other way so that outlines stay counter-clockwise; its corner is not kept."""
        darts = tuple(dart.mirrored(motion) for dart in reversed(self.darts))
        parts = tuple(p.moved(motion).reversed() for p in reversed(self.parts))
        turning = None
        if self.turning is not None:
            first, last = (tuple(p.moved(motion) for p in side) for side in self.turning)
            turning = (last, first)
        return replace(self, parts=parts, darts=darts, turning=turning)


def mirrored_outline(edges: tuple[Edge, ...], motion: Motion) -> tuple[Edge, ...]:
    """Outline of the mirrored piece, again counter-clockwise, every corner with the shape it had."""
    images = []
    for index in reversed(range(len(edges))):
        # What was the start of this edge is now its end: the corner there belonged to the edge before it.
        images.append(replace(edges[index].mirrored(motion), corner=edges[index - 1].corner.swapped()))
    return tuple(images)
