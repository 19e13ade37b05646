"""SVG files read back: xml.etree and the small path parser below stand outside the library, shapely measures."""

import os
import re
import stat
from dataclasses import replace
from itertools import combinations
from types import SimpleNamespace
from xml.etree import ElementTree

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapes import as_line, as_points, sampled
from styles import NAMED
from zoo import ZOO

import draft
from draft.drawing.sheet import arrange
from draft.drawing.strokes import LOOKS
from draft.errors import DraftError
from draft.export import svg
from draft.export.files import write_bytes, write_text
from draft.geometry.segments import Line

FILE_TOL_MM = 0.01
STEPS = 100  # chords stray from these curves by less than 0.005 mm
NASTY = "<b>&\"']]>\x07 \u2028é"

NUMBER = r"[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?"
WANTS = {"M": 1, "L": 1, "C": 3}


def parsed(data):
    """Subpaths of path data as lists of control points; M, L, C and Z as SVG 1.1 chapter 8.3 has them (from memory)."""
    subpaths = []
    for letter, rest in re.findall(r"([MLCZ])([^MLCZ]*)", data):
        numbers = [float(n) for n in re.findall(NUMBER, rest)]
        points = [complex(x, y) for x, y in zip(numbers[::2], numbers[1::2], strict=True)]
        if letter == "M":
            assert len(points) == 1
            subpaths.append([])
            start = here = points[0]
        elif letter == "Z":
            if here != start:
                subpaths[-1].append((here, start))
            here = start
        else:
            assert len(points) == WANTS[letter]
            subpaths[-1].append((here, *points))
            here = points[-1]
    assert re.fullmatch(rf"(?:[MLCZ]|{NUMBER}|[ ,])*", data), "nothing but these commands"
    return subpaths


def drawn(subpath, steps=STEPS):
    """Points along lines and cubics by Bernstein's polynomials."""
    t = np.arange(steps + 1) / steps
    runs = []
    for controls in subpath:
        if len(controls) == 2:
            runs.append(np.array(controls))
        else:
            a, b, c, d = controls
            runs.append(a * (1 - t) ** 3 + 3 * b * t * (1 - t) ** 2 + 3 * c * t**2 * (1 - t) + d * t**3)
    return np.concatenate(runs)


class Read:
    """A file taken apart: root, groups by id, and what turns drawing coordinates back into those of a piece."""

    def __init__(self, text, pattern):
        self.root = ElementTree.fromstring(text.encode())
        self.height = float(self.root.get("viewBox").split()[3])
        self.by_id = {e.get("id"): e for e in self.root.iter() if e.get("id")}
        self.shifts = {place.piece.name: place.shift for place in arrange(pattern.pieces.values()).places}

    def paths(self, name, kind):
        """Subpaths of a kind of line on the sheet, y up."""
        data = [e.get("d") for e in self.by_id[f"{name}-{kind}"] if tag(e) == "path"]
        return [
            [tuple(complex(p.real, self.height - p.imag) for p in controls) for controls in subpath]
            for d in data
            for subpath in parsed(d)
        ]

    def line(self, name, kind):
        """Points of the one closed line of a kind in the piece's own coordinates."""
        (subpath,) = self.paths(name, kind)
        assert subpath[0][0] == subpath[-1][-1], "closed"
        return drawn(subpath) - self.shifts[name]


def farthest(points, others):
    """Largest distance of points from the polyline through others."""
    line = as_line(others)
    shapely.prepare(line)
    return shapely.distance(line, as_points(points)).max()


def tag(element):
    return element.tag.rpartition("}")[2]


def polygon(points):
    return shapely.Polygon(np.column_stack([points.real, points.imag]))


def patterns():
    yield "shorts", draft.shorts(ZOO["woman"])
    yield "trousers", draft.trousers(ZOO["very large"])
    yield "toddler", draft.shorts(ZOO["toddler"])
    for name in ("plain hem", "front dart, no pocket", "right over left, sections", "no interfacing"):
        yield name, draft.trousers(ZOO["man"], NAMED[name])


PATTERNS = dict(patterns())


@pytest.fixture(scope="module", params=PATTERNS)
def pattern(request):
    return PATTERNS[request.param]


@pytest.fixture(scope="module")
def read(pattern):
    return Read(svg.text_of(pattern), pattern)


@pytest.mark.parametrize("kind", ["sew", "cut"])
def test_outlines_are_read_back_within_a_hundredth(pattern, read, kind):
    for name, piece in pattern.pieces.items():
        path = piece.sew_line if kind == "sew" else piece.cut_line
        found, expected = read.line(name, kind), sampled(path, STEPS)
        there, back = farthest(found, expected), farthest(expected, found)
        assert max(there, back) <= FILE_TOL_MM, f"{name}: {there:.5f} and {back:.5f} mm"


def test_grain_and_inner_lines_are_read_back_within_a_hundredth(pattern, read):
    for name, piece in pattern.pieces.items():
        grain = drawn(read.paths(name, "grain")[0]) - read.shifts[name]
        assert np.abs(grain - np.array(piece.grainline.controls)).max() <= FILE_TOL_MM
        for kind in {line.kind for line in piece.lines}:
            lines = [line.path for line in piece.lines if line.kind == kind]
            for subpath, path in zip(read.paths(name, kind), lines, strict=True):
                assert farthest(drawn(subpath) - read.shifts[name], sampled(path, STEPS)) <= FILE_TOL_MM


def test_notches_run_from_the_cut_line_towards_the_sew_line(pattern, read):
    for name, piece in pattern.pieces.items():
        slits = read.paths(name, "notches") if f"{name}-notches" in read.by_id else []
        assert len(slits) == sum(n.count for n in piece.notches)
        cut, sew = polygon(read.line(name, "cut")), polygon(read.line(name, "sew"))
        for ((start, end),) in slits:
            outer, inner = (shapely.Point(p.real, p.imag) for p in (start - read.shifts[name], end - read.shifts[name]))
            assert cut.exterior.distance(outer) <= FILE_TOL_MM
            assert cut.buffer(FILE_TOL_MM).covers(inner)  # on the line at the end of an edge on the fold
            assert not sew.contains(inner)


def test_pieces_and_test_squares_lie_apart_on_the_sheet(pattern, read):
    shapes = [polygon(read.line(name, "cut") + read.shifts[name]) for name in pattern.pieces]
    assert all(shape.is_valid for shape in shapes)
    shapes += [square(read, name) for name in ("test-square-100-mm", "test-square-4-in")]
    for one, two in combinations(shapes, 2):
        assert one.distance(two) >= 19.9, "the gap"
    width, height = (float(v) for v in read.root.get("viewBox").split()[2:])
    assert shapely.box(0, 0, width, height).contains(shapely.union_all(shapes))


def square(read, name):
    x, y, w, h = (float(read.by_id[name].get(k)) for k in ("x", "y", "width", "height"))
    return shapely.box(x, read.height - y - h, x + w, read.height - y)


@pytest.mark.parametrize(
    ("name", "side", "words"),
    [("test-square-100-mm", 100.0, "100 mm"), ("test-square-4-in", 4 * 25.4, "4 in (101.6 mm)")],
)
def test_squares_measure_what_they_say(read, name, side, words):
    rect = read.by_id[name]
    assert float(rect.get("width")) == float(rect.get("height")) == pytest.approx(side, abs=1e-9)
    beside = [e for e in read.by_id["test-squares"] if tag(e) == "text" and e.text == words]
    assert len(beside) == 1
    assert square(read, name).contains(
        shapely.Point(float(beside[0].get("x")), read.height - float(beside[0].get("y")))
    )


def test_one_unit_is_one_millimetre(read):
    left, top, width, height = read.root.get("viewBox").split()
    assert (left, top) == ("0", "0")
    assert (read.root.get("width"), read.root.get("height")) == (f"{width}mm", f"{height}mm")


def test_nothing_is_scaled_and_nothing_needs_a_style_sheet(read):
    for element in read.root.iter():
        assert tag(element) not in ("style", "script", "marker", "use", "image")
        assert {"class", "style"}.isdisjoint(element.keys())
        assert re.fullmatch(r"rotate\([-\d. ]+\)", element.get("transform", "rotate(0)"))


def test_names_and_descriptions_are_found_by_their_ids(pattern, read):
    ids = [e.get("id") for e in read.root.iter() if e.get("id")]
    assert len(ids) == len(set(ids))
    assert read.root.get("role") == "img"
    described = [e for e in read.root.iter() if e.get("aria-labelledby")]
    assert len(described) == 1 + len(pattern.pieces)
    for element in described:
        title, desc = (read.by_id[name] for name in element.get("aria-labelledby").split())
        assert (list(element)[:2], tag(title), tag(desc)) == ([title, desc], "title", "desc")
        assert title.text
        assert desc.text
    for name, piece in pattern.pieces.items():
        assert read.by_id[f"{name}-title"].text == piece.title
        assert {f"{name}-{kind}" for kind in ("cut", "sew", "grain", "text")} <= set(ids)


def test_metadata_tells_title_unit_and_scale(pattern, read):
    words = " ".join(e.text for e in read.root.iter() if "purl.org" in e.tag)
    assert pattern.name in words
    assert "units: mm; scale 1:1" in words


def test_every_kind_of_line_differs_in_dash_or_weight():
    assert len({(look.width, look.dash) for look in LOOKS.values()}) == len(LOOKS)


def test_kinds_carry_their_look_in_plain_attributes(pattern, read):
    for name in pattern.pieces:
        for kind, look in LOOKS.items():
            group = read.by_id.get(f"{name}-{kind}")
            if group is not None:
                assert (group.get("fill"), group.get("stroke")) == ("none", look.colour)
                assert float(group.get("stroke-width")) == look.width
                assert group.get("stroke-dasharray", "") == look.dash


def test_label_and_notes_are_written(pattern, read):
    for name, piece in pattern.pieces.items():
        words = " ".join(e.text for e in read.by_id[f"{name}-text"])
        for line in (piece.title, str(piece.cut), piece.made_for, *(line.note for line in piece.lines if line.note)):
            assert line in words


def test_awkward_names_survive(tmp_path):
    shorts = PATTERNS["shorts"]
    pieces = {name: replace(piece, made_for=NASTY, notes=(NASTY,)) for name, piece in shorts.pieces.items()}
    pattern = SimpleNamespace(name=NASTY, pieces=pieces)
    read = Read(svg.save(pattern, tmp_path / "a.svg").read_text("utf-8"), pattern)
    kept = "<b>&\"']]> é"
    assert read.by_id["sheet-title"].text == kept
    for name in pieces:
        assert "".join(read.by_id[f"{name}-text"].itertext()).count(kept) == 2


def test_awkward_piece_names_make_good_ids():
    piece = draft.shorts(ZOO["woman"]).pieces["front"]
    twins = {f"{i}": replace(piece, name=name) for i, name in enumerate(("2 <b>", "2 <b>", "", "sheet", "été"))}
    root = ElementTree.fromstring(svg.text_of(SimpleNamespace(name="twins", pieces=twins)))
    ids = [e.get("id") for e in root.iter() if e.get("id")]
    assert len(ids) == len(set(ids))
    assert all(re.fullmatch(r"[A-Za-z][\w-]*", name, re.ASCII) for name in ids)


def test_the_same_pattern_gives_the_same_file():
    one, two = (svg.text_of(draft.shorts(ZOO["man"])) for _ in range(2))
    assert one == two


def test_a_coordinate_that_is_no_number_never_reaches_a_file(tmp_path):
    pattern = draft.shorts(ZOO["woman"])
    front = pattern.pieces["front"]
    broken = replace(front, grainline=Line(complex("nan"), 0j))
    with pytest.raises(DraftError, match="expected a finite number"):
        svg.save(SimpleNamespace(name="broken", pieces={"front": broken}), tmp_path / "a.svg")
    assert not list(tmp_path.iterdir())


# The sheet


@settings(max_examples=60, deadline=None)
@given(st.sets(st.sampled_from(sorted(PATTERNS["plain hem"].pieces)), min_size=1), st.floats(0, 60), st.booleans())
def test_arranged_bounding_boxes_lie_apart(names, gap, narrow):
    pieces = [PATTERNS["plain hem"].pieces[name] for name in sorted(names)]
    width = gap + max(241.6, *(p.bounds[2] - p.bounds[0] + 1 for p in pieces)) if narrow else None
    sheet = arrange(pieces, gap, width)
    boxes = [
        shapely.box(sheet.squares.real, sheet.squares.imag, sheet.squares.real + 221.6, sheet.squares.imag + 101.6)
    ]
    for place in sheet.places:
        left, bottom, right, top = place.piece.bounds
        x, y = place.shift.real, place.shift.imag
        boxes.append(shapely.box(left + x, bottom + y, right + x, top + y))
    assert {place.piece.name for place in sheet.places} == names
    for one, two in combinations(boxes, 2):
        assert one.distance(two) >= gap - 1e-6
        assert one.intersection(two).area == 0
    page = shapely.box(-1e-6, -1e-6, sheet.width + 1e-6, sheet.height + 1e-6)
    assert all(page.contains(box) for box in boxes)
    assert width is None or sheet.width == pytest.approx(width)


def test_front_and_back_come_first():
    sheet = arrange(reversed(PATTERNS["shorts"].pieces.values()))
    assert [place.piece.name for place in sheet.places[:2]] == ["front", "back"]


@pytest.mark.parametrize(
    ("given", "message"),
    [
        ({"width": 300}, r"width is 300, expected \d+ mm or more for \w+: take a wider sheet"),
        ({"width": float("nan")}, r"width is nan, expected \d+ mm or more .*: take a wider sheet"),
        ({"gap": -1}, r"gap is -1, expected 0 mm or more: leave about 20 mm"),
        ({"gap": float("inf")}, r"gap is inf, expected 0 mm or more: leave about 20 mm"),
    ],
)
def test_impossible_sheets_are_refused(given, message):
    with pytest.raises(DraftError, match=message):
        arrange(PATTERNS["shorts"].pieces.values(), **given)


# Files

PLACE = "expected the name of a file in a folder that exists"
BAD_PATHS = [
    ("empty", lambda tmp: "", rf"path is '', {PLACE}: name a file"),
    ("blank", lambda tmp: "  ", rf"path is '  ', {PLACE}: name a file"),
    ("zero character", lambda tmp: f"{tmp}/a\0b.svg", rf"path is .*, {PLACE}: leave the zero character out"),
    ("a folder", lambda tmp: tmp, rf"path is .*, {PLACE}, and this is a folder: add the name of the file"),
    ("this folder", lambda tmp: ".", rf"path is '\.', {PLACE}, and this is a folder: add the name"),
    ("ends as a folder", lambda tmp: f"{tmp}/new/", rf"path is .*/new/', {PLACE}: add the name of the file"),
    ("no such folder", lambda tmp: tmp / "no" / "a.svg", rf"path is .*, {PLACE}: make the folder .*no' first"),
    ("folder is a file", lambda tmp: tmp / "old.svg" / "a.svg", rf"path is .*, {PLACE}: choose another .* is a file"),
    ("below a file", lambda tmp: tmp / "old.svg" / "b" / "a.svg", rf"path is .*, {PLACE}: choose another .* is a file"),
    ("link to nowhere", lambda tmp: tmp / "lost.svg", rf"path is .*lost.svg', {PLACE}: make the folder .*gone' first"),
    ("a pipe", lambda tmp: tmp / "pipe", r"path is .*pipe', expected an ordinary file.*: choose another name"),
    ("too long", lambda tmp: tmp / ("x" * 300 + ".svg"), r"path is .*, expected a file that can be written: choose"),
    ("half a character", lambda tmp: f"{tmp}/\ud800.svg", r"path is .*, expected a file that can be written: choose"),
    ("bytes", lambda tmp: b"a.svg", rf"path is b'a.svg', {PLACE}: write it as text or as a pathlib.Path"),
    ("a number", lambda tmp: 7, rf"path is 7, {PLACE}: write it as text"),
    ("nothing", lambda tmp: None, rf"path is missing, {PLACE}: write it as text"),
    ("a list", lambda tmp: ["a.svg"], rf"path is 'list', {PLACE}: write it as text"),
]


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "old.svg").write_text("old")
    (tmp_path / "lost.svg").symlink_to(tmp_path / "gone" / "a.svg")
    os.mkfifo(tmp_path / "pipe")
    return tmp_path


@pytest.mark.parametrize(("make", "message"), [row[1:] for row in BAD_PATHS], ids=[row[0] for row in BAD_PATHS])
def test_bad_paths_are_told_and_leave_nothing(folder, monkeypatch, make, message):
    monkeypatch.chdir(folder)
    before = sorted(p.name for p in folder.rglob("*"))
    with pytest.raises(DraftError, match=message) as caught:
        PATTERNS["shorts"].save_svg(make(folder))
    assert caught.value.field == "path"
    assert len(caught.value.many) == 1
    assert sorted(p.name for p in folder.rglob("*")) == before
    assert (folder / "old.svg").read_text() == "old"


def failing(error):
    def fail(*given, **named):
        raise error

    return fail


DENIED = PermissionError(13, "Permission denied")
FAILURES = [
    ("disk full", "os.fsync", OSError(28, "No space left on device"), DraftError, "no space left"),
    (
        "cannot rename",
        "pathlib.Path.replace",
        PermissionError(13, "Permission denied"),
        DraftError,
        "permission denied",
    ),
    ("cannot create", "pathlib.Path.open", DENIED, DraftError, "permission denied"),
    ("stopped by hand", "os.fsync", KeyboardInterrupt("stopped"), KeyboardInterrupt, "stopped"),
]


@pytest.mark.parametrize(
    ("where", "error", "raised", "message"), [row[1:] for row in FAILURES], ids=[row[0] for row in FAILURES]
)
def test_a_failed_write_keeps_the_old_file(tmp_path, monkeypatch, where, error, raised, message):
    target = tmp_path / "a.svg"
    target.write_text("old")
    with monkeypatch.context() as patch:
        patch.setattr(where, failing(error))
        with pytest.raises(raised, match=message):
            PATTERNS["shorts"].save_svg(target)
    assert target.read_text() == "old"
    assert [p.name for p in tmp_path.iterdir()] == ["a.svg"]


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="the superuser may write everywhere")
def test_an_unwritable_folder_is_told(tmp_path):
    tmp_path.chmod(0o500)
    try:
        with pytest.raises(DraftError, match=r"expected a file that can be written: choose another place \(permission"):
            write_text(tmp_path / "a.svg", "x")
    finally:
        tmp_path.chmod(0o700)


def test_overwriting_replaces_content_and_keeps_rights(tmp_path):
    target = tmp_path / "a.svg"
    write_text(target, "old")
    target.chmod(0o640)
    assert write_text(str(target), "new\r\né") == target
    assert target.read_bytes() == "new\r\né".encode()
    assert stat.S_IMODE(target.stat().st_mode) == 0o640


def test_new_files_have_the_rights_of_any_new_file(tmp_path):
    (tmp_path / "plain").write_text("")
    write_bytes(tmp_path / "a.svg", b"")
    assert (tmp_path / "a.svg").stat().st_mode == (tmp_path / "plain").stat().st_mode


def test_a_link_to_a_file_is_followed(tmp_path):
    (tmp_path / "real.svg").write_text("old")
    link = tmp_path / "link.svg"
    link.symlink_to("real.svg")
    write_text(link, "new")
    assert link.is_symlink()
    assert (tmp_path / "real.svg").read_text() == "new"


@pytest.mark.parametrize(
    ("write", "content", "message"),
    [
        (write_text, b"x", "text is 'bytes', expected text: use write_bytes"),
        (write_bytes, "x", "content is 'str', expected bytes: use write_text"),
        (write_text, "\ud800", r"text is '\\ud800', expected characters that utf-8 can write: leave"),
    ],
)
def test_wrong_content_is_told(tmp_path, write, content, message):
    with pytest.raises(DraftError, match=message):
        write(tmp_path / "a.svg", content)
    assert not list(tmp_path.iterdir())
