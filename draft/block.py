"""Block: what a drafting method gives, before any choice of style cuts it.

Glossary
--------
panel        the front or the back of one leg, drawn flat; both stand in one frame, side seam left, inseam right
fork         the point where crotch seam and inseam meet
crotch line  the level of the fork, y = 0
crease       the line down the middle of the leg, the grain
hollow       how far a seam is bowed into the panel; bow: out of it

crotch seam  from the fork: one curve that turns up, then a straight line to the centre of the waist

All points may be arrays: one entry for each of many bodies. The crease of both panels is x = 0.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import Any, cast

import numpy as np

from draft.geometry.construct import bow, bow_into, hook, point_at_height
from draft.geometry.path import Path
from draft.geometry.points import choose, cross_lines, unit, with_y
from draft.geometry.segments import Cubic, Line, Segment


def crotch_seam(waist_centre: complex, top: complex, fork: complex, k: float) -> Path:
    """Crotch seam from the fork: a curve level at the fork, tangent to the straight line that runs on to the waist.

    Both handles of the curve reach the share `k` of the way to the corner, where the straight line meets the level of
    the fork.

    >>> seam = crotch_seam(280j, 70j, 64 + 0j, 0.55)
    >>> seam.start, seam.end, round(seam.length)
    ((64+0j), 280j, 315)
    """
    corner = cross_lines(waist_centre, unit(top - waist_centre), fork, 1 + 0j)
    return Path((hook(fork, corner, top, k), Line(top, waist_centre)))


def at_height(crotch: Path, y: float) -> complex:
    """Point of a crotch seam at height `y`."""
    curve, line = crotch.segments
    top, waist_centre = line.controls[:2]
    return choose(y < top.imag, point_at_height(cast(Cubic, curve), y), with_y(top, waist_centre, y))


POINTS = (
    "waist_centre", "waist_side", "hip_centre", "hip_side", "knee_side", "hem_side", "hem_inseam", "knee_inseam",
    "fork",
)  # fmt: skip
"""The named points of a panel."""


@dataclass(frozen=True, eq=False)
class DartPlan:
    """A waist dart as the method places it: middle of its mouth, point, and intake in mm.

    ``pleat`` tells which way it is folded when it is a pleat, which runs out at its point but is sewn only above.
    ``fixed``: its intake was asked for, and is not made smaller to what is usual.
    """

    mouth: complex
    point: complex
    intake: float
    pleat: str = ""
    fixed: bool = False


@dataclass(frozen=True, eq=False)
class PanelBlock:
    """Front or back of the block: the points that a cutter would name, and how the lines between them run.

    ``points`` holds every construction point under its number in the source.
    """

    waist_centre: complex
    waist_side: complex
    hip_centre: complex
    hip_side: complex
    knee_side: complex
    hem_side: complex
    hem_inseam: complex
    knee_inseam: complex
    fork: complex
    crotch: Path
    side_bow: float = 0.0
    side_hollow: float = 0.0
    inseam_hollow: float = 0.0
    darts: tuple[DartPlan, ...] = ()
    points: Mapping[str, complex] = field(default_factory=dict)

    @cached_property
    def side(self) -> Path:
        """Side seam, waist to hem, smooth through the hip point."""
        return Path.join(self.side_to(self.waist_side, self.knee_side), Line(self.knee_side, self.hem_side))

    def side_to(self, waist_side: complex, below: complex) -> Path:
        """Side seam from any waist point over the hip point to any point below it.

        Bow and hollow belong to the method's own lengths; on a shorter stretch they shrink with the square of the
        length, so that the bend stays the same.
        """
        bow = self.side_bow * (abs(waist_side - self.hip_side) / abs(self.waist_side - self.hip_side)) ** 2
        hollow = self.side_hollow * (abs(below - self.hip_side) / abs(self.knee_side - self.hip_side)) ** 2
        return Path(bow_into(waist_side, self.hip_side, below, -bow, hollow))

    @cached_property
    def inseam(self) -> Path:
        """Inseam, hem to fork, as the method draws it (not yet square to the crotch seam)."""
        return Path.join(Line(self.hem_inseam, self.knee_inseam), bow(self.knee_inseam, self.fork, self.inseam_hollow))

    @cached_property
    def waist(self) -> Path:
        """Waist line, centre to side, darts open."""
        return Path.line(self.waist_centre, self.waist_side)

    @cached_property
    def outline(self) -> Path:
        """Closed outline, counter-clockwise from the side of the waist."""
        hem = Line(self.hem_side, self.hem_inseam)
        return Path.join(self.side, hem, self.inseam, self.crotch, self.waist)

    @property
    def straight(self) -> float:
        """Length of the straight part of the crotch seam below the waist."""
        last = self.crotch.segments[-1]
        return abs(last.controls[-1] - last.controls[0])


@dataclass(frozen=True, eq=False)
class Block:
    """Front and back as one method drafts them for one body (or, in arrays, for many).

    ``levels`` gives the heights of the waist, hip, crotch, knee and hem lines; ``ease`` what the draft adds to the
    whole girths of the body in cloth (keys ``waist`` and ``hip``; empty: measured on the drawing); ``crease`` the x of
    the grain line.
    """

    method: str
    front: PanelBlock
    back: PanelBlock
    levels: Mapping[str, float]
    ease: Mapping[str, float] = field(default_factory=dict)
    crease: float = 0.0


def moved(block: Block, by: complex = 0j, scale: float = 1.0, turn: complex = 1 + 0j) -> Block:
    """Block scaled, turned by a direction of length 1 and then moved: from a source's own frame and unit into ours.

    `by` is in the source's unit.
    """
    levels = {name: (y + by.imag) * scale for name, y in block.levels.items()}
    return replace(mapped(block, lambda mm: mm * scale, lambda p: (p * turn + by) * scale), levels=levels)


SAME_POINT_MM = 1e-6
Number = Callable[[float], float]
Place = Callable[[complex], complex]


def mapped(block: Block, number: Number, place: Place | None = None) -> Block:
    """Block with every length and every point replaced; `place` left out: points are treated as lengths are."""
    put: Place = place or number  # type: ignore[assignment]

    def drawn(segment: Segment) -> Segment:
        return type(segment)(*(put(p) for p in segment.controls))

    def panel(source: PanelBlock) -> PanelBlock:
        points: dict[str, Any] = {name: put(getattr(source, name)) for name in POINTS}
        bends = {name: number(getattr(source, name)) for name in ("side_bow", "side_hollow", "inseam_hollow")}
        return PanelBlock(
            **points,
            **bends,
            crotch=Path(tuple(drawn(segment) for segment in source.crotch)),
            darts=tuple(
                replace(d, mouth=put(d.mouth), point=put(d.point), intake=number(d.intake)) for d in source.darts
            ),
            points={name: put(p) for name, p in source.points.items()},
        )

    return Block(
        block.method,
        panel(block.front),
        panel(block.back),
        {name: number(y) for name, y in block.levels.items()},
        {name: number(mm) for name, mm in block.ease.items()},
        number(block.crease),
    )


def followed(points: Mapping[str, complex], moves: Sequence[tuple[complex, complex]]) -> dict[str, complex]:
    """Construction points after some places of the panel moved (old place, new place): what lay there goes along."""

    def place(p: complex) -> complex:
        return next((new for old, new in moves if np.all(abs(p - old) < SAME_POINT_MM)), p)

    return {name: place(p) for name, p in points.items()}


def stacked(blocks: Sequence[Block]) -> Block:
    """One block in arrays of several in plain numbers, drafted alike."""
    return _combined(blocks, np.array)


def chained(blocks: Sequence[Block]) -> Block:
    """One block in arrays of several in arrays."""
    return _combined(blocks, np.concatenate)


def _combined(blocks: Sequence[Block], combine: Callable[[Sequence[float]], object]) -> Block:
    def numbers(block: Block) -> list[float]:
        seen: list[float] = []

        def note(number: float) -> float:
            seen.append(number)
            return number

        mapped(block, note)
        return seen

    columns = (combine(column) for column in zip(*map(numbers, blocks), strict=True))
    return mapped(blocks[0], lambda _: next(columns))  # type: ignore[arg-type, return-value]
