"""A traced pattern has the sizes of the pattern that was traced."""

import numpy as np
import pytest
from tracing import PLAIN, exported, levels, traced, turned, widths
from zoo import MAN, STOUT, TEN_YEARS, WOMAN

import draft
from draft.errors import DraftError
from draft.trace import Corners, Outline, Traced, propose_corners

SIZE_TOL_MM = 0.5
CASES = {
    "woman, trousers": (draft.trousers, WOMAN),
    "man, shorts": (draft.shorts, MAN),
    "stout, trousers": (draft.trousers, STOUT),
    "ten years, shorts": (draft.shorts, TEN_YEARS),
}


@pytest.mark.parametrize("kind", ["svg", "dxf"])
@pytest.mark.parametrize("line", ["sew", "cut"])
@pytest.mark.parametrize("case", CASES)
def test_an_exported_pattern_comes_back_with_its_sizes(tmp_path, case, line, kind):
    garment, body = CASES[case]
    pattern = garment(body, PLAIN)
    rng = np.random.default_rng(len(case))
    front, back = (turned(outline, rng) for outline in exported(pattern, tmp_path, kind, line))
    allowance = widths(pattern) if line == "cut" else 0
    found = Traced(front=front, back=back, allowance=allowance, **levels(pattern)).measure()
    assert dict(found) == pytest.approx(dict(pattern.measure()), abs=SIZE_TOL_MM)


def test_without_the_drop_of_the_back_girths_are_those_at_the_sewn_side_seam():
    pattern = draft.trousers(WOMAN, PLAIN)
    found = traced(pattern).pieces
    assert found["front"].edge("hem").start.imag == pytest.approx(found["back"].edge("hem").start.imag)


def test_the_pieces_lie_in_the_frame_of_the_library():
    pattern = draft.trousers(WOMAN, PLAIN)
    rng = np.random.default_rng(5)
    lying = {
        name: turned(Outline(pattern.pieces[name].sew_line.points(0.05)), rng).moved(np.exp(0.03j))
        for name in ("front", "back")
    }
    for name, piece in Traced(**lying, allowance=0).pieces.items():
        assert [edge.name for edge in piece.edges] == ["side", "hem", "inseam", "crotch", "waist"]
        assert piece.sew_line.area > 0
        assert piece.edge("waist").start.imag > 0 > piece.edge("hem").start.imag
        assert piece.edge("side").start.real < piece.edge("crotch").start.real
        hem = piece.edge("hem")
        assert (hem.start.real + hem.end.real) / 2 == pytest.approx(0, abs=1e-6)
        assert name == piece.name
    assert Traced(**lying, allowance=0).pieces["front"].edge("crotch").start.imag == pytest.approx(0, abs=1e-9)


def test_one_allowance_all_round_is_taken_off():
    style = draft.Style(
        pocket=None,
        ease=PLAIN.ease,
        hem=draft.PlainHem(),
        allowances=draft.Allowances(side=10, inseam=10, crotch=10, waist=10, fly=10),
    )
    pattern = draft.trousers(WOMAN, style)
    outlines = {name: Outline(pattern.pieces[name].cut_line.points(0.02)) for name in ("front", "back")}
    hem = pattern.pieces["front"].edge("hem").allowance
    found = Traced(**outlines, allowance={**dict.fromkeys(("side", "inseam", "crotch", "waist"), 10), "hem": hem})
    for key in ("inside_leg", "outside_leg", "front_crotch", "back_crotch", "hem"):
        assert found.measure()[key] == pytest.approx(pattern.measure()[key], abs=SIZE_TOL_MM)
    again = found.pieces["front"].cut_line
    assert again.length == pytest.approx(outlines["front"].length, rel=0.02)


def test_darts_cut_out_of_the_waist_are_closed():
    notched = [100j - 110, -160j - 110, -160j + 110, 130, 80 + 20j, 70 + 45j, 65 + 100j, 65 + 250j,
               250j - 10, 160j - 20, 250j - 30, 250j - 110]  # fmt: skip
    plain = [p for p in notched if p.imag not in (160,) and p.real not in (-10, -30)]
    whole = Outline(plain)
    one = Traced(front=Outline(notched), back=whole, allowance=0)
    # the dart takes 20 mm from the waist of each front: 40 mm of the whole girth
    assert one.measure()["waist"] == pytest.approx(2 * (175 - 20) + 2 * 175)
    told = Traced(front=whole, back=whole, allowance=0, front_darts=[(250j - 10, 160j - 20, 250j - 30)])
    assert told.measure()["waist"] == pytest.approx(one.measure()["waist"])
    assert len(told.pieces["front"].darts) == 1


LEG = [100j - 110, -160j - 110, -160j + 110, 130, 80 + 20j, 70 + 45j, 65 + 100j, 65 + 250j, 250j - 110]


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({"allowance": -3}, "allowance of side"),
        ({"allowance": 200}, "allowance of side"),
        ({"allowance": {"cuff": 10}}, "allowance is 'cuff'"),
        ({"allowance": 79}, "front"),
        ({"waist_to_hip": 900}, "waist_to_hip"),
        ({"waist_to_hip": "far"}, "waist_to_hip"),
        ({"knee": 400}, "knee"),
        ({"front_darts": [(0, 100j, 10)]}, "front, dart"),
        ({"front_darts": [(250j, 150j, 250j - 20), (250j - 10, 150j, 250j - 30)]}, "front, darts"),
        ({"back_grain": (5, 5)}, "grain"),
        ({"back": 7}, "back is 'int'"),
        ({"front_corners": Corners(9999, -160j - 110, -160j + 110, 130, 65 + 250j)}, "corner waist_side"),
        ({"front_corners": Corners(250j - 110, 130, -160j + 110, -160j - 110, 65 + 250j)}, "corners"),
    ],
)
def test_what_cannot_be_is_told(given, told):
    outline = Outline(LEG)
    with pytest.raises(DraftError, match=told):
        Traced(**{"front": outline, "back": outline, "allowance": 0, **given})


def test_named_corners_are_the_same_as_proposed_ones():
    outline = Outline(LEG)
    named = Corners(250j - 110, -160j - 110, -160j + 110, 130, 65 + 250j)
    assert propose_corners(outline) == named
    assert "<svg" in Traced(front=outline, back=outline, front_corners=named, allowance=0)._repr_svg_()
