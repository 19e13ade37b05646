"""From the sew line to the cut line: the allowance of every edge, and corners that lie flush when sewn.

The cut line of an edge is the true parallel of its seam line (within 0.005 mm). At each corner the two cut lines are
brought to an end by one rule (see :mod:`draft.edge` for the kinds).
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from draft.edge import Corner, Edge
from draft.errors import DraftError
from draft.geometry.meet import line_crossings, meet
from draft.geometry.offset import parallel
from draft.geometry.path import Path, chain
from draft.geometry.points import angle_deg, cross_lines, dot, unit
from draft.geometry.segments import Line, Motion
from draft.units import at_most

SMOOTH_DEG = 3.0  # an outward turn below this is no corner
LEVEL_DEG = 1e-6  # nor is an inward turn below this
LONGEST_POINT = 2.0  # an extended corner is cut off at this many times the wider allowance
STEEPEST_END = 0.7  # cosine to its seam: a mirrored end slanted more than 45 degrees is squared instead
FIELDS = {name: name for name in ("side", "inseam", "crotch", "waist", "fly", "mouth", "yoke")}
FIELDS |= {"contour": "bag", "around": "bag"}
"""Field of `draft.Allowances` for an edge, on `PLAIN_PIECES` and those whose names begin as `PLAIN_PARTS`."""
PLAIN_PIECES = ("", "front", "back", "back_yoke", "pocket_facing")
PLAIN_PARTS = ("front_", "pocket_bag_", "back_pocket_bag_", "lining_")
_HAIR = 1e-7
_SLIVER = 1e-5  # a stretch shorter than this at the end of a cut line is not cut off
_FAR = 1000.0


def cut_line(edges: Sequence[Edge], piece: str = "") -> Path:
    """Closed cut line around a counter-clockwise outline.

    Parameters
    ----------
    edges : sequence of Edge
    piece : str
        Name of the piece, for errors.

    Raises
    ------
    DraftError
        When an allowance is wider than an inward curve or a short edge lets it be; it names the field of
        `draft.Allowances` if there is one for the edge, the edge, and the piece.

    Examples
    --------
    >>> square = [Edge(n, (Path.line(a, b),), allowance=10) for n, a, b in
    ...           (("s", 100j, 0j), ("h", 0j, 100), ("i", 100, 100 + 100j), ("w", 100 + 100j, 100j))]
    >>> cut_line(square).area
    14400.0
    """
    if not edges:
        raise DraftError(f"edges of {piece or 'a piece'}", None, "at least one edge", "give it one")
    runs = [_beside(edge, piece) for edge in edges]
    bridges: list[list[Line | Path]] = []
    for index, edge in enumerate(edges):
        after = (index + 1) % len(edges)
        try:
            runs[index], bridge, runs[after] = _turned(runs[index], runs[after], edge, edges[after])
        except DraftError as error:
            where = f"where {edge.name} meets {edges[after].name}{_of(piece)}"
            raise DraftError(error.field, error.value, f"{error.expected}, {where}", error.remedy) from error
        bridges.append(bridge)
    pieces: list[Path | Line] = []
    for run, bridge in zip(runs, bridges, strict=True):
        pieces += [run, *bridge]
    return Path.join(*pieces).tidy(1e-6)


def _of(piece: str) -> str:
    return f" of {piece}" if piece else ""


def _field(edge: Edge, piece: str) -> str:
    """Field of the choice that gives this edge its allowance, as far as one field does."""
    own = FIELDS.get(edge.name)
    plain = piece in PLAIN_PIECES or piece.startswith(PLAIN_PARTS)
    return f"style.allowances.{own}" if own and plain else "style.allowances"


def _beside(edge: Edge, piece: str) -> Path:
    """Cut line of one edge, without its corners."""
    try:
        runs = [parallel(part, -edge.allowance) for part in edge.parts]
    except DraftError as error:
        radius = min(_smallest_radius(part) for part in edge.parts)
        raise DraftError(
            _field(edge, piece),
            edge.allowance,
            f"at most {at_most(radius, 1)} mm, the smallest radius of the inward curve at {edge.name}{_of(piece)}",
            "take a narrower allowance, or a choice of style with a calmer curve",
        ) from error
    if not edge.darts:
        return runs[0]
    joined: list[Path | Line] = []
    for dart, (before, after) in zip(edge.darts, pairwise(range(len(runs))), strict=True):
        # The legs run on to the cut line; there the cap is folded as at the seam line.
        (first, second), (one, two) = dart.legs, dart.legs_from
        runs[before] = ended_on(runs[before], one, unit(first - one))
        runs[after] = started_on(runs[after], two, unit(second - two))
        cap = dart.between(runs[before].end, runs[after].start).across(runs[before], runs[after])
        joined += [runs[before], cap, *_line(cap.end, runs[after].start)]
    return Path.join(*joined, runs[-1])


def _smallest_radius(path: Path) -> float:
    """Smallest radius of the curves that bend towards the allowance, at 200 places."""
    bends = [-path.curvature_at(path.length * i / 200) for i in range(201)]
    return 1 / max(1e-9, *bends)


def ended_on(path: Path, p: complex, direction: complex) -> Path:
    """Path that ends on the endless line through `p`: run on straight, or cut where it last crosses the line."""
    target = cross_lines(path.end, path.end_dir, p, direction)
    ahead = dot(target - path.end, path.end_dir)
    if ahead >= -_HAIR:
        return Path.join(path, Line(path.end, target)) if ahead > _HAIR else path
    segments = list(path.segments)
    while segments:
        last = segments.pop()
        crossings = line_crossings(last, p, direction)
        if crossings:
            head, _ = last.split(crossings[-1])
            return Path((*segments, head)) if crossings[-1] > 0 else Path(tuple(segments))
    raise DraftError(
        "style.allowances",
        f"{path.length:.1f} mm of cut line",
        "more than 0 mm left when the corner is cut off",
        "take a narrower allowance or a longer edge",
    )


def started_on(path: Path, p: complex, direction: complex) -> Path:
    """Path that starts on the endless line through `p`."""
    return ended_on(path.reversed(), p, direction).reversed()


def _turned(a: Path, b: Path, one: Edge, two: Edge) -> tuple[Path, list[Line | Path], Path]:
    """Both cut lines shaped for their corner, and what joins them."""
    turn = angle_deg(one.end_dir, two.start_dir)
    if turn < -LEVEL_DEG:
        return _inner(a, b)
    if turn <= SMOOTH_DEG:
        return a, _line(a.end, b.start), b
    corner = one.corner
    if corner.kind == "folded" and (two if corner.first == "this" else one).allowance:
        return _folded(a, b, one, two)
    if corner.kind in ("squared", "mirrored"):
        if corner.first == "this":
            return _flush(a, b, one.end, one.end_dir, corner)
        b2, bridge, a2 = _flush(b.reversed(), a.reversed(), one.end, -two.start_dir, corner)
        return a2.reversed(), [part.reversed() for part in reversed(bridge)], b2.reversed()
    widest = max(one.allowance, two.allowance)
    limit = widest * (1.0 if corner.kind == "mitred" else LONGEST_POINT)
    return _extended(a, b, one.end, limit)


def _line(p: complex, q: complex) -> list[Line | Path]:
    return [Line(p, q)] if abs(q - p) > _HAIR else []


def _inner(a: Path, b: Path) -> tuple[Path, list[Line | Path], Path]:
    """Inward corner: the parallels cross, what lies beyond is cut off."""
    crossings = [at for at in meet(a, b) if at.along_a > _SLIVER and at.along_b < b.length - _SLIVER]
    if not crossings:
        return a, _line(a.end, b.start), b
    at = crossings[-1]
    # An edge without allowance keeps its whole line: there the crossing is the corner itself, or lies at its end.
    kept_a = a.split_at(at.along_a)[0] if at.along_a < a.length - _SLIVER else a
    kept_b = b.split_at(at.along_b)[1] if at.along_b > _SLIVER else b
    return kept_a, [], kept_b


def _extended(a: Path, b: Path, corner: complex, limit: float) -> tuple[Path, list[Line | Path], Path]:
    """Both lines run on to their meeting point, cut off at `limit` from the corner."""
    tip = cross_lines(a.end, a.end_dir, b.start, b.start_dir)
    if abs(tip - corner) <= limit or limit == 0:
        # A curved line that must be cut short ends beside the tip, on the other one run on straight: they meet there.
        if dot(tip - a.end, a.end_dir) < 0:
            a2 = ended_on(a, tip, b.start_dir)
            b2 = started_on(b, a2.end, a.end_dir)
        else:
            b2 = started_on(b, tip, a.end_dir)
            a2 = ended_on(a, b2.start, b.start_dir)
        return a2, _line(a2.end, b2.start), b2
    middle = unit(tip - corner)
    a2, b2 = ended_on(a, corner + middle * limit, 1j * middle), started_on(b, corner + middle * limit, 1j * middle)
    return a2, _line(a2.end, b2.start), b2


def _flush(a: Path, b: Path, corner: complex, seam_dir: complex, kind: Corner) -> tuple[Path, list[Line | Path], Path]:
    """Seam `a` is sewn first; its allowance ends square, or as the image of cut line `b`."""
    b2 = started_on(b, corner, seam_dir)
    if kind.kind == "mirrored" and abs(dot(b2.start_dir, seam_dir)) <= STEEPEST_END:
        image = _run_on(b2.moved(Motion.mirror(corner, corner + seam_dir)))
        longer = _run_on(a)
        at = min(meet(longer, image), key=lambda m: m.along_b, default=None)
        if at is not None and at.along_a > _SLIVER:
            bridge: list[Line | Path] = [image.between(0, at.along_b).reversed()] if at.along_b > _SLIVER else []
            return longer.split_at(at.along_a)[0], bridge, b2
    a2 = ended_on(a, b2.start, 1j * seam_dir)
    return a2, _line(a2.end, b2.start), b2


def _run_on(path: Path) -> Path:
    """Path that runs on straight far beyond its end."""
    return Path.join(path, Line(path.end, path.end + path.end_dir * _FAR))


def _folded(a: Path, b: Path, one: Edge, two: Edge) -> tuple[Path, list[Line | Path], Path]:
    """Turned hem: beyond the fold the seam's cut line runs on as its own image, so the turning fits the leg."""
    first_seam = one.corner.first == "this"
    if not first_seam:
        turning = () if one.turning is None else one.turning[1]
        b2, bridge, a2 = _fold_end(b.reversed(), a.reversed(), one, turning, two.allowance)
        return a2.reversed(), [part.reversed() for part in reversed(bridge)], b2.reversed()
    turning = () if two.turning is None else two.turning[0]
    return _fold_end(a, b, two, turning, -one.allowance)


def _beyond_folds(turning: tuple[Path, ...], left: float, fold_dir: complex) -> Path:
    """Cut line beside the seam lines of a turning, parted at its folds."""
    runs: list[Path] = []
    for index, part in enumerate(turning):
        run = started_on(parallel(part, left), part.start, fold_dir)
        if index < len(turning) - 1:
            run = ended_on(run, part.end, fold_dir)
        runs.append(Path.join(*_line(runs[-1].end, run.start), run) if runs else run)
    return chain(runs)


def _fold_end(
    seam: Path, raw: Path, hem: Edge, turning: tuple[Path, ...], left: float
) -> tuple[Path, list[Line | Path], Path]:
    """Seam up to the fold, its image from there to the raw edge, and the raw edge from where they meet.

    With a `turning`, the parallel of its seam lines at the distance `left` stands in for the image.

    The fold is the chord of the hem. A turning wider than the hem meets the raw edge run on straight, a narrower one
    meets its curve.
    """
    fold_dir = unit(hem.end - hem.start)
    seam = ended_on(seam, hem.start, fold_dir)
    if turning:
        image = _run_on(_beyond_folds(turning, left, fold_dir))
    else:
        image = _run_on(seam.reversed().moved(Motion.mirror(hem.start, hem.end)))
    edge = _run_on(raw.reversed()).reversed()
    at = min(meet(image, edge), key=lambda m: m.along_a, default=None)
    if at is None:
        raise DraftError(
            "style.hem",
            hem.allowance,
            "seams that lean less than 45 degrees at the fold, so that the turning meets its raw edge",
            "take a separate cuff, or a leg less flared at the hem",
        )
    bridge: list[Line | Path] = [*_line(seam.end, image.start), image.between(0, at.along_a)]
    return seam, bridge, edge.split_at(at.along_b)[1]
