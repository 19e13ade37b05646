"""Proposed corners are those that the piece has, however it lies."""

import numpy as np
import pytest
from tracing import PLAIN, turned
from zoo import ZOO

import draft
from draft.errors import DraftError
from draft.trace import Corners, Outline, from_points, propose_corners, propose_darts
from draft.trace.corners import NAMES

STARTS = {"waist_side": "side", "hem_side": "hem", "hem_inseam": "inseam", "fork": "crotch", "waist_centre": "waist"}
STYLES = {
    "plain": PLAIN,
    "flared": draft.Style(pocket=None, hem=draft.PlainHem(), leg=draft.Leg(shape="flared")),
    "wide": draft.Style(pocket=None, hem=draft.PlainHem(), leg=draft.Leg(shape="wide")),
}


@pytest.mark.parametrize("garment", [draft.shorts, draft.trousers])
@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("name", [name for name in ZOO if name != "toddler"])
def test_corners_are_found_mirrored_and_turned(name, style, garment):
    rng = np.random.default_rng(len(name))
    pattern = garment(ZOO[name], STYLES[style])
    for side in ("front", "back"):
        piece = pattern.pieces[side]
        true = np.array([piece.edge(STARTS[corner]).start for corner in NAMES])
        outline = Outline(piece.sew_line.points(0.05))
        flip, turn = rng.random() < 0.5, np.exp(2j * np.pi * rng.random())
        found = propose_corners(outline.moved(turn, 100 - 50j, flip=flip))
        wanted = turn * (-true.conj() if flip else true) + 100 - 50j
        assert [getattr(found, corner) for corner in NAMES] == pytest.approx(list(wanted), abs=0.5)
        assert found.mirrored == flip


@pytest.mark.parametrize(
    "points",
    [
        [0, 300, 300 + 400j, 400j],
        list(200 * np.exp(2j * np.pi * np.arange(90) / 90)),
        [0, 100, 50 + 80j],
        [0, 800, 800 + 80j, 80j],
    ],
    ids=["rectangle", "circle", "triangle", "waistband"],
)
def test_what_is_no_leg_is_refused(points):
    with pytest.raises(DraftError, match="a front or back"):
        propose_corners(from_points(points))


def test_a_corner_must_be_a_point():
    with pytest.raises(DraftError, match=r"corners\.fork is nan"):
        Corners(waist_side=0, hem_side=1, hem_inseam=2, fork=float("nan"), waist_centre=3)


def test_darts_are_proposed_from_lines_drawn_inside():
    piece = draft.trousers(ZOO["woman"], PLAIN).pieces["back"]
    lines = tuple(line.path.points(0.1) for line in piece.lines)
    outline = turned(Outline(piece.sew_line.points(0.1), lines=lines), np.random.default_rng(2))
    assert len(propose_darts(outline)) == len(piece.darts) == 2
