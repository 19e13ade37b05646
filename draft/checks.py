"""Does it sew together? Findings are collected with a code and a place; nothing is raised.

Codes
-----
seam      two runs differ by more than 0.5 mm after the planned ease
notch     a notch misses its partner by more than 0.5 mm when the seam is walked
corner    a joined corner does not flow within 2 degrees
kink      a seam line has a corner where it should be smooth
dart      the legs of a dart differ, or the closed edge has a corner
outline   an outline crosses itself, runs the wrong way round, or cannot be drawn
mark      a notch, inner line, hole or grainline lies off its piece
size      a finished size misses its target by more than 1 mm
fit       the same, because no block inside the bounds of the fit is that long: a measure should be taken again
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from math import isfinite, nan

import numpy as np

from draft.edge import Edge
from draft.errors import DraftError
from draft.geometry.arrays import Points
from draft.geometry.path import Path
from draft.geometry.points import angle_deg
from draft.geometry.polygon import first_crossing, inside
from draft.piece import Piece
from draft.seams import Joint, Run, Seam
from draft.table import Table
from draft.units import fmt

SEAM_TOL_MM = 0.5
NOTCH_TOL_MM = 0.5
SIZE_TOL_MM = 1.0
ANGLE_TOL_DEG = 2.0
KINK_TOL_DEG = 1.0
LEG_TOL_MM = 0.5
OUTLINE_STEP_MM = 0.2


@dataclass(frozen=True)
class Finding:
    """Something that does not sew together: what, where, and by how much (mm or degrees)."""

    code: str
    where: str
    message: str
    amount: float


class Findings(list[Finding]):
    """All findings; empty when the pattern sews together. Prints as a table."""

    def table(self) -> Table:
        """Code, place and message, one row each."""
        rows = tuple((f.code, f.where, f.message) for f in self)
        return Table(f"Findings: {len(self)}", ("code", "where", "what"), rows)

    def __str__(self) -> str:
        return str(self.table()) if self else "Findings: none. Every seam, notch, corner and size fits."

    def _repr_html_(self) -> str:
        return self.table().html() if self else f"<p>{self}</p>"


def _said(value: float, decimals: int = 1) -> str:
    """Number as text; one that is not finite is told, not refused."""
    return fmt(value, decimals) if isfinite(value) else str(value)


def check_seams(seams: tuple[Seam, ...]) -> Iterator[Finding]:
    """Lengths of all partners after ease."""
    for seam in seams:
        if not abs(seam.difference) <= SEAM_TOL_MM:
            lengths = f"{seam.a} is {_said(seam.length_a)}, {seam.b} {_said(seam.length_b)}"
            text = f"{lengths}, planned ease {_said(seam.ease)}"
            yield Finding("seam", seam.name, text, seam.difference)


def check_notches(seams: tuple[Seam, ...], pieces: Mapping[str, Piece]) -> Iterator[Finding]:
    """Notches of the same name on both runs of a seam, walked from its start, ease spread evenly."""
    for seam in seams:
        one, two = _notch_walk(seam.a, pieces), _notch_walk(seam.b, pieces)
        stretch = seam.length_b / seam.length_a if seam.length_a else nan
        for name in [name for name in one if name in two]:
            miss = one[name] * stretch - two[name]
            if not abs(miss) <= NOTCH_TOL_MM:
                yield Finding("notch", seam.name, f"{name} misses its partner by {_said(miss, 2)} mm", miss)


def _notch_walk(run: Run, pieces: Mapping[str, Piece]) -> dict[str, float]:
    length = run.length(pieces)
    found = {}
    for notch in pieces[run.piece].notches:
        if notch.edge == run.edge:
            walked = run.walked(notch.along, pieces)
            if -1e-6 <= walked <= length + 1e-6:
                found[notch.match.removeprefix("other ")] = walked
    return found


def check_joints(joints: tuple[Joint, ...], pieces: Mapping[str, Piece]) -> Iterator[Finding]:
    """Corners that become one line."""
    for joint in joints:
        off = joint.angle(pieces) - joint.total
        if not abs(off) <= ANGLE_TOL_DEG:
            text = f"{_said(joint.total + off)} degrees instead of {joint.total:g}"
            yield Finding("corner", joint.name, text, off)


def check_piece(piece: Piece) -> Iterator[Finding]:
    """Outline, smoothness, darts and marks of one piece."""
    for edge in piece.edges:
        yield from _check_edge(piece, edge)
    try:
        sew, cut = piece.sew_line.points(OUTLINE_STEP_MM), piece.cut_line.points(OUTLINE_STEP_MM)
    except DraftError as error:
        yield Finding("outline", piece.name, f"cannot be drawn: {error}", 0.0)
        return
    for name, line, points in (("sew line", piece.sew_line, sew), ("cut line", piece.cut_line, cut)):
        where = f"{piece.name}, {name}"
        if not line.area > 0:
            yield Finding("outline", where, "runs clockwise or encloses nothing", line.area)
        crossing = first_crossing(points)
        if crossing is not None:
            yield Finding("outline", where, f"crosses itself near {crossing.real:.1f}, {crossing.imag:.1f}", 0.0)
    yield from _check_marks(piece, cut)


def _check_edge(piece: Piece, edge: Edge) -> Iterator[Finding]:
    where = f"{piece.name}.{edge.name}"
    for part in edge.parts:
        for one, two in pairwise(part.segments):
            turn = angle_deg(one.end_dir, two.start_dir)
            if not abs(turn) <= KINK_TOL_DEG:
                yield Finding("kink", where, f"turns by {_said(turn)} degrees within the seam", turn)
    for dart, (before, after) in zip(edge.darts, pairwise(edge.parts), strict=True):
        centre, side = dart.runs
        legs = centre.length - side.length
        if not abs(legs) <= LEG_TOL_MM:
            yield Finding("dart", where, f"legs differ by {_said(legs, 2)} mm", legs)
        turn = angle_deg(before.end_dir, after.start_dir * dart.closing.turn)
        if not abs(turn) <= ANGLE_TOL_DEG:
            yield Finding("dart", where, f"closed, the edge turns by {_said(turn)} degrees", turn)


def _check_marks(piece: Piece, cut: Points) -> Iterator[Finding]:
    marks: list[tuple[str, Points]] = [("grainline", np.array([piece.grainline.p0, piece.grainline.p1]))]
    marks += [(f"{line.kind} line", _ends(line.path)) for line in piece.lines]
    marks += [(f"hole ({hole.note})", np.array([hole.at])) for hole in piece.holes]
    for name, points in marks:
        if not inside(points, cut).all():
            yield Finding("mark", piece.name, f"{name} lies outside the cut line", 0.0)
    try:
        notches = piece.notch_places
    except DraftError as error:
        yield Finding("mark", piece.name, f"notches cannot be placed: {error}", 0.0)
        return
    for notch, places in notches:
        for place in places:
            gap = _distance(cut, place.on_cut)
            if not gap <= 0.3:
                yield Finding("mark", f"{piece.name}.{notch.edge}", f"notch {notch.match} lies off the cut line", gap)


def _ends(path: Path) -> Points:
    """Places along a line, its ends drawn in by a hair so that lines which end on the cut line count as inside."""
    points = path.points(0.5)
    middle = points.mean()
    return np.asarray(middle + (points - middle) * 0.999)


def _distance(polygon: Points, p: complex) -> float:
    run = np.roll(polygon, -1) - polygon
    t = np.clip(((p - polygon) * run.conjugate()).real / np.maximum(np.abs(run) ** 2, 1e-12), 0, 1)
    return float(np.min(np.abs(polygon + t * run - p)))


def check_sizes(
    sizes: Mapping[str, float], targets: Mapping[str, float], unmet: Mapping[str, str]
) -> Iterator[Finding]:
    """Finished sizes against body plus ease; `unmet` says what to do about those that the fit could not reach."""
    for name, target in targets.items():
        miss = sizes[name] - target
        if not abs(miss) <= SIZE_TOL_MM:
            text = f"{_said(sizes[name])} instead of {_said(target)} mm"
            code, more = ("fit", f": {unmet[name]}") if name in unmet else ("size", "")
            yield Finding(code, name, text + more, miss)
