"""Lining of shorts and trousers: front and back copied, shorter than the garment; the darts are laid in folds.

Full: 25 mm shorter than the leg; half: to a hand below the fork, to keep front and seat from stretching (common
practice, no source).
"""

from __future__ import annotations

from math import floor

from draft.choices.small_parts import Lining
from draft.edge import Corner, Edge
from draft.errors import DraftError
from draft.geometry.segments import Line
from draft.piece import Cut, Notch, Piece
from draft.pieces.cuff import top_of
from draft.pieces.plan import Plan
from draft.shape.shell import Panel
from draft.style import SmallPart

HEM = 12.0
LEAST_LEFT = 30.0  # of the inseam
GRAIN_FROM, GRAIN_TO = 0.2, 0.75
PARTS = ("front", "back")


def _choice(part: SmallPart) -> Lining:
    assert isinstance(part, Lining)
    return part


def shorter(plan: Plan, part: SmallPart) -> float:
    """How much shorter than the leg the lining is, along its seams."""
    lining = _choice(part)
    inseam = min(plan.shell.front.inseam.length, plan.shell.back.inseam.length)
    least = inseam - LEAST_LEFT
    if lining.length == "half":
        return max(lining.shorter, min(least, inseam - lining.below_fork))
    if lining.shorter > least:
        expected = f"at most {floor(least)} mm on this leg"
        raise DraftError(f"{lining.where}.shorter", lining.shorter, expected, "make the lining longer")
    return lining.shorter


def pieces(plan: Plan, part: SmallPart) -> list[Piece]:
    """Front and back of the lining."""
    less = shorter(plan, part)
    return [_panel(plan, name, getattr(plan.shell, name), less) for name in PARTS]


def _panel(plan: Plan, name: str, panel: Panel, less: float) -> Piece:
    a, hem = plan.style.allowances, top_of(panel, less).reversed()
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


def notes(plan: Plan, part: SmallPart) -> list[str]:
    """How it is sewn in."""
    return ["lining: sew its legs as those of the garment, hang it wrong side to wrong side, baste it at the waist"]
