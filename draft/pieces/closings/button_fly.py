"""Button fly: the facing of the zip fly, a folded stand with buttonholes under it, and a shield with the buttons.

Glossary
--------
stand   folded strip between facing and shield; its fold lies just behind the edge of the overlapping front, its raw
        edges lie on the outer edge of the facing and are caught by the topstitching
across  distance from the centre front into the front, mm
down    distance from the waist seam along the centre front, mm
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from math import floor

from draft.choices.closings import ButtonFly
from draft.edge import Corner, Edge, mirrored_outline
from draft.errors import DraftError
from draft.geometry.length import length
from draft.geometry.meet import meet_line
from draft.geometry.path import Path
from draft.geometry.segments import Line, Motion
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces import fly
from draft.pieces.closings.shield import shield_runs
from draft.pieces.fly import crotch_edges, opens, side_marks, underlap
from draft.pieces.interfacing import interfacing_of
from draft.pieces.plan import Plan
from draft.pieces.straight_band import BUTTON_CLEARANCE, HOLE_PAST_BUTTON
from draft.seams import Run, Seam
from draft.units import HAIR, at_least, at_most, fmt

__all__ = [
    "Buttons",
    "buttons",
    "crotch_edges",
    "front_marks",
    "notes",
    "opens",
    "pieces",
    "seams",
    "side_marks",
    "underlap",
]

USUAL_BUTTON = 15.0  # trade tables name 14 to 15 for the front of trousers (22 to 24 lignes; read)
SMALLEST_BUTTON = 8.0
SET_BACK = 2.0  # fold of the stand behind the edge of the front (common practice, no source)
CLEAR_OF_STITCH = 3.0  # end of a buttonhole to the topstitching (common practice, no source)
ABOVE_STOP = 15.0  # lowest button above the end of the opening, at least (common practice, no source)
BELOW_WAIST = 6.0  # edge of the highest button below the waist seam, at least (common practice, no source)
BETWEEN = 8.0  # edge of a button to the next, at least (common practice, no source)


@dataclass(frozen=True)
class Buttons:
    """Buttons of the fly: diameter, thickness, centres counted down from the waist seam, and their distance across."""

    diameter: float
    thickness: float
    down: tuple[float, ...]

    @property
    def across(self) -> float:
        """Centre of the buttons: half the diameter and 6 behind the edge of the overlap (read)."""
        return _across(self.diameter)

    @property
    def hole(self) -> tuple[float, float]:
        """Both ends of a buttonhole, across: 3 beyond the centre, and diameter plus thickness from there (read)."""
        return _hole(self.diameter, self.thickness)


def _across(diameter: float) -> float:
    return diameter / 2 + BUTTON_CLEARANCE


def _hole(diameter: float, thickness: float) -> tuple[float, float]:
    outer = _across(diameter) - HOLE_PAST_BUTTON
    return outer, outer + diameter + thickness


def _choice(plan: Plan) -> ButtonFly:
    closing = plan.style.closing
    assert isinstance(closing, ButtonFly)
    return closing


@lru_cache(maxsize=4)
def buttons(plan: Plan) -> Buttons:
    """Size, number and places of the buttons.

    Raises
    ------
    DraftError
        When the buttonhole does not fit between the edge and the topstitching, or the fly is too short for one button;
        with the largest button or the shortest fly that works.
    """
    diameter = _diameter(plan)
    lowest, least = _lowest(plan, diameter), diameter / 2 + BELOW_WAIST
    if lowest < least - HAIR:
        raise DraftError(
            "style.closing.length",
            fly.sizes(plan).stop,
            f"at least {at_least(least + ABOVE_STOP)} mm for one button of {fmt(diameter, 1)}",
            "make the opening longer or the button smaller",
        )
    return Buttons(diameter, _choice(plan).button_thickness, _row(plan, diameter, lowest))


def _row(plan: Plan, diameter: float, lowest: float) -> tuple[float, ...]:
    """Buttons down from the waist seam, evenly from the band's button, or from the seam where the band has none."""
    of_band = _band_button(plan)
    highest = diameter / 2 + BELOW_WAIST
    top = highest if of_band is None else -of_band
    gaps = max(1, round((lowest - top) / _choice(plan).spacing))
    while gaps > 1 and (
        lowest - top < gaps * (diameter + BETWEEN) or (of_band is not None and top + (lowest - top) / gaps < highest)
    ):
        gaps -= 1
    step = (lowest - top) / gaps
    row = tuple(lowest - step * k for k in reversed(range(gaps)))
    return (top, *row) if of_band is None and step >= diameter + BETWEEN else row


def _diameter(plan: Plan) -> float:
    """Diameter chosen, or the usual one as far as there is room."""
    chosen, topstitch = _choice(plan), fly.sizes(plan).topstitch
    # What a button of no width would leave, and what each mm of diameter takes: half up to its centre, one beyond.
    most = (topstitch - CLEAR_OF_STITCH - _hole(0.0, chosen.button_thickness)[1]) / 1.5
    if most < SMALLEST_BUTTON:
        least = _hole(SMALLEST_BUTTON, chosen.button_thickness)[1] + CLEAR_OF_STITCH
        raise DraftError(
            "style.closing.topstitch",
            topstitch,
            f"at least {at_least(least)} mm beside the smallest buttonhole",
            "topstitch further from the edge, or take thinner buttons",
        )
    if chosen.button is not None and chosen.button > most + HAIR:
        raise DraftError(
            "style.closing.button",
            chosen.button,
            f"at most {at_most(most)} mm beside this topstitching",
            "take a smaller button, or topstitch further from the edge",
        )
    return min(USUAL_BUTTON, float(floor(most))) if chosen.button is None else chosen.button


def _lowest(plan: Plan, diameter: float) -> float:
    """Lowest button: clear of the end of the opening, its buttonhole clear of the curve of the topstitching."""
    s, front = fly.sizes(plan), plan.front_crotch
    inner_end = _hole(diameter, _choice(plan).button_thickness)[1]
    curve = fly.j_line(plan, s.topstitch, s.stop + fly.TOPSTITCH_PAST_STOP)
    at = _crossing(curve, plan, inner_end + CLEAR_OF_STITCH)
    until = ((curve.point_at(at) - front.start) / front.direction_at(0)).real
    return min(s.stop - ABOVE_STOP, until)


def _crossing(curve: Path, plan: Plan, across: float) -> float:
    """Distance along a J down to where it comes nearer to the centre front than `across`."""
    crossings = meet_line(curve, _at(plan, across, 0.0), plan.front_crotch.direction_at(0))
    return crossings[-1] if crossings else length(curve.segments[0])  # it stays at `across`: to the end of its straight


def _at(plan: Plan, across: float, down: float) -> complex:
    """Point beside the centre front."""
    front = plan.front_crotch
    along = front.direction_at(0)
    return front.start + along * down - 1j * along * across


def _band_button(plan: Plan) -> float | None:
    """Height of the band's button above the waist seam, half the band's depth; None where the band has no button."""
    band = plan.style.band
    depth = getattr(band, "depth", None)
    buttoned = getattr(band, "fastener", None) == "button"
    return depth / 2 if buttoned and depth is not None else None


def front_marks(plan: Plan) -> tuple[list[InnerLine], list[Notch]]:
    """Topstitching, and the notches of centre front and end of the opening; the under front is not folded."""
    lines, notches = fly.front_marks(plan)
    return [line for line in lines if line.kind == "topstitch"], [_renamed(notch) for notch in notches]


def _renamed(notch: Notch) -> Notch:
    return replace(notch, match=notch.match.replace("zip stop", "fly stop"))


def pieces(plan: Plan) -> list[Piece]:
    """Facing, stand with the buttonholes, and shield with the buttons."""
    facing, shield = (
        replace(piece, notches=tuple(_renamed(notch) for notch in piece.notches)) for piece in fly.pieces(plan)
    )
    stand = _stand(plan)
    found = [_with_stand(plan, facing, stand), stand, _with_buttons(plan, shield)]
    return [*found, interfacing_of(stand)] if plan.style.interfacing else found


def _stand(plan: Plan) -> Piece:
    """Stand, as a half on its fold: the shape of the facing from the fold outwards."""
    s, b = fly.sizes(plan), buttons(plan)
    waist = plan.shell.front.waist.parts[0]
    outer = _outer(plan)
    top = waist.between(SET_BACK, s.width)
    edges = (
        Edge("fold", (Path.line(outer.end, top.start),), corner=Corner("extended")),
        Edge("waist", (top,), allowance=plan.style.allowances.waist, corner=Corner("squared", "next")),
        Edge("outer", (outer,), corner=Corner("squared", "next")),
    )
    holes = [Path.line(*(_at(plan, across, down) for across in b.hole)) for down in b.down]
    upper = 0.5 * (b.hole[1] + s.width)
    half = Piece(
        name="fly_buttonholes",
        title="Buttonhole stand",
        edges=edges,
        cut=Cut(1, "self", on_fold=True),
        grainline=Line(_at(plan, upper, 0.6 * s.stop), _at(plan, upper, 0.1 * s.stop)),
        notches=(Notch("waist", top.length / 2, "buttonhole stand"),),
        lines=tuple(
            InnerLine("buttonhole", hole, "" if k else f"buttonhole {fmt(b.hole[1] - b.hole[0], 1)}")
            for k, hole in enumerate(holes)
        ),
        made_for=plan.made_for,
        notes=("edge beside the buttonholes on the fold of the cloth", "buttonholes through both layers"),
    )
    return half if _left_over_right(plan) else _mirrored(half, plan)


def _outer(plan: Plan) -> Path:
    """Outer edge of the facing, from the waist to the fold of the stand."""
    s = fly.sizes(plan)
    whole = fly.j_line(plan, s.width, s.stop + _choice(plan).facing_beyond)
    return whole.between(0, _crossing(whole, plan, _fold_across(plan)))


def _fold_across(plan: Plan) -> float:
    """Fold of the stand, measured square to the centre front."""
    top, front = plan.shell.front.waist.parts[0].point_at(SET_BACK), plan.front_crotch
    return float(((top - front.start) / (-1j * front.direction_at(0))).real)


def _left_over_right(plan: Plan) -> bool:
    return _choice(plan).lap == "left_over_right"


def _mirrored(piece: Piece, plan: Plan) -> Piece:
    """Piece for the other lap, mirrored as the facing is."""
    motion = Motion.mirror(plan.front_crotch.start, plan.front_crotch.start + 1j)
    return replace(
        piece,
        edges=mirrored_outline(piece.edges, motion),
        grainline=piece.grainline.moved(motion),
        notches=tuple(replace(n, along=piece.edge(n.edge).length - n.along) for n in piece.notches),
        lines=tuple(replace(line, path=line.path.moved(motion)) for line in piece.lines),
    )


def _with_stand(plan: Plan, facing: Piece, stand: Piece) -> Piece:
    """Facing, with the place of the stand."""
    middle = stand.edge("waist").length / 2
    fold = stand.edge("fold").path
    fold = fold if _left_over_right(plan) else fold.reversed()  # now upwards
    place = fold.between(fold.length - fly.sizes(plan).stop, fold.length)
    along = SET_BACK + middle if _left_over_right(plan) else facing.edge("waist").length - SET_BACK - middle
    return replace(
        facing,
        notches=(*facing.notches, Notch("waist", along, "buttonhole stand")),
        lines=(*facing.lines, InnerLine("placement", place, "fold of the buttonhole stand")),
    )


def _with_buttons(plan: Plan, shield: Piece) -> Piece:
    """Shield, with the buttons on the half that lies on top when centre front meets centre front."""
    b = buttons(plan)
    edges = tuple(replace(edge, name="fly" if edge.name == "zip" else edge.name) for edge in shield.edges)
    # Drawn right side up, the half beside the front is on the right; under a left front the other half lies on top.
    across = 2 * fly.sizes(plan).shield - b.across if _left_over_right(plan) else b.across
    crosses = [line for k, down in enumerate(b.down) for line in _cross(plan, across, down, b, said=not k)]
    return replace(
        shield,
        edges=edges,
        notches=tuple(replace(n, edge="fly" if n.edge == "zip" else n.edge) for n in shield.notches),
        lines=(*shield.lines, *crosses),
    )


def _cross(plan: Plan, across: float, down: float, b: Buttons, *, said: bool) -> list[InnerLine]:
    r = b.diameter / 2
    level = Path.line(_at(plan, across + r, down), _at(plan, across - r, down))
    upright = Path.line(_at(plan, across, down - r), _at(plan, across, down + r))
    return [InnerLine("button", level, f"button {fmt(b.diameter, 1)}" if said else ""), InnerLine("button", upright)]


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Facing and shield on the front edge, stand on the facing, the shield on itself, and the centre front below."""
    s, chosen = fly.sizes(plan), _choice(plan)
    end = s.stop + chosen.shield_beyond
    other_lap = not _left_over_right(plan)
    runs = [
        ("fly facing", Run("front", "fly"), Run("fly_facing", "fly", back=other_lap)),
        ("shield on front", Run("front", "fly"), Run("fly_shield", "fly", end - s.stop)),
        *shield_runs(pieces, "fly"),
        *_stand_runs(pieces, other_lap=other_lap),
        ("front crotch", Run("front", "crotch"), Run("front", "crotch")),
    ]
    return [Seam.of(name, one, two, pieces) for name, one, two in runs]


def _stand_runs(pieces: Mapping[str, Piece], *, other_lap: bool) -> list[tuple[str, Run, Run]]:
    """Stand on facing, along the waist and down the outer edge; both are walked back where they are mirrored."""
    facing, along = pieces["fly_facing"], pieces["fly_buttonholes"].edge("outer").length
    if other_lap:
        waist = Run("fly_facing", "waist", 0.0, facing.edge("waist").length - SET_BACK, back=True)
        outer = Run("fly_facing", "outer", facing.edge("outer").length - along, back=True)
    else:
        waist, outer = Run("fly_facing", "waist", SET_BACK), Run("fly_facing", "outer", 0.0, along)
    return [
        ("stand on facing, waist", waist, Run("fly_buttonholes", "waist", back=other_lap)),
        ("stand on facing, outer edge", outer, Run("fly_buttonholes", "outer", back=other_lap)),
    ]


def notes(plan: Plan) -> list[str]:
    """Buttons to buy, and what to mind."""
    b = buttons(plan)
    with_band = _band_button(plan) is not None
    size = f"{fmt(b.diameter, 1)} mm across and at most {fmt(b.thickness, 1)} thick"
    return [
        f"fly buttons: {len(b.down)} of {size}" + (", besides the button of the band" if with_band else ""),
        f"fly buttonholes: {fmt(b.hole[1] - b.hole[0], 1)} mm; try one on a scrap of the same layers first",
        "fly buttons: sew through both layers of the shield and pull hard at each: small children choke on loose ones",
    ]
