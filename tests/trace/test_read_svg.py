"""SVG files of others: sizes by the rules of the format (1 in = 96 px = 25.4 mm, SVG 2, read); areas by arithmetic."""

import time
from math import pi, sqrt

import pytest
import shapely

from draft.errors import DraftError
from draft.trace import read_svg

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" '
MM = HEAD + 'width="500mm" height="500mm" viewBox="0 0 500 500">'
LIMIT_S = 2.0


def read(folder, text, **given):
    file = folder / "one.svg"
    file.write_bytes(text if isinstance(text, bytes) else text.encode())
    return read_svg(file, **given)


@pytest.mark.parametrize(
    ("head", "mm"),
    [
        ('width="5in" height="5in" viewBox="0 0 500 500">', 25.4),
        ('width="50cm" height="50cm" viewBox="0 0 500 500">', 100),
        ('width="500" height="500">', 100 * 25.4 / 96),
        ('viewBox="0 0 500 500">', 100 * 25.4 / 96),
        ('width="500pt" height="500pt" viewBox="0 0 500 500">', 100 * 25.4 / 72),
    ],
)
def test_units_are_those_of_the_format(tmp_path, head, mm):
    (found,) = read(tmp_path, HEAD + head + '<polygon points="0,0 100,0 100,100 0,100"/></svg>')
    assert found.size == pytest.approx((mm, mm))


def test_every_shape_is_read(tmp_path):
    text = (
        MM
        + '<rect id="r" width="40" height="30"/><circle id="c" cx="200" cy="200" r="50"/>'
        + '<ellipse id="e" cx="100" cy="300" rx="60" ry="20"/><polygon id="g" points="300,300 400,300 400,340"/>'
        + '<polyline id="p" points="300,0 400,0 400,60 300,60 300,0"/>'
        + '<path id="q" d="M300 100 h100 v80 q-50 60 -100 0 z"/></svg>'
    )
    areas = {o.source.split(", ")[1]: o.area for o in read(tmp_path, text)}
    # a parabola of height h over a chord s encloses 2/3 s h (Archimedes); its height is half that of its control point
    wanted = {"r": 1200, "c": pi * 2500, "e": pi * 1200, "g": 2000, "p": 6000, "q": 8000 + 100 * 30 * 2 / 3}
    assert areas == pytest.approx(wanted, rel=5e-4)


def test_nested_transforms_and_uses(tmp_path):
    text = (
        MM
        + '<defs><g id="part" transform="translate(10 0)"><path id="x" d="M0 0 100 0 100 50 0 50z"/></g></defs>'
        + '<g transform="rotate(90)"><g transform="scale(2)"><use xlink:href="#part" x="5" y="-100"/></g></g></svg>'
    )
    (found,) = read(tmp_path, text)
    # the group moves by 10 and 5, is scaled by 2 and turned by 90 degrees: x' = -2 y, y' = 2 x; then y is turned up
    corners = shapely.Polygon([(2 * (100 - y), -2 * (x + 15)) for x, y in ((0, 0), (100, 0), (100, 50), (0, 50))])
    assert (
        shapely.Polygon([(p.real, p.imag) for p in found.points]).symmetric_difference(corners).area < 0.1
    )  # of 20,000


def test_loose_lines_of_a_group_are_joined(tmp_path):
    sides = '<line x1="0" y1="0" x2="100" y2="0"/><line x1="100" y1="80" x2="100.3" y2="0"/>'
    text = MM + f'<g id="leg">{sides}<path d="M100 80L0 80L0 0"/></g></svg>'
    (found,) = read(tmp_path, text)
    assert found.area == pytest.approx(8000, rel=0.01)
    with pytest.raises(DraftError, match="closed line"):
        read(tmp_path, text, join=0.1)


def test_one_path_of_two_outlines_gives_two(tmp_path):
    found = read(tmp_path, MM + '<path d="M0 0H100V100H0ZM200 0H260V60H200Z"/></svg>')
    assert [round(o.area) for o in found] == [10000, 3600]


def test_curves_keep_within_a_hundredth_of_a_millimetre(tmp_path):
    (found,) = read(tmp_path, MM + '<circle cx="200" cy="200" r="150"/></svg>')
    ring = shapely.Polygon([(p.real, p.imag) for p in found.points]).exterior
    circle = shapely.Point(200 * 1.0, -200 * 1.0).buffer(150, quad_segs=2000).exterior
    # the arc is drawn by cubics of at most 90 degrees, which stray from a circle by 0.00027 of its radius (known)
    assert ring.hausdorff_distance(circle) < 0.01 + 0.00028 * 150


BOMB = '<!DOCTYPE svg [<!ENTITY a "ha">' + "".join(
    f'<!ENTITY {b} "{f"&{a};" * 10}">' for a, b in zip("abcdefghi", "bcdefghij", strict=True)
)
USES = "".join(f'<g id="u{k + 1}">' + f'<use href="#u{k}"/>' * 10 + "</g>" for k in range(9))
HOSTILE = {
    "empty": "",
    "blank": "  \n ",
    "rubbish": bytes(range(256)) * 40,
    "png": b"\x89PNG\r\n\x1a\n" + b"\0" * 500,
    "truncated": MM + '<path d="M0 0H100V100H0Z"/><g><path d="M0 0H1',
    "another kind of xml": "<html><body/></html>",
    "text": "cut two of these",
    "no lines": MM + "<text>front</text></svg>",
    "entity bomb": f"{BOMB}]>{MM}<text>&j;</text></svg>",
    "outside entity": f'<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/hostname">]>{MM}<text>&x;</text></svg>',
    "use bomb": f'{MM}<defs><path id="u0" d="M0 0H100V100H0Z"/>{USES}</defs><use href="#u9"/></svg>',
    "use of itself": f'{MM}<g id="a"><use href="#a"/></g></svg>',
    "deep": MM + "<g>" * 5000 + "</g>" * 5000 + "</svg>",
    "million points": MM + '<path d="M0 0' + "".join(f"L{k % 997} {k % 1009}" for k in range(1_000_000)) + 'Z"/></svg>',
    "many points": MM + '<path d="M0 0' + "".join(f"L{k % 997} {k % 1009}" for k in range(120_000)) + 'Z"/></svg>',
    "many crossings": MM + '<path d="M0 0' + "".join(f"L{k % 97} {k % 101}" for k in range(20_000)) + 'Z"/></svg>',
    "nan": MM + '<path d="M0 0L100 NaN L100 100Z"/></svg>',
    "inf": MM + '<polygon points="0,0 inf,0 100,100"/></svg>',
    "infinite by exponent": MM + '<polygon points="0,0 1e999,0 100,100"/></svg>',
    "far away": MM + '<polygon points="0,0 1e9,0 100,1e9"/></svg>',
    "crossed": MM + '<path d="M0 0L200 200L200 0L0 200Z"/></svg>',
    "no area": MM + '<path d="M0 0L250 0L300 0Z"/></svg>',
    "tiny": MM + '<path d="M0 0L2 0L2 2Z"/></svg>',
    "open": MM + '<path d="M0 0L200 0L200 200"/></svg>',
    "scale of nothing": MM + '<g transform="scale(0)"><path d="M0 0H100V100H0Z"/></g></svg>',
    "transform of nan": MM + '<g transform="scale(nan)"><path d="M0 0H100V100H0Z"/></g></svg>',
}


@pytest.mark.parametrize("kind", HOSTILE)
def test_a_damaged_file_is_told_in_one_sentence_and_soon(tmp_path, kind):
    start = time.perf_counter()
    with pytest.raises(DraftError) as told:
        read(tmp_path, HOSTILE[kind])
    assert time.perf_counter() - start < LIMIT_S
    error = told.value
    assert error.field
    assert error.expected
    assert error.remedy
    assert len(str(error)) < 400
    assert len(error.many) == 1


@pytest.mark.parametrize("name", ["missing.svg", "."])
def test_a_file_that_cannot_be_read_is_told(tmp_path, name):
    with pytest.raises(DraftError, match="a file that can be read"):
        read_svg(tmp_path / name)


def test_a_plain_doctype_is_no_fault(tmp_path):
    text = '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">' + MM
    assert len(read(tmp_path, text + '<path d="M0 0H100V100H0Z"/></svg>')) == 1


def test_a_turned_square_keeps_its_sides(tmp_path):
    (found,) = read(tmp_path, MM + '<rect x="200" width="100" height="100" transform="rotate(45 200 0)"/></svg>')
    assert found.size == pytest.approx((100 * sqrt(2), 100 * sqrt(2)))
