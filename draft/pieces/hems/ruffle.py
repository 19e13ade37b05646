"""Ruffled hem: straight strips, longer than the leg's bottom edge, gathered to it.

The strip of each part is its hem times the fullness, so gathers fall evenly and its seams meet the leg's. A fullness of
1.5 to 2.5 is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping

from draft.choices.hems import RuffledHem
from draft.edge import Corner, Edge
from draft.geometry.path import Path
from draft.geometry.segments import Line
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces.hems.strip import PARTS, clear_of_floor, panel_of
from draft.pieces.plan import Plan
from draft.seams import Joint, Run, Seam
from draft.units import fmt

TRIPS = 30.0  # above the floor: a free edge below this gets under a heel (common practice, no source)


def _choice(plan: Plan) -> RuffledHem:
    """Choice, refused when the ruffle would be trodden on."""
    hem = plan.style.hem
    assert isinstance(hem, RuffledHem)
    clear_of_floor(plan, hem.depth)
    return hem


def allowance(plan: Plan) -> float:
    """Allowance of the seam with the ruffle, as for a cuff."""
    return plan.style.allowances.cuff


def corner() -> Corner:
    """Side seam and inseam are sewn before the ruffle is joined."""
    return Corner("mirrored")


def above(plan: Plan) -> float:
    """Nothing: the ruffle hangs below the leg."""
    _choice(plan)
    return 0.0


def leg_lines(plan: Plan, name: str) -> list[InnerLine]:
    """No lines on the leg."""
    return []


def leg_notches(plan: Plan, name: str) -> list[Notch]:
    """Middle of the bottom edge, single in front, double behind."""
    return [Notch("hem", panel_of(plan, name).hem.length / 2, f"{name} hem", 1 if name == "front" else 2)]


def pieces(plan: Plan) -> list[Piece]:
    """Strip for front and back."""
    return [_strip(plan, part) for part in PARTS]


def _strip(plan: Plan, part: str) -> Piece:
    """Rectangle below y = 0, where it is gathered; the side seam on its left, as on the leg."""
    hem, a = _choice(plan), plan.style.allowances.cuff
    long = panel_of(plan, part).hem.length * hem.fullness / 100
    low, corner = -1j * hem.depth, Corner("extended")
    edges = (
        Edge("side", (Path.line(0j, low),), allowance=a, corner=corner),
        Edge("free", (Path.line(low, long + low),), allowance=2 * hem.turn, corner=corner),
        Edge("inseam", (Path.line(long + low, long + 0j),), allowance=a, corner=corner),
        Edge("top", (Path.line(long + 0j, 0j),), allowance=a, corner=corner),
    )
    under = low - 1j * hem.turn
    return Piece(
        name=f"ruffle_{part}",
        title=f"Ruffle, {part}",
        edges=edges,
        cut=Cut(2, "self", mirrored=True),
        grainline=Line(long / 2 + 0.85 * low, long / 2 + 0.15 * low),
        notches=(Notch("top", long / 2, f"{part} hem", 1 if part == "front" else 2),),
        lines=(
            InnerLine("fold", Path.line(low, long + low), "hem fold"),
            InnerLine("fold", Path.line(under, long + under), "fold under"),
        ),
        made_for=plan.made_for,
        notes=(f"gather the top to {fmt(panel_of(plan, part).hem.length, 0)}",),
    )


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> tuple[list[Seam], list[Joint]]:
    """Ruffle to leg, gathered, and the ruffle closed to a ring."""
    more = _choice(plan).fullness / 100 - 1
    found = [
        Seam.of(f"ruffle, {edge}", Run("ruffle_front", edge), Run("ruffle_back", edge), pieces)
        for edge in ("side", "inseam")
    ]
    found += [
        Seam.of(
            f"ruffle to leg, {part}",
            Run(f"ruffle_{part}", "top", back=True),
            Run(part, "hem"),
            pieces,
            panel_of(plan, part).hem.length * more,
        )
        for part in PARTS
    ]
    corners = {"top": "top at the side", "free": "bottom at the inseam"}
    joints = [Joint(f"ruffle, {at}", ("ruffle_front", edge), ("ruffle_back", edge)) for edge, at in corners.items()]
    return found, joints


def notes(plan: Plan) -> list[str]:
    """How far it hangs, how it is gathered, and what to mind."""
    hem = _choice(plan)
    told = [
        f"ruffle: hangs {fmt(hem.depth, 0)} below the inside leg; gather between two rows of long stitches, "
        "one on either side of the seam line"
    ]
    left = plan.body.inside_leg - plan.shell.front.inseam.length - hem.depth
    if left < TRIPS:
        told.append(f"caution: the ruffle ends {fmt(left, 0)} above the floor; shorten it where one could trip over it")
    return told
