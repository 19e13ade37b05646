"""Taking the corner out of a path: curves that flow through a point, and ends turned square."""

from __future__ import annotations

from draft.geometry.construct import smooth
from draft.geometry.path import Path
from draft.geometry.points import unit


def flow_through(path: Path, along: float, reach: float) -> Path:
    """Path without the corner at arc length `along`: the corner point stays, the curve flows through it.

    The stretches of `reach` mm before and after are redrawn; at the point the path takes the direction halfway
    between the two it had.

    >>> smooth_path = flow_through(Path.line(0, 100, 200 + 20j), 100, 40)
    >>> complex(smooth_path.point_at(smooth_path.between(0, 100).length)).real > 99
    True
    """
    before, after = path.split_at(along)
    corner = before.end
    through_dir = unit(before.end_dir + after.start_dir)
    reach_before, reach_after = min(reach, before.length * 0.6), min(reach, after.length * 0.6)
    head, _ = before.split_at(before.length - reach_before)
    _, tail = after.split_at(reach_after)
    return Path.join(
        head,
        smooth(head.end, head.end_dir, corner, through_dir),
        smooth(corner, through_dir, tail.start, tail.start_dir),
        tail,
    )


def end_square(path: Path, arrive_dir: complex, reach: float) -> Path:
    """Path whose last `reach` mm are redrawn so that it arrives at its end along `arrive_dir`."""
    head, _ = path.split_at(path.length - reach)
    return Path.join(head, smooth(head.end, head.end_dir, path.end, arrive_dir, 0.36, 0.36))
