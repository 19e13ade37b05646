"""Straight folded waistband, in one strip or in sections joined at the side seams.

Its frame: x along the band from the centre front of the wearer's left, y = 0 on the waist seam, right side up, so the
outer half lies below the fold. Every section is as long as the waist edge it is sewn to, less its share of the ease.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace

from draft.edge import Corner, Edge, mirrored_outline
from draft.errors import DraftError
from draft.geometry.path import Path
from draft.geometry.segments import Line, Motion
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces.hook_and_bar import HOOK_AT, bar_marks, check_room, hook_marks, hook_notes
from draft.pieces.plan import Plan, WaistEdges
from draft.seams import Run, Seam
from draft.style import StraightBand
from draft.units import HAIR, at_least

BACK_SHARE_OF_EASE = 2 / 3
BUTTON_FROM_END = 15.0
BUTTON_CLEARANCE = 6.0  # beyond half the button
HOLE_PAST_BUTTON = 3.0


@dataclass(frozen=True)
class Sizes:
    """Lengths along the band, mm."""

    front: float  # centre front to side seam
    pocket: float  # of that, the part over the pocket facing
    back: float  # side seam to centre back
    front_ease: float
    back_ease: float
    overlap: float
    underlap: float
    at_side: bool = False  # it opens at the left side seam: there the front lies on top
    back_over: bool = False  # or the back

    @property
    def seam(self) -> float:
        """Centre front to centre front."""
        return 2 * (self.front + self.back)

    @property
    def before(self) -> float:
        """What the strip has before the seam that opens: the overlap, but where the back lies over the front."""
        return self.underlap if self.back_over else self.overlap

    @property
    def after(self) -> float:
        """What it has at its other end."""
        return self.overlap if self.back_over else self.underlap


def _choice(plan: Plan) -> StraightBand:
    band = plan.style.band
    assert isinstance(band, StraightBand)
    return band


def sizes(plan: Plan, waist: WaistEdges) -> Sizes:
    """Lengths that follow from the waist edges of front, pocket facing and back."""
    band = _choice(plan)
    _check_opening(plan, waist)
    back_ease = band.eased * BACK_SHARE_OF_EASE / 2
    front_ease = band.eased * (1 - BACK_SHARE_OF_EASE) / 2 + waist.mouth_ease
    front = waist.legs["front"].edge("waist").length + waist.pocket - front_ease
    back = waist.legs["back"].edge("waist").length - back_ease
    under = waist.underlap if band.underlap is None else band.underlap
    _carries_fastener(band, under)
    at_side = waist.opens == "left side"
    back_over = at_side and not _left_over_right(plan)
    return Sizes(front, waist.pocket, back, front_ease, back_ease, band.overlap, under, at_side, back_over)


def _carries_fastener(band: StraightBand, under: float) -> None:
    if band.fastener == "hook":
        check_room(band.depth, under)
        return
    least = button_at(band) + band.button / 2
    if under < least - HAIR:
        raise DraftError(
            "style.band.underlap", under, f"at least {at_least(least)} mm to carry the button", "make it wider"
        )


def _check_opening(plan: Plan, waist: WaistEdges) -> None:
    if waist.opens == "nowhere":
        raise DraftError(
            "style.closing",
            plan.style.closing,
            f"one that opens: this band has a {_choice(plan).fastener}",
            "take an elastic band, or a fly",
        )


def button_at(band: StraightBand) -> float:
    """Distance of the button's centre from the end of the overlap."""
    return max(BUTTON_FROM_END, band.button / 2 + BUTTON_CLEARANCE)


def girth(plan: Plan, waist: WaistEdges) -> float:
    """Finished girth of the band, centre front on centre front."""
    return sizes(plan, waist).seam


def pieces(plan: Plan, waist: WaistEdges) -> list[Piece]:
    """One strip, or two fronts and a back on the fold; a front and a back where it opens at the side."""
    s = sizes(plan, waist)
    if _choice(plan).sections == "one":
        return [_one(plan, s)]
    return _side_sections(plan, s) if s.at_side else _sections(plan, s)


def _strip(plan: Plan, start: float, stop: float) -> tuple[Edge, ...]:
    depth, a = _choice(plan).depth, plan.style.allowances
    low, high = complex(start, 0), complex(stop, 2 * depth)
    turned = Corner("extended")
    return (
        Edge("waist", (Path.line(low, stop + 0j),), allowance=a.waist, corner=turned),
        Edge("right_end", (Path.line(stop + 0j, high),), allowance=a.band, corner=turned),
        Edge("inner", (Path.line(high, complex(start, 2 * depth)),), allowance=a.band, corner=turned),
        Edge("left_end", (Path.line(complex(start, 2 * depth), low),), allowance=a.band, corner=turned),
    )


def places(s: Sizes) -> dict[str, float]:
    """Notch places along the band from the seam that opens, on the overlap, as named on the trousers."""
    side = s.front
    if s.at_side:
        found = {"side seam": 0.0, "centre front": side, "other side seam": 2 * side, "centre back": 2 * side + s.back}
        if s.pocket:
            found |= {"pocket mouth": s.pocket, "other pocket mouth": 2 * side - s.pocket}
        return found | {"side seam of the back": s.seam}
    found = {"centre front": 0.0, "side seam": side, "centre back": side + s.back, "other side seam": side + 2 * s.back}
    if s.pocket:
        found |= {"pocket mouth": side - s.pocket, "other pocket mouth": side + 2 * s.back + s.pocket}
    return found | {"other centre front": s.seam}


def _one(plan: Plan, s: Sizes) -> Piece:
    band = _choice(plan)
    start, stop = -s.before, s.seam + s.after
    edges = _strip(plan, start, stop)
    double = {"centre back"}
    notches = tuple(
        Notch("waist", place - start, name, 2 if name in double else 1) for name, place in places(s).items()
    )
    lines = (
        InnerLine("fold", Path.line(complex(start, band.depth), complex(stop, band.depth)), "fold"),
        *(line for lines in _fastener(band, s) for line in lines),
    )
    grain = Line(
        complex(start + 0.3 * (stop - start), 1.5 * band.depth), complex(start + 0.7 * (stop - start), 1.5 * band.depth)
    )
    strip = Piece(
        name="waistband",
        title="Waistband",
        edges=edges,
        cut=Cut(1, "self"),
        grainline=grain,
        notches=notches,
        lines=lines,
        made_for=plan.made_for,
    )
    return strip if _left_over_right(plan) and not s.at_side else mirrored(strip)


def _left_over_right(plan: Plan) -> bool:
    return plan.style.closing.lap == "left_over_right"


def _fastener(band: StraightBand, s: Sizes) -> tuple[tuple[InnerLine, ...], tuple[InnerLine, ...]]:
    """Marks on the end that lies on top, and on the end underneath: they meet when the band is closed."""
    y, way = band.depth / 2, -1 if s.back_over else 1

    def at(past: float, height: float, *, over: bool) -> complex:
        """Place at a distance from the end of the overlap, on it or on what lies beneath it."""
        start = 0.0 if over != s.back_over else s.seam
        return complex(start + way * (past - s.overlap), height)

    if band.fastener == "hook":
        inner = 2 * band.depth - y  # the other half, folded to the inside
        return hook_marks(at(HOOK_AT, inner, over=True), 1 + 0j), bar_marks(at(HOOK_AT, y, over=False), 1 + 0j)
    middle, r = button_at(band), band.button / 2
    long = band.button + band.button_thickness
    ends = (at(middle - HOLE_PAST_BUTTON + more, y, over=True) for more in (0.0, long))
    centre = at(middle, y, over=False)
    return (InnerLine("buttonhole", Path.line(*ends), f"buttonhole {long:g}"),), (
        InnerLine("button", Path.line(centre - r, centre + r), f"button {band.button:g}"),
        InnerLine("button", Path.line(centre - 1j * r, centre + 1j * r)),
    )


def mirrored(piece: Piece) -> Piece:
    """Same strip for the other lap: left and right ends change places."""
    motion = Motion.mirror(0j, 1j)
    edges = mirrored_outline(piece.edges, motion)
    other = {"left_end": "right_end", "right_end": "left_end"}
    edges = tuple(replace(edge, name=other.get(edge.name, edge.name)) for edge in edges)
    long = piece.edge("waist").length
    notches = tuple(
        replace(n, along=(long if n.edge == "waist" else piece.edge(n.edge).length) - n.along) for n in piece.notches
    )
    lines = tuple(replace(line, path=line.path.moved(motion)) for line in piece.lines)
    grain = piece.grainline.moved(motion).reversed()
    return replace(piece, edges=edges, notches=notches, lines=lines, grainline=grain)


def _sections(plan: Plan, s: Sizes) -> list[Piece]:
    """Overlap front, underlap front and the back as a half on the fold."""
    left = _left_over_right(plan)
    over, under = ("left", "right") if left else ("right", "left")
    on_top, beneath = _fastener(_choice(plan), s)
    cuts = (
        (f"waistband_{over}", f"Waistband, {over} front", -s.overlap, s.front, on_top),
        (f"waistband_{under}", f"Waistband, {under} front", s.front + 2 * s.back, s.seam + s.underlap, beneath),
    )
    found = []
    for name, title, start, stop, lines in cuts:
        piece = _section(plan, s, name, title, (start, stop), lines)
        found.append(piece if left else mirrored(piece))
    return [*found, _back_half(plan, s)]


def _side_sections(plan: Plan, s: Sizes) -> list[Piece]:
    """Front and back of a band that opens at the left side, joined at the right."""
    on_top, beneath = _fastener(_choice(plan), s)
    ahead, behind = (beneath, on_top) if s.back_over else (on_top, beneath)
    cuts = (
        ("waistband_front", "Waistband, front", _side_reach(s)["waistband_front"], ahead),
        ("waistband_back", "Waistband, back", _side_reach(s)["waistband_back"], behind),
    )
    return [mirrored(_section(plan, s, name, title, reach, lines)) for name, title, reach, lines in cuts]


def _side_reach(s: Sizes) -> dict[str, tuple[float, float]]:
    """Where the sections of a band that opens at the side begin and end along the strip."""
    return {"waistband_front": (-s.before, 2 * s.front), "waistband_back": (2 * s.front, s.seam + s.after)}


def _section(
    plan: Plan, s: Sizes, name: str, title: str, reach: tuple[float, float], lines: tuple[InnerLine, ...]
) -> Piece:
    """Stretch of the strip, with the notches inside it; the side seams are its ends."""
    (start, stop), depth = reach, _choice(plan).depth
    inside = [(match, at) for match, at in places(s).items() if start - 1e-9 <= at <= stop + 1e-9]
    notches = tuple(
        Notch("waist", at - start, match, 2 if match == "centre back" else 1)
        for match, at in inside
        if "side seam" not in match or (s.at_side and start + 1 < at < stop - 1)
    )
    fold = InnerLine("fold", Path.line(complex(start, depth), complex(stop, depth)), "fold")
    middle = (start + stop) / 2
    third = (stop - start) / 5
    grain = Line(complex(middle - third, 1.5 * depth), complex(middle + third, 1.5 * depth))
    strip = _strip(plan, start, stop)
    return Piece(name, title, strip, Cut(1, "self"), grain, notches, (fold, *lines), (), plan.made_for)


def _back_half(plan: Plan, s: Sizes) -> Piece:
    band = _choice(plan)
    edges = _strip(plan, s.front, s.front + s.back)
    fold = replace(edges[1], name="fold", allowance=0.0)
    grain = Line(complex(s.front + 0.3 * s.back, 1.5 * band.depth), complex(s.front + 0.8 * s.back, 1.5 * band.depth))
    return Piece(
        name="waistband_back",
        title="Waistband, back",
        edges=(edges[0], fold, *edges[2:]),
        cut=Cut(1, "self", on_fold=True),
        grainline=grain,
        notches=(Notch("waist", s.back, "centre back"),),
        lines=(
            InnerLine("fold", Path.line(complex(s.front, band.depth), complex(s.front + s.back, band.depth)), "fold"),
        ),
        made_for=plan.made_for,
        notes=("right edge on the fold of the cloth",),
    )


def seams(plan: Plan, waist: WaistEdges, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Waist seam, section by section, both halves."""
    s = sizes(plan, waist)
    runs: list[tuple[str, Run, Run, float]] = []
    mouth = s.front - s.pocket
    facing = pieces["pocket_facing"].edge("waist").length if s.pocket else 0.0
    for half, run_on in _band_runs(plan, s, pieces):
        runs.append((f"waist, {half} front", Run("front", "waist"), run_on(0.0, mouth), s.front_ease))
        if s.pocket:
            hidden = Run("pocket_facing", "waist", facing - s.pocket)
            runs.append((f"waist, {half} pocket", hidden, run_on(mouth, s.front), 0.0))
        back = run_on(s.front, s.front + s.back)
        runs.append((f"waist, {half} back", Run("back", "waist", back=True), back, s.back_ease))
    found = [Seam.of(name, a, b, pieces, ease) for name, a, b, ease in runs]
    if _choice(plan).sections == "side_seams" and s.at_side:
        ends = Run("waistband_front", "left_end"), Run("waistband_back", "right_end", back=True)
        found.append(Seam.of("band, right side", *ends, pieces))
    elif _choice(plan).sections == "side_seams":
        found += [
            Seam.of("band, side", Run(name, _side_end(name)), Run("waistband_back", "left_end"), pieces)
            for name in ("waistband_left", "waistband_right")
        ]
    return found


def _side_end(name: str) -> str:
    """End of a front section that lies at the side seam: seen from outside, the wearer's left is on the right."""
    return "right_end" if name == "waistband_left" else "left_end"


def _band_runs(plan: Plan, s: Sizes, pieces: Mapping[str, Piece]) -> list[tuple[str, Callable[[float, float], Run]]]:
    """For either half: its name, and a function from distances off the centre front to a run of the band."""
    left, one = _left_over_right(plan), _choice(plan).sections == "one"
    over, under = ("left", "right") if left else ("right", "left")
    if s.at_side:
        return _side_runs(s, {"waistband": (-s.before, s.seam + s.after)} if one else _side_reach(s))
    if one:
        long = pieces["waistband"].edge("waist").length

        def placed(a: float, b: float, *, far: bool) -> Run:
            # Distances from the overlap's end along the strip as drawn for left over right; mirrored for the other lap.
            a, b = (s.seam - b, s.seam - a) if far else (a, b)
            start, stop = a + s.overlap, b + s.overlap
            back = far
            if not left:
                start, stop, back = long - stop, long - start, not back
            return Run("waistband", "waist", start, stop, back=back)

        return [
            (over, lambda a, b: placed(a, b, far=False)),
            (under, lambda a, b: placed(a, b, far=True)),
        ]

    def section(a: float, b: float, side: str, *, far: bool) -> Run:
        if a >= s.front - 1e-9:
            return Run("waistband_back", "waist", a - s.front, b - s.front)
        name = f"waistband_{side}"
        long = pieces[name].edge("waist").length
        start, stop, back = (
            (long - s.underlap - b, long - s.underlap - a, True) if far else (a + s.overlap, b + s.overlap, False)
        )
        if not left:
            start, stop, back = long - stop, long - start, not back
        return Run(name, "waist", start, stop, back=back)

    return [
        (over, lambda a, b: section(a, b, over, far=False)),
        (under, lambda a, b: section(a, b, under, far=True)),
    ]


def _side_runs(s: Sizes, reaches: Mapping[str, tuple[float, float]]) -> list[tuple[str, Callable[[float, float], Run]]]:
    """As `_band_runs`, for a band that opens at the left side: its front end lies at the right end of the strip."""

    def run(start: float, stop: float, *, back: bool) -> Run:
        """Run between two distances from the seam that opens, on the front."""
        name = next(n for n, reach in reaches.items() if reach[0] - 1e-6 <= start and stop <= reach[1] + 1e-6)
        end = reaches[name][1]
        return Run(name, "waist", end - stop, end - start, back=back)

    def left(a: float, b: float) -> Run:
        if a >= s.front - 1e-9:
            return run(s.seam - (b - s.front), s.seam - (a - s.front), back=False)
        return run(s.front - b, s.front - a, back=False)

    return [("left", left), ("right", lambda a, b: run(s.front + a, s.front + b, back=True))]


def notes(plan: Plan) -> list[str]:
    """What to buy for a band without a button."""
    return hook_notes() if _choice(plan).fastener == "hook" else []
