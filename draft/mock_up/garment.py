"""Mock-up of a garment: the pieces worth sewing for a fitting, cut from the shell of the garment itself.

Nothing is drafted again: the shell, and with it every finished size, is the garment's own. What changes is what is
made of it: fronts that are whole, no facings, bags, lining, interfacing or small parts, a plain hem, and wide
allowances where a note may have to let out. Common practice; the widths have no source.

Glossary
--------
outlet   a wide allowance, kept to be let out
mouth    where the pocket will open: a line on the whole front
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, fields, replace

from draft.assemble import Garment, assemble
from draft.body import Body
from draft.choices.closings import ButtonFly, GrownOnFly
from draft.edge import Corner, Edge
from draft.errors import DraftError
from draft.geometry.meet import meet_line
from draft.geometry.path import Path
from draft.piece import InnerLine, Piece
from draft.pieces.children import child_notes
from draft.pieces.kinds import back_pocket_of, pocket_of
from draft.pieces.legs import side_places
from draft.pieces.plain_hem import LARGEST_SHARE
from draft.pieces.plan import Plan
from draft.seams import Joint, Run, Seam
from draft.shape.shell import Shell
from draft.style import Allowances, Closing, FlyFront, PlainHem, Style
from draft.units import to_mm

FLY_OUTLET = 25.0  # both fronts run on past the centre front, to be pinned closed
LIMITS = {"side": (4, 40), "inseam": (4, 40), "waist": (4, 25), "seat": (4, 50), "hem": (10, 80)}
"""Allowance -> smallest and largest, mm; as of any garment, but for the seat."""
KNEE_ABOVE_HEM = 40.0  # a knee line nearer to the hem than this is left out, as its notches are
LEGS = ("front", "back")
ONLY_FLY = "front only"  # marks of a made-up fly, on one front
MARK = "mock-up"


@dataclass(frozen=True)
class Outlets:
    """Allowances of a mock-up, mm.

    side, inseam, waist, hem : of these seams; on a leg too short for it the hem is less.
    seat : of the straight part of the seat seam, from the waist down; the curve keeps the garment's own allowance, for
        a wide one binds there.
    """

    side: float = 25.0
    inseam: float = 20.0
    waist: float = 25.0
    seat: float = 30.0
    hem: float = 50.0

    def __post_init__(self) -> None:
        for entry, (least, most) in LIMITS.items():
            value = to_mm(getattr(self, entry), f"mock_up.{entry}")
            if not least <= value <= most:
                expected = f"{least:g} to {most:g} mm"
                raise DraftError(f"mock_up.{entry}", value, expected, "choose a width inside these limits")
            object.__setattr__(self, entry, value)


ROOM_SHARES = (1.0, 0.7, 0.4, 0.0)  # of what the outlets add, tried one after the other


def mocked(body: Body, style: Style, shell: Shell, made_for: str, outlets: Outlets) -> tuple[Style, Garment]:
    """Style and garment of the mock-up of a garment.

    Parameters
    ----------
    body, style, shell
        Those of the garment.
    made_for : str
        Its name, as its labels say it.
    outlets : Outlets
        Allowances, mm.

    Raises
    ------
    DraftError
        When an allowance lies outside its limits. Where it has no room in a curve, the mock-up gets less of it.
    """
    for share in ROOM_SHARES[:-1]:
        try:
            return _mocked(body, style, shell, made_for, _narrowed(outlets, style, share))
        except DraftError as error:
            if not error.field.startswith("style.allowances"):
                raise
    return _mocked(body, style, shell, made_for, _narrowed(outlets, style, ROOM_SHARES[-1]))


def _narrowed(outlets: Outlets, style: Style, share: float) -> Outlets:
    """Outlets that have only a share of what they add to the garment's own allowances, where a curve leaves no more."""
    own = style.allowances

    def part(asked: float, usual: float) -> float:
        return usual + share * (asked - usual) if share < 1 and asked > usual else asked

    return replace(
        outlets,
        side=part(outlets.side, own.side),
        inseam=part(outlets.inseam, own.inseam),
        waist=part(outlets.waist, own.waist),
    )


def _mocked(body: Body, style: Style, shell: Shell, made_for: str, outlets: Outlets) -> tuple[Style, Garment]:
    """Style and garment of the mock-up with these outlets."""
    plain = _plain(style, shell, outlets)
    made = assemble(body, plain, shell, made_for)
    plan = Plan(body, style, shell, made_for)
    kept = {name: piece for name, piece in made.pieces.items() if _worth_sewing(piece)}
    pieces = {name: _labelled(_piece(piece, plan, outlets)) for name, piece in kept.items()}
    pieces, seams, joints = _with_outlet(
        pieces,
        [seam for seam in made.seams if seam.a.piece in kept and seam.b.piece in kept],
        [joint for joint in made.joints if joint.a[0] in kept and joint.b[0] in kept],
        shell,
        outlets,
    )
    if "fly" in [edge.name for edge in pieces["front"].edges]:
        seams.append(Seam.of("centre front, pinned closed", Run("front", "fly"), Run("front", "fly"), pieces))
    for piece in pieces.values():
        piece.cut_line  # noqa: B018 - drawn now, so that an allowance without room is told now
    children = [note for note in child_notes(plan) if note not in made.notes]
    notes = (*_notes(plan, outlets), *made.notes, *children)
    return plain, Garment(pieces, tuple(seams), tuple(joints), made.waist_girth, notes, made.whole)


def _plain(style: Style, shell: Shell, outlets: Outlets) -> Style:
    """Style without what a fitting does not need; it has the same shell."""
    usual = style.allowances
    wide = Allowances(
        side=outlets.side,
        inseam=outlets.inseam,
        waist=outlets.waist,
        fly=FLY_OUTLET,
        crotch=usual.crotch,
        band=usual.band,
        yoke=usual.yoke,
    )
    return replace(
        style,
        closing=_closing(style.closing),
        pocket=None,
        back_pocket=None,
        small_parts=(),
        hem=PlainHem(depth=min(outlets.hem, _most_hem(shell)), turn=0.0),
        allowances=wide,
        interfacing=False,
    )


def _most_hem(shell: Shell) -> float:
    """Deepest hem that a plain one may have on this leg."""
    return LARGEST_SHARE * shell.back.inseam.length // 1.0


def _closing(closing: Closing) -> Closing:
    """Plain zip fly in place of one with buttons or a facing grown on; other closings stay."""
    if not isinstance(closing, ButtonFly | GrownOnFly):
        return closing
    return FlyFront(**{entry.name: getattr(closing, entry.name) for entry in fields(FlyFront)})


def _worth_sewing(piece: Piece) -> bool:
    """Legs, yoke, and the outer layer of the band."""
    if piece.name in (*LEGS, "back_yoke"):
        return True
    return piece.name.startswith("waistband") and piece.cut.cloth == "self" and not piece.name.endswith("_inner")


def _labelled(piece: Piece) -> Piece:
    return replace(piece, title=f"{piece.title}, {MARK}")


def _piece(piece: Piece, plan: Plan, outlets: Outlets) -> Piece:
    """Leg with its level lines, its mouth and its hem left to hang; other pieces as they are."""
    if piece.name not in LEGS:
        return piece
    lines = [line for line in piece.lines if not line.note.endswith(ONLY_FLY) and line.note != "press the crease"]
    lines += [*_levels(piece, plan.shell), *(_mouth(plan) if piece.name == "front" else _back_mouth(plan))]
    edges = tuple(_let_down(edge, outlets) for edge in piece.edges)
    return replace(piece, lines=tuple(lines), edges=edges)


def _let_down(edge: Edge, outlets: Outlets) -> Edge:
    """Hem whose seams run straight on, so that the leg can be let down."""
    if edge.name in ("side", "hem"):
        edge = replace(edge, corner=Corner("extended"))
    return edge


def _levels(piece: Piece, shell: Shell) -> Iterator[InnerLine]:
    """Hip, crotch and knee line from seam to seam, and the crease from the hip line to the hem."""
    levels, line = shell.levels, piece.sew_line
    for name in ("hip", "crotch", "knee"):
        if levels[name] < levels["hem"] + KNEE_ABOVE_HEM:
            continue
        across = sorted(line.point_at(s).real for s in meet_line(line, 1j * levels[name], 1 + 0j))
        if len(across) > 1:
            ends = (complex(x, levels[name]) for x in (across[0], across[-1]))
            yield InnerLine("guide", Path.line(*ends), f"{name} line")
    upright = sorted(line.point_at(s).imag for s in meet_line(line, shell.crease + 0j, 1j))
    top = min(levels["hip"], upright[-1])
    yield InnerLine("guide", Path.line(*(complex(shell.crease, y) for y in (upright[0], top))), "crease, on the grain")


def _mouth(plan: Plan) -> Iterator[InnerLine]:
    """Where the front pocket will be."""
    pocket = pocket_of(plan.style)
    if pocket is None:
        return
    mouth = pocket.opening(plan).mouth
    if mouth is not None:
        yield InnerLine("placement", mouth, "pocket mouth")
    places = [along for _, along in side_places(plan, pocket)]
    if places:
        yield InnerLine("placement", plan.shell.front.side.between(min(places), max(places)), "pocket mouth")
    told = getattr(pocket, "front_marks", None)
    if told is not None:
        yield from (line for line in told(plan)[0] if line.kind == "placement")


def _back_mouth(plan: Plan) -> list[InnerLine]:
    """Where the back pocket will be."""
    pocket = back_pocket_of(plan.style)
    return [] if pocket is None else [line for line in pocket.back_marks(plan)[0] if line.kind == "placement"]


def _with_outlet(
    pieces: Mapping[str, Piece], seams: list[Seam], joints: list[Joint], shell: Shell, outlets: Outlets
) -> tuple[dict[str, Piece], list[Seam], list[Joint]]:
    """Wide allowance on the upper part of the seat seam: the whole of a yoke's, the straight part of a back's."""
    made = dict(pieces)
    if "back_yoke" in made:
        yoke = made["back_yoke"]
        wide = [replace(e, allowance=outlets.seat) if e.name == "crotch" else e for e in yoke.edges]
        made["back_yoke"] = replace(yoke, edges=tuple(wide))
        return made, seams, joints
    back = made["back"]
    whole = back.edge("crotch")
    cut = whole.length - shell.back.straight
    (line,) = whole.parts
    lower, upper = line.split_at(cut)
    both = (
        replace(whole, parts=(lower,), corner=Corner()),
        Edge("seat", (upper,), allowance=outlets.seat, corner=whole.corner),
    )
    notches = tuple(
        replace(n, edge="seat", along=n.along - cut) if n.edge == "crotch" and n.along > cut else n
        for n in back.notches
    )
    edges = tuple(part for edge in back.edges for part in (both if edge is whole else (edge,)))
    made["back"] = replace(back, edges=edges, notches=notches)
    centre = ("back", "crotch")
    moved = [joint for joint in joints if centre not in (joint.a, joint.b)]
    if len(moved) < len(joints):
        moved.append(Joint("waist at the centre back", ("back", "seat"), ("back", "seat")))
    sewn = [seam for seam in seams if centre not in ((seam.a.piece, seam.a.edge), (seam.b.piece, seam.b.edge))]
    for edge, name in (("crotch", "seat seam, curve"), ("seat", "seat seam, above the curve")):
        sewn.append(Seam.of(name, Run("back", edge), Run("back", edge), made))
    return made, sewn, moved


def _notes(plan: Plan, outlets: Outlets) -> list[str]:
    """What to mind when the mock-up is sewn and tried on."""
    told = [
        "mock-up: cloth of the same weight, stretch and hand as the final one, washed the same way first; "
        "a stiff cloth hides folds",
        "mock-up: sew with long stitches, trace the sew lines and the level lines to the right side, press seams open; "
        "clip the curve of the crotch seam before it is judged, or it strains",
        "mock-up: stand, sit, squat and step up in it; write on the sheet before anything is changed",
    ]
    if not isinstance(plan.style.hem, PlainHem):
        told.append("mock-up: the hem is plain; the garment's own cuff, band, ruffle or facing is left out")
    if isinstance(plan.style.closing, FlyFront):
        told.append("mock-up: pin the centre front closed on its sew line")
    told.append("caution: pins at the crotch and the inner thigh hurt whoever sits down: pin away from the body")
    return told
