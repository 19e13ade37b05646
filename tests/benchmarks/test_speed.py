"""Speed as ratios in one run, against bare writers of the same entities. No test asserts on time.

Run with ``pytest tests/benchmarks --benchmark-enable -s``; without it each case runs once, as a test that it works.
"""

from __future__ import annotations

import io
import logging
import time
import xml.etree.ElementTree as ET

import ezdxf
import pytest
import svgwrite
from zoo import ZOO

import draft
from draft.export import dxf_astm, dxf_plain, svg

WOMAN = ZOO["woman"]
SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module")
def pattern() -> draft.Pattern:
    return draft.shorts(WOMAN)


def bare_svg(elements: list[tuple[str, dict[str, str], str]], size: tuple[str, str]) -> str:
    """The same elements written by svgwrite with nothing else to do."""
    drawing = svgwrite.Drawing(size=size, debug=False)
    for tag, attributes, text in elements:
        if tag == "path":
            item = drawing.path(d=attributes["d"])
        elif tag == "text":
            item = drawing.text(text)
        else:
            item = drawing.g()
        item.attribs.update(attributes)
        drawing.add(item)
    return drawing.tostring()


def svg_elements(text: str) -> list[tuple[str, dict[str, str], str]]:
    return [(e.tag.removeprefix(SVG), dict(e.attrib), e.text or "") for e in ET.fromstring(text).iter()]


def dxf_entities(text: str) -> list[tuple[str, dict, object]]:
    """Entities of a file as plain values: what a bare writer has to add again."""
    document = ezdxf.read(io.StringIO(text))
    found = []
    layouts = [document.modelspace(), *(b for b in document.blocks if not b.name.startswith(("*", "$", "_")))]
    for layout in layouts:
        for e in layout:
            kind, layer = e.dxftype(), {"layer": e.dxf.layer}
            if kind == "POLYLINE":
                found.append((kind, layer, ([tuple(v.dxf.location)[:2] for v in e.vertices], e.is_closed)))
            elif kind == "LINE":
                found.append((kind, layer, (tuple(e.dxf.start), tuple(e.dxf.end))))
            elif kind == "POINT":
                found.append((kind, layer, tuple(e.dxf.location)))
            elif kind == "CIRCLE":
                found.append((kind, layer, (tuple(e.dxf.center), e.dxf.radius)))
            elif kind == "TEXT":
                found.append((kind, layer, (e.dxf.text, e.dxf.height)))
    return found


def bare_dxf(entities: list[tuple[str, dict, object]]) -> str:
    """The same entities written by ezdxf with nothing else to do."""
    logging.getLogger("ezdxf").setLevel(logging.ERROR)
    document = ezdxf.new("R12")
    space = document.modelspace()
    for kind, layer, data in entities:
        if kind == "POLYLINE":
            space.add_polyline2d(data[0], close=data[1], dxfattribs=layer)
        elif kind == "LINE":
            space.add_line(*data, dxfattribs=layer)
        elif kind == "POINT":
            space.add_point(data, dxfattribs=layer)
        elif kind == "CIRCLE":
            space.add_circle(*data, dxfattribs=layer)
        else:
            space.add_text(data[0], height=data[1], dxfattribs=layer)
    stream = io.StringIO()
    document.write(stream)
    return stream.getvalue()


def best_of(runs: int, call) -> float:
    """Shortest time of several runs, in seconds: the least disturbed one."""
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        call()
        times.append(time.perf_counter() - start)
    return min(times)


def test_shorts_drafted(benchmark):
    """Draft one pair of shorts, all pieces with allowances and notches."""
    made = benchmark(lambda: [p.notch_places for p in draft.shorts(WOMAN).pieces.values()])
    assert len(made) == 14


def test_shorts_checked(benchmark, pattern):
    assert benchmark(lambda: draft.shorts(WOMAN).check()) == []


@pytest.mark.parametrize("writer", [svg, dxf_plain, dxf_astm], ids=["svg", "dxf plain", "dxf astm"])
def test_file_written(benchmark, pattern, writer):
    assert len(benchmark(writer.text_of, pattern)) > 1000


def test_ratios_in_one_run(pattern, request):
    """Print the ratios that matter; the assertion is only that the bare writers wrote the same number of entities."""
    runs = 1 if request.config.getoption("benchmark_disable") else 9
    texts = {m: m.text_of(pattern) for m in (svg, dxf_plain, dxf_astm)}
    elements = svg_elements(texts[svg])
    entities = {m: dxf_entities(texts[m]) for m in (dxf_plain, dxf_astm)}
    bare = {svg: best_of(runs, lambda: bare_svg(elements, ("1000mm", "1000mm")))}
    for m, listed in entities.items():
        bare[m] = best_of(runs, lambda listed=listed: bare_dxf(listed))
        assert len(dxf_entities(bare_dxf(listed))) == len(listed)
    ours = {m: best_of(runs, lambda m=m: m.text_of(pattern)) for m in texts}
    drafted = best_of(runs, lambda: [p.notch_places for p in draft.shorts(WOMAN).pieces.values()])
    print(f"\nshorts drafted: {1000 * drafted:.1f} ms")
    names = {svg: "svgwrite", dxf_plain: "ezdxf, plain entities", dxf_astm: "ezdxf, astm entities"}
    for m in texts:
        print(
            f"{m.__name__.rsplit('.', 1)[1]}: {1000 * ours[m]:.1f} ms = {ours[m] / bare[m]:.2f} x bare {names[m]} "
            f"({1000 * bare[m]:.1f} ms); shorts drafted = {drafted / bare[m]:.2f} x that"
        )
    total, bare_total = sum(ours.values()), sum(bare.values())
    print(f"all three files: {1000 * total:.0f} ms = {total / bare_total:.2f} x the bare writers")
