"""What the hems share that are a plain turning with something added: its allowance, folds and corner.

A kind of these takes the functions it does not change from here. Its choice has a ``depth`` and a ``turn``.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from typing import Protocol, cast

from draft.edge import Corner
from draft.piece import InnerLine, Piece
from draft.pieces import plain_hem
from draft.pieces.hems.strip import room_for
from draft.pieces.plan import Plan
from draft.seams import Joint, Seam
from draft.style import PlainHem


class _Turning(Protocol):
    @property
    def depth(self) -> float: ...
    @property
    def turn(self) -> float: ...


def _plain(plan: Plan) -> Plan:
    """Same garment with a plain hem as deep, refused when the leg has no room for it."""
    hem = cast(_Turning, plan.style.hem)
    room_for(plan, hem.depth, hem.turn)
    return replace(plan, style=replace(plan.style, hem=PlainHem(depth=hem.depth, turn=hem.turn)))


def allowance(plan: Plan) -> float:
    """Depth of the turning and what is folded under."""
    return plain_hem.allowance(_plain(plan))


def corner() -> Corner:
    """Corner of a turning that is folded onto the leg."""
    return plain_hem.corner()


def above(plan: Plan) -> float:
    """Depth of the turning."""
    return plain_hem.above(_plain(plan))


def leg_lines(plan: Plan, name: str) -> list[InnerLine]:
    """Folds of the turning."""
    return plain_hem.leg_lines(_plain(plan), name)


def pieces(plan: Plan) -> list[Piece]:
    """No pieces of its own."""
    return []


def seams(plan: Plan, pieces: Mapping[str, Piece]) -> tuple[list[Seam], list[Joint]]:
    """No seam with another piece."""
    return [], []
