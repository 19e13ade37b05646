"""Separate turned-up cuff: outer and lining, front and back, drawn as worn.

The cuff is the strip of the leg above its bottom edge, copied: turned up, it lies where it was copied from. Its
joining edge is the leg's bottom edge itself, and its height runs along the leg's own seams.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache, partial

from draft.edge import Corner, Edge
from draft.errors import DraftError
from draft.geometry.construct import smooth
from draft.geometry.meet import meet_line
from draft.geometry.path import Path
from draft.geometry.polygon import inside
from draft.geometry.segments import Cubic, Line
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces.plan import Plan
from draft.seams import Joint, Run, Seam
from draft.shape.leg import largest
from draft.shape.shell import Panel
from draft.style import TurnedCuff
from draft.units import HAIR, at_most

PARTS = ("front", "back")
LARGEST_SHARE = 0.6  # of the inseam; above it the leg is shaped for the fork


@lru_cache(maxsize=4)
def _choice(plan: Plan) -> TurnedCuff:
    hem = plan.style.hem
    assert isinstance(hem, TurnedCuff)
    panels = (plan.shell.front, plan.shell.back)
    most = LARGEST_SHARE * plan.shell.back.inseam.length
    if hem.depth > most + HAIR or not all(_on_leg(panel, hem.depth) for panel in panels):
        most = min(largest(partial(_on_leg, panel), most) for panel in panels)
        expected = f"at most {at_most(most, 1)} mm on this leg"
        raise DraftError("style.hem.depth", hem.depth, expected, "make the cuff shallower or the leg longer")
    return hem


def _on_leg(panel: Panel, depth: float) -> bool:
    """Whether the top of the cuff lies on the leg: on a short and wide one it arches over the crotch seam."""
    if depth <= 0:
        return True
    return bool(inside(top_of(panel, depth).points(0.5)[1:-1], panel.outline.points(0.5)).all())


def allowance(plan: Plan) -> float:
    """The leg needs no hem, only the allowance of the seam with the cuff."""
    return plan.style.allowances.cuff


def corner() -> Corner:
    """Side seam and inseam are sewn and pressed open before the cuff is joined."""
    return Corner("mirrored")


def above(plan: Plan) -> float:
    """Depth of the cuff."""
    return _choice(plan).depth


def leg_lines(plan: Plan, name: str) -> list[InnerLine]:
    """Where the top of the cuff comes to lie on the leg."""
    panel = plan.shell.front if name == "front" else plan.shell.back
    return [InnerLine("guide", top_of(panel, _choice(plan).depth), "top of the turned-up cuff")]


def top_of(panel: Panel, depth: float, clearance: float = 0.0) -> Path:
    """Line across the leg at the height `depth` along both seams, from inseam to side, square to them."""
    inseam, side = strip_seams(panel, depth, clearance)
    return Path((smooth(inseam.end, 1j * inseam.end_dir, side.start, -1j * side.start_dir),))


def strip_seams(panel: Panel, depth: float, clearance: float) -> tuple[Path, Path]:
    """Inseam (upwards) and side seam (downwards) of the strip; `clearance` fades to nothing at the bottom edge.

    It fades with the square of the height: the seams keep their direction at the bottom edge, so the corner there
    stays what it is on the leg.
    """
    inseam = panel.inseam.between(0, depth)
    side = panel.side.between(panel.side.length - depth, panel.side.length)
    if not clearance:
        return inseam, side
    up = smooth(inseam.start, inseam.start_dir, inseam.end, inseam.end_dir)
    down = smooth(side.start, side.start_dir, side.end, side.end_dir)
    out, away = -1j * up.end_dir * clearance, -1j * down.start_dir * clearance
    return (
        Path((Cubic(up.p0, up.p1, up.p2 + out / 3, up.p3 + out),)),
        Path((Cubic(down.p0 + away, down.p1 + away / 3, down.p2, down.p3),)),
    )


def pieces(plan: Plan) -> list[Piece]:
    """Outer and lining for front and back."""
    cuff = _choice(plan)
    found = []
    for name in PARTS:
        found.append(_strip(plan, name, f"cuff_{name}", f"Cuff, {name}", cuff.depth, cuff.clearance, "self"))
        title = f"Cuff lining, {name}"
        found.append(_strip(plan, name, f"cuff_lining_{name}", title, cuff.depth - cuff.roll, 0.0, "lining"))
    return found


def _strip(plan: Plan, part: str, name: str, title: str, depth: float, clearance: float, cloth: str) -> Piece:
    panel = plan.shell.front if part == "front" else plan.shell.back
    inseam, side = strip_seams(panel, depth, clearance)
    top = Path((smooth(inseam.end, 1j * inseam.end_dir, side.start, -1j * side.start_dir),))
    a = plan.style.allowances.cuff
    flush = Corner("mirrored")
    edges = (
        Edge("side", (side,), allowance=a, corner=flush),
        Edge("hem", (panel.hem,), allowance=a, corner=Corner("mirrored", "next")),
        Edge("inseam", (inseam,), allowance=a, corner=flush),
        Edge("top", (top,), allowance=a, corner=Corner("mirrored", "next")),
    )
    crease = plan.shell.crease + 0j
    foot = panel.hem.point_at(meet_line(panel.hem, crease, 1j)[0]).imag
    low, high = foot + 0.15 * depth, foot + 0.85 * depth
    marks = 1 if part == "front" else 2
    return Piece(
        name=name,
        title=title,
        edges=edges,
        cut=Cut(2, "self" if cloth == "self" else "lining", mirrored=True),
        grainline=Line(crease + 1j * low, crease + 1j * high),
        notches=(Notch("hem", panel.hem.length / 2, f"{part} hem", marks),),
        made_for=plan.made_for,
    )


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> tuple[list[Seam], list[Joint]]:
    """Tubes, linings and the seam with the leg."""
    cuff = _choice(plan)
    found, joints = [], []
    for kind, title in (("cuff", "cuff"), ("cuff_lining", "cuff lining")):
        for edge in ("side", "inseam"):
            one, two = Run(f"{kind}_front", edge), Run(f"{kind}_back", edge)
            found.append(Seam.of(f"{title}, {edge}", one, two, pieces))
        joints += [
            Joint(f"{title}, top at the side", (f"{kind}_front", "top"), (f"{kind}_back", "top")),
            Joint(f"{title}, top at the inseam", (f"{kind}_front", "inseam"), (f"{kind}_back", "inseam")),
            Joint(f"{title}, bottom at the side", (f"{kind}_front", "side"), (f"{kind}_back", "side")),
            Joint(f"{title}, bottom at the inseam", (f"{kind}_front", "hem"), (f"{kind}_back", "hem")),
        ]
    for part in PARTS:
        panel = plan.shell.front if part == "front" else plan.shell.back
        # Planned: the outer cuff is wider by its clearance, and by what the leg widens over the roll.
        outer = top_of(panel, cuff.depth, cuff.clearance).length
        wider = outer - top_of(panel, cuff.depth - cuff.roll).length
        found += [
            Seam.of(f"cuff to leg, {part}", Run(part, "hem"), Run(f"cuff_{part}", "hem"), pieces),
            Seam.of(f"cuff lining to leg, {part}", Run(part, "hem"), Run(f"cuff_lining_{part}", "hem"), pieces),
            Seam.of(f"cuff top, {part}", Run(f"cuff_{part}", "top"), Run(f"cuff_lining_{part}", "top"), pieces, wider),
        ]
    return found, joints
