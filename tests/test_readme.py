"""The README tells the truth: its script runs, its commands exist, its picture is of the example."""

from __future__ import annotations

import doctest
import re
import runpy
from pathlib import Path

import pytest

import draft

ROOT = Path(__file__).parent.parent
README = ROOT / "README.md"


def test_script_of_the_readme_runs():
    flags = doctest.ELLIPSIS | doctest.NORMALIZE_WHITESPACE
    failed, tried = doctest.testfile(str(README), module_relative=False, optionflags=flags)
    assert tried >= 6
    assert failed == 0


@pytest.mark.parametrize("which", ["main", "tests"])
def test_commands_make_their_own_environment(which):
    block = re.search(rf"<!-- command: {which} -->\n```sh\n(.+?)\n```", README.read_text("utf-8"), re.DOTALL)
    assert block is not None
    assert "-m venv .venv-" in block.group(1)


def test_picture_shows_the_example():
    """The committed overview is what the example draws; after a change run the example and copy its overview."""
    example = runpy.run_path(str(ROOT / "examples" / "shorts.py"))
    drawn = draft.shorts(example["WANJA"], example["SAILING"])._repr_svg_()
    kept = (ROOT / "examples" / "overview.svg").read_text("utf-8")
    size = [[float(n) for n in re.search(r'viewBox="([^"]+)"', text).group(1).split()] for text in (drawn, kept)]
    assert max(abs(a - b) for a, b in zip(*size, strict=True)) <= 1.0
    words = [sorted(re.findall(r">([^<>]*[A-Za-z][^<>]*)<", text)) for text in (drawn, kept)]
    assert words[0] == words[1]


def test_example_writes_all_files_and_finds_nothing(tmp_path, capsys):
    example = runpy.run_path(str(ROOT / "examples" / "shorts.py"))
    assert example["main"](tmp_path / "new") == 0
    assert sorted(p.name for p in (tmp_path / "new").iterdir()) == [
        "overview.svg", "shorts.svg", "shorts_astm_mm.dxf", "shorts_mm.dxf",
    ]  # fmt: skip
    said = capsys.readouterr().out
    for word in ("Finished sizes", "Seams", "Findings: none", "zip:", "Written"):
        assert word in said


def test_gallery_shows_the_presets_as_they_are():
    """The committed gallery is what its script draws; after a change run it and look."""
    drawn = runpy.run_path(str(ROOT / "examples" / "gallery.py"))["gallery"]()
    kept = (ROOT / "examples" / "gallery.svg").read_text("utf-8")
    sizes = [
        [float(n) for box in re.findall(r'viewBox="([^"]+)"', text) for n in box.split()] for text in (drawn, kept)
    ]
    assert max(abs(a - b) for a, b in zip(*sizes, strict=True)) <= 1.0
    words = [sorted(re.findall(r">([^<>]*[A-Za-z][^<>]*)<", text)) for text in (drawn, kept)]
    assert words[0] == words[1]
