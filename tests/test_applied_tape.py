"""Tape sewn onto front or back: its edges are parallel to the line it follows, inside the piece, on flat cloth.

Parallels are checked against shapely, a general library that knows nothing of these curves.
"""

from __future__ import annotations

import re
from dataclasses import replace

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Point, Polygon
from zoo import ZOO

import draft
from draft.choices.small_parts import AppliedTape

LINES = ("side", "inseam", "crease", "hem", "across")
STYLES = {
    "plain": draft.Style(),
    "no pocket, front dart": draft.Style(pocket=None, darts=draft.Darts(front=1)),
    "pleats": draft.Style(pocket=None, pleats=draft.Pleats()),
    "slanted": draft.Style(pocket=draft.SlantedPocket()),
}


def made(tape, body="woman", style="plain", make=draft.shorts):
    return make(ZOO[body], replace(STYLES[style], small_parts=(tape,)))


def tried(make):
    """What was drafted, or the error it was refused with."""
    try:
        return make(), None
    except draft.DraftError as error:
        return None, error


def faults(pattern):
    return [finding for finding in pattern.check() if finding.code != "fit"]


def edges_of(pattern, tape):
    piece = pattern.pieces[tape.on]
    first = next(i for i, line in enumerate(piece.lines) if line.note.startswith("tape"))
    return piece.lines[first].path, piece.lines[first + 1].path


def shape(path):
    return LineString([(p.real, p.imag) for p in path.points(0.02)])


@pytest.mark.parametrize("make", [draft.shorts, draft.trousers])
@pytest.mark.parametrize("along", LINES)
@pytest.mark.parametrize("on", ["front", "back"])
@pytest.mark.parametrize("body", ZOO)
def test_tape_lies_inside_the_piece_on_every_body(body, on, along, make):
    tape = AppliedTape(on=on, along=along, distance=160 if along == "across" else 20)
    pattern = made(tape, body, make=make)
    assert faults(pattern) == []
    inside = Polygon([(p.real, p.imag) for p in pattern.pieces[on].sew_line.points(0.05)]).buffer(0.05)
    assert all(inside.covers(shape(path)) for path in edges_of(pattern, tape))


@pytest.mark.parametrize("on", ["front", "back"])
@pytest.mark.parametrize(("along", "seam"), [("side", "side"), ("inseam", "inseam"), ("hem", "hem")])
def test_tape_keeps_its_distance_from_the_seam(on, along, seam):
    tape = AppliedTape(on=on, along=along, distance=25, width=18)
    pattern = made(tape)
    line = shape(getattr(getattr(pattern.shell, on), seam))
    for path, distance in zip(edges_of(pattern, tape), (25, 43), strict=True):
        places = [path.point_at(s) for s in np.linspace(0, path.length, 40)]
        gaps = [line.distance(Point(p.real, p.imag)) for p in places]
        assert gaps == pytest.approx([distance] * len(gaps), abs=0.02)


def test_tape_beside_the_crease_and_across_the_leg_keep_to_the_grain():
    beside = AppliedTape(along="crease", distance=6, width=10)
    pattern = made(beside)
    for path, distance in zip(edges_of(pattern, beside), (6, 16), strict=True):
        assert {round(path.start.real, 6), round(path.end.real, 6)} == {round(pattern.shell.crease - distance, 6)}
    across = AppliedTape(along="across", distance=150, width=10)
    pattern = made(across)
    high = pattern.shell.front.side.start.imag
    for path, below in zip(edges_of(pattern, across), (150, 160), strict=True):
        assert {round(path.start.imag, 6), round(path.end.imag, 6)} == {round(high - below, 6)}


def test_start_and_stop_are_measured_along_the_seam_from_its_upper_end():
    tape = AppliedTape(along="side", on="back", distance=10, start=100, stop=220)
    pattern = made(tape)
    side = pattern.shell.back.side
    near, _ = edges_of(pattern, tape)
    assert abs(near.start - side.point_at(100)) == pytest.approx(10, abs=0.02)
    assert abs(near.end - side.point_at(220)) == pytest.approx(10, abs=0.02)


def test_note_names_the_length_to_buy():
    tape = AppliedTape(along="crease", distance=0, start=60, stop=260, turned=12)
    pattern = made(tape, style="slanted")
    told = next(note for note in pattern.garment.notes if note.startswith("tape"))
    assert "2 pieces of 224 mm, 448 in all" in told


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("on", ["front", "back"])
def test_tape_across_stays_off_darts_and_the_pocket_mouth(on, style):
    tape = AppliedTape(on=on, along="across", distance=45, width=15)
    pattern, error = tried(lambda: made(tape, style=style))
    if error is not None:
        assert error.field == "style.small_parts.distance"
        return
    assert faults(pattern) == []
    lines = [shape(path) for path in edges_of(pattern, tape)]
    panel = getattr(pattern.shell, on)
    for dart in panel.waist.darts:
        legs = LineString([(p.real, p.imag) for p in (dart.centre_leg, dart.point, dart.side_leg)])
        assert all(line.distance(legs) >= 1.9 for line in lines)


def test_tape_on_a_front_with_a_pocket_begins_below_its_mouth():
    tape = AppliedTape(along="side", distance=5, width=10)
    cut, whole = edges_of(made(tape), tape)[0], edges_of(made(tape, style="pleats"), tape)[0]
    mouth = made(tape).pieces["front"].edge("side").start
    assert cut.start.imag < mouth.imag
    assert whole.start.imag > mouth.imag
    with pytest.raises(draft.DraftError, match=r"small_parts\.start is 10\.0, expected (\d+) to (\d+) mm") as told:
        made(replace(tape, start=10))
    low = float(re.search(r"expected (\d+) to", str(told.value)).group(1))
    assert faults(made(replace(tape, start=low))) == []


def test_limits_that_errors_name_work():
    for wrong, field in (
        (AppliedTape(along="side", distance=800), "distance"),
        (AppliedTape(along="across", distance=700), "distance"),
        (AppliedTape(along="inseam", stop=900), "stop"),
        (AppliedTape(along="hem", start=500), "start"),
    ):
        with pytest.raises(draft.DraftError, match=rf"style\.small_parts\.{field}") as told:
            made(wrong)
        low, high = (float(n) for n in re.search(r"expected (\d+) to (\d+) mm", str(told.value)).groups())
        for value in (low, high):
            assert faults(made(replace(wrong, **{field: value}))) == []


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(
    tape=st.builds(
        AppliedTape,
        on=st.sampled_from(["front", "back"]),
        along=st.sampled_from(LINES),
        distance=st.floats(0, 400),
        width=st.floats(3, 120),
        start=st.none() | st.floats(0, 400),
        stop=st.none() | st.floats(10, 500),
    ),
    style=st.sampled_from(list(STYLES)),
    body=st.sampled_from(["woman", "stout", "toddler"]),
)
def test_any_tape_lies_flat_or_is_refused_with_its_limits(tape, style, body):
    pattern, error = tried(lambda: made(tape, body, style))
    if error is not None:
        assert error.field.startswith("style.small_parts.")
    else:
        assert faults(pattern) == []
        near, far = edges_of(pattern, tape)
        assert shape(near).distance(shape(far)) == pytest.approx(tape.width, abs=0.05)
