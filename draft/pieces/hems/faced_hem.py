"""Faced hem: a strip of the leg, copied, sewn to its bottom edge and turned inside.

Sizes: 40 to 60 deep and allowances of 6 to 10 are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping

from draft.choices.hems import FacedHem
from draft.edge import Corner, Edge
from draft.geometry.meet import meet_line
from draft.geometry.segments import Line
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces.cuff import strip_seams, top_of
from draft.pieces.hems.strip import PARTS, panel_of, room_for
from draft.pieces.plan import Plan
from draft.seams import Joint, Run, Seam


def _choice(plan: Plan) -> FacedHem:
    hem = plan.style.hem
    assert isinstance(hem, FacedHem)
    room_for(plan, hem.depth)
    return hem


def allowance(plan: Plan) -> float:
    """Allowance of the seam with the facing, as for a cuff."""
    return plan.style.allowances.cuff


def corner() -> Corner:
    """Side seam and inseam are sewn and pressed open before the facing is joined."""
    return Corner("mirrored")


def above(plan: Plan) -> float:
    """Depth of the facing."""
    return _choice(plan).depth


def leg_lines(plan: Plan, name: str) -> list[InnerLine]:
    """Where the upper edge of the facing comes to lie."""
    return [InnerLine("guide", top_of(panel_of(plan, name), _choice(plan).depth), "top of the facing")]


def leg_notches(plan: Plan, name: str) -> list[Notch]:
    """Middle of the bottom edge, single in front, double behind."""
    return [Notch("hem", panel_of(plan, name).hem.length / 2, f"{name} hem", 1 if name == "front" else 2)]


def pieces(plan: Plan) -> list[Piece]:
    """Facing for front and back."""
    return [_facing(plan, part) for part in PARTS]


def _facing(plan: Plan, part: str) -> Piece:
    hem, panel, a = _choice(plan), panel_of(plan, part), plan.style.allowances.cuff
    inseam, side = strip_seams(panel, hem.depth, 0.0)
    flush = Corner("mirrored")
    edges = (
        Edge("side", (side,), allowance=a, corner=flush),
        Edge("hem", (panel.hem,), allowance=a, corner=Corner("mirrored", "next")),
        Edge("inseam", (inseam,), allowance=a, corner=flush),
        Edge("top", (top_of(panel, hem.depth),), allowance=hem.turn, corner=Corner("mirrored", "next")),
    )
    crease = plan.shell.crease + 0j
    foot = panel.hem.point_at(meet_line(panel.hem, crease, 1j)[0])
    return Piece(
        name=f"hem_facing_{part}",
        title=f"Hem facing, {part}",
        edges=edges,
        cut=Cut(2, "self", mirrored=True),
        grainline=Line(foot + 0.15j * hem.depth, foot + 0.85j * hem.depth),
        notches=(Notch("hem", panel.hem.length / 2, f"{part} hem", 1 if part == "front" else 2),),
        made_for=plan.made_for,
        notes=() if hem.turn else ("neaten the upper edge",),
    )


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> tuple[list[Seam], list[Joint]]:
    """Facing to leg, and the facing closed to a ring."""
    front, back = "hem_facing_front", "hem_facing_back"
    found = [
        Seam.of(f"hem facing, {edge}", Run(front, edge), Run(back, edge), pieces) for edge in ("side", "inseam")
    ] + [
        Seam.of(f"hem facing to leg, {part}", Run(part, "hem"), Run(f"hem_facing_{part}", "hem"), pieces)
        for part in PARTS
    ]
    joints = [
        Joint("hem facing, top at the side", (front, "top"), (back, "top")),
        Joint("hem facing, top at the inseam", (front, "inseam"), (back, "inseam")),
        Joint("hem facing, bottom at the side", (front, "side"), (back, "side")),
        Joint("hem facing, bottom at the inseam", (front, "hem"), (back, "hem")),
    ]
    return found, joints


def notes(plan: Plan) -> list[str]:
    """How the facing stays inside."""
    return [
        "hem facing: press both allowances onto the facing and stitch them to it 2 from the seam, then turn it inside"
    ]
