"""Traced: a front and a back that somebody else drew, as pieces with named edges, to be measured like our own."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cached_property
from itertools import pairwise
from types import MappingProxyType

import numpy as np

from draft.dart import Dart
from draft.drawing.view import pattern_svg
from draft.edge import Edge
from draft.errors import DraftError
from draft.fitting.thigh import THIGH_BELOW_CROTCH
from draft.geometry.arrays import Points
from draft.geometry.nearest import nearest
from draft.geometry.path import Path
from draft.geometry.points import dot, mid
from draft.geometry.segments import Line, Motion
from draft.measure import KNEE_ABOVE_HEM, Sizes, width_at
from draft.piece import Cut, InnerLine, Piece, dart_marks
from draft.trace.corners import NAMES, Corners, propose_corners
from draft.trace.marks import Triple, drawn_grain, gaps, propose_darts
from draft.trace.outline import Outline, thinned
from draft.trace.sewline import EDGES, parted, smooth_path
from draft.units import to_mm

WIDEST_ALLOWANCE_MM = 80.0
LEVEL_OFF_DEG = 4.0  # a hem that is further off level than this says that the piece lies turned
SIDES_APART_MM = 15.0  # side seams that differ by more are not laid hem to hem
OFF_WAIST_MM = 25.0
HIP_SHARE = 1 / 3
"""Hip line above the crotch line by the height of the waist above it, when nothing is said (common practice)."""


@dataclass(frozen=True, eq=False, kw_only=True)
class Traced:
    """Front and back of a traced pattern.

    Parameters
    ----------
    front, back : Outline
        One of each, of the same size; as cut or as sewn. Either may lie mirrored, turned or upside down.
    allowance : float, str or mapping
        Seam allowance that is included, mm: 0 for seam lines, one width all round, or one for each edge by its name
        (side, hem, inseam, crotch, waist; those left out are 0). It must be said; nothing in an outline tells it.
    front_corners, back_corners : Corners, optional
        None: as :func:`propose_corners` finds them; look at the picture then.
    front_darts, back_darts : sequence of (leg, point, leg), optional
        Ends of the legs at the waist seam, and the point between. None: those drawn inside, or cut out of the waist.
    front_grain, back_grain : (complex, complex), optional
        Two points on the grain line. None: the longest upright line drawn inside; else upright as the piece lies; else,
        when the hem is more than 4 degrees off level, square to the hem.
    waist_to_hip : float or str, optional
        From the waist edge at the side straight down to the hip line; None: the hip line lies a third of the way from
        the crotch line up to the waist.
    back_drop : float or str, optional
        How far the fork of the back lies below the crotch line of the front, mm, when both lie level side by side.
        None: as the side seams have it when they are sewn, hem to hem.
    knee : float or str, optional
        From the crotch line straight down to the knee line; None: the knee is not measured.
    name : str
        For titles.

    Raises
    ------
    DraftError
        For corners off the outline or in a wrong order, and allowances without room.

    Examples
    --------
    >>> leg = [100j - 110, -160j - 110, -160j + 110, 130, 80 + 20j, 70 + 45j, 65 + 100j, 65 + 250j, 250j - 110]
    >>> traced = Traced(front=Outline(leg), back=Outline(leg), allowance=0, waist_to_hip=190)
    >>> {name: round(mm) for name, mm in traced.measure().items()}
    {'waist': 700, 'hip': 714, 'thigh': 474, 'hem': 440, 'front_crotch': 286, 'back_crotch': 286, 'crotch': 572,
    'inside_leg': 161, 'outside_leg': 410}
    """

    front: Outline
    back: Outline
    allowance: float | str | Mapping[str, float | str]
    front_corners: Corners | None = None
    back_corners: Corners | None = None
    front_darts: Sequence[Triple] | None = None
    back_darts: Sequence[Triple] | None = None
    front_grain: tuple[complex, complex] | None = None
    back_grain: tuple[complex, complex] | None = None
    waist_to_hip: float | str | None = None
    knee: float | str | None = None
    back_drop: float | str | None = None
    name: str = "traced pattern"
    pieces: Mapping[str, Piece] = field(init=False, repr=False)
    """Front and back by name, in the library's frame: crotch line at y = 0, crease upright at x = 0, side left."""

    def __post_init__(self) -> None:
        widths = _widths(self.allowance)
        for name in ("front", "back"):
            if not isinstance(getattr(self, name), Outline):
                value = type(getattr(self, name)).__name__
                raise DraftError(name, value, "an Outline", "take one of those that read_svg or read_dxf gives")
        front = _piece("front", self.front, self.front_corners, self.front_darts, self.front_grain, widths, self.name)
        back = _piece("back", self.back, self.back_corners, self.back_darts, self.back_grain, widths, self.name)
        off = front.edge("hem").start.imag - back.edge("hem").start.imag
        if self.back_drop is not None:
            back = _shifted(back, -1j * to_mm(self.back_drop, "back_drop"))
        elif abs(front.edge("side").length - back.edge("side").length) <= SIDES_APART_MM:
            back = _shifted(back, 1j * off)  # sewn side to side, the hems meet; the fork of the back lies lower
        object.__setattr__(self, "pieces", MappingProxyType({"front": front, "back": back}))
        self.levels  # noqa: B018 - a wrong level is told now

    @cached_property
    def levels(self) -> Mapping[str, float]:
        """Heights of the waist (at the side), hip, crotch, hem and, where it is known, knee lines."""
        front = self.pieces["front"]
        waist, hem = front.edge("side").start.imag, front.edge("hem").start.imag
        hip = waist * HIP_SHARE
        if self.waist_to_hip is not None:
            hip = waist - to_mm(self.waist_to_hip, "waist_to_hip")
            if not hem < hip < waist:
                expected = f"more than 0 and less than {waist - hem:.0f} mm, the length of the side"
                raise DraftError("waist_to_hip", self.waist_to_hip, expected, "measure it down from the waist edge")
        found = {"waist": waist, "hip": hip, "crotch": 0.0, "hem": hem}
        if self.knee is not None:
            found["knee"] = -to_mm(self.knee, "knee")
            if not hem < found["knee"] < 0:
                expected = f"more than 0 and less than {-hem:.0f} mm"
                raise DraftError("knee", self.knee, expected, "measure it down from the crotch line")
        return MappingProxyType(found)

    @cached_property
    def _sizes(self) -> Sizes:
        front, back = self.pieces["front"], self.pieces["back"]

        def girth(y: float) -> float:
            try:
                return width_at(front, y) + width_at(back, y)
            except ValueError as error:
                expected = "a level that crosses front and back"
                raise DraftError("level", f"y = {y:.0f} mm", expected, "look at corners and levels") from error

        waist = 2 * (front.edge("waist").length + back.edge("waist").length)
        found = {"waist": waist, "hip": 2 * girth(self.levels["hip"])}
        below = self.levels["crotch"] - THIGH_BELOW_CROTCH
        if self._reaches(below):
            found["thigh"] = girth(below)
        if "knee" in self.levels and self._reaches(self.levels["knee"] - KNEE_ABOVE_HEM):
            found["knee"] = girth(self.levels["knee"])
        found["hem"] = front.edge("hem").length + back.edge("hem").length
        found["front_crotch"] = front.edge("crotch").length
        found["back_crotch"] = back.edge("crotch").length
        found["crotch"] = found["front_crotch"] + found["back_crotch"]
        found["inside_leg"] = front.edge("inseam").length
        found["outside_leg"] = back.edge("side").length
        return Sizes(tuple((name, float(value)) for name, value in found.items()))

    def _reaches(self, y: float) -> bool:
        """Whether front and back both reach below a height."""
        return all(max(p.edge("hem").start.imag, p.edge("hem").end.imag) < y for p in self.pieces.values())

    def measure(self) -> Sizes:
        """Finished sizes in mm under the names of :meth:`draft.Pattern.measure`: girths of the whole body, as sewn.

        The waist is that of the waist seams, darts closed; a fly extension that is part of the front counts with it.
        The hip stands at the hip line of :attr:`levels`; the thigh is taken 25 mm below the crotch line.
        """
        return self._sizes

    def _repr_svg_(self) -> str:
        return pattern_svg(self)

    def __repr__(self) -> str:
        told = ", ".join(f"{name} {mm:.0f}" for name, mm in self._sizes.items())
        return f"<Traced {self.name}: {told}>"


def _widths(allowance: object) -> dict[str, float]:
    """Allowance of each edge."""
    if isinstance(allowance, Mapping):
        for name in allowance:
            if name not in EDGES:
                raise DraftError("allowance", name, "edges named " + ", ".join(EDGES), "name one of these")
        given = dict(allowance)
    else:
        given = dict.fromkeys(EDGES, allowance)
    found = {name: to_mm(given.get(name, 0.0), f"allowance of {name}") for name in EDGES}
    for name, width in found.items():
        if not 0 <= width <= WIDEST_ALLOWANCE_MM:
            expected = f"0 to {WIDEST_ALLOWANCE_MM:g} mm"
            raise DraftError(f"allowance of {name}", width, expected, "measure it at a straight stretch")
    return found


def _piece(
    name: str,
    outline: Outline,
    corners: Corners | None,
    darts: Sequence[Triple] | None,
    grain: tuple[complex, complex] | None,
    widths: Mapping[str, float],
    made_for: str,
) -> Piece:
    """One panel in the library's frame."""
    corners = propose_corners(outline) if corners is None else corners
    darts = propose_darts(outline) if darts is None else tuple(darts)
    upright = _upright(outline, corners, grain)
    flip = corners.mirrored
    turn = 1j / (-np.conj(upright) if flip else upright)

    def put(p: complex) -> complex:
        return complex(turn * (-np.conj(p) if flip else p))

    ring = np.array([put(p) for p in outline.points])
    named = Corners(**{key: put(getattr(corners, key)) for key in NAMES})
    seams = parted(ring[::-1] if flip else ring, named, widths, name)
    shift = -complex((seams["hem"][0].real + seams["hem"][-1].real) / 2, seams["crotch"][0].imag)
    seams = {key: line + shift for key, line in seams.items()}
    triples = [(put(a) + shift, put(b) + shift, put(c) + shift) for a, b, c in darts]
    parts, found = _waist(seams["waist"], triples, name)
    edges = [Edge(key, (smooth_path(seams[key]),), allowance=widths[key]) for key in EDGES[:-1]]
    edges.append(Edge("waist", parts, found, widths["waist"]))
    top, bottom = edges[0].start.imag, edges[0].end.imag
    margin = 0.12 * (top - bottom)
    lines, holes = dart_marks(edges[-1])
    return Piece(
        name,
        name.capitalize(),
        tuple(edges),
        Cut(2, "self", mirrored=True),
        Line(1j * (bottom + margin), 1j * (top - 2 * margin)),
        lines=lines,
        holes=holes,
        made_for=made_for,
    )


def _upright(outline: Outline, corners: Corners, grain: tuple[complex, complex] | None) -> complex:
    """Direction of the grain, towards the waist."""
    hem = corners.hem_inseam - corners.hem_side
    square = (-1j if corners.mirrored else 1j) * hem / abs(hem)
    line = drawn_grain(outline, square) if grain is None else grain
    if line is not None:
        run = complex(line[1]) - complex(line[0])
        if abs(run) < 1 or not np.isfinite(run):
            raise DraftError("grain", line, "two points apart", "give both ends of the grain line")
        run /= abs(run)
        return run if (run * np.conj(square)).real > 0 else -run
    off = np.degrees(np.angle(square / 1j))
    if abs(off) <= LEVEL_OFF_DEG:
        return 1j
    return -1j if abs(off) >= 180 - LEVEL_OFF_DEG else square


def _waist(line: Points, triples: Sequence[Triple], name: str) -> tuple[tuple[Path, ...], tuple[Dart, ...]]:
    """Sewn stretches of the waist seam from the centre to the side, and the darts between them."""
    whole = Path.line(*(complex(p) for p in line))
    cut = gaps(thinned_line(line))
    places = []
    for one, point, two in [*triples, *cut]:
        (s, off_s), (t, off_t) = nearest(whole, one), nearest(whole, two)
        if max(off_s, off_t) > OFF_WAIST_MM or s == t:
            expected = f"legs that end on the waist seam (now {max(off_s, off_t):.0f} mm away)"
            raise DraftError(f"{name}, dart", str(one), expected, "give leg, point, leg in the outline's coordinates")
        places.append((min(s, t), max(s, t), point))
    places.sort(key=lambda place: place[0])
    ends = [0.0, *(x for s, t, _ in places for x in (s, t)), whole.length]
    if any(b - a < 0.5 for a, b in pairwise(ends)):
        raise DraftError(f"{name}, darts", len(places), "darts beside each other on the waist seam", "leave one out")
    parts = tuple(smooth_path(_between(whole, a, b)) for a, b in zip(ends[::2], ends[1::2], strict=True))
    darts = tuple(
        Dart(before.end, after.start, _midway(before.end, after.start, place[2]))
        for before, after, place in zip(parts, parts[1:], places, strict=False)
    )
    try:
        Edge("waist", parts, darts).path  # noqa: B018 - drawn now, so that a dart without a cap is told now
    except (IndexError, DraftError) as error:
        expected = "a dart whose legs are alike and stand on the seam"
        raise DraftError(f"{name}, dart", len(darts), expected, "give leg, point, leg again") from error
    return parts, darts


def _midway(one: complex, two: complex, point: complex) -> complex:
    """Point of a dart moved along its mouth until both legs are alike."""
    mouth = (two - one) / abs(two - one)
    return point - mouth * dot(point - mid(one, two), mouth)


def thinned_line(line: Points) -> Points:
    """Open polyline without points that are not needed."""
    ring = thinned(np.append(line, [line[-1] + 1e4j, line[0] + 1e4j]), 0.5)
    start = int(np.argmin(np.abs(ring - line[0])))
    ring = np.roll(ring, -start)
    return np.asarray(ring[: int(np.argmin(np.abs(ring - line[-1]))) + 1])


def _between(path: Path, start: float, stop: float) -> Points:
    part = path.between(start, stop)
    return np.array([part.start, *(segment.controls[-1] for segment in part)])


def _shifted(piece: Piece, by: complex) -> Piece:
    """Piece moved in its frame."""
    motion = Motion(shift=by)
    edges = tuple(
        replace(
            edge,
            parts=tuple(part.moved(motion) for part in edge.parts),
            darts=tuple(Dart(d.centre_leg + by, d.side_leg + by, d.point + by) for d in edge.darts),
        )
        for edge in piece.edges
    )
    lines = tuple(InnerLine(line.kind, line.path.moved(motion), line.note) for line in piece.lines)
    holes = tuple(replace(hole, at=hole.at + by) for hole in piece.holes)
    return replace(piece, edges=edges, lines=lines, holes=holes, grainline=piece.grainline.moved(motion))
