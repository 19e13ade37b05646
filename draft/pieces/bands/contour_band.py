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
from math import ceil, floor, tan

from draft.choices.bands import ContourBand
from draft.edge import Corner, Edge, mirrored_outline
from draft.errors import DraftError
from draft.geometry.offset import parallel
from draft.geometry.path import Path
from draft.geometry.points import turn_deg
from draft.geometry.segments import Cubic, Line, Motion
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces.bands.around import (
    check_passes_hip,
    girth_with_ease,
    half_of,
    left_over_right,
    opens,
    stretches,
    turned,
)
from draft.pieces.bands.closed import closed_waist
from draft.pieces.plan import Plan, WaistEdges
from draft.pieces.straight_band import BUTTON_CLEARANCE, BUTTON_FROM_END, HOLE_PAST_BUTTON
from draft.seams import Run, Seam
from draft.units import fmt

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
    most = h.side + _button_at(band) - band.button
    if over > most:
        raise DraftError(
            "style.band.overlap",
            over,
            f"at most {floor(most)} mm: the button lies on the other front",
            "make it shorter",
        )
    return Sizes(h.side, h.back - h.side, whole * share, whole * (1 - share), over, under)


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
    if not opens(plan):
        return 0.0, 0.0
    under = waist.underlap if band.underlap is None else band.underlap
    least = max(0.0, _button_at(band) - band.overlap + band.button / 2)
    if under < least:
        raise DraftError(
            "style.band.underlap", under, f"at least {ceil(least)} mm to carry the button", "make it wider"
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
    """Left and right front, back, and the inner layer of each."""
    check_passes_hip(plan, girth(plan, waist))
    s = sizes(plan, waist)
    outer = [*(_front(plan, waist, s, side) for side in SIDES), _back(plan, s)]
    return [*outer, *(_inner(piece) for piece in outer)]


def _outline(plan: Plan, lower: Path, names: tuple[str, str], widths: tuple[float, float]) -> tuple[Edge, ...]:
    """Edges of a section: waist seam, end on the right, upper edge, end on the left."""
    a, band = plan.style.allowances, _choice(plan)
    try:
        upper = parallel(lower, band.depth)
    except DraftError as error:
        radius = min(1 / max(1e-9, abs(lower.curvature_at(lower.length * i / 20))) for i in range(21))
        raise DraftError(
            "style.band.depth", band.depth, f"at most {floor(radius) - 1} mm on this waist", "make it shallower"
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
        lines=_button(plan, lower, s, top=top) if opens(plan) else (),
        made_for=plan.made_for,
    )
    return piece if side == "left" else _mirrored(piece)


def _button(plan: Plan, lower: Path, s: Sizes, *, top: bool) -> tuple[InnerLine, ...]:
    """Buttonhole on the overlap; on the underlap the button where it lies when centre front meets centre front."""
    band = _choice(plan)
    middle = parallel(lower, band.depth / 2)
    at = _button_at(band)
    if top:
        long = band.button + band.button_thickness
        hole = middle.between(at - HOLE_PAST_BUTTON, at - HOLE_PAST_BUTTON + long)
        return (InnerLine("buttonhole", hole, f"buttonhole {fmt(long, 0)}"),)
    along = s.under + s.over - at
    centre, way = middle.point_at(along), middle.direction_at(along) * band.button / 2
    return (
        InnerLine("button", Path.line(centre - way, centre + way), f"button {fmt(band.button, 0)}"),
        InnerLine("button", Path.line(centre - 1j * way, centre + 1j * way)),
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
    """Inner layer: its right side turns to the body, so it is the image of the outer one; no button marks."""
    half = outer.cut.on_fold or outer.cut.mirrored
    image = outer if half else _mirrored(outer)
    title = outer.title.replace("outer", "inner")
    return replace(image, name=f"{outer.name}_inner", title=title, lines=())


def seams(plan: Plan, waist: WaistEdges, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Waist seam, both halves; sections at the side seams; both layers along the upper edge."""
    s = sizes(plan, waist)
    found = []
    for half in SIDES:
        name = f"waistband_{half}"
        beyond = s.over if (half == "left") == left_over_right(plan) else s.under
        for part in stretches(waist, pieces):
            run = part.run
            if part.name == "back":
                on = Run("waistband_back", "waist")
            elif half == "left":
                on = Run(name, "waist", beyond + part.start, beyond + part.stop)
            else:
                on = Run(name, "waist", s.front - part.stop, s.front - part.start, back=True)
            found.append(Seam.of(f"waist, {half} {part.name}", run, on, pieces, part.ease))
        for layer in ("", "_inner"):
            one, two = Run(f"{name}{layer}", "side"), Run(f"waistband_back{layer}", "side")
            found.append(Seam.of(f"band{layer.replace('_', ', ')}, {half} side", one, two, pieces))
    for name in ("waistband_left", "waistband_right", "waistband_back"):
        one, two = Run(name, "top"), Run(f"{name}_inner", "top")
        found.append(Seam.of(f"upper edge, {name}", one, two if name.endswith("back") else turned(two), pieces))
    return [*found, *_joins(plan, pieces)]


def _joins(plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Seams at the centre: of a back in two, and of fronts that do not open."""
    found = []
    for layer in ("", "_inner"):
        if _choice(plan).back == "seam":
            end = Run(f"waistband_back{layer}", "centre")
            found.append(Seam.of("band, centre back", end, end, pieces))
        if not opens(plan):
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
    return told
