"""Interfacing: a copy of its outer piece, trimmed to just outside the seam line."""

from __future__ import annotations

from dataclasses import replace

from draft.edge import Corner
from draft.piece import Cut, Piece

MARGIN = 2.0  # beyond the seam line, so that the stitching catches it (common practice, no source)
FUSED = (
    "waistband", "waistband_left", "waistband_right", "waistband_front", "waistband_back", "fly_facing",
    "waist_facing_left", "waist_facing_right", "waist_facing_front", "waist_facing_back",
)  # fmt: skip


def interfacing_of(piece: Piece) -> Piece:
    """Interfacing for one piece: the same seam lines, hence the same changes."""
    edges = tuple(
        replace(edge, allowance=min(edge.allowance, MARGIN), corner=Corner("extended")) for edge in piece.edges
    )
    return Piece(
        name=f"{piece.name}_interfacing",
        title=f"{piece.title}, interfacing",
        edges=edges,
        cut=Cut(piece.cut.count, "interfacing", mirrored=piece.cut.mirrored, on_fold=piece.cut.on_fold),
        grainline=piece.grainline,
        lines=tuple(line for line in piece.lines if line.kind == "fold"),
        made_for=piece.made_for,
        notes=("fuse before sewing",),
    )


def interfacings(pieces: list[Piece]) -> list[Piece]:
    """Interfacing for every piece that wants one."""
    return [interfacing_of(piece) for piece in pieces if piece.name in FUSED]
