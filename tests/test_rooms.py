"""How modules hang together: no cycle, nothing hidden in a function but heavy libraries, nothing read from `draft`.

The order of the rooms is held in ``test_layers.py``; here modules are looked at one by one.
"""

from __future__ import annotations

import ast
import subprocess
import sys
from graphlib import CycleError, TopologicalSorter
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent / "draft"
HEAVY = {"ezdxf", "svgwrite", "scipy", "shapely"}
PROGRESS = {"tqdm"}  # for long runs over many bodies only
READERS = {"cattrs", "tomlkit"}  # of recipe files only
TRACERS = {"svgelements", "defusedxml"}  # of traced drawings only
ALLOWED = {"numpy", "draft", *HEAVY, *PROGRESS, *READERS, *TRACERS}


def name_of(path: Path) -> str:
    parts = ("draft", *path.relative_to(ROOT).with_suffix("").parts)
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


MODULES = {name_of(path): path for path in sorted(ROOT.rglob("*.py"))}


def only_for_checkers(tree: ast.AST) -> set[ast.AST]:
    """Imports that stand under ``if TYPE_CHECKING:`` and never run."""
    guarded = [n for n in ast.walk(tree) if isinstance(n, ast.If) and "TYPE_CHECKING" in ast.unparse(n.test)]
    return {inner for node in guarded for statement in node.body for inner in ast.walk(statement)}


def imported(source: str) -> list[tuple[str, bool]]:
    """Names of modules that a source imports when it runs, and whether it does so inside a function."""
    tree = ast.parse(source)
    skipped = only_for_checkers(tree)
    functions = [n for n in ast.walk(tree) if isinstance(n, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda)]
    late = {inner for function in functions for inner in ast.walk(function)}
    found: list[tuple[str, bool]] = []
    for node in ast.walk(tree):
        if node in skipped:
            continue
        if isinstance(node, ast.Import):
            found += [(alias.name, node in late) for alias in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "relative import"
            for alias in node.names:
                assert alias.name != "*", "star import"
                inner = f"{node.module}.{alias.name}"
                found.append((inner if inner in MODULES else str(node.module), node in late))
    return found


def graph() -> dict[str, set[str]]:
    return {
        module: {name for name, _ in imported(path.read_text("utf-8")) if name in MODULES}
        for module, path in MODULES.items()
    }


def test_walk_sees_imports_of_every_kind():
    """The walk itself: late, guarded and plain imports are told apart."""
    source = (
        "from typing import TYPE_CHECKING\nimport draft.units\nfrom draft import geometry\n"
        "if TYPE_CHECKING:\n    from draft.pattern import Pattern\n"
        "def f():\n    import ezdxf\n    from draft.piece import Piece\n"
    )
    assert imported(source) == [
        ("typing", False), ("draft.units", False), ("draft.geometry", False), ("ezdxf", True), ("draft.piece", True),
    ]  # fmt: skip


@pytest.mark.parametrize("source", ["from . import units", "from .units import fmt", "from draft.units import *"])
def test_relative_and_star_imports_are_seen(source):
    with pytest.raises(AssertionError, match="import"):
        imported(source)


def test_there_is_no_import_cycle():
    try:
        order = list(TopologicalSorter(graph()).static_order())
    except CycleError as error:
        pytest.fail("cycle: " + " -> ".join(error.args[1]))
    assert set(order) == set(MODULES)
    assert order.index("draft.errors") < order.index("draft.geometry.path") < order.index("draft.drafting")


@pytest.mark.parametrize("module", MODULES)
def test_functions_import_only_heavy_libraries(module):
    late = {name for name, inside in imported(MODULES[module].read_text("utf-8")) if inside}
    assert {name.split(".")[0] for name in late} <= HEAVY | PROGRESS | READERS | TRACERS, late


@pytest.mark.parametrize("module", MODULES)
def test_modules_import_from_where_a_name_is_defined(module):
    """Only ``draft/__init__.py`` gathers names; nothing inside reads them from there, nor any library not declared."""
    names = {name for name, _ in imported(MODULES[module].read_text("utf-8"))}
    assert "draft" not in names
    outside = {name.split(".")[0] for name in names} - set(sys.stdlib_module_names)
    assert outside <= ALLOWED, outside


@pytest.mark.parametrize("module", sorted(set(MODULES) - {"draft"}))
def test_heavy_libraries_are_imported_only_by_exporters(module):
    names = {name.split(".")[0] for name, _ in imported(MODULES[module].read_text("utf-8"))}
    if not module.startswith(("draft.export", "draft.drawing", "draft.trace")):
        assert not names & HEAVY
    if not module.startswith("draft.recipe"):
        assert not names & READERS
    if not module.startswith("draft.trace"):
        assert not names & TRACERS


def test_drafting_a_pattern_loads_no_heavy_library():
    """Not only the import: drafting and checking a whole pattern needs none of them either."""
    code = (
        "import sys, draft\n"
        "body = draft.Body(waist=740, hip=1000, crotch_depth=270, waist_to_hip=200, inside_leg=770)\n"
        "pattern = draft.shorts(body); pattern.check(); pattern.report()\n"
        f"print(sorted(set({sorted(HEAVY | READERS | TRACERS)}) & set(sys.modules)))"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
