"""All files of a recipe, from a shell.

usage: python -m draft FILE.toml [-o FOLDER]
       python -m draft --example > FILE.toml
"""

from __future__ import annotations

import argparse
import re
import sys
from collections.abc import Iterator, Sequence
from importlib.resources import files
from pathlib import Path
from typing import NoReturn

from draft.errors import DraftError
from draft.export.files import write_text
from draft.recipe.recipe import Recipe, load

WRONG = 2
"""Exit code for a wrong input; 1 when the pieces do not sew together, 0 when all is well."""
LONGEST_NAME = 60


class _Parser(argparse.ArgumentParser):
    """Parser that tells a wrong call in one line."""

    def error(self, message: str) -> NoReturn:
        self.exit(WRONG, f"{self.prog}: {message}; see {self.prog} --help\n")


def example() -> str:
    """Recipe to begin with; its person and her mock-up are invented."""
    return files("draft.recipe").joinpath("example.toml").read_text("utf-8")


def file_name(name: str) -> str:
    """Name as a file name: small letters, digits and ``_``.

    Examples
    --------
    >>> file_name("Sailing shorts, no. 2"), file_name("../..")
    ('sailing_shorts_no_2', 'garment')
    """
    return re.sub(r"\W+", "_", name.lower()).strip("_")[:LONGEST_NAME] or "garment"


def write_all(recipe: Recipe, folder: Path) -> Iterator[Path]:
    """Write all files of a recipe into a folder, one after the other; the folder is made when it is missing."""
    pattern, last = recipe.pattern(), len(recipe.mock_ups)
    changes = recipe.compare(last - 1, last) if last else None
    report = pattern.report() if changes is None else f"{pattern.report()}\n\n{changes}"
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise DraftError("folder", str(folder), "a folder, or a place for one", f"choose another ({reason})") from None
    name = file_name(recipe.name)
    yield pattern.save_overview(folder / "overview.svg")
    yield pattern.save_svg(folder / f"{name}.svg")
    yield pattern.save_dxf(folder / f"{name}_mm.dxf")
    yield pattern.save_dxf(folder / f"{name}_astm_mm.dxf", dialect="astm")
    yield write_text(folder / "report.txt", f"{report}\n")
    if changes is not None:
        yield write_text(folder / f"compare_{last - 1}_{last}.svg", changes.svg())


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; returns the exit code."""
    parser = _Parser(prog="python -m draft", description="Write all files of a recipe.")
    parser.add_argument("recipe", nargs="?", metavar="FILE.toml", help="the recipe")
    parser.add_argument("-o", "--output", metavar="FOLDER", help="where the files go; else a folder named as FILE")
    parser.add_argument("--example", action="store_true", help="print a recipe to begin with, and stop")
    given = parser.parse_args(arguments)
    if given.example:
        sys.stdout.write(example())
        return 0
    if given.recipe is None:
        parser.error("name a recipe file")
    try:
        recipe = load(given.recipe)
        folder = Path(given.output) if given.output else Path(given.recipe).with_suffix("")
        for path in write_all(recipe, folder):
            sys.stdout.write(f"{path}\n")
        faults = [finding for finding in recipe.pattern().check() if finding.code != "fit"]
    except DraftError as error:
        sys.stderr.write(f"{parser.prog}: {' '.join(str(error).split())}\n")
        return WRONG
    for fault in faults:
        sys.stderr.write(f"{parser.prog}: {' '.join(str(fault).split())}\n")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
