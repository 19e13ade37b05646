"""The rooms of the library: each imports only from rooms above it, and heavy libraries come only when needed."""

from __future__ import annotations

import ast
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent / "draft"
# From top to bottom; the modules of one row may import each other.
ROOMS = [
    {"errors"},
    {"units"},
    {"geometry"},
    {"body", "body_checks", "estimates", "size_tables"},
    {"choice"},
    {"style"},
    {"choices"},
    {"table"},
    {"advice"},
    {"block"},
    {"methods"},
    {"fitting"},
    {"many"},
    {"dart"},
    {"edge"},
    {"allowance"},
    {"drawing"},
    {"guide"},
    {"piece"},
    {"seams"},
    {"shape"},
    {"alter"},
    {"altered"},
    {"pieces"},
    {"assemble"},
    {"sides"},
    {"measure", "checks"},
    {"report"},
    {"mock_up"},
    {"export"},
    {"pattern"},
    {"drafting"},
    {"sensitivity", "presets"},
    {"trace"},
    {"recipe"},
    {"__main__"},
    {"__init__"},
]
LEVEL = {name: level for level, names in enumerate(ROOMS) for name in names}
FILES = sorted(ROOT.rglob("*.py"))


def room_of(path: Path) -> str:
    return path.relative_to(ROOT).parts[0].removesuffix(".py")


def imports(path: Path) -> list[tuple[str, ast.AST]]:
    """Modules of this library that a file imports when it runs (imports for type checkers do not count)."""
    tree = ast.parse(path.read_text("utf-8"))
    hidden = {
        id(inner)
        for node in ast.walk(tree)
        if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.dump(node.test)
        for inner in ast.walk(node)
    }
    found = []
    for node in ast.walk(tree):
        if id(node) in hidden:
            continue
        if isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}: relative import"
            assert all(alias.name != "*" for alias in node.names), f"{path}: star import"
            if node.module == "draft":
                found += [(f"draft.{alias.name}", node) for alias in node.names]
            elif (node.module or "").startswith("draft."):
                found.append((node.module or "", node))
        elif isinstance(node, ast.Import):
            found += [(alias.name, node) for alias in node.names if alias.name.startswith("draft")]
    return found


def test_every_module_has_a_room():
    assert {room_of(path) for path in FILES} == set(LEVEL)


@pytest.mark.parametrize("path", FILES, ids=lambda p: str(p.relative_to(ROOT)))
def test_module_imports_only_from_rooms_above(path):
    here = LEVEL[room_of(path)]
    for module, _ in imports(path):
        room = module.split(".")[1]
        assert LEVEL[room] <= here, f"{path.name} imports {module}"


@pytest.mark.parametrize("path", [p for p in FILES if room_of(p) == "methods"], ids=lambda p: p.name)
def test_methods_do_not_use_math(path):
    tree = ast.parse(path.read_text("utf-8"))
    names = {alias.name for node in ast.walk(tree) if isinstance(node, ast.Import) for alias in node.names}
    names |= {node.module for node in ast.walk(tree) if isinstance(node, ast.ImportFrom)}
    assert "math" not in names


def test_import_leaves_heavy_libraries_alone():
    code = "import sys, draft; print([m for m in ('ezdxf', 'svgwrite', 'scipy', 'shapely') if m in sys.modules])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"
