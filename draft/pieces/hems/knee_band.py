"""Knee band of breeches: a folded band with button and buttonhole, the leg eased or gathered to it.

Its frame: x along the band of the wearer's right leg from the front end of the opening, right side up, seen from
outside; y = 0 on the seam with the leg, the outer half above the fold. Front and back of the leg are drawn in by the
same share. The opening in the side seam is faced on the front and has a folded underlap on the back, as wide as that of
the band: both end in the band, the front lies on top. The facing is basted to the front and drawn in with it.

Buttonhole = diameter + thickness, its outer end 3 past the button's centre, and half the button + 6 beyond that centre:
read in sewing handbooks. Knee ease, depth and opening are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from draft.choices.hems import KneeBand
from draft.edge import Corner, Edge
from draft.errors import DraftError
from draft.geometry.path import Path
from draft.geometry.segments import Line
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces.hems.strip import LARGEST_SHARE, PARTS, clear_of_pockets, edge_facing, panel_of, side_mark
from draft.pieces.interfacing import interfacing_of
from draft.pieces.plan import Plan
from draft.pieces.straight_band import BUTTON_CLEARANCE, BUTTON_FROM_END, HOLE_PAST_BUTTON
from draft.seams import Joint, Run, Seam
from draft.units import HAIR, at_least, at_most, fmt

FACING, FACING_SHARE = 30.0, 0.4  # width of the opening's facing, and of the front's hem at most
PAST_STOP = 15.0  # facing and underlap run on past the stop (common practice, no source)
LOWEST_SHARE = 0.45  # of the knee height: from the kneecap down, where a band still holds above the calf
MOST_FULLNESS = 3.0  # of the leg on the band: more does not lie between the seam's layers
EASED = 1.1  # up to here the leg is eased, beyond it is gathered
AROUND_BUTTON = 4.0  # of the band above and below the button, mm
STOP = "opening of the side seam"


@dataclass(frozen=True)
class Sizes:
    """Lengths along the band, mm."""

    front: float
    back: float
    underlap: float
    button_at: float  # from either end, centre of the button

    @property
    def girth(self) -> float:
        """Closed band."""
        return self.front + self.back


def _choice(plan: Plan) -> KneeBand:
    hem = plan.style.hem
    assert isinstance(hem, KneeBand)
    return hem


def sizes(plan: Plan) -> Sizes:
    """Lengths that follow from the body and the leg's bottom edge.

    Raises
    ------
    DraftError
        When the leg does not end below the knee, is narrower than the band or too wide for it, or when the band has no
        room for its button or the side seam for its opening.
    """
    band = _choice(plan)
    _ends_below_knee(plan)
    _carries_button(band)
    most = LARGEST_SHARE * plan.shell.back.inseam.length - (PAST_STOP if band.placket == "faced" else 0.0)
    if band.opening > most + HAIR:
        raise DraftError(
            "style.hem.opening", band.opening, f"at most {at_most(most)} mm on this leg", "make it shorter"
        )
    hems = [panel_of(plan, part).hem.length for part in PARTS]
    leg, girth = sum(hems), plan.body.known(band.at) + band.ease
    if not girth <= leg <= MOST_FULLNESS * girth:
        expected = f"{at_least(girth)} to {at_most(MOST_FULLNESS * girth)} mm for a band of {girth:.0f}"
        raise DraftError("style.leg.hem", round(leg, 1), expected, "set a hem inside these limits, or another ease")
    share = girth / leg
    return Sizes(hems[0] * share, hems[1] * share, band.underlap, button_at(band))


def button_at(band: KneeBand) -> float:
    """Distance of the button's centre from the end of the band, mm.

    >>> button_at(KneeBand(button=20))
    16.0
    """
    return max(BUTTON_FROM_END, band.button / 2 + BUTTON_CLEARANCE)


def _carries_button(band: KneeBand) -> None:
    least = button_at(band) + band.button / 2
    if band.underlap < least - HAIR:
        expected = f"at least {at_least(least)} mm to carry the button"
        raise DraftError("style.hem.underlap", band.underlap, expected, "make it longer or the button smaller")
    if band.depth < band.button + 2 * AROUND_BUTTON:
        expected = f"at most {band.depth - 2 * AROUND_BUTTON:g} mm on a band {band.depth:g} deep"
        raise DraftError("style.hem.button", band.button, expected, "take a smaller button or a deeper band")


def _ends_below_knee(plan: Plan) -> None:
    knee = plan.body.known("knee_height")
    least, most = plan.body.inside_leg - knee, plan.body.inside_leg - knee * (1 - LOWEST_SHARE)
    leg = plan.shell.front.inseam.length
    if not least - 0.5 <= leg <= most + 0.5:
        expected = f"{at_least(least)} to {at_most(most)} mm on this body: the band sits between kneecap and calf"
        raise DraftError("style.leg.inside_leg", round(leg, 1), expected, "end the leg just below the knee")


def allowance(plan: Plan) -> float:
    """Allowance of the seam with the band, as for a cuff."""
    return plan.style.allowances.cuff


def corner() -> Corner:
    """The seams are pressed open, and the opening turned back, before the band is joined."""
    return Corner("mirrored")


def above(plan: Plan) -> float:
    """Nothing: the band hangs below the leg."""
    sizes(plan)
    return 0.0


def leg_lines(plan: Plan, name: str) -> list[InnerLine]:
    """Where the side seam stops, as far from the bottom edge on the front as on the back."""
    return [side_mark(panel_of(plan, name), _choice(plan).opening, STOP)]


def leg_notches(plan: Plan, name: str) -> list[Notch]:
    """Stop of the side seam, single in front, double behind."""
    along = panel_of(plan, name).side.length - _choice(plan).opening
    return [Notch("side", along, STOP, 1 if name == "front" else 2)]


def pieces(plan: Plan) -> list[Piece]:
    """Band, its interfacing when the style asks for interfacing, and facing and underlap of the opening."""
    band = _band(plan)
    found = [band, interfacing_of(band)] if plan.style.interfacing else [band]
    return [*found, _facing(plan), _underlap(plan)] if _choice(plan).placket == "faced" else found


def _facing(plan: Plan) -> Piece:
    """Facing of the front edge of the opening: the strip of the leg beside it."""
    width = min(FACING, FACING_SHARE * plan.shell.front.hem.length)
    long = _choice(plan).opening + PAST_STOP
    return edge_facing(plan, "front", long, width, ("knee_facing", "Opening facing"), (PAST_STOP, STOP))


def _underlap(plan: Plan) -> Piece:
    """Folded strip on the back edge of the opening, as wide as the band's underlap; x from that edge to its fold."""
    band, a = _choice(plan), plan.style.allowances
    wide, high = band.underlap, 1j * (band.opening + PAST_STOP)
    edges = (
        Edge("bottom", (Path.line(0j, 2 * wide + 0j),), allowance=a.cuff),
        Edge("under", (Path.line(2 * wide + 0j, 2 * wide + high),), allowance=a.side),
        Edge("top", (Path.line(2 * wide + high, high),), allowance=a.cuff),
        Edge("side", (Path.line(high, 0j),), allowance=a.side),
    )
    return Piece(
        name="knee_underlap",
        title="Opening underlap",
        edges=edges,
        cut=Cut(2, "self", mirrored=True),
        grainline=Line(0.5 * wide + 0.15 * high, 0.5 * wide + 0.8 * high),
        notches=(Notch("side", PAST_STOP, STOP, 2),),
        lines=(InnerLine("fold", Path.line(wide + 0j, wide + high), "fold"),),
        made_for=plan.made_for,
        notes=("folded lengthwise",),
    )


def _band(plan: Plan) -> Piece:
    """Outer half from y = 0 down to the fold, inner half below it."""
    band, s, a = _choice(plan), sizes(plan), plan.style.allowances.cuff
    long, low, fold = s.girth + s.underlap, -2j * band.depth, -1j * band.depth
    edges = (
        Edge("front_end", (Path.line(0j, low),), allowance=a),
        Edge("inner", (Path.line(low, long + low),), allowance=a),
        Edge("back_end", (Path.line(long + low, long + 0j),), allowance=a),
        Edge("leg", (Path.line(long + 0j, 0j),), allowance=a),
    )
    return Piece(
        name="knee_band",
        title="Knee band",
        edges=edges,
        cut=Cut(2, "self", mirrored=True),
        grainline=Line(0.2 * long + 1.5 * fold, 0.8 * long + 1.5 * fold),
        notches=(
            Notch("leg", s.underlap, "side, back"),
            Notch("leg", s.underlap + s.back, "inseam", 2),
        ),
        lines=(InnerLine("fold", Path.line(fold, long + fold), "fold"), *_button(band, s)),
        made_for=plan.made_for,
        notes=(f"closed {fmt(s.girth, 0)}", "button on the back end"),
    )


def _button(band: KneeBand, s: Sizes) -> list[InnerLine]:
    """Buttonhole on the front end, and the button where it lies when the band is closed."""
    y, r = -0.5j * band.depth, band.button / 2
    start = s.button_at - HOLE_PAST_BUTTON
    stop = start + band.button + band.button_thickness
    at = s.girth + s.button_at
    return [
        InnerLine("buttonhole", Path.line(start + y, stop + y), f"buttonhole {stop - start:g}"),
        InnerLine("button", Path.line(at - r + y, at + r + y), f"button {band.button:g}"),
        InnerLine("button", Path.line(at + y - 1j * r, at + y + 1j * r)),
    ]


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> tuple[list[Seam], list[Joint]]:
    """Leg to band: the leg is longer by what is eased or gathered."""
    s = sizes(plan)
    inseam, end = s.underlap + s.back, s.underlap + s.back + s.front
    runs = {
        "front": (Run("knee_band", "leg", inseam, end, back=True), s.front),
        "back": (Run("knee_band", "leg", s.underlap, inseam), s.back),
    }
    found = []
    for part, (run, length) in runs.items():
        ease = panel_of(plan, part).hem.length - length
        found.append(Seam.of(f"knee band, {part}", Run(part, "hem"), run, pieces, ease))
    return [*found, *_opening_seams(plan, pieces)], []


def _opening_seams(plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Facing on the front, underlap on the back and under the end of the band, and the underlap on itself."""
    band = _choice(plan)
    clear_of_pockets(plan, "opening", band.opening, pieces)
    if band.placket != "faced":
        return []
    wide, lap = band.underlap, "knee_underlap"
    slit = {part: Run(part, "side", pieces[part].edge("side").length - band.opening) for part in PARTS}
    facing = pieces["knee_facing_front"].edge("hem").length
    runs = [
        ("opening, facing", slit["front"], Run("knee_facing_front", "side", PAST_STOP)),
        ("opening, facing at the band", Run("front", "hem", 0, facing), Run("knee_facing_front", "hem")),
        ("opening, underlap", slit["back"], Run(lap, "side", PAST_STOP)),
        ("opening, underlap long edges", Run(lap, "side"), Run(lap, "under", back=True)),
        ("opening, underlap upper end", Run(lap, "top", 0, wide), Run(lap, "top", wide, back=True)),
        ("opening, underlap at the band", Run(lap, "bottom", 0, wide), Run("knee_band", "leg", 0, wide, back=True)),
        ("opening, underlap lower end", Run(lap, "bottom", 0, wide), Run(lap, "bottom", wide, back=True)),
    ]
    return [Seam.of(name, one, two, pieces) for name, one, two in runs]


def notes(plan: Plan) -> list[str]:
    """What to buy, how the leg is drawn in, and how the opening is made."""
    band, s = _choice(plan), sizes(plan)
    leg = sum(panel_of(plan, part).hem.length for part in PARTS)
    how = "eased" if leg <= EASED * s.girth else "gathered"
    return [
        f"knee band: closed {fmt(s.girth, 0)}; the leg's bottom edge of {fmt(leg, 0)} is {how} to it",
        f"buttons: 2 of {fmt(band.button, 0)}",
        f"opening: end the side seam with a backstitch {fmt(band.opening, 0)} above the band; {_finish(band)}; "
        "a bar tack at the stop",
        "caution: a band too tight below the knee hinders the blood; try it on and bend the knee before the buttonhole "
        "is cut",
    ]


def _finish(band: KneeBand) -> str:
    """How the edges of the opening are finished."""
    if band.placket == "turned":
        return "turn both allowances under and stitch them, the front over the back"
    return (
        "sew the facing to the front edge and turn it inside, baste it to the front's bottom edge and draw both in "
        "as one; fold the underlap, "
        "close its upper end, sew it to the back edge and let its lower end into the band's underlap"
    )
