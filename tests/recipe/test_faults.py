"""Whatever is wrong in a file is one DraftError that names the key, the line and the way out."""

from __future__ import annotations

import os
import re
import time
from datetime import date, datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from zoo import WOMAN

import draft
from draft.recipe import Fitting, Recipe, load
from draft.recipe.lines import lines_of
from draft.recipe.reading import LARGEST_FILE
from draft.recipe.recipe import of_text

GOOD = """\
format = 1
garment = "shorts"
method = "centre_line"
fit = "measured"
[body]
waist = 740
hip = 1000
crotch_depth = 270
waist_to_hip = 200
inside_leg = 770

[style]
name = "Boat"
waist_drop = 10
[style.leg]
inside_leg = 140
[style.hem]
kind = "TurnedCuff"
depth = 40
[[style.small_parts]]
kind = "BeltLoops"
[[style.small_parts]]
kind = "BiasBinding"
edges = ["waist"]

[[mock_up]]
date = 2026-03-01
notes = \"\"\"
[style]
waist_drop = 99
\"\"\"
[[mock_up.alterations]]
name = "sway_back"
by = 12
"""

# (name, text in the file, what stands in its place, what is told)
WRONG = [
    ("no version", "format = 1", "", r"format \(f\.toml\) is missing, expected 1: write format = 1 on top"),
    ("newer version", "format = 1", "format = 2", r"format \(line 1 of f\.toml\) is 2, .*newer version"),
    ("version in words", "format = 1", 'format = "1"', r"format \(line 1 .*\) is '1', expected 1"),
    ("version is true", "format = 1", "format = true", r"format \(line 1 .*\) is True, expected 1"),
    ("unknown top key", "garment", "garmnet", r"garmnet \(line 2 .*\) is 'shorts'.*write 'garment'"),
    ("text of the recipe", "garment =", "text =", r"text \(line 2 .*expected one of format, body, .*mock_up: "),
    ("wrong garment", '"shorts"', '"skirt"', r"garment \(line 2 .*\) is 'skirt', expected 'shorts' or 'trousers'"),
    ("garment is a list", '"shorts"', '["shorts"]', r"garment \(line 2 .*\) is \['shorts'\]"),
    ("unknown method", '"centre_line"', '"center_line"', r"method \(line 3 .*write 'centre_line'"),
    ("method is a number", '"centre_line"', "3", r"method \(line 3 .*\) is 3, expected the name of a method"),
    ("unknown fit", '"measured"', '"exact"', r"fit \(line 4 .*\) is 'exact', expected 'measured' or 'formula'"),
    ("fit is a list", '"measured"', "[]", r"fit \(line 4 .*\) is \[\], expected"),
    ("no body", re.search(r"\[body\][^[]*", GOOD).group(), "", r"body \(f\.toml\) is missing, .*write \[body\]"),
    ("body is a number", re.search(r"\[body\][^[]*", GOOD).group(), "body = 3\n", r"body \(line 5 .*\) is 3, .*table"),
    ("misspelt measure", "waist = 740", "wasit = 740", r"body\.wasit \(line 6 .*\) is 740.*write waist instead"),
    ("missing measure", "waist = 740\n", "", r"body\.waist \(line 5 .*\) is missing"),
    ("measure in no unit", "waist = 740", 'waist = "74 cubits"', r"body\.waist \(line 6 .*\) is '74 cubits'"),
    ("measure in cm", "waist = 740", "waist = 74", r"body\.waist \(line 6 .*write \"74 cm\" or 740"),
    ("measure is a list", "waist = 740", "waist = [740]", r"body\.waist \(line 6 .*\) is \[740\]"),
    ("measure is no number", "waist = 740", "waist = nan", r"body\.waist \(line 6 .*\) is nan"),
    ("unknown part", "[style.leg]", "[style.lge]", r"style\.lge \(line 15 .*write 'leg'"),
    ("unknown choice", "inside_leg = 140", "insideleg = 140", r"style\.leg\.insideleg \(line 16 .*write 'inside_leg'"),
    ("beyond the limit", "inside_leg = 140", "inside_leg = 14", r"style\.leg\.inside_leg \(line 16 .*50 to 1150 mm"),
    ("choice in no unit", "depth = 40", "depth = '4 ells'", r"style\.hem\.depth \(line 19 .*\) is '4 ells'"),
    ("style is text", "[style.leg]\ninside_leg = 140", "leg = 'wide'", r"style\.leg \(line 15 .*is 'wide', .*a table"),
    ("name of two lines", '"Boat"', '"Bo\\nat"', r"style\.name \(line 13 .*one line of text"),
    ("misspelt kind", '"TurnedCuff"', '"TurnCuff"', r'style\.hem\.kind \(line 18 .*write kind = "TurnedCuff"'),
    ("no kind", 'kind = "TurnedCuff"\n', "", r"style\.hem\.kind \(line 17 .*\) is missing, expected one of TurnedCuff"),
    ("kind of another part", '"TurnedCuff"', '"CurvedPocket"', r"style\.hem\.kind \(line 18 .*\) is 'CurvedPocket'"),
    ("kind that is no part", '"TurnedCuff"', '"Style"', r"style\.hem\.kind \(line 18 .*\) is 'Style', expected one of"),
    ("kind is the base", '"TurnedCuff"', '"Hem"', r"style\.hem\.kind \(line 18 .*\) is 'Hem', expected one of"),
    ("kind is code", '"TurnedCuff"', "\"__import__('os')\"", r"style\.hem\.kind \(line 18 .*expected one of"),
    ("hem is none", "[style.hem]\nkind = \"TurnedCuff\"\ndepth = 40", "hem = 'none'", r"style\.leg\.hem \(line 17"),
    ("small parts in a table", GOOD[GOOD.index("[[style.small") : GOOD.index("[[mock_up]]")],
     "[style.small_parts]\nkind = 'BeltLoops'\n", r"style\.small_parts \(line 20 .*a list: .*double brackets"),
    ("second small part", '"BiasBinding"', '"BiasBindig"', r'small_parts\[2\]\.kind \(line 23 .*kind = "BiasBinding"'),
    ("list is text", '["waist"]', '"waist"', r"style\.small_parts\[2\]\.edges \(line 24 .*is 'waist', expected a list"),
    ("wrong word in a list", '["waist"]', '["wrist"]', r"small_parts\[2\]\.edges \(line 24 .*is \('wrist',\)"),
    ("choices against each other", "[style.leg]", "[style.darts]\nback_as = 'tucks'\n[style.yoke]\n[style.leg]",
     r"style\.darts\.back_as \(line 16 .*'darts' with a yoke"),
    ("mock-up in a table", "[[mock_up]]", "[mock_up]", r"mock_up \(line 26 .*expected a list: .*double brackets"),
    ("no date", "date = 2026-03-01", "", r"mock_up\[1\]\.date \(line 26 .*\) is missing, .*write date = 2026-03-01"),
    ("date is text", "date = 2026-03-01", "date = '1 March'", r"mock_up\[1\]\.date \(line 27 .*\) is '1 March'"),
    ("date with time", "date = 2026-03-01", "date = 2026-03-01 10:00:00", r"mock_up\[1\]\.date \(line 27 .*a time"),
    ("misspelt notes", "notes =", "note =", r"mock_up\[1\]\.note \(line 28 .*write 'notes'"),
    ("notes are a number", re.search(r'notes = """.*?"""', GOOD, re.DOTALL).group(), "notes = 3", r"\.notes \(line 28"),
    ("unknown alteration", '"sway_back"', '"sway_bak"', r"alterations\[1\]\.name \(line 33 .*write 'sway_back'"),
    ("alteration without a name", 'name = "sway_back"\n', "", r"alterations\[1\]\.name \(line 32 .*is missing"),
    ("too much at once", "by = 12", "by = 900", r"mock_up\[1\]\.alterations\[1\]\.by \(line 34 .*\) is 900"),
    ("no amount", "by = 12", "", r"mock_up\[1\]\.alterations\[1\]\.by \(line 32 .*is missing"),
    ("unknown amount", "by = 12", "by = 12\nmm = 3", r"mock_up\[1\]\.alterations\[1\]\.mm \(line 35 .*\) is 3"),
    ("broken line", "hip = 1000", "hip = ", r"line 7 of f\.toml is 'hip =', expected TOML: .*\(invalid value\)"),
    ("key twice", "hip = 1000", "waist = 1000", r"line 7 of f\.toml is 'waist = 1000'.*overwrite a value"),
    ("text without end", 'by = 12', 'by = """', r"line 34 of f\.toml is 'by = \"\"\"', expected TOML"),
    ("number beyond all", "hip = 1000", f"hip = {'9' * 5000}", r"f\.toml is .*expected TOML: correct it"),
    ("day that is none", "2026-03-01", "2026-02-30", r"line 27 of f\.toml is 'date = 2026-02-30', expected TOML"),
]  # fmt: skip


@pytest.mark.parametrize(("old", "new", "told"), [case[1:] for case in WRONG], ids=[case[0] for case in WRONG])
def test_wrong_entry_is_told_with_its_place(old, new, told, tmp_path):
    assert GOOD.count(old) >= 1
    path = tmp_path / "f.toml"
    path.write_text(GOOD.replace(old, new, 1), encoding="utf-8")
    with pytest.raises(draft.DraftError, match=told) as error:
        load(path)
    assert "\n" not in str(error.value)


def test_text_that_the_wrong_ones_start_from_is_sound():
    assert of_text(GOOD).style.waist_drop == 10


def test_all_faults_are_told_at_once():
    text = GOOD.replace("waist = 740", "wasit = 740").replace('"TurnedCuff"', '"Cuff"').replace("by = 12", "by = 900")
    with pytest.raises(draft.DraftError) as error:
        of_text(text, "f.toml")
    fields = [single.field for single in error.value.many]
    assert fields == [
        "body.wasit (line 6 of f.toml)",
        "style.hem.kind (line 18 of f.toml)",
        "mock_up[1].alterations[1].by (line 34 of f.toml)",
    ]


def test_long_values_are_told_short():
    with pytest.raises(draft.DraftError) as error:
        of_text(GOOD.replace("depth = 40", f"depth = '{'x' * 9000}'"))
    assert len(str(error.value)) < 600


def test_lines_are_those_of_the_keys():
    lines = lines_of(GOOD)
    rows = GOOD.splitlines()
    assert {rows[line - 1].split(" ")[0] for place, line in lines.items() if place[-1] == "waist_drop"} == {
        "waist_drop"
    }
    for place, line in lines.items():
        key = next(key for key in reversed(place) if isinstance(key, str))
        assert key in rows[line - 1]
    assert len(lines) > 25


@settings(max_examples=150, deadline=None)
@given(data=st.data())
def test_no_change_of_a_file_raises_anything_else(data):
    """Cut out, put in or swap a stretch anywhere: the file is read, or a DraftError says why not."""
    start = data.draw(st.integers(0, len(GOOD)))
    stop = data.draw(st.integers(start, min(len(GOOD), start + 30)))
    put = data.draw(
        st.sampled_from(['"', "[", "]", "[[", "{}", "[]", "= ", "\n", "kind = 3", ".", "true", "1e400", "-0", "x = []"])
        | st.text(max_size=8)
    )
    text = GOOD[:start] + put + GOOD[stop:]
    try:
        recipe = of_text(text)
    except draft.DraftError:
        return
    assert of_text(recipe.toml()) == recipe


VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.floats() | st.text(max_size=5) | st.dates() | st.datetimes(),
    lambda inner: st.lists(inner, max_size=2) | st.dictionaries(st.text(max_size=5), inner, max_size=2),
    max_leaves=4,
)


@settings(max_examples=150, deadline=None)
@given(value=VALUES, key=st.sampled_from(sorted({key for key in lines_of(GOOD) if isinstance(key[-1], str)}, key=str)))
def test_any_value_in_any_place_is_read_or_told(value, key):
    import tomlkit

    document = tomlkit.parse(GOOD).unwrap()
    table = document
    for step in key[:-1]:
        table = table[step]
    try:
        table[key[-1]] = value
        text = tomlkit.dumps(document)
    except (tomlkit.exceptions.TOMLKitError, TypeError, ValueError):
        return  # TOML cannot say this
    try:
        of_text(text)
    except draft.DraftError as error:
        assert key == ("body",) or error.field  # noqa: PT017


def test_file_that_is_too_large_is_not_read(tmp_path):
    path = tmp_path / "large.toml"
    path.write_text(GOOD + "#" * LARGEST_FILE)
    with pytest.raises(draft.DraftError, match=r"path is '.*large\.toml', expected a recipe of at most 256 kB"):
        load(path)


@pytest.mark.parametrize(
    "text",
    [
        "a = " + "[" * 100_000,
        "a = " + "[" * 300 + "]" * 300,
        "a = " + "{b = " * 40_000,
        "a" + ".a" * 60_000 + " = 1",
        "[" + "a." * 60_000 + "a]",
        "a" + ' . "a b"' * 30_000 + " = 1",
        "x = {" + "'a'." * 60_000 + "a = 1}",
        "a" * 200_000,
        '"' * 200_000,
        "[[a]]\n" * 30_000,
        "".join(f"a{n} = 1\n" for n in range(20_000)),
    ],
    ids=[
        "lists",
        "closed lists",
        "tables",
        "dotted key",
        "dotted head",
        "quoted",
        "inline",
        "word",
        "quotes",
        "heads",
        "keys",
    ],
)
def test_file_made_to_take_long_is_refused_soon(text, tmp_path):
    path = tmp_path / "deep.toml"
    path.write_text(text)
    start = time.process_time()
    with pytest.raises(draft.DraftError) as error:
        load(path)
    assert time.process_time() - start < 10
    assert len(str(error.value)) < 20_000


@pytest.mark.parametrize(
    ("make", "told"),
    [
        (lambda folder: folder / "none.toml", r"path is '.*none\.toml', expected a recipe file: .*none of this name"),
        (lambda folder: folder, r"expected a recipe file: check the name: this is a folder"),
        (lambda folder: 3, r"path is 'int', expected the name of a file"),
        (lambda folder: "a\0b", r"path is 'a\\x00b', expected"),
        (lambda folder: "x" * 5000, r"path is 'xx.*, expected a"),
    ],
    ids=["missing", "folder", "number", "zero character", "too long a name"],
)
def test_path_that_cannot_be_read_is_told(make, told, tmp_path):
    with pytest.raises(draft.DraftError, match=told):
        load(make(tmp_path))


def test_file_in_another_encoding_is_told(tmp_path):
    path = tmp_path / "latin.toml"
    path.write_bytes(GOOD.replace("Boat", "Böat").encode("latin-1"))
    with pytest.raises(draft.DraftError, match=r"line 13 of latin\.toml is b'\\xf6', expected text in UTF-8"):
        load(path)


def test_pipe_is_not_waited_for(tmp_path):
    path = tmp_path / "pipe.toml"
    os.mkfifo(path)
    with pytest.raises(draft.DraftError, match="expected a recipe file"):
        load(path)


@pytest.mark.parametrize(
    ("make", "told"),
    [
        (lambda: Recipe("Jo"), "body is 'Jo', expected a draft.Body"),
        (lambda: Recipe(WOMAN, "short"), "style is 'short', expected a draft.Style"),
        (lambda: Recipe(WOMAN, garment="skirt"), "garment is 'skirt'"),
        (lambda: Recipe(WOMAN, method=len), "method is .*expected the name of a method"),
        (lambda: Recipe(WOMAN, method="x"), "method is 'x', expected one of"),
        (lambda: Recipe(WOMAN, fit="x"), "fit is 'x', expected"),
        (lambda: Recipe(WOMAN, mock_ups=[1]), r"mock_up is \[1\], expected a tuple"),
        (lambda: Fitting("2026-03-01"), r"mock_up\.date is '2026-03-01', expected a date"),
        (lambda: Fitting(datetime(2026, 3, 1, 9, 0)), r"mock_up\.date is .*without a time"),  # noqa: DTZ001
        (lambda: Fitting(date(2026, 3, 1), notes=3), r"mock_up\.notes is 3, expected text"),
        (lambda: Fitting(date(2026, 3, 1), notes="a\0"), r"mock_up\.notes is '\\x00'"),
        (lambda: Fitting(date(2026, 3, 1), notes="a\udc80"), r"mock_up\.notes is '\\udc80'"),
        (lambda: Fitting(date(2026, 3, 1), alterations=("sway_back",)), r"mock_up\.alterations is \('sway_back',\)"),
        (lambda: Recipe(WOMAN).with_mock_up(3, date=date(2026, 3, 1)), r"mock_up\.alterations is 3"),
        (lambda: Recipe(WOMAN).with_mock_up("ab", date=date(2026, 3, 1)), r"mock_up\.alterations is \('a', 'b'\)"),
    ],
)
def test_wrong_recipe_is_told_in_python_too(make, told):
    with pytest.raises(draft.DraftError, match=told):
        make()


def test_nothing_is_half_written(tmp_path, monkeypatch):
    path = Recipe(WOMAN).save(tmp_path / "a.toml")
    before = path.read_bytes()

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(draft.DraftError, match="no space left"):
        Recipe(WOMAN, garment="trousers").save(path)
    assert path.read_bytes() == before
    assert [p.name for p in tmp_path.iterdir()] == ["a.toml"]


def test_text_that_is_no_longer_sound_is_told_before_anything_is_written(tmp_path):
    recipe = Recipe(WOMAN, text="format = ")
    with pytest.raises(draft.DraftError, match="expected TOML"):
        recipe.save(tmp_path / "a.toml")
    assert not list(tmp_path.iterdir())
