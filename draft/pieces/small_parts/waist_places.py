"""Where a place of the waist lies on the pieces: on the band, on what lines it, or on front and back below the seam.

Places are counted as worn, along one half of the waist seam from the centre front to the centre back, darts closed.
A band is eased evenly, so between its notches the places are spread evenly too. Pieces cut in pairs or on the fold
are marked for one half.

Glossary
--------
outside  the layer of the band that is seen; a waist that is faced has none, there the garment below the seam is marked
inside   the layer against the body
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

import numpy as np

from draft.geometry.arrays import Points
from draft.geometry.meet import meet_line
from draft.geometry.path import Path
from draft.geometry.points import dot
from draft.geometry.polygon import inside
from draft.piece import InnerLine, Piece
from draft.pieces.plan import Plan
from draft.shape.leg import largest

Layer = Literal["outside", "inside"]
BANDS = ("waistband", "casing", "waistband_left", "waistband_right", "waistband_back")
LININGS = ("waistband_left_inner", "waistband_right_inner", "waistband_back_inner")
FACINGS = ("waist_facing_front", "waist_facing_left", "waist_facing_right", "waist_facing_back")
HALVES = ("", "other ")
END_SLACK_MM = 1e-6
STEPS = np.linspace(0.02, 1.0, 50)


@dataclass(frozen=True)
class Stretch:
    """A run of a piece's waist edge that carries the places `start` to `stop`, at `first` to `last` along the edge."""

    piece: str
    start: float
    stop: float
    first: float
    last: float

    def holds(self, place: float) -> bool:
        """Whether a place of the waist lies on it."""
        return self.start - END_SLACK_MM <= place <= self.stop + END_SLACK_MM

    def along(self, place: float) -> float:
        """Distance along the edge of a place of the waist."""
        share = (min(max(place, self.start), self.stop) - self.start) / (self.stop - self.start)
        return self.first + share * (self.last - self.first)


@dataclass(frozen=True, eq=False)
class Spot:
    """A place on a piece: on its waist edge, the way into the piece, and the depth of the layer there."""

    piece: Piece
    at: complex
    inward: complex
    depth: float

    def line(self, low: float, high: float) -> Path:
        """Line square to the waist edge from one distance to another, shortened where it would leave the piece."""
        outline = self.piece.cut_line.points(0.5)

        def stays(length: float) -> bool:
            points: Points = np.asarray(self.at + self.inward * (low + STEPS * (length - low)), dtype=complex)
            return length <= low or bool(inside(points, outline).all())

        return Path.line(self.at + self.inward * low, self.at + self.inward * max(low + 1.0, largest(stays, high)))

    def cross(self, deep: float, half: float) -> tuple[Path, Path]:
        """Two crossing lines of half a size each way, `deep` mm from the waist edge."""
        middle = self.at + self.inward * deep
        across = 1j * self.inward
        return (
            Path.line(middle - across * half, middle + across * half),
            Path.line(middle - self.inward * half, middle + self.inward * half),
        )


def half_waist(plan: Plan) -> float:
    """Centre front to centre back along the waist seam, mm."""
    return plan.shell.front.waist.length + plan.shell.back.waist.length


def side_seam(plan: Plan) -> float:
    """Place of the side seam."""
    return plan.shell.front.waist.length


def crease_place(plan: Plan) -> float:
    """Place of the front's crease line; in a dart or pleat, that of its leg towards the centre."""
    along, waist = 0.0, plan.shell.front.waist
    for part in waist.parts:
        found = meet_line(part, complex(plan.shell.crease, 0), 1j)
        if found:
            return along + found[0]
        if part.end.real < plan.shell.crease:  # the waist runs on from the centre towards smaller x
            return along
        along += part.length
    return along


def spots(plan: Plan, pieces: Mapping[str, Piece], place: float, layer: Layer, below: float) -> list[Spot]:
    """Spots of a place of the waist, on every half and piece that carries it; at a seam, on the piece before it.

    ``below`` is the depth of a mark on front and back, for a waist that has no layer of its own outside.
    """
    found = []
    for run in _halves(plan, pieces, layer):
        stretch = next((one for one in run if one.holds(place)), None)
        if stretch is not None:
            found.append(_spot(pieces[stretch.piece], stretch.along(place), below))
    return found


def inner_depth(spot: Spot, from_top: float) -> float:
    """Distance from the waist edge of a mark on the inside, `from_top` mm below the upper edge of the waist."""
    less = min(from_top, spot.depth / 2)
    if spot.piece.name in FACINGS:
        return less
    return spot.depth - less if spot.piece.name in LININGS else spot.depth + less


def marked(found: Mapping[str, list[InnerLine]], spot: Spot, line: InnerLine) -> dict[str, list[InnerLine]]:
    """The same marks with one more."""
    name = spot.piece.name
    return {**found, name: [*found.get(name, []), line]}


def _spot(piece: Piece, along: float, below: float) -> Spot:
    edge = piece.edge("waist")
    at, inward = edge.point_at(along), 1j * edge.direction_at(along)
    return Spot(
        piece, at, inward, below if piece.name not in (*BANDS, *LININGS, *FACINGS) else _depth(piece, at, inward)
    )


def _depth(piece: Piece, at: complex, inward: complex) -> float:
    """How deep a band is: to its fold, or to its upper or lower edge."""
    far = [line.path for line in piece.lines if line.kind == "fold"]
    far += [edge.path for edge in piece.edges if edge.name in ("top", "lower")]
    ways = [float(dot(path.point_at(s) - at, inward)) for path in far for s in meet_line(path, at, inward)]
    return min(way for way in ways if way > 0)


def _halves(plan: Plan, pieces: Mapping[str, Piece], layer: Layer) -> list[list[Stretch]]:
    """Stretches that carry the waist, one list for each half that is drawn."""
    has = set(pieces)
    names = BANDS if layer == "outside" else (*LININGS, *FACINGS)
    bearing = [name for name in names if name in has] or [name for name in BANDS if name in has]
    if not bearing:
        return [_on_garment(plan, pieces)]
    whole = [name for name in bearing if _notch(pieces[name], "side seam") is not None]
    if whole:
        return [_on_strip(plan, pieces[whole[0]], half) for half in HALVES]
    return [[_on_section(plan, pieces[name])] for name in bearing]


def _notch(piece: Piece, name: str) -> float | None:
    return next((n.along for n in piece.notches if n.edge == "waist" and n.match == name), None)


def _first_of(piece: Piece, *names: str) -> float | None:
    return next((at for at in (_notch(piece, name) for name in names) if at is not None), None)


def _on_strip(plan: Plan, strip: Piece, half: str) -> list[Stretch]:
    """Half of a band in one strip; where it opens, the names of its notches say on which side they lie."""
    length, side, whole = strip.edge("waist").length, side_seam(plan), half_waist(plan)
    centre_front = _first_of(strip, f"{half}centre front", "centre front")
    at_side = _first_of(strip, f"{half}side seam")
    back_side = at_side if half else _first_of(strip, "side seam of the back", "side seam")
    assert centre_front is not None
    assert at_side is not None
    assert back_side is not None
    centre_back = _first_of(strip, "centre back")
    if centre_back is None:  # joined there: its ends are the centre back
        centre_back = length if at_side > centre_front else 0.0
    return [
        Stretch(strip.name, 0.0, side, centre_front, at_side),
        Stretch(strip.name, side, whole, back_side, centre_back),
    ]


def _on_section(plan: Plan, piece: Piece) -> Stretch:
    """Front or back section of a band in parts."""
    length, side, whole = piece.edge("waist").length, side_seam(plan), half_waist(plan)
    centre_front = _first_of(piece, "centre front", "other centre front")
    if centre_front is not None:  # the other end is the one as far off as the front is wide
        other = min((0.0, length), key=lambda end: abs(abs(end - centre_front) - side))
        return Stretch(piece.name, 0.0, side, centre_front, other)
    names = [edge.name for edge in piece.edges]
    after = names[(names.index("waist") + 1) % len(names)]
    first, last = (0.0, length) if after in ("fold", "centre") else (length, 0.0)
    return Stretch(piece.name, side, whole, first, last)


def _on_garment(plan: Plan, pieces: Mapping[str, Piece]) -> list[Stretch]:
    """Front, what shows of the pocket facing, and back; their waist edges run from the centre to the side."""
    side, whole = side_seam(plan), half_waist(plan)
    front, back = (pieces[name].edge("waist").length for name in ("front", "back"))
    ease = float(getattr(plan.style.pocket, "mouth_ease", 0.0))
    seen = front - ease
    found = [Stretch("front", 0.0, seen, 0.0, front)]
    if side - seen > END_SLACK_MM and "pocket_facing" in pieces:
        facing = pieces["pocket_facing"].edge("waist").length
        found.append(Stretch("pocket_facing", seen, side, facing - (side - seen), facing))
    return [*found, Stretch("back", side, whole, back, 0.0)]
