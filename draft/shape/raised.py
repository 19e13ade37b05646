"""A raised waist: both panels run on above the body's waist, which stays as it was drafted.

Above the waist the centre seams run straight on, the legs of the darts run on parallel, and the side seams take the
growth of the girth; they turn at the waist, the narrowest place, without a corner. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from draft.block import PanelBlock
from draft.dart import Dart
from draft.geometry.construct import smooth
from draft.geometry.path import Path
from draft.geometry.points import unit
from draft.geometry.segments import Line
from draft.shape.leg import solve
from draft.shape.shell import Waist
from draft.shape.waist import drawn

TURN_REACH = 40.0  # how far the turn of the side seam at the waist reaches either way, at most
WHOLE_LINE = 0.95


@dataclass(frozen=True, eq=False)
class Raised:
    """Raised waist seam of one panel; `top` draws a side seam that began at the waist on up to it."""

    waist: Waist
    top: Callable[[Path], Path]


def raised_waist(panel: PanelBlock, seam: Waist, rise: float, net: float) -> Raised:
    """Waist seam `rise` mm above `seam`, sewn to `net` mm.

    Parameters
    ----------
    panel : PanelBlock
    seam : Waist
        Waist seam at the body's waist.
    rise, net : float
        Height above it in mm, measured along the centre seam, and length of the raised seam with its darts closed.
    """
    centre_dir = panel.crotch.end_dir
    centre, side = seam.parts[0].start, seam.parts[-1].end
    up = 1j * unit(centre - side)  # square to the waist line, away from the hip
    darts = [_raised(dart, rise) for dart in seam.darts]

    def at(out: float) -> Waist:
        end = side + up * rise + up * 1j * out
        return drawn(centre + centre_dir * rise, centre_dir, end, unit(side - end), darts)

    out = solve(lambda mm: at(mm).length, net, net - seam.length)
    end = side + up * rise + up * 1j * out

    def top(path: Path) -> Path:
        return _turned(Path.join(Line(end, path.start)), path)

    return Raised(at(out), top)


def _turned(above: Path, below: Path) -> Path:
    """Both joined at the waist without a corner; either side turns by its share of the room, so that none is sharp."""
    reach = min(WHOLE_LINE * above.length, TURN_REACH), min(WHOLE_LINE * below.length, TURN_REACH)
    share = reach[0] / sum(reach)
    at, through = below.start, unit(above.end_dir * (1 - share) + below.start_dir * share)
    head, _ = above.split_at(above.length - reach[0])
    _, tail = below.split_at(reach[1])
    before, after = smooth(head.end, head.end_dir, at, through), smooth(at, through, tail.start, tail.start_dir)
    return Path.join(head, before, after, tail)


def _raised(dart: Dart, rise: float) -> Dart:
    """Dart whose legs bend at the waist and run on parallel."""
    way = dart.fold_dir * rise
    return Dart(
        dart.centre_leg + way,
        dart.side_leg + way,
        dart.point,
        dart.side_first,
        dart.pleat,
        (dart.centre_leg, dart.side_leg),
    )
