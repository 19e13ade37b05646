"""Finished sizes, walked and measured on the pieces as they will be cut."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from draft.assemble import Garment
from draft.fitting.thigh import THIGH_BELOW_CROTCH
from draft.geometry.meet import meet_line
from draft.piece import Piece
from draft.table import Table
from draft.units import fmt

KNEE_ABOVE_HEM = 1.0  # the knee is measured on legs that reach below it, front and back


@dataclass(frozen=True)
class Sizes(Mapping[str, float]):
    """Finished sizes in mm by name; prints as a table."""

    values_mm: tuple[tuple[str, float], ...]

    def __getitem__(self, key: str) -> float:
        for name, value in self.values_mm:
            if name == key:
                return value
        raise KeyError(key)

    def __iter__(self) -> Iterator[str]:
        return (name for name, _ in self.values_mm)

    def __len__(self) -> int:
        return len(self.values_mm)

    def table(self) -> Table:
        """Name and size, one row each."""
        rows = tuple((name.replace("_", " "), fmt(value, 1)) for name, value in self.values_mm)
        return Table("Finished sizes", ("where", "mm"), rows)

    def __str__(self) -> str:
        return str(self.table())

    def _repr_html_(self) -> str:
        return self.table().html()


def width_at(piece: Piece, y: float) -> float:
    """Width of a piece between its outermost seam lines at height `y`."""
    places = [piece.sew_line.point_at(s).real for s in meet_line(piece.sew_line, 1j * y, 1 + 0j)]
    return max(places) - min(places)


def finished_sizes(garment: Garment, levels: Mapping[str, float]) -> Sizes:
    """Finished sizes of a garment: girths of the whole body as worn, lengths along the seams."""
    pieces = garment.half or garment.pieces
    front, lower = pieces["front"], pieces["back"]
    back = garment.whole.get("back", lower)

    def of_back(edge: str) -> float:
        parts = [pieces[name] for name in ("back", "back_yoke") if name in pieces]
        return sum(part.edge(edge).length for part in parts)

    def girth(y: float) -> float:
        return width_at(front, y) + width_at(back, y)

    found = {"waist": garment.waist_girth, "hip": 2 * girth(levels["hip"])}
    found["thigh"] = girth(levels["crotch"] - THIGH_BELOW_CROTCH)
    ends = [p.imag for piece in (front, back) for p in (piece.edge("hem").start, piece.edge("hem").end)]
    if max(ends) < levels["knee"] - KNEE_ABOVE_HEM:
        found["knee"] = girth(levels["knee"])
    found["hem"] = front.edge("hem").length + back.edge("hem").length
    found["front_crotch"] = sum(edge.length for edge in front.edges if edge.name in ("crotch", "fly"))
    backs = [pieces[name] for name in ("back", "back_yoke") if name in pieces]
    seat = (edge for piece in backs for edge in piece.edges if edge.name in ("crotch", "seat"))  # two, of a mock-up
    found["back_crotch"] = sum(edge.length for edge in seat)
    found["crotch"] = found["front_crotch"] + found["back_crotch"]
    found["inside_leg"] = front.edge("inseam").length
    found["outside_leg"] = of_back("side")
    return Sizes(tuple((name, float(value)) for name, value in found.items()))
