"""Yoke at the back: the finished back is parted below its waist, and the darts above the cut are closed.

The darts end on the yoke seam. Closed, they leave no gap: the yoke's lower edge bends where they were, is redrawn as
one curve of the same length, and takes their shaping into the seam. Common practice, no source; the lengths are exact.

What was sewn to the whole back is sewn to its two parts: seams, notches and marks are handed on by place.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import pairwise

from draft.edge import Corner, Edge
from draft.errors import DraftError
from draft.geometry.construct import smooth
from draft.geometry.meet import meet_line
from draft.geometry.path import Path
from draft.geometry.points import cross, dot, unit
from draft.geometry.segments import Line, Motion
from draft.piece import Cut, Notch, Piece
from draft.pieces.bands.closed import closed_waist
from draft.pieces.plan import Plan
from draft.seams import Joint, Run, Seam
from draft.shape.leg import solve
from draft.style import Yoke
from draft.units import at_least, at_most

NAME = "back_yoke"
SHORTEST_DART = 25.0  # a dart that ends nearer to the waist would stand out like a cone
ABOVE_HIP = 20.0  # of the seam's ends
GRAIN_SHARE = 0.6  # of the height of the yoke where it stands
LENGTH_TOL_MM = 0.005


@dataclass(frozen=True, eq=False)
class Parted:
    """The back parted along the yoke seam: lengths on its edges, and the two curves that are sewn together."""

    plan: Plan
    yoke: Yoke
    back: Piece

    @cached_property
    def below(self) -> float:
        """Length of the crotch seam that stays with the back."""
        return self.plan.shell.back.crotch.length - self.yoke.centre

    @cached_property
    def seam(self) -> Line:
        """Yoke seam on the back, centre to side."""
        panel = self.plan.shell.back
        return Line(panel.crotch.point_at(self.below), panel.side.point_at(self.yoke.side))

    @cached_property
    def places(self) -> list[float]:
        """Where the darts end, along the seam from the centre."""
        along = unit(self.seam.p1 - self.seam.p0)
        return [dot(dart.point - self.seam.p0, along) for dart in self.plan.shell.back.waist.darts]

    @cached_property
    def closed(self) -> tuple[Path, Motion]:
        """Waist of the yoke with its darts closed, and the move that took its side there."""
        closed = closed_waist(self.plan.shell.back.waist)
        return closed.path, closed.last

    @cached_property
    def lower(self) -> Path:
        """Lower edge of the yoke, side to centre, as long as the seam it is sewn to."""
        _, last = self.closed
        way = unit(self.seam.p0 - self.seam.p1)
        start, length = last(self.seam.p1), abs(self.seam.p1 - self.seam.p0)

        def drawn(handle: float) -> Path:
            return Path((smooth(start, way * last.turn, self.seam.p0, way, handle, handle),))

        if abs(start - self.seam.p0) > length - LENGTH_TOL_MM:
            return Path((Line(start, self.seam.p0),))
        return drawn(solve(lambda handle: drawn(handle).length, length, 0.35))


def yoked(
    plan: Plan, yoke: Yoke, pieces: Mapping[str, Piece], seams: Sequence[Seam], joints: Sequence[Joint]
) -> tuple[dict[str, Piece], list[Seam], list[Joint]]:
    """Pieces, seams and joints of a garment after its back was parted.

    Raises
    ------
    DraftError
        When the seam would meet the hip, the end of a dart near the waist, or the marks of a pocket.
    """
    parted = Parted(plan, yoke, pieces["back"])
    _check(parted)
    made: dict[str, Piece] = {}
    for name, piece in pieces.items():
        made[name] = _lower_back(parted) if name == "back" else piece
        if name == "back":
            made[NAME] = _yoke_piece(parted)
    found = [part for seam in seams for part in _handed_on(seam, parted, pieces, made)]
    found.append(Seam.of("yoke seam", Run(NAME, "yoke"), Run("back", "yoke", back=True), made))
    moved = [replace(joint, a=_corner(joint.a), b=_corner(joint.b)) for joint in joints]
    moved.append(Joint("side seam at the yoke seam", (NAME, "side"), ("back", "yoke")))
    moved.append(Joint("seat seam at the yoke seam", (NAME, "yoke"), ("back", "crotch")))
    return made, found, moved


def _corner(corner: tuple[str, str]) -> tuple[str, str]:
    """Corner of the whole back, on the part that has it now."""
    return (NAME, corner[1]) if corner in (("back", "waist"), ("back", "crotch")) else corner


def _check(parted: Parted) -> None:
    plan, yoke, seam = parted.plan, parted.yoke, parted.seam
    hip = plan.shell.levels["hip"] + ABOVE_HIP
    for field, end in (("centre", seam.p0), ("side", seam.p1)):
        if end.imag < hip:
            most = getattr(yoke, field) - (hip - end.imag)
            expected = f"at most {at_most(most)} mm on this body, {ABOVE_HIP:g} above the hip line"
            raise DraftError(f"style.yoke.{field}", getattr(yoke, field), expected, "make the yoke shallower")
    for dart in plan.shell.back.waist.darts:
        if dart.length < SHORTEST_DART:
            more = SHORTEST_DART - dart.length
            least = at_least(yoke.centre + more)
            expected = f"about {least} mm or more, so that no dart is shorter than {SHORTEST_DART:g}"
            raise DraftError("style.yoke.centre", yoke.centre, expected, "make the yoke deeper")
    marks = [p for line in _kept_lines(parted) for p in line.path.points(1.0)]
    marks += [hole.at for hole in _kept_holes(parted)]
    above = max((_above(parted, p) for p in marks), default=-1.0)
    if above > 0:
        most = min(yoke.centre, yoke.side) - above
        expected = f"at most {at_most(max(0.0, most))} mm at both ends, above the marks on the back"
        remedy = "make the yoke shallower, or set the pocket lower"
        raise DraftError("style.yoke", f"centre {yoke.centre:g}, side {yoke.side:g}", expected, remedy)


def _above(parted: Parted, p: complex) -> float:
    """How far a point lies above the yoke seam."""
    seam = parted.seam
    return cross(unit(seam.p0 - seam.p1), p - seam.p1)


def _kept_lines(parted: Parted) -> list:  # type: ignore[type-arg]
    return [line for line in parted.back.lines if line.kind != "dart"]


def _kept_holes(parted: Parted) -> list:  # type: ignore[type-arg]
    return [hole for hole in parted.back.holes if hole.note != "dart"]


def _lower_back(parted: Parted) -> Piece:
    back, plan = parted.back, parted.plan
    side, crotch = back.edge("side"), back.edge("crotch")
    yoke = Edge("yoke", (Path((parted.seam,)),), allowance=plan.style.allowances.yoke, corner=Corner("mirrored"))
    edges = (
        replace(side, parts=(side.parts[0].between(parted.yoke.side, side.length),)),
        back.edge("hem"),
        back.edge("inseam"),
        replace(crotch, parts=(crotch.parts[0].between(0, parted.below),), corner=Corner("mirrored", "next")),
        yoke,
    )
    return replace(
        back,
        edges=edges,
        notches=(*_notches(parted, "back"), *_yoke_notches(parted, "back")),
        lines=tuple(_kept_lines(parted)),
        holes=tuple(_kept_holes(parted)),
        grainline=_below_seam(parted, back.grainline),
    )


def _below_seam(parted: Parted, grain: Line) -> Line:
    """Grain line that ends below the yoke seam."""
    top = grain.p1
    over = _above(parted, top) + ABOVE_HIP
    return grain if over <= 0 else Line(grain.p0, top - 1j * over)


def _yoke_piece(parted: Parted) -> Piece:
    back, panel = parted.back, parted.plan.shell.back
    a = parted.plan.style.allowances
    waist, last = parted.closed
    edges = (
        Edge("side", (panel.side.between(0, parted.yoke.side).moved(last),), (), a.side, Corner("mirrored", "next")),
        Edge("yoke", (parted.lower,), (), a.yoke, Corner("mirrored")),
        Edge("crotch", (panel.crotch.between(parted.below, panel.crotch.length),), (), a.crotch, Corner("mirrored")),
        Edge("waist", (waist,), (), a.waist, Corner("mirrored", "next")),
    )
    plain = Piece(
        name=NAME,
        title="Back yoke",
        edges=edges,
        cut=Cut(2, "self", mirrored=True),
        grainline=Line(0, 1),
        notches=(*_notches(parted, NAME), *_yoke_notches(parted, NAME)),
        made_for=back.made_for,
    )
    return replace(plain, grainline=_grain(plain))


def _grain(piece: Piece) -> Line:
    line = piece.sew_line
    points = line.points(1.0)
    x = float(points.real.min() + points.real.max()) / 2
    ends = [line.point_at(s).imag for s in meet_line(line, x + 0j, 1j)]
    middle, half = (min(ends) + max(ends)) / 2, (max(ends) - min(ends)) / 2 * GRAIN_SHARE
    return Line(x + 1j * (middle - half), x + 1j * (middle + half))


def _notches(parted: Parted, name: str) -> list[Notch]:
    """Notches of the whole back that belong to one of its parts."""
    found = []
    for notch in parted.back.notches:
        if notch.edge in ("hem", "inseam"):
            place, along = "back", notch.along
        elif notch.edge == "waist":
            place, along = NAME, notch.along
        else:
            place, along = _place(parted, notch.edge, notch.along)
        if place == name and not (notch.edge == "waist" and notch.match.startswith("dart")):
            found.append(replace(notch, along=along))
    return found


def _yoke_notches(parted: Parted, name: str) -> list[Notch]:
    """Where the darts were, or the middle of a yoke without."""
    length = abs(parted.seam.p1 - parted.seam.p0)
    places = parted.places or [length / 2]
    found = [(f"yoke {number + 1}", along) for number, along in enumerate(places)]
    return [Notch("yoke", along if name == "back" else length - along, match) for match, along in found]


def _place(parted: Parted, edge: str, along: float) -> tuple[str, float]:
    """Part and place on its edge of a place on an edge of the whole back."""
    if edge == "side":
        cut = parted.yoke.side
        return (NAME, along) if along < cut else ("back", along - cut)
    return ("back", along) if along <= parted.below else (NAME, along - parted.below)


def _handed_on(seam: Seam, parted: Parted, before: Mapping[str, Piece], after: Mapping[str, Piece]) -> list[Seam]:
    """Seam of the whole back as one or two seams of its parts; ease goes by length."""
    whole = seam.a.length(before)
    cuts = {0.0, 1.0}
    for run in (seam.a, seam.b):
        cut = {"side": parted.yoke.side, "crotch": parted.below}.get(run.edge) if run.piece == "back" else None
        if cut is not None:
            share = run.walked(cut, before) / run.length(before)
            if LENGTH_TOL_MM / whole < share < 1 - LENGTH_TOL_MM / whole:
                cuts.add(share)
    ends = sorted(cuts)
    if len(ends) == 2 and "back" not in (seam.a.piece, seam.b.piece):
        return [seam]
    found = []
    for start, stop in pairwise(ends):
        a, b = (_stretch(run, start, stop, parted, before) for run in (seam.a, seam.b))
        name = seam.name if len(ends) == 2 else f"{seam.name} ({'yoke' if NAME in (a.piece, b.piece) else 'below'})"
        found.append(Seam.of(name, a, b, after, seam.ease * (stop - start)))
    return found


def _stretch(run: Run, start: float, stop: float, parted: Parted, before: Mapping[str, Piece]) -> Run:
    """Stretch of a run between two shares of its walk, on the part of the back that has it."""
    length = run.length(before)
    low, high = (1 - stop, 1 - start) if run.back else (start, stop)
    begins, ends = run.start + low * length, run.start + high * length
    if run.piece != "back" or run.edge in ("hem", "inseam"):
        return replace(run, start=begins, stop=ends)
    if run.edge == "waist":
        return replace(run, piece=NAME, start=begins, stop=ends)
    piece, middle = _place(parted, run.edge, (begins + ends) / 2)
    shift = middle - (begins + ends) / 2
    return replace(run, piece=piece, start=max(0.0, begins + shift), stop=ends + shift)
