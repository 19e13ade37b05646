"""Panel and Shell: the trued outlines from which every piece is taken."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from draft.dart import Dart
from draft.geometry.path import Path, chain


@dataclass(frozen=True, eq=False)
class Waist:
    """Waist seam of one panel, centre to side: the sewn stretches and the darts between them."""

    parts: tuple[Path, ...]
    darts: tuple[Dart, ...] = ()

    @property
    def length(self) -> float:
        """Length with the darts closed."""
        return sum(part.length for part in self.parts)

    @cached_property
    def outline(self) -> Path:
        """The edge with the darts open, along their caps."""
        runs = [self.parts[0]]
        for dart, before, after in zip(self.darts, self.parts, self.parts[1:], strict=False):
            runs += [dart.across(before, after), after]
        return chain(runs)


@dataclass(frozen=True, eq=False)
class Panel:
    """Front or back, trued. All seams run counter-clockwise: side down, hem, inseam up, crotch, waist."""

    side: Path
    hem: Path
    inseam: Path
    crotch: Path
    waist: Waist
    straight: float
    hip_side: complex

    @cached_property
    def outline(self) -> Path:
        """Closed outline."""
        return Path.join(self.side, self.hem, self.inseam, self.crotch, self.waist.outline)


@dataclass(frozen=True, eq=False)
class Shell:
    """Both panels with the levels they share.

    ``targets`` are the finished sizes they were drawn for, ``floors`` those that may be larger but not smaller;
    ``stretch`` is how much shorter the back inseam is on purpose; ``shares`` tell where the difference between hip and
    waist went.
    """

    front: Panel
    back: Panel
    levels: Mapping[str, float]
    crease: float
    targets: Mapping[str, float]
    stretch: float
    floors: Mapping[str, float] = field(default_factory=dict)
    shares: Mapping[str, float] = field(default_factory=dict)
