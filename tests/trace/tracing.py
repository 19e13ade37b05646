"""Our own patterns as if somebody else had drawn them: exported, read back without names, mirrored and turned."""

import numpy as np

import draft
from draft.trace import Outline, Traced, read_dxf, read_svg
from draft.trace.refit import EASE

PLAIN = draft.Style(pocket=None, hem=draft.PlainHem(), ease=EASE)


def widths(pattern):
    front = pattern.pieces["front"]
    return {name: front.edge(name).allowance for name in ("side", "hem", "inseam", "crotch", "waist")}


def exported(pattern, folder, kind, line):
    """Front and back as read from a file: the largest outline of all is a back, the next a front."""
    file = folder / f"pattern.{kind}"
    (pattern.save_svg if kind == "svg" else pattern.save_dxf)(file)
    found = (read_svg if kind == "svg" else read_dxf)(file)
    word = {"svg": {"cut": "-cut", "sew": "-sew"}, "dxf": {"cut": "layer CUT", "sew": "layer DRAW"}}[kind][line]
    back, front = [outline for outline in found if word in outline.source][:2]
    return front, back


def levels(pattern):
    """What a person reads off the paper: hip, knee and the drop of the back's fork, mm."""
    front, back = pattern.pieces["front"], pattern.pieces["back"]
    told = {
        "waist_to_hip": front.edge("side").start.imag - pattern.shell.levels["hip"],
        "back_drop": -back.edge("crotch").start.imag,
    }
    return told | ({"knee": -pattern.shell.levels["knee"]} if "knee" in pattern.measure() else {})


def traced(pattern, name="traced pattern"):
    """Seam lines with their darts, without the way through a file."""
    outlines = {
        side: Outline(
            pattern.pieces[side].sew_line.points(0.02),
            side,
            tuple(line.path.points(0.1) for line in pattern.pieces[side].lines if line.kind == "dart"),
        )
        for side in ("front", "back")
    }
    return Traced(**outlines, allowance=0, name=name)


def turned(outline, rng):
    """Mirrored or not, turned anyhow, moved."""
    return outline.moved(
        np.exp(2j * np.pi * rng.random()), complex(*rng.uniform(-500, 500, 2)), flip=rng.random() < 0.5
    )
