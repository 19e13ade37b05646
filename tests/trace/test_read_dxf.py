"""DXF files of others: written here with ezdxf or by hand; areas by arithmetic, the spline by scipy."""

import io
import time
from math import pi

import ezdxf
import numpy as np
import pytest
from scipy.interpolate import BSpline

from draft.errors import DraftError
from draft.trace import read_dxf
from draft.trace.outline import area_of

LIMIT_S = 2.0


def read(folder, content, **given):
    file = folder / "one.dxf"
    if isinstance(content, bytes):
        file.write_bytes(content)
    elif isinstance(content, str):
        file.write_text(content)
    else:
        content.saveas(file)
    return read_dxf(file, **given)


def drawing(units=4, release="R2010"):
    document = ezdxf.new(release, units=units)
    return document, document.modelspace()


def test_every_entity_is_read(tmp_path):
    document, space = drawing()
    space.add_lwpolyline([(0, 0, 1), (100, 0, 1)], format="xyb", close=True)  # two half circles
    space.add_polyline2d([(200, 0), (260, 0), (260, 40), (200, 40)], close=True)
    space.add_circle((400, 100), 40)
    space.add_ellipse((600, 100), major_axis=(50, 0), ratio=0.5)
    places = [(0, 300), (80, 300), (100, 380), (20, 420), (-40, 350), (0, 300)]
    spline = space.add_open_spline([(x, y, 0) for x, y in places])
    curve = BSpline(np.array(spline.knots), np.array([complex(*p) for p in places]), spline.dxf.degree)
    t = np.linspace(spline.knots[0], spline.knots[-1], 20_001)
    wanted = [abs(area_of(curve(t)[:-1])), pi * 2500, 2400, pi * 1600, pi * 1250]
    assert [o.area for o in read(tmp_path, document)] == pytest.approx(sorted(wanted, reverse=True), rel=1e-3)


@pytest.mark.parametrize(("units", "mm"), [(1, 25.4), (2, 304.8), (4, 1), (5, 10), (6, 1000), (0, 1)])
def test_the_unit_of_the_drawing_counts(tmp_path, units, mm):
    document, space = drawing(units)
    side = 100 / mm
    space.add_lwpolyline([(0, 0), (side, 0), (side, side), (0, side)], close=True)
    assert read(tmp_path, document)[0].size == pytest.approx((100, 100))


def test_a_unit_that_is_said_wins(tmp_path):
    document, space = drawing(0)
    space.add_lwpolyline([(0, 0), (10, 0), (10, 10), (0, 10)], close=True)
    assert read(tmp_path, document, unit="in")[0].size == pytest.approx((254, 254))
    with pytest.raises(DraftError, match="give the unit"):
        read(tmp_path, document)
    with pytest.raises(DraftError, match="unit is 'inch'"):
        read(tmp_path, document, unit="inch")


def test_blocks_in_blocks_are_put_in_their_places(tmp_path):
    document, space = drawing()
    inner, outer = document.blocks.new("inner"), document.blocks.new("outer")
    inner.add_lwpolyline([(0, 0), (50, 0), (50, 30), (0, 30)], close=True)
    outer.add_blockref("inner", (10, 0), dxfattribs={"xscale": 2, "yscale": 2})
    space.add_blockref("outer", (0, 100), dxfattribs={"rotation": 90})
    (found,) = read(tmp_path, document)
    # scaled by two and moved by 10, then turned by 90 degrees (x' = -y, y' = x) and moved up by 100
    assert sorted((round(p.real), round(p.imag)) for p in found.points) == [(-60, 110), (-60, 210), (0, 110), (0, 210)]


def test_loose_lines_and_arcs_of_one_layer_are_joined(tmp_path):
    document, space = drawing(release="R12", units=0)
    space.add_line((0, 0), (100, 0), dxfattribs={"layer": "A"})
    space.add_line((0, 60), (100.2, 60), dxfattribs={"layer": "A"})
    space.add_arc((100, 30), 30, 270, 90, dxfattribs={"layer": "A"})
    space.add_line((0, 60), (0, 0.3), dxfattribs={"layer": "A"})
    space.add_line((0, 60), (300, 300), dxfattribs={"layer": "B"})
    (found,) = read(tmp_path, document)
    assert found.area == pytest.approx(6000 + pi * 450, rel=5e-3)
    assert "layer A" in found.source


def tags(*pairs):
    return "".join(f"{code}\n{value}\n" for code, value in pairs)


def whole(*entities):
    return tags((0, "SECTION"), (2, "ENTITIES"), *entities, (0, "ENDSEC"), (0, "EOF"))


def ring(points, closed=1):
    vertices = [pair for x, y in points for pair in ((0, "VERTEX"), (8, "0"), (10, x), (20, y))]
    return [(0, "POLYLINE"), (8, "0"), (66, 1), (70, closed), *vertices, (0, "SEQEND")]


def nested(levels=7, each=8):
    document, space = drawing()
    document.blocks.new("b0").add_lwpolyline([(0, 0), (100, 0), (100, 100)], close=True)
    for k in range(levels):
        block = document.blocks.new(f"b{k + 1}")
        for _ in range(each):
            block.add_blockref(f"b{k}", (1, 1))
    space.add_blockref(f"b{levels}", (0, 0))
    stream = io.StringIO()
    document.write(stream)
    return stream.getvalue()


def copies():
    document, space = drawing()
    document.blocks.new("b").add_circle((0, 0), 50)
    space.add_blockref("b", (0, 0), dxfattribs={"row_count": 30_000, "column_count": 30_000})
    stream = io.StringIO()
    document.write(stream)
    return stream.getvalue()


SQUARE = [(0, 0), (100, 0), (100, 100), (0, 100)]
HOSTILE = {
    "empty": lambda: "",
    "rubbish": lambda: bytes(range(256)) * 40,
    "text": lambda: "cut two of these\n",
    "svg": lambda: "<svg xmlns='http://www.w3.org/2000/svg'/>",
    "binary": lambda: b"AutoCAD Binary DXF\r\n\x1a\0" + b"\0" * 100,
    "truncated": lambda: whole(*ring(SQUARE))[:-40],
    "odd tags": lambda: whole((0, "LINE"), ("x", "y"), (10, 0)),
    "no number": lambda: whole(*ring([(0, 0), (100, "abc"), (100, 100)])),
    "nan": lambda: whole(*ring([(0, 0), (100, "nan"), (100, 100)])),
    "inf": lambda: whole(*ring([(0, 0), (100, "-inf"), (100, 100)])),
    "infinite by exponent": lambda: whole(*ring([(0, 0), (100, "1e999"), (100, 100)])),
    "far away": lambda: whole(*ring([(0, 0), (1e12, 0), (100, 100)])),
    "crossed": lambda: whole(*ring([(0, 0), (100, 100), (100, 0), (0, 100)])),
    "no area": lambda: whole(*ring([(0, 0), (150, 0), (300, 0)])),
    "tiny": lambda: whole(*ring([(0, 0), (1, 0), (1, 1)])),
    "open": lambda: whole(*ring(SQUARE, 0)),
    "no lines": whole,
    "million points": lambda: whole(*ring((k % 997, k % 1009) for k in range(1_000_000))),
    "many points": lambda: whole(*ring((k % 997, k % 1009) for k in range(70_000))),
    "blocks without end": nested,
    "copies without end": copies,
    "block of itself": lambda: tags(
        (0, "SECTION"), (2, "BLOCKS"), (0, "BLOCK"), (2, "A"), (10, 0), (20, 0), (0, "INSERT"), (2, "A"), (10, 0),
        (20, 0), (0, "ENDBLK"), (0, "ENDSEC"),
    ) + whole((0, "INSERT"), (8, "0"), (2, "A"), (10, 0), (20, 0)),
}  # fmt: skip


@pytest.mark.parametrize("kind", HOSTILE)
def test_a_damaged_file_is_told_in_one_sentence_and_soon(tmp_path, kind):
    content = HOSTILE[kind]()
    start = time.perf_counter()
    with pytest.raises(DraftError) as told:
        read(tmp_path, content)
    assert time.perf_counter() - start < LIMIT_S
    error = told.value
    assert error.field
    assert error.expected
    assert error.remedy
    assert len(str(error)) < 500
    assert len(error.many) == 1
