"""Writes the guide to measuring, all figures on one sheet, as ``measuring.svg`` beside this script.

usage: python examples/measuring.py
"""

from __future__ import annotations

from pathlib import Path

from draft.export.files import write_text
from draft.guide.show import how_to_measure


def main(path: Path) -> Path:
    """Write the sheet and give its path."""
    return write_text(path, how_to_measure().svg())


if __name__ == "__main__":
    main(Path(__file__).with_name("measuring.svg"))
