"""Band curved to the body above the waist seam: outer and inner layer, in sections joined at the side seams.

The lower edge of each section is as long as the waist seam it is sewn to. The upper edge lies `depth` higher and is as
long as the body is round there, and its ease. Both are parallel, so the curve follows from the two lengths: for a
strip, lower less upper edge is depth times the angle it turns by (geometry). Front and back share that angle as the
panels below them do, whose waists are bent by closed darts and leaning side seams. All ends are square to both edges,
hence sections flow into each other, and the ends at the centre front and the centre back are square to it.

Its frame: the left front as seen from outside, centre front at x = 0 and upright, the seam at the bottom.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from math import ceil, tan

from draft.choices.bands import ContourBand
from draft.edge import Corner, Edge, mirrored_outline
from draft.errors import DraftError
from draft.geometry.offset import parallel
from draft.geometry.path import Path
from draft.geometry.points import turn_deg
from draft.geometry.segments import Cubic, Line, Motion
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces.bands.around import (
    Stretch,
    check_passes_hip,
    closing_kind,
    girth_with_ease,
    half_of,
    left_over_right,
    opens,
    stretches,
)
from draft.pieces.bands.closed import closed_waist
from draft.pieces.hook_and_bar import HOOK_AT, bar_marks, check_room, hook_marks, hook_notes
from draft.pieces.plan import Plan, WaistEdges
from draft.pieces.straight_band import BUTTON_CLEARANCE, BUTTON_FROM_END, HOLE_PAST_BUTTON
from draft.seams import Run, Seam
from draft.units import HAIR, at_least, at_most, fmt

DEG = 57.29577951308232  # degrees in a radian
STEP_DEG = 15.0  # one cubic for so much of an arc: 0.00001 mm from it
LEAST_SHARE, MOST_SHARE = 0.5, 1.5  # of what its length would give a section of the whole angle
GRAIN_SHARE, GRAIN_INSIDE = 0.12, 0.15
SIDES = ("left", "right")


@dataclass(frozen=True)
class Sizes:
    """Lengths (mm) along the lower edge and angles (degrees) of one half; `over` and `under` run past the centre."""

    front: float
    back: float
    front_turn: float
    back_turn: float
    over: float
    under: float


def _choice(plan: Plan) -> ContourBand:
    band = plan.style.band
    assert isinstance(band, ContourBand)
    return band


def upper_girth(plan: Plan) -> float:
    """Girth that the upper edge is to have: at its level, but no higher than the natural waist, mm."""
    return girth_with_ease(plan, max(0.0, plan.style.waist_drop - _choice(plan).depth))


def sizes(plan: Plan, waist: WaistEdges) -> Sizes:
    """Lengths that follow from the waist edges, and the angles that the upper edge asks for."""
    band, h = _choice(plan), half_of(waist)
    whole = (h.back - upper_girth(plan) / 2) / band.depth * DEG
    share = _front_share(plan, whole)
    over, under = _laps(plan, waist)
    other = h.back - h.side if at_side(waist) else h.side  # the section under the overlap
    most = other + (HOOK_AT if band.fastener == "hook" else _button_at(band)) - band.button
    if over > most + HAIR:
        raise DraftError(
            "style.band.overlap",
            over,
            f"at most {at_most(most)} mm: the {band.fastener} fastens on the section beneath",
            "make it shorter",
        )
    return Sizes(h.side, h.back - h.side, whole * share, whole * (1 - share), over, under)


def at_side(waist: WaistEdges) -> bool:
    """Whether the band opens at the left side seam."""
    return waist.opens == "left side"


def _closes(plan: Plan, waist: WaistEdges) -> bool:
    """Whether it opens anywhere."""
    return opens(plan) or at_side(waist)


@lru_cache(maxsize=4)
def _bends(plan: Plan) -> tuple[float, float]:
    """How far the closed waists of front and back bend as a band does, degrees."""
    front, back = (-closed_waist(panel.waist).turn_deg for panel in (plan.shell.front, plan.shell.back))
    return max(front, 0.0), max(back, 0.0)


def _front_share(plan: Plan, whole: float) -> float:
    """Share of the angle that the front takes."""
    front, back = _bends(plan)
    lengths = plan.shell.front.waist.length, plan.shell.back.waist.length
    by_length = lengths[0] / sum(lengths)
    if whole <= 0 or front + back == 0:
        return by_length
    low = max(LEAST_SHARE * by_length, 1 - MOST_SHARE * (1 - by_length))
    high = min(MOST_SHARE * by_length, 1 - LEAST_SHARE * (1 - by_length))
    return min(max(front / (front + back), low), high)


def _button_at(band: ContourBand) -> float:
    """Distance of the button's centre from the end of the overlap."""
    return max(BUTTON_FROM_END, band.button / 2 + BUTTON_CLEARANCE)


def _laps(plan: Plan, waist: WaistEdges) -> tuple[float, float]:
    band = _choice(plan)
    if not _closes(plan, waist):
        return 0.0, 0.0
    under = waist.underlap if band.underlap is None else band.underlap
    if band.fastener == "hook":
        check_room(band.depth, under, band.overlap)
        return band.overlap, under
    least = max(0.0, _button_at(band) - band.overlap + band.button / 2)
    if under < least - HAIR:
        raise DraftError(
            "style.band.underlap", under, f"at least {at_least(least)} mm to carry the button", "make it wider"
        )
    return band.overlap, under


def arc(start: complex, direction: complex, length: float, turn: float) -> Path:
    """Arc of a given length that leaves `start` along `direction` and turns by `turn` degrees to the left.

    >>> quarter = arc(0j, 1 + 0j, 100.0, 90.0)
    >>> round(quarter.length, 3), round(quarter.end_dir.imag, 9)
    (100.0, 1.0)
    """
    if abs(turn) < 1e-6:
        return Path.line(start, start + direction * length)
    count = ceil(abs(turn) / STEP_DEG)
    step, radius = turn / count, length / (turn / DEG)
    handle = 4 / 3 * tan(step / DEG / 4) * radius
    centre = start + 1j * direction * radius
    dirs = [turn_deg(direction, step * i) for i in range(count + 1)]
    ends = [complex(centre - 1j * d * radius) for d in dirs]
    return Path(
        tuple(
            Cubic(p, complex(p + handle * d), complex(q - handle * e), q)
            for p, q, d, e in zip(ends, ends[1:], dirs, dirs[1:], strict=False)
        )
    )


def pieces(plan: Plan, waist: WaistEdges) -> list[Piece]:
    """Left and right front, back, and the inner layer of each; a whole front where the band opens at the side."""
    s = sizes(plan, waist)
    if at_side(waist):
        outer = _open_at_side(plan, waist, s)
    else:
        check_passes_hip(plan, girth(plan, waist))
        outer = [*(_front(plan, waist, s, side) for side in SIDES), _back(plan, s)]
    inner = [_inner(piece) for piece in outer]
    if not _closes(plan, waist):
        return [*outer, *inner]
    over, under = _lapping(plan, waist)
    if _choice(plan).fastener == "hook":
        inner = [_with_hook(plan, piece) if piece.name == f"{over}_inner" else piece for piece in inner]
    for at, piece in enumerate(outer):
        if piece.name in (over, under):
            outer[at] = replace(piece, lines=_fastener(plan, piece, s, top=piece.name == over))
    return [*outer, *inner]


def _outline(plan: Plan, lower: Path, names: tuple[str, str], widths: tuple[float, float]) -> tuple[Edge, ...]:
    """Edges of a section: waist seam, end on the right, upper edge, end on the left."""
    a, band = plan.style.allowances, _choice(plan)
    try:
        upper = parallel(lower, band.depth)
    except DraftError as error:
        radius = min(1 / max(1e-9, abs(lower.curvature_at(lower.length * i / 20))) for i in range(21))
        raise DraftError(
            "style.band.depth", band.depth, f"at most {at_most(radius - 1)} mm on this waist", "make it shallower"
        ) from error
    turned_corner = Corner("extended")
    return (
        Edge("waist", (lower,), allowance=a.waist, corner=turned_corner),
        Edge(names[1], (Path.line(lower.end, upper.end),), allowance=widths[1], corner=turned_corner),
        Edge("top", (upper.reversed(),), allowance=a.band, corner=turned_corner),
        Edge(names[0], (Path.line(upper.start, lower.start),), allowance=widths[0], corner=turned_corner),
    )


def _grain(plan: Plan, lower: Path, share: float) -> Line:
    """Line square to the band at a share of its length: near the centre it runs as the centre does."""
    deep, along = _choice(plan).depth, share * lower.length
    foot, up = lower.point_at(along), 1j * lower.direction_at(along)
    return Line(foot + up * GRAIN_INSIDE * deep, foot + up * (1 - GRAIN_INSIDE) * deep)


def _front(plan: Plan, waist: WaistEdges, s: Sizes, side: str) -> Piece:
    a, top = plan.style.allowances, (side == "left") == left_over_right(plan)
    beyond = s.over if top else s.under
    curve = arc(0j, 1 + 0j, s.front, s.front_turn)
    lower = Path.join(Line(complex(-beyond, 0), 0j), curve) if beyond else curve
    places = half_of(waist).places
    notches = tuple(
        Notch("waist", beyond + places[name], name) for name in ("centre front", "pocket mouth") if name in places
    )
    piece = Piece(
        name=f"waistband_{side}",
        title=f"Waistband, {side} front, outer",
        edges=_outline(plan, lower, ("end", "side"), (a.band, a.side)),
        cut=Cut(1, "self"),
        grainline=_grain(plan, curve, GRAIN_SHARE),
        notches=notches,
        made_for=plan.made_for,
    )
    return piece if side == "left" else _mirrored(piece)


def _open_at_side(plan: Plan, waist: WaistEdges, s: Sizes) -> list[Piece]:
    """Front and back, each in one, seen from outside: what laps at the left side runs on straight.

    Raises
    ------
    DraftError
        When the back is to have a seam: it is cut in one.
    """
    if _choice(plan).back != "fold":
        expected = "'fold' with an opening at the side: the back is cut in one"
        raise DraftError("style.band.back", _choice(plan).back, expected, "leave the seam out, or take a fly")
    front, back = (
        arc(0j, complex(turn_deg(1 + 0j, -turn)), 2 * long, 2 * turn)
        for long, turn in ((s.front, s.front_turn), (s.back, s.back_turn))
    )
    before, after = (s.over, s.under) if left_over_right(plan) else (s.under, s.over)
    mouth = half_of(waist).mouth
    places = {"centre front": s.front, "side seam": 2 * s.front}
    if waist.pocket:
        places |= {"pocket mouth": s.front + mouth, "other pocket mouth": s.front - mouth}
    lower = Path.join(front, Line(front.end, front.end + front.end_dir * before)) if before else front
    ahead = _whole(plan, "front", lower, ("side", "end"), s.front, places)
    lower = Path.join(Line(back.start - back.start_dir * after, back.start), back) if after else back
    places = {"side seam of the back": after, "centre back": after + s.back}
    return [ahead, _whole(plan, "back", lower, ("end", "side"), after + s.back, places)]


def _whole(
    plan: Plan, part: str, lower: Path, names: tuple[str, str], middle: float, places: Mapping[str, float]
) -> Piece:
    """Front or back in one, its grain at the centre; a place at its very end needs no notch."""
    a = plan.style.allowances
    widths = {"end": a.band, "side": a.side}
    return Piece(
        name=f"waistband_{part}",
        title=f"Waistband, {part}, outer",
        edges=_outline(plan, lower, names, (widths[names[0]], widths[names[1]])),
        cut=Cut(1, "self"),
        grainline=_grain(plan, lower, middle / lower.length),
        notches=tuple(
            Notch("waist", at, name, 2 if name == "centre back" else 1)
            for name, at in places.items()
            if 1 < at < lower.length - 1
        ),
        made_for=plan.made_for,
    )


def _lapping(plan: Plan, waist: WaistEdges) -> tuple[str, str]:
    """Names of the section that lies on top at the opening, and of the one beneath."""
    one, two = ("waistband_front", "waistband_back") if at_side(waist) else ("waistband_left", "waistband_right")
    return (one, two) if left_over_right(plan) else (two, one)


def _from_end(plan: Plan, piece: Piece) -> Path:
    """Line along the middle of a section, from its end that opens."""
    middle, end = parallel(piece.edge("waist").path, _choice(plan).depth / 2), piece.edge("end").path
    at = (end.start + end.end) / 2
    return middle if abs(middle.start - at) < abs(middle.end - at) else middle.reversed()


def _fastener(plan: Plan, piece: Piece, s: Sizes, *, top: bool) -> tuple[InnerLine, ...]:
    """Buttonhole on the overlap; on the underlap button or bar, where it lies when the opening is closed."""
    band, middle = _choice(plan), _from_end(plan, piece)
    hooked = band.fastener == "hook"
    at = HOOK_AT if hooked else _button_at(band)
    along = s.under + s.over - at
    centre, way = middle.point_at(along), middle.direction_at(along)
    if hooked:
        return () if top else bar_marks(centre, way)
    if top:
        long = band.button + band.button_thickness
        hole = middle.between(at - HOLE_PAST_BUTTON, at - HOLE_PAST_BUTTON + long)
        return (InnerLine("buttonhole", hole, f"buttonhole {fmt(long, 0)}"),)
    half = way * band.button / 2
    return (
        InnerLine("button", Path.line(centre - half, centre + half), f"button {fmt(band.button, 0)}"),
        InnerLine("button", Path.line(centre - 1j * half, centre + 1j * half)),
    )


def _back(plan: Plan, s: Sizes) -> Piece:
    """Left half of the back, from the side seam to the centre back: on the fold, or one of a pair."""
    a, fold = plan.style.allowances, _choice(plan).back == "fold"
    lower = arc(0j, complex(turn_deg(1 + 0j, -s.back_turn)), s.back, s.back_turn)
    end, width = ("fold", 0.0) if fold else ("centre", a.band)
    return Piece(
        name="waistband_back",
        title="Waistband, back, outer",
        edges=_outline(plan, lower, ("side", end), (a.side, width)),
        cut=Cut(1, "self", on_fold=True) if fold else Cut(2, "self", mirrored=True),
        grainline=_grain(plan, lower, 1 - GRAIN_SHARE),
        notches=(Notch("waist", s.back, "centre back"),) if fold else (),
        made_for=plan.made_for,
        notes=("right edge on the fold of the cloth",) if fold else (),
    )


def _mirrored(piece: Piece) -> Piece:
    """Image of a section, marks and all."""
    motion = Motion.mirror(0j, 1j)
    return replace(
        piece,
        edges=mirrored_outline(piece.edges, motion),
        grainline=piece.grainline.moved(motion),
        notches=tuple(replace(n, along=piece.edge(n.edge).length - n.along) for n in piece.notches),
        lines=tuple(replace(line, path=line.path.moved(motion)) for line in piece.lines),
    )


def _inner(outer: Piece) -> Piece:
    """Inner layer: its right side turns to the body, so it is the image of the outer one; without its marks."""
    half = outer.cut.on_fold or outer.cut.mirrored
    image = outer if half else _mirrored(outer)
    title = outer.title.replace("outer", "inner")
    return replace(image, name=f"{outer.name}_inner", title=title, lines=())


def _with_hook(plan: Plan, inner: Piece) -> Piece:
    """Inner layer of the section on top, with the hook."""
    middle = _from_end(plan, inner)
    return replace(inner, lines=hook_marks(middle.point_at(HOOK_AT), middle.direction_at(HOOK_AT)))


def seams(plan: Plan, waist: WaistEdges, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Waist seam, both halves; sections at the side seams; both layers along the upper edge."""
    s = sizes(plan, waist)
    found = []
    for half in SIDES:
        for part in stretches(waist, pieces):
            on = (_on_whole if at_side(waist) else _on_section)(plan, s, half, part)
            found.append(Seam.of(f"waist, {half} {part.name}", part.run, on, pieces, part.ease))
    fronts = ("front",) if at_side(waist) else SIDES
    for side in fronts:
        for layer in ("", "_inner"):
            one, two = Run(f"waistband_{side}{layer}", "side"), Run(f"waistband_back{layer}", "side")
            where = "right" if at_side(waist) else side
            found.append(Seam.of(f"band{layer.replace('_', ', ')}, {where} side", one, two, pieces))
    for name in (*(f"waistband_{side}" for side in fronts), "waistband_back"):
        half_drawn = pieces[name].cut.on_fold or pieces[name].cut.mirrored
        inner = Run(f"{name}_inner", "top", back=not half_drawn)
        found.append(Seam.of(f"upper edge, {name}", Run(name, "top"), inner, pieces))
    return [*found, *_joins(plan, waist, pieces)]


def _on_section(plan: Plan, s: Sizes, half: str, part: Stretch) -> Run:
    """Run of a stretch of one half on the sections joined at both side seams."""
    name = f"waistband_{half}"
    beyond = s.over if (half == "left") == left_over_right(plan) else s.under
    if part.name == "back":
        return Run("waistband_back", "waist")
    if half == "left":
        return Run(name, "waist", beyond + part.start, beyond + part.stop)
    return Run(name, "waist", s.front - part.stop, s.front - part.start, back=True)


def _on_whole(plan: Plan, s: Sizes, half: str, part: Stretch) -> Run:
    """Run of a stretch of one half on a front or a back in one."""
    if part.name == "back":
        begin = s.under if left_over_right(plan) else s.over
        if half == "left":
            return Run("waistband_back", "waist", begin, begin + s.back)
        return Run("waistband_back", "waist", begin + s.back, begin + 2 * s.back, back=True)
    if half == "left":
        return Run("waistband_front", "waist", s.front + part.start, s.front + part.stop)
    return Run("waistband_front", "waist", s.front - part.stop, s.front - part.start, back=True)


def _joins(plan: Plan, waist: WaistEdges, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Seams at the centre: of a back in two, and of fronts that do not open."""
    found = []
    for layer in ("", "_inner"):
        if _choice(plan).back == "seam":
            end = Run(f"waistband_back{layer}", "centre")
            found.append(Seam.of("band, centre back", end, end, pieces))
        if not _closes(plan, waist):
            one, two = Run(f"waistband_left{layer}", "end"), Run(f"waistband_right{layer}", "end", back=True)
            found.append(Seam.of("band, centre front", one, two, pieces))
    return found


def girth(plan: Plan, waist: WaistEdges) -> float:
    """Girth of the band at the waist seam, centre front on centre front; its upper edge is shorter."""
    return 2 * half_of(waist).back


def notes(plan: Plan) -> list[str]:
    """Stay tape, and what the upper edge comes to."""
    band, above = _choice(plan), plan.style.waist_drop
    told = [
        f"contour band: upper edge {fmt(upper_girth(plan), 0)} mm around; sew a stay tape of that length into it, "
        "centre front to centre front"
    ]
    if above < band.depth:
        told.append(
            f"contour band: its upper edge lies {fmt(band.depth - above, 0)} mm above the natural waist, where the "
            f"band goes straight up; a waist_drop of {fmt(band.depth, 0)} mm brings it down to the waist"
        )
    kind = closing_kind(plan)
    hooked = band.fastener == "hook" and kind is not None and kind.opens() != "nowhere"
    return [*told, *hook_notes()] if hooked else told
