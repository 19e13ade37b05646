"""``python -m draft``: all files of a recipe, or one line that says what is wrong."""

from __future__ import annotations

import subprocess
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

import ezdxf
import pytest

from draft.__main__ import main
from draft.recipe import load

EXAMPLE = Path(__file__).parents[2] / "examples" / "recipe.toml"
FILES = [
    "boat_shorts.svg", "boat_shorts_astm_mm.dxf", "boat_shorts_mm.dxf", "compare_0_1.svg", "overview.svg", "report.txt",
]  # fmt: skip


def run(*arguments: object, folder: Path) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "draft", *map(str, arguments)]
    return subprocess.run(command, capture_output=True, text=True, cwd=folder, check=False, timeout=120)


def test_all_files_are_written_and_told(tmp_path):
    done = run(EXAMPLE, "-o", tmp_path / "new" / "files", folder=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert sorted(p.name for p in (tmp_path / "new" / "files").iterdir()) == FILES
    assert sorted(Path(line).name for line in done.stdout.splitlines()) == FILES
    for name in FILES:
        path = tmp_path / "new" / "files" / name
        if name.endswith("svg"):
            assert ET.parse(path).getroot().tag.endswith("svg")
        elif name.endswith("dxf"):
            assert len(list(ezdxf.readfile(path).modelspace())) > 5
        else:
            report = path.read_text("utf-8")
            assert "Finished sizes" in report
            assert "Finished lengths that changed" in report


def test_without_a_folder_the_files_go_beside_the_recipe(tmp_path, capsys):
    path = tmp_path / "mine.toml"
    path.write_text("\n".join(line for line in EXAMPLE.read_text().partition("# What each")[0].splitlines()))
    assert main([str(path)]) == 0
    assert sorted(p.name for p in (tmp_path / "mine").iterdir()) == [n for n in FILES if not n.startswith("compare")]
    assert "mine" in capsys.readouterr().out


def test_example_is_printed_as_it_lies_in_the_examples(tmp_path):
    done = run("--example", folder=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout == EXAMPLE.read_text("utf-8")
    path = tmp_path / "a.toml"
    path.write_text(done.stdout)
    assert load(path) == load(EXAMPLE)


@pytest.mark.parametrize(
    ("arguments", "told"),
    [
        (["none.toml"], "path is 'none.toml', expected a recipe file"),
        ([], "name a recipe file"),
        (["a.toml", "b.toml"], "unrecognized arguments: b.toml"),
        (["wrong.toml"], "3 inputs are wrong. body.wasit (line 10 of wrong.toml)"),
        (["broken.toml"], "line 1 of broken.toml is 'format', expected TOML"),
        (["no_room.toml"], "style.hem.depth"),
        (["good.toml", "-o", "good.toml"], "folder is 'good.toml', expected a folder"),
        (["good.toml", "-o", "good.toml/in/it"], "folder is 'good.toml/in/it', expected a folder"),
    ],
    ids=["no file", "nothing", "two files", "three faults", "broken", "no room", "folder is a file", "in a file"],
)
def test_fault_is_one_line_and_exit_code_2(arguments, told, tmp_path):
    good = EXAMPLE.read_text("utf-8")
    (tmp_path / "good.toml").write_text(good)
    wrong = good.replace('waist = "74 cm"', "wasit = 740").replace("TurnedCuff", "Cuff").replace("by = 15", "by = x")
    (tmp_path / "wrong.toml").write_text(wrong.replace("by = x", "by = 9000"))
    (tmp_path / "broken.toml").write_text("format")
    (tmp_path / "no_room.toml").write_text(good.replace("inside_leg = 140", "inside_leg = 50").replace("35", "120"))
    before = sorted(p.name for p in tmp_path.rglob("*"))
    done = run(*arguments, folder=tmp_path)
    assert done.returncode == 2
    assert done.stdout == ""
    assert done.stderr.startswith("python -m draft: ")
    assert told in done.stderr
    assert done.stderr.count("\n") == 1
    assert sorted(p.name for p in tmp_path.rglob("*")) == before


def test_pieces_that_do_not_sew_together_are_told(monkeypatch, tmp_path, capsys):
    from draft.checks import Finding, Findings
    from draft.pattern import Pattern

    monkeypatch.setattr(Pattern, "check", lambda self: Findings([Finding("seam", "inseam", "3 mm are left over", 3.0)]))
    assert main([str(EXAMPLE), "-o", str(tmp_path)]) == 1
    assert "3 mm are left over" in capsys.readouterr().err


def test_reading_libraries_are_imported_only_when_a_file_is_read():
    code = "import sys, draft.recipe; print([m for m in ('cattrs', 'tomlkit', 'attr') if m in sys.modules])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
