"""Front pocket with a straight slanted mouth: the curved pocket with another mouth.

Bags, facing and seams are those of the curved pocket of the same sizes; only the mouth is drawn straight between the
same two ends. With the facing grown on, the back bag is cut of the garment's cloth and takes the facing's place.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache

from draft.choices.front_pockets import SlantedPocket
from draft.edge import Edge
from draft.geometry.meet import along_at_height
from draft.geometry.path import Path
from draft.geometry.points import angle_deg
from draft.piece import Cut, InnerLine, Notch, Piece
from draft.pieces import curved_pocket
from draft.pieces.front_pockets.room import fitted
from draft.pieces.hem_level import hem_above
from draft.pieces.mouth import hand_notes, stay_piece
from draft.pieces.plan import FrontOpening, Plan
from draft.seams import Run, Seam
from draft.shape.leg import largest
from draft.style import CurvedPocket

USUAL_WIDTH, WIDTH_SHARE = 75.0, 0.4  # of the front waist; 60 and 100 were read for a child
USUAL_DEPTH, DEPTH_SHARE = 160.0, 0.8  # of the way from waist seam to hip
LEAST_BELOW = 60.0  # left for the bag below the mouth where the leg is short
SMALLEST = 25.0
SHARPEST_DEG = 24.0  # at either end; below it the mouth's seam runs on for over 2.5 times the allowance (no source)
NARROWER = "make the mouth narrower or end it lower"


def _choice(plan: Plan) -> SlantedPocket:
    pocket = plan.style.pocket
    assert isinstance(pocket, SlantedPocket)
    return pocket


@lru_cache(maxsize=4)
def _curved(plan: Plan) -> Plan:
    """Plan of the same garment with a curved pocket whose mouth has the same ends."""
    pocket = _choice(plan)
    width, depth = _ends(plan)
    same = CurvedPocket(
        width=width,
        depth=depth,
        bag_depth=pocket.bag_depth,
        bag_beyond=pocket.bag_beyond,
        facing_depth=pocket.facing_depth,
        mouth_ease=pocket.mouth_ease,
    )
    return replace(plan, style=replace(plan.style, pocket=same))


def _ends(plan: Plan) -> tuple[float, float]:
    """Width and depth of the mouth on this front."""
    pocket, panel = _choice(plan), plan.shell.front
    to_hip = along_at_height(panel.side, plan.shell.levels["hip"])
    last = panel.waist.parts[-1].length
    room = last - (curved_pocket.CLEAR_OF_DART if panel.waist.darts else curved_pocket._fly_room(plan) + 5.0)
    usual = min(USUAL_WIDTH, WIDTH_SHARE * panel.waist.length, room)
    width = usual if pocket.width is None else fitted(pocket, "width", pocket.width, SMALLEST, room, NARROWER)

    above_hip = to_hip - curved_pocket.CLEAR_OF_HIP
    deepest = largest(lambda d: _angles(plan, width, d)[1] >= SHARPEST_DEG, above_hip)
    down = panel.side.length - curved_pocket.ABOVE_HEM - hem_above(plan) - LEAST_BELOW
    usual = min(USUAL_DEPTH, DEPTH_SHARE * to_hip, down, deepest)
    asked = max(usual, SMALLEST) if pocket.depth is None else pocket.depth
    depth = fitted(pocket, "depth", asked, SMALLEST, deepest, "end the mouth higher or make it wider")

    widest = largest(lambda w: _angles(plan, w, depth)[0] >= SHARPEST_DEG, room)
    asked = min(width, widest) if pocket.width is None else width
    return fitted(pocket, "width", asked, SMALLEST, widest, NARROWER), depth


def _angles(plan: Plan, width: float, depth: float) -> tuple[float, float]:
    """Angles between the mouth and what is cut away of the waist, and between it and the side seam below, degrees."""
    panel = plan.shell.front
    last = panel.waist.parts[-1]
    along = min(last.length - width + _choice(plan).mouth_ease, last.length)
    mouth = panel.side.point_at(depth) - last.point_at(along)
    if not mouth:
        return 90.0, 90.0
    return angle_deg(last.direction_at(along), mouth), angle_deg(mouth, panel.side.direction_at(depth))


def _straight(path: Path) -> Path:
    return Path.line(path.start, path.end)


def opening(plan: Plan) -> FrontOpening:
    """Front cut away along the mouth.

    Raises
    ------
    DraftError
        When the mouth runs past the hip line, into a dart or the fly, or too nearly along waist or side seam, or the
        bag past the hem; with the largest that works.
    """
    curved = curved_pocket.opening(_curved(plan))
    assert curved.mouth is not None
    return replace(curved, mouth=_straight(curved.mouth))


def pieces(plan: Plan) -> list[Piece]:
    """Front bag, back bag and facing, or front bag and facing with the back bag in one; and the stay of the mouth."""
    curved = _curved(plan)
    bag_front, bag_back, facing = curved_pocket.pieces(curved)
    mouth = opening(plan).mouth
    assert mouth is not None
    edge_of_front = InnerLine("placement", _straight(curved_pocket.lines(curved).mouth), "edge of the front")
    found = [_with_mouth(bag_front, mouth)]
    if _choice(plan).grown_on:
        found.append(_in_one(bag_back, edge_of_front))
    else:
        found += [bag_back, replace(facing, lines=(edge_of_front,))]
    stay = _choice(plan).stay
    return found if stay is None else [*found, stay_piece(plan, mouth, stay)]


def _with_mouth(bag: Piece, mouth: Path) -> Piece:
    """Front bag with its mouth drawn straight, and the notch in the middle of it."""
    edges = tuple(_swapped(edge, mouth) for edge in bag.edges)
    middle = Notch("mouth", mouth.length / 2, "middle of the mouth")
    notches = tuple(middle if notch.edge == "mouth" else notch for notch in bag.notches)
    return curved_pocket._with_grain(replace(bag, edges=edges, notches=notches))


def _swapped(edge: Edge, mouth: Path) -> Edge:
    return replace(edge, parts=(mouth,)) if edge.name == "mouth" else edge


def _in_one(bag: Piece, edge_of_front: InnerLine) -> Piece:
    """Back bag that is the facing too."""
    return replace(
        bag,
        name="pocket_facing",
        title="Pocket facing and back bag in one",
        cut=Cut(2, "self", mirrored=True),
        lines=(edge_of_front,),
    )


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> list[Seam]:
    """Mouth, bag contour, the layers that are basted as one at waist and side, and the stay."""
    curved, pocket = _curved(plan), _choice(plan)
    if pocket.grown_on:
        both = {**pieces, "pocket_bag_back": pieces["pocket_facing"]}
        apart = curved_pocket.seams(curved, both)
        found = [replace(s, a=_renamed(s.a), b=_renamed(s.b)) for s in apart if not s.name.startswith("facing on bag")]
    else:
        found = curved_pocket.seams(curved, pieces)
    if pocket.stay is not None:
        found.append(Seam.of("stay on the mouth", Run("front", "mouth"), Run("pocket_stay", "mouth"), pieces))
    return found


def _renamed(run: Run) -> Run:
    return replace(run, piece="pocket_facing") if run.piece == "pocket_bag_back" else run


def notes(plan: Plan) -> list[str]:
    """Room for the hand, and how the mouth is kept from stretching."""
    pocket, mouth = _choice(plan), opening(plan).mouth
    assert mouth is not None
    told = hand_notes(mouth.length)
    held = "fuse the stay" if pocket.stay is not None else f"sew a straight tape of {mouth.length:.0f} mm"
    told.append(f"slanted mouth lies on the bias and stretches: {held} to the front before the bag is joined")
    if pocket.grown_on:
        told.append("facing and back bag in one need light cloth: a thick one shows as a ridge on the front")
    return told
