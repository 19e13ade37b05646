"""Drafts a pair of shorts for an invented person and writes every file that is needed to sew them.

The person and her measures are made up: Wanja, 168 cm tall, who wants linen shorts for a sailing course.

usage: python examples/shorts.py [FOLDER]
"""

from __future__ import annotations

import sys
from pathlib import Path

import draft

WANJA = draft.Body(
    name="Wanja",
    waist="74 cm",
    hip="101.5 cm",
    crotch_depth="27 cm",
    waist_to_hip="20.5 cm",
    inside_leg="77 cm",
    front_crotch="30 cm",
    back_crotch="39.5 cm",
    thigh="59 cm",
    hip_depth="24.5 cm",
)

SAILING = draft.Style(
    name="Sailing shorts",
    leg=draft.Leg(inside_leg="14 cm"),
    ease=draft.Ease(waist=15, hip=70),
    waist_drop=15,
    pocket=draft.CurvedPocket(width=95, depth=80),
    hem=draft.TurnedCuff(depth=35),
)


def main(folder: Path) -> int:
    """Draft, print, check and write; the exit code is 1 when the pieces do not fit each other."""
    pattern = draft.shorts(WANJA, SAILING)
    print(pattern.report())
    folder.mkdir(parents=True, exist_ok=True)
    written = [
        pattern.save_svg(folder / "shorts.svg"),
        pattern.save_dxf(folder / "shorts_mm.dxf"),
        pattern.save_dxf(folder / "shorts_astm_mm.dxf", dialect="astm"),
        pattern.save_overview(folder / "overview.svg"),
    ]
    print("\nWritten:")
    for path in written:
        print(f"  {path}  ({path.stat().st_size // 1000} kB)")
    return 1 if pattern.check() else 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1] if len(sys.argv) > 1 else "my_shorts")))
