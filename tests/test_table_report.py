"""The report says where a pattern comes from and what came out; tables line up and are safe as HTML."""

from __future__ import annotations

import re
from dataclasses import replace
from html.parser import HTMLParser

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from styles import NAMED
from zoo import ZOO

import draft
from draft.methods import METHODS
from draft.report import CAUTION, cutting_table, seam_table
from draft.table import Table
from draft.units import fmt

TEXT = st.text(st.characters(codec="ascii", exclude_characters="\n\r\x0b\x0c\x1c\x1d\x1e"), max_size=12)
PRINTABLE = TEXT.filter(lambda text: text.isprintable())


# Tables


def columns(text: str) -> list[tuple[int, int]]:
    """Where the columns of a printed table run, from its rule."""
    return [match.span() for match in re.finditer("-+", text.splitlines()[2])]


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(PRINTABLE, PRINTABLE, st.floats(-1e6, 1e6).map(fmt)), max_size=6))
def test_cells_stand_under_their_headings(rows):
    table = Table("Title", ("first heading", "second", "mm"), tuple(rows))
    lines = str(table).splitlines()
    assert lines[0] == "Title"
    assert len(lines) == 3 + len(rows)
    assert all(line == line.rstrip() for line in lines[1:])
    spans = columns(str(table))
    assert len(spans) == 3
    for row, line in zip(rows, lines[3:], strict=True):
        for cell, (start, stop) in zip(row, spans, strict=True):
            assert line[start:stop].strip() == cell.strip()
        assert line.endswith(row[-1])
        assert len(line) == spans[-1][1]


def test_numbers_are_set_to_the_right_and_text_to_the_left():
    table = Table("", ("where", "mm", "how"), (("waist", "730.0", "measured"), ("hip", "-1004.25", ""), ("", "", "5")))
    assert str(table).splitlines()[1:] == [
        "where        mm  how",
        "-----  --------  --------",
        "waist     730.0  measured",
        "hip    -1004.25",
        "                 5",
    ]


def test_column_of_text_with_one_number_stays_left():
    lines = str(Table("", ("a",), (("long text",), ("7",)))).splitlines()
    assert lines[-1] == "7"


class Cells(HTMLParser):
    """Rows of a table, read back."""

    def __init__(self, html: str) -> None:
        super().__init__()
        self.rows: list[list[str]] = []
        self.tags: list[str] = []
        self.caption = ""
        self.feed(html)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        if tag == "tr":
            self.rows.append([])
        if tag in ("td", "th"):
            self.rows[-1].append("")

    def handle_data(self, data: str) -> None:
        if self.tags[-1] == "caption":
            self.caption += data
        else:
            self.rows[-1][-1] += data


NASTY = st.sampled_from(["<script>alert(1)</script>", 'a "quoted" & <b>', "'", "</td><td>", "&amp;", "Zoë"]) | PRINTABLE


@settings(max_examples=60, deadline=None)
@given(NASTY, st.lists(st.tuples(NASTY, NASTY), max_size=4))
def test_html_holds_every_cell_and_no_tag_of_theirs(title, rows):
    """Read back with the parser of the standard library."""
    html = Table(title, ("<where>", "what"), tuple(rows)).html()
    read = Cells(html)
    assert read.caption == title
    assert read.rows == [["<where>", "what"], *(list(row) for row in rows)]
    assert set(read.tags) <= {"table", "caption", "thead", "tbody", "tr", "th", "td"}


def test_numeric_columns_are_set_to_the_right_in_html_too():
    html = Table("t", ("where", "mm"), (("hip", "1004.2"),)).html()
    assert '<td align="left">hip</td><td align="right">1004.2</td>' in html
    assert Table("t", ("a",), ()).html() == Table("t", ("a",), ())._repr_html_()


# Report


@pytest.fixture(scope="module")
def woman() -> draft.Pattern:
    return draft.shorts(ZOO["woman"])


def test_report_begins_with_the_name_and_the_method(woman):
    report, method = woman.report(), METHODS["centre_line"]
    assert report.splitlines()[0] == woman.name == "Shorts for woman"
    assert f"Method: {method.title} ({method.source})" in report
    assert "Fit: measured" in report
    assert "Fit: formula" in draft.shorts(ZOO["woman"], fit="formula").report()


def test_report_is_headed_by_the_name_of_the_style():
    pattern = draft.trousers(replace(ZOO["woman"], name="B"), draft.Style(name="Summer <1>"))
    assert pattern.report().startswith("Summer <1> for B\n")
    assert draft.trousers(replace(ZOO["woman"], name="")).report().startswith("Trousers\n")


@pytest.mark.parametrize("asked", ["waist", "hip", "thigh"])
def test_report_tells_whose_ease_it_is(asked):
    """The asked one as asked, with its size; the other two as the method's own, as measured on the pattern."""
    wanted = {"waist": 21.0, "hip": 83.0, "thigh": 88.0}[asked]
    body = ZOO["woman"]
    pattern = draft.shorts(body, draft.Style(ease=draft.Ease(**{asked: wanted})), fit="formula")
    (line,) = [line for line in pattern.report().splitlines() if line.startswith("Ease in cloth")]
    told = {name: (float(mm), whose) for name, mm, whose in re.findall(r"(\w+) (-?[\d.]+) mm \(([^)]*)\)", line)}
    assert set(told) == {"waist", "hip", "thigh"}
    sizes = pattern.measure()
    for name, (mm, whose) in told.items():
        assert whose == ("as asked" if name == asked else "the method's own")
        assert mm == pytest.approx(sizes[name] - body.known(name), abs=0.3)
    assert told[asked][0] == pytest.approx(wanted, abs=0.1)


def test_report_tells_the_ease_at_a_lower_waist_seam():
    pattern = draft.shorts(ZOO["woman"], draft.Style(waist_drop=40))
    own = pattern.measure()["waist"] - ZOO["woman"].girth_at(40)
    assert f"waist seam {own:.1f} mm (40 below the waist)" in pattern.report()
    assert "waist seam" not in draft.shorts(ZOO["woman"]).report().split("Finished sizes")[0]


@pytest.mark.parametrize("body", ["only required", "toddler", "woman"])
def test_report_lists_every_estimated_measure_with_its_deviation(body):
    bare = replace(ZOO[body], thigh=None, knee=None, front_crotch=None) if body != "woman" else ZOO[body]
    report = draft.shorts(bare).report()
    if not bare.estimates:
        assert "No measure was estimated." in report
        return
    block = next(part for part in report.split("\n\n") if part.startswith("Not given, estimated"))
    lines = block.splitlines()
    assert len(lines) == 3 + len(bare.estimates)
    spans = columns(block)
    for estimate, line in zip(bare.estimates, lines[3:], strict=True):
        cells = [line[start : None if k == 2 else stop].strip() for k, (start, stop) in enumerate(spans)]
        assert cells[0] == estimate.field.replace("_", " ")
        assert f" {fmt(estimate.value, 0)} " in cells[1]
        off = "how far off is not known" if estimate.sd is None else f"+- {fmt(estimate.sd, 0)} mm (1 SD)"
        assert off in cells[1]
        assert cells[2] == estimate.method
    assert any(estimate.sd for estimate in bare.estimates) or bare.hip < 860


def test_report_tells_what_the_fit_asked_and_got(woman):
    block = woman.report().split("Fitted lengths")[1].split("\n\n")[0]
    for name, aim in woman.targets().items():
        (row,) = [line for line in block.splitlines() if line.startswith(f"{name.replace('_', ' ')}  ")]
        assert row.split()[-2:] == [f"{aim:.1f}", f"{woman.measure()[name]:.1f}"]


def test_report_compares_crotch_lengths_that_it_does_not_fit():
    woman = draft.shorts(ZOO["woman"], fit="formula")
    sizes = woman.measure()
    for name in ("front_crotch", "back_crotch"):
        line = f"body {getattr(woman.body, name):.1f}, pattern {sizes[name]:.1f} mm (not fitted)"
        assert f"{name.replace('_', ' ')}: {line}" in woman.report()
    assert "not fitted" not in draft.shorts(ZOO["only required"]).report()


def test_report_names_the_zip_and_its_opening(woman):
    stop = woman.pieces["front"].edge("fly").length
    (told,) = re.findall(r"zip: (\d+) mm from stop to stop \(opening (\d+) mm\)", woman.report())
    assert float(told[1]) == pytest.approx(stop, abs=0.5)
    assert float(told[0]) == 10 * ((stop - 5) // 10)


def test_report_ends_with_the_cautions(woman):
    report = woman.report()
    assert report.endswith(CAUTION)
    for word in ("cut away from the body", "iron", "children", "cords", "flammability"):
        assert word in CAUTION


@pytest.mark.parametrize("style", NAMED)
def test_report_holds_sizes_seams_findings_and_the_cutting_list(style):
    pattern = draft.shorts(ZOO["man"], NAMED[style])
    report = pattern.report()
    for table in (pattern.measure().table(), seam_table(pattern), cutting_table(pattern)):
        assert str(table) in report
    assert str(pattern.check()) in report
    assert [row[0] for row in cutting_table(pattern).rows] == [piece.title for piece in pattern.pieces.values()]
    seams = {row[0]: row for row in seam_table(pattern).rows}
    for seam in pattern.seams:
        row = seams[seam.name]
        if sum(s.name == seam.name for s in pattern.seams) == 1:
            assert [float(cell) for cell in row[3:]] == pytest.approx(
                [seam.length_a, seam.length_b, seam.ease, seam.difference], abs=0.051
            )


def test_report_of_any_garment_is_plain_text_without_odd_numbers():
    for body in ZOO.values():
        report = draft.trousers(body).report()
        assert not re.search(r"\bnan\b|\binf\b|np\.float|-0\.0\b|None", report)
        assert all(line == line.rstrip() for line in report.splitlines())
