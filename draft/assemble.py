"""All pieces, seams and joints of one garment, from its shell."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from draft.body import Body
from draft.piece import Piece
from draft.pieces.children import child_notes
from draft.pieces.interfacing import interfacings
from draft.pieces.kinds import back_pocket_of, band_of, closing_of, hem_of, pocket_of, small_part_of
from draft.pieces.legs import back_piece, front_piece, side_places
from draft.pieces.plan import FrontOpening, Plan, WaistEdges
from draft.pieces.yoke import yoked
from draft.seams import Joint, Run, Seam
from draft.shape.shell import Shell
from draft.style import Style


@dataclass(frozen=True, eq=False)
class Garment:
    """What a pattern is made of; ``whole`` holds a back from which a yoke was cut.

    ``half`` are the pieces of the right half where left and right differ; empty: they do not.
    """

    pieces: Mapping[str, Piece]
    seams: tuple[Seam, ...]
    joints: tuple[Joint, ...]
    waist_girth: float
    notes: tuple[str, ...]
    whole: Mapping[str, Piece]
    half: Mapping[str, Piece] = field(default_factory=dict)


def assemble(body: Body, style: Style, shell: Shell, made_for: str) -> Garment:
    """Cut the shell into pieces, and say which edge is sewn to which."""
    plan = Plan(body, style, shell, made_for)
    pocket, closing, hem, band = pocket_of(style), closing_of(style), hem_of(style), band_of(style)
    back_pocket = back_pocket_of(style)
    opening = FrontOpening(shell.front.waist, shell.front.side) if pocket is None else pocket.opening(plan)
    places = side_places(plan, pocket)
    legs = {
        "front": front_piece(plan, opening, closing, hem, pocket),
        "back": back_piece(plan, opening, closing, hem, back_pocket, places),
    }
    waist = WaistEdges(legs, opening.on_waist, opening.ease, closing.underlap(plan), closing.opens())
    made = [*legs.values(), *band.pieces(plan, waist), *closing.pieces(plan)]
    if pocket is not None:
        made += pocket.pieces(plan)
    if back_pocket is not None:
        made += back_pocket.pieces(plan)
    made += hem.pieces(plan)
    for part in style.small_parts:
        made += small_part_of(part).pieces(plan, part)
    if style.interfacing:
        made += interfacings(made)
    pieces = _marked(plan, {piece.name: piece for piece in made})

    seams = [Seam.of("inseam", Run("front", "inseam"), Run("back", "inseam"), pieces, shell.stretch)]
    if pocket is None:
        seams.append(Seam.of("side seam", Run("front", "side"), Run("back", "side"), pieces))
    else:
        seams += pocket.seams(plan, pieces)
    seams.append(Seam.of("seat seam", Run("back", "crotch"), Run("back", "crotch"), pieces))
    seams += closing.seams(plan, pieces)
    seams += band.seams(plan, waist, pieces)
    hem_seams, hem_joints = hem.seams(plan, pieces)
    seams += hem_seams
    if back_pocket is not None:
        seams += back_pocket.seams(plan, pieces)
    for part in style.small_parts:
        told = getattr(small_part_of(part), "seams", None)
        seams += [] if told is None else told(plan, part, pieces)
    joints = [*_joints(pocket=opening.mouth is not None, fly=closing.opens() == "centre front"), *hem_joints]
    notes = [note for kind in (closing, back_pocket, pocket, hem, band) for note in _notes(kind, plan)]
    notes += [note for part in style.small_parts for note in small_part_of(part).notes(plan, part)]
    notes += child_notes(plan)
    whole = {} if style.yoke is None else {"back": pieces["back"]}
    if style.yoke is not None:
        pieces, seams, joints = yoked(plan, style.yoke, pieces, seams, joints)
    return Garment(pieces, tuple(seams), tuple(joints), band.girth(plan, waist), tuple(notes), whole)


def _marked(plan: Plan, pieces: dict[str, Piece]) -> dict[str, Piece]:
    """Pieces with the lines that small parts mark on them: not every kind does."""
    for part in plan.style.small_parts:
        told = getattr(small_part_of(part), "marks", None)
        for name, lines in ({} if told is None else told(plan, part, pieces)).items():
            pieces[name] = replace(pieces[name], lines=(*pieces[name].lines, *lines))
    return pieces


def _notes(kind: object, plan: Plan) -> list[str]:
    """What a kind has to say: not every kind has."""
    told = getattr(kind, "notes", None)
    return [] if told is None else list(told(plan))


def _joints(*, pocket: bool, fly: bool) -> list[Joint]:
    """Corners that must flow when the main seams are sewn."""
    centre_front = ("front", "fly" if fly else "crotch")
    front_at_waist = ("pocket_facing", "waist") if pocket else ("front", "waist")
    return [
        Joint("waist at the side seam", front_at_waist, ("back", "waist")),
        Joint("waist at the centre back", ("back", "crotch"), ("back", "crotch")),
        Joint("waist at the centre front", centre_front, centre_front),
        Joint("crotch seam at the inseam", ("front", "inseam"), ("back", "inseam")),
        Joint("hem at the side seam", ("front", "side"), ("back", "side")),
        Joint("hem at the inseam", ("front", "hem"), ("back", "hem")),
    ]
