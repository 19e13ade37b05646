"""Lining of shorts and trousers: front and back copied, shorter than the garment; the darts are laid in folds.

Full: 25 mm shorter than the leg; half: to a hand below the fork, to keep front and seat from stretching (common
practice, no source). Its seams are those of the garment from the hem of the lining up, so it hangs in the garment
without drawing; a waist that is gathered gathers it too.
"""

from __future__ import annotations

from collections.abc import Mapping

from draft.choices.small_parts import Lining
from draft.edge import Corner, Edge
from draft.errors import DraftError
from draft.geometry.segments import Line
from draft.piece import Cut, Notch, Piece
from draft.pieces.cuff import top_of
from draft.pieces.hems.strip import lies_on_leg, panel_of
from draft.pieces.plan import Plan
from draft.seams import Run, Seam
from draft.shape.leg import largest
from draft.shape.shell import Panel
from draft.style import SmallPart
from draft.units import HAIR, at_least, at_most

HEM = 12.0
LEAST_LEFT = 30.0  # of the inseam
CLEAR_OF_FORK = 5.0  # so much higher the bottom line would still lie on the leg
SHORTEST_STRIP = 0.05  # a lining less than this shorter than the leg ends where it does
GRAIN_FROM, GRAIN_TO = 0.2, 0.75
PARTS = ("front", "back")


def _choice(part: SmallPart) -> Lining:
    assert isinstance(part, Lining)
    return part


def shorter(plan: Plan, part: SmallPart) -> float:
    """How much shorter than the leg the lining is, along its seams."""
    lining = _choice(part)
    inseam = min(plan.shell.front.inseam.length, plan.shell.back.inseam.length)
    less = lining.shorter
    if lining.length == "half":
        less = max(less, min(inseam - LEAST_LEFT, inseam - lining.below_fork))
    if _fits(plan, inseam, less):
        return less if less >= SHORTEST_STRIP else 0.0
    most = largest(lambda tried: tried <= 0 or _fits(plan, inseam, tried), less)
    if less > lining.shorter and most >= lining.shorter:
        expected = f"at least {at_least(inseam - most)} mm on this leg"
        raise DraftError(f"{lining.where}.below_fork", lining.below_fork, expected, "let the lining end lower")
    expected = f"at most {at_most(most)} mm on this leg"
    raise DraftError(f"{lining.where}.shorter", lining.shorter, expected, "make the lining longer")


def _fits(plan: Plan, inseam: float, less: float) -> bool:
    """Whether enough of the inseam is left, and the bottom line does not arch over the crotch seam."""
    ends = less + CLEAR_OF_FORK
    return less <= inseam - LEAST_LEFT + HAIR and all(lies_on_leg(panel_of(plan, name), ends) for name in PARTS)


def pieces(plan: Plan, part: SmallPart) -> list[Piece]:
    """Front and back of the lining."""
    less = shorter(plan, part)
    return [_panel(plan, name, getattr(plan.shell, name), less) for name in PARTS]


def _panel(plan: Plan, name: str, panel: Panel, less: float) -> Piece:
    a, hem = plan.style.allowances, top_of(panel, less).reversed() if less else panel.hem
    waist = panel.waist
    turned = Corner("extended")
    edges = (
        Edge("side", (panel.side.between(0, panel.side.length - less),), allowance=a.side, corner=turned),
        Edge("hem", (hem,), allowance=HEM, corner=turned),
        Edge("inseam", (panel.inseam.between(less, panel.inseam.length),), allowance=a.inseam, corner=turned),
        Edge("crotch", (panel.crotch,), allowance=a.crotch, corner=turned),
        Edge("waist", waist.parts, waist.darts, a.waist, turned),
    )
    top = min(waist.parts[0].start.imag, waist.parts[-1].end.imag)
    bottom = hem.point_at(hem.length / 2).imag
    points = [dart.point.imag for dart in waist.darts if not dart.pleat]
    high = min([bottom + GRAIN_TO * (top - bottom), *points])
    middle = plan.shell.crease
    return Piece(
        name=f"lining_{name}",
        title=f"Lining, {name}",
        edges=edges,
        cut=Cut(2, "lining", mirrored=True),
        grainline=Line(middle + 1j * (bottom + GRAIN_FROM * (top - bottom)), middle + 1j * high),
        notches=_dart_notches(edges[-1]),
        made_for=plan.made_for,
        notes=("fold the darts, do not sew them",) if waist.darts else (),
    )


def _dart_notches(waist: Edge) -> tuple[Notch, ...]:
    found, along = [], 0.0
    for index, run in enumerate(waist.parts[:-1]):
        along += run.length
        found.append(Notch("waist", along, f"fold {index + 1}"))
    return tuple(found)


def seams(plan: Plan, part: SmallPart, pieces: Mapping[str, Piece]) -> list[Seam]:
    """The lining's own seams, and its edges on those of the garment, level with it from the waist down."""
    less, front, back = shorter(plan, part), "lining_front", "lining_back"
    shorts_side = pieces["back"].edge("side").length - less
    runs = [
        ("lining, side seam", Run(front, "side"), Run(back, "side"), 0.0),
        ("lining, inseam", Run(front, "inseam"), Run(back, "inseam"), plan.shell.stretch),
        ("lining, seat seam", Run(back, "crotch"), Run(back, "crotch"), 0.0),
        ("lining, back side on the back", Run("back", "side", 0, shorts_side), Run(back, "side"), 0.0),
        ("lining, front inseam on the front", Run("front", "inseam", less), Run(front, "inseam"), 0.0),
        ("lining, back inseam on the back", Run("back", "inseam", less), Run(back, "inseam"), 0.0),
        ("lining on the seat seam", Run("back", "crotch"), Run(back, "crotch"), 0.0),
        ("lining in the back waist", Run("back", "waist"), Run(back, "waist"), 0.0),
        *_on_front(plan, less, pieces),
    ]
    return [Seam.of(name, a, b, pieces, ease) for name, a, b, ease in runs]


def _on_front(plan: Plan, less: float, pieces: Mapping[str, Piece]) -> list[tuple[str, Run, Run, float]]:
    """Front lining on front, fly and pocket facing, which meet where the mouth's notches say."""
    front, lining = pieces["front"], "lining_front"
    crotch = front.edge("crotch").length
    runs = [("lining on the front crotch seam", Run("front", "crotch"), Run(lining, "crotch", 0, crotch), 0.0)]
    if "fly" in [edge.name for edge in front.edges]:
        runs.append(("lining at the closing", Run("front", "fly"), Run(lining, "crotch", crotch), 0.0))
    down, seen = _mouth(pieces)
    ease = float(getattr(plan.style.pocket, "mouth_ease", 0.0)) if seen else 0.0
    side, waist = front.edge("side").length - less, pieces[lining].edge("waist").length
    runs.append(("lining, front side on the front", Run("front", "side", 0, side), Run(lining, "side", down), 0.0))
    runs.append(("lining in the front waist", Run("front", "waist"), Run(lining, "waist", 0, waist - seen), ease))
    if seen:
        facing = pieces["pocket_facing"].edge("waist").length
        at_side, at_waist = Run("pocket_facing", "side", 0, down), Run("pocket_facing", "waist", facing - seen)
        runs.append(("lining, front side on the pocket", at_side, Run(lining, "side", 0, down), 0.0))
        runs.append(("lining in the waist at the pocket", at_waist, Run(lining, "waist", waist - seen), 0.0))
    return runs


def _mouth(pieces: Mapping[str, Piece]) -> tuple[float, float]:
    """How far down the side seam a pocket mouth ends, and how far from the side it begins at the waist; else 0, 0."""
    facing = pieces.get("pocket_facing")
    if facing is None:
        return 0.0, 0.0
    places = {notch.edge: notch.along for notch in facing.notches}
    return places["side"], facing.edge("waist").length - places["waist"]


def notes(plan: Plan, part: SmallPart) -> list[str]:
    """How it is sewn in."""
    told = ["lining: sew its legs as those of the garment, hang it wrong side to wrong side, baste it at the waist"]
    if plan.shell.front.waist.darts or plan.shell.back.waist.darts:
        told.append(
            "lining: lay its darts and pleats in folds the other way than those of the garment, so it lies flat"
        )
    return told
