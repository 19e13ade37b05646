"""Block: what a drafting method gives, before any choice of style cuts it.

Glossary
--------
panel        the front or the back of one leg, drawn flat; both stand in one frame, side seam left, inseam right
fork         the point where crotch seam and inseam meet
crotch line  the level of the fork, y = 0
crease       the line down the middle of the leg, the grain
hollow       how far a seam is bowed into the panel; bow: out of it

All points may be arrays: one entry for each of many bodies.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property

from draft.geometry.construct import bow, bow_into
from draft.geometry.path import Path
from draft.geometry.segments import Line


@dataclass(frozen=True, eq=False)
class DartPlan:
    """A waist dart as the method places it: middle of its mouth, point, and intake in mm."""

    mouth: complex
    point: complex
    intake: float


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
    side_bow: float
    side_hollow: float
    inseam_hollow: float
    darts: tuple[DartPlan, ...]
    points: Mapping[str, complex]

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

    ``levels`` gives the heights of the waist, hip, crotch, knee and hem lines; ``crease`` the x of the grain line;
    ``ease`` what the draft adds to the girths of the body in cloth.
    """

    method: str
    front: PanelBlock
    back: PanelBlock
    levels: Mapping[str, float]
    crease: float
    ease: Mapping[str, float]
