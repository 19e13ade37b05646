"""A garment whose left and right differ: what differs is cut singly for either side, all else as before.

Both halves are drafted as if the garment were alike on both sides, and sewn to each other at the centre seams.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from draft.assemble import Garment
from draft.errors import DraftError
from draft.piece import Cut, Piece
from draft.seams import Joint, Run, Seam

SAME_MM = 0.05
SIDES = ("left", "right")
HOW = {
    "right": "wearer's right: cut one as drawn, on the right side of the cloth",
    "left": "wearer's left: turn the drawing over and cut one",
}


def two_sided(left: Garment, right: Garment, over: str, why: str) -> Garment:
    """Garment of two halves; `over` is the side that lies on top at the closing, `why` is told among its notes.

    Raises
    ------
    DraftError
        For a piece that reaches over both sides and would have to differ.
    """
    halves = {"left": left, "right": right}
    under = SIDES[over == SIDES[0]]
    owners = {"fly_facing": over, "fly_buttonholes": over, "fly_shield": under, "coin_pocket": "right"}
    unlike = {name for name, piece in right.pieces.items() if not _same(piece, left.pieces[name])}
    pieces: dict[str, Piece] = {}
    for name, piece in right.pieces.items():
        if name not in unlike:
            pieces[name] = piece
        elif own := _owner(name, owners):
            pieces[name] = halves[own].pieces[name]
        else:
            pieces |= {f"{name}_{side}": _single(halves[side].pieces[name], side) for side in reversed(SIDES)}
    seams = [
        made for pair in zip(left.seams, right.seams, strict=True) for made in _seams(*pair, unlike, pieces, owners)
    ]
    joints = [made for joint in right.joints for made in _joints(joint, unlike, pieces)]
    told = f"{why}: these are cut singly for left and right: {', '.join(sorted(unlike)).replace('_', ' ')}"
    notes = (*right.notes, told)
    return Garment(pieces, tuple(seams), tuple(joints), right.waist_girth, notes, right.whole, right.pieces)


def _owner(name: str, owners: Mapping[str, str]) -> str:
    """Side that has a piece for itself; empty: both have it."""
    named = next((side for side in SIDES if side in name.split("_")), "")
    return named or next((side for start, side in owners.items() if name.startswith(start)), "")


def _same(one: Piece, other: Piece) -> bool:
    pairs = list(zip(one.edges, other.edges, strict=True))
    lengths = max(abs(a.length - b.length) for a, b in pairs)
    places = max(abs((a.start - one.edges[0].start) - (b.start - other.edges[0].start)) for a, b in pairs)
    return max(lengths, places) < SAME_MM


def _single(piece: Piece, side: str) -> Piece:
    cut = piece.cut
    if cut.on_fold or cut.count % 2:
        expected = "bands and small parts whose pieces end at the centre: a straight band, or a facing without a fold"
        raise DraftError("alterations", f"{piece.name}, {cut}", expected, "choose another band, or leave it out")
    notes = (*piece.notes, HOW[side])
    name, title = f"{piece.name}_{side}", f"{piece.title}, {side}"
    return replace(piece, name=name, title=title, cut=Cut(cut.count // 2, cut.cloth), notes=notes)


def _renamed(run: Run, side: str, pieces: Mapping[str, Piece]) -> Run:
    return run if run.piece in pieces else replace(run, piece=f"{run.piece}_{side}")


def _seams(
    left: Seam, right: Seam, unlike: set[str], pieces: Mapping[str, Piece], owners: Mapping[str, str]
) -> Iterator[Seam]:
    """Seam of both halves: once, once for its own side, across the centre, or once for each side."""
    halves, words = {"left": left, "right": right}, right.name.replace(",", " ").split()
    own = [side for side in SIDES if side in words]
    own += [side for run in (right.a, right.b) if (side := _owner(run.piece, owners))]
    if not {right.a.piece, right.b.piece} & unlike:
        yield right
    elif own:
        seam = halves[own[0]]
        runs = [_renamed(run, own[0], pieces) for run in (seam.a, seam.b)]
        yield Seam.of(seam.name, runs[0], runs[1], pieces, seam.ease)
    elif right.a == right.b:
        yield Seam.of(right.name, _renamed(left.a, "left", pieces), _renamed(right.b, "right", pieces), pieces)
    else:
        for side, seam in halves.items():
            a, b = (_renamed(run, side, pieces) for run in (seam.a, seam.b))
            yield Seam.of(f"{seam.name}, {side}", a, b, pieces, seam.ease)


def _joints(joint: Joint, unlike: set[str], pieces: Mapping[str, Piece]) -> Iterator[Joint]:
    def of(corner: tuple[str, str], side: str) -> tuple[str, str]:
        return corner if corner[0] in pieces else (f"{corner[0]}_{side}", corner[1])

    if not {joint.a[0], joint.b[0]} & unlike:
        yield joint
    elif joint.a == joint.b:
        yield replace(joint, a=of(joint.a, "left"), b=of(joint.b, "right"))
    else:
        for side in SIDES:
            yield replace(joint, name=f"{joint.name}, {side}", a=of(joint.a, side), b=of(joint.b, side))
