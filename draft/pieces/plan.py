"""What every piece is made from: the shell, the style, and the places that several pieces share."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Literal, Protocol

from draft.body import Body
from draft.edge import Corner, Edge
from draft.geometry.path import Path
from draft.piece import Hole, InnerLine, Notch, Piece
from draft.seams import Joint, Seam
from draft.shape.shell import Shell, Waist
from draft.style import SmallPart, Style

Opens = Literal["centre front", "left side", "nowhere"]


@dataclass(frozen=True, eq=False)
class Plan:
    """One garment on the way from shell to pieces."""

    body: Body
    style: Style
    shell: Shell
    made_for: str

    @cached_property
    def front_crotch(self) -> Path:
        """Front crotch seam walked down from the waist."""
        return self.shell.front.crotch.reversed()


@dataclass(frozen=True, eq=False)
class FrontOpening:
    """How a pocket cuts the front: what is left of waist and side, and the edge between them.

    ``on_side`` is how far down the side seam the front begins, ``on_waist`` how far from the side its waist ends.
    """

    waist: Waist
    side: Path
    mouth: Path | None = None
    on_side: float = 0.0
    on_waist: float = 0.0
    ease: float = 0.0


class PocketKind(Protocol):
    """A kind of front pocket."""

    def opening(self, plan: Plan) -> FrontOpening:
        """Cut of the front."""

    def pieces(self, plan: Plan) -> list[Piece]:
        """Pieces of the pocket."""

    def seams(self, plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
        """Seams of the pocket, and of the side seam above its mouth."""


class BackPocketKind(Protocol):
    """A kind of back pocket, sewn to or cut into the flat back."""

    def back_marks(self, plan: Plan) -> tuple[list[InnerLine], list[Hole]]:
        """Lines and drill holes on the back."""

    def pieces(self, plan: Plan) -> list[Piece]:
        """Pieces of the pocket."""

    def seams(self, plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
        """Seams between the pocket's own pieces."""

    def notes(self, plan: Plan) -> list[str]:
        """What to buy and what to mind."""


class SmallPartKind(Protocol):
    """A kind of small part, drawn for itself.

    It may also have ``marks(plan, part, pieces)``: lines to add to other pieces, by their names; and
    ``seams(plan, part, pieces)``.
    """

    def pieces(self, plan: Plan, part: SmallPart) -> list[Piece]:
        """Pieces of the part."""

    def notes(self, plan: Plan, part: SmallPart) -> list[str]:
        """Where it goes, what to buy and what to mind."""


class ClosingKind(Protocol):
    """A kind of closing."""

    def opens(self) -> Opens:
        """Where the waist opens."""

    def crotch_edges(self, plan: Plan) -> tuple[Edge, ...]:
        """Edges of the front from the inseam up to the waist: ``crotch``, and ``fly`` where it opens."""

    def front_marks(self, plan: Plan) -> tuple[list[InnerLine], list[Notch]]:
        """Lines and notches on the front; notches count along the fly from its lower end."""

    def side_marks(self, plan: Plan, opening: FrontOpening) -> list[Notch]:
        """Notches on the side seams of front and back, counted from the waist."""

    def underlap(self, plan: Plan) -> float:
        """Width of what lies underneath, mm."""

    def pieces(self, plan: Plan) -> list[Piece]:
        """Pieces of the closing."""

    def seams(self, plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
        """Seams of the closing."""

    def notes(self, plan: Plan) -> list[str]:
        """What to buy and what to mind."""


class HemKind(Protocol):
    """A way to finish the bottom edge.

    It may also have ``turning(plan, name)``, the seam lines of a turning with more than one fold (see ``draft.edge``),
    ``leg_notches(plan, name)``, notches on the leg, counted along its whole side seam and its hem, and ``notes(plan)``.
    """

    def allowance(self, plan: Plan) -> float:
        """Allowance of the leg's bottom edge."""

    def corner(self) -> Corner:
        """Corner of the leg's seams with the bottom edge."""

    def above(self, plan: Plan) -> float:
        """How far above the bottom edge the finished hem reaches."""

    def leg_lines(self, plan: Plan, name: str) -> list[InnerLine]:
        """Lines on the leg."""

    def pieces(self, plan: Plan) -> list[Piece]:
        """Pieces of the hem."""

    def seams(self, plan: Plan, pieces: Mapping[str, Piece]) -> tuple[list[Seam], list[Joint]]:
        """Seams and joints of the hem."""


@dataclass(frozen=True)
class WaistEdges:
    """What a band has to know of the waist it is sewn to.

    ``pocket`` is the width of the pocket facing that shows in the waist seam, ``mouth_ease`` how much the front lies
    loose over it, ``underlap`` the width of what lies under the closing, ``opens`` where the waist opens.
    """

    legs: Mapping[str, Piece]
    pocket: float
    mouth_ease: float
    underlap: float
    opens: Opens = "centre front"


class BandKind(Protocol):
    """A way to finish the waist."""

    def pieces(self, plan: Plan, waist: WaistEdges) -> list[Piece]:
        """Pieces of the band, made to the waist edges they are sewn to."""

    def seams(self, plan: Plan, waist: WaistEdges, pieces: Mapping[str, Piece]) -> list[Seam]:
        """Seams between band and waist."""

    def girth(self, plan: Plan, waist: WaistEdges) -> float:
        """Finished girth of the waist as worn."""
