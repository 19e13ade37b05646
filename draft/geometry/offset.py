"""Parallel curves: the line at a constant distance from a path, with a bound on its error.

The true parallel of a cubic is not a cubic. Its points and velocities are known exactly, so each parameter step is
replaced by the cubic that has them at both ends; its error falls with the fourth power of the step. Steps are halved
until the largest gap at seven places inside every step, with a fifth added, is below the bound.
"""

from __future__ import annotations

from math import isfinite, radians

import numpy as np

from draft.errors import DraftError
from draft.geometry.arrays import Floats, Points
from draft.geometry.flatten import check_tolerance
from draft.geometry.path import JOIN_TOL_MM, Path
from draft.geometry.points import cross, dot, unit
from draft.geometry.segments import Cubic, Line, Segment

PARALLEL_TOL_MM = 0.005
WIDEST_BEND_DEG = 2.0
_INSIDE = np.arange(1, 8) / 8
_MOST_STEPS = 256
_STRAIGHT_MM = 1e-9
_REST_MM = 1e-9
_HAIR = 1e-6


def parallel_segment(segment: Segment, left: float, tolerance: float = PARALLEL_TOL_MM) -> tuple[Segment, ...]:
    """Segments at the distance `left` mm on the left hand of one segment (negative: on the right)."""
    check_tolerance(tolerance)
    if not isfinite(left):
        raise DraftError("distance of the parallel", left, "a number of mm", "give one")
    if left == 0:
        return (segment,)
    if isinstance(segment, Line) or _runs_straight(segment):
        shift = 1j * segment.start_dir * left
        return (type(segment)(*(p + shift for p in segment.controls)),)
    steps = 1
    while steps <= _MOST_STEPS:
        run = _hermite_run(segment, left, steps)
        if run is not None and run[1] * 1.2 <= tolerance:
            return run[0]
        steps *= 2
    raise DraftError(
        "distance of the parallel",
        left,
        "less than the smallest radius on that side of the curve, which must have no cusp",
        "use a narrower one",
    )


def _runs_straight(cubic: Cubic) -> bool:
    """Whether a cubic is a line in disguise that never turns back."""
    if cubic.p0 == cubic.p3:
        return False
    along = unit(cubic.p3 - cubic.p0)
    aside = max(abs(cross(along, p - cubic.p0)) for p in (cubic.p1, cubic.p2))
    steps = (cubic.p1 - cubic.p0, cubic.p2 - cubic.p1, cubic.p3 - cubic.p2)
    return aside < _STRAIGHT_MM and min(dot(along, step) for step in steps) > -_STRAIGHT_MM


def parallel(path: Path, left: float, tolerance: float = PARALLEL_TOL_MM) -> Path:
    """Path at a constant distance on the left hand of a smooth path; negative `left`: on the right hand.

    Bends of up to 2 degrees at the joints are bridged by short lines. At a corner a parallel breaks open: the caller
    takes the parallels of the stretches between corners and joins them.

    Raises
    ------
    DraftError
        When the curve bends more sharply than the distance allows, or the path has a corner.

    Examples
    --------
    >>> parallel(Path.line(0, 10), 2).start
    2j
    """
    runs = [parallel_segment(segment, left, tolerance) for segment in path.segments]
    return Path(tuple(_bridged(runs, abs(left) * radians(WIDEST_BEND_DEG) + JOIN_TOL_MM)))


def _bridged(runs: list[tuple[Segment, ...]], widest: float) -> list[Segment]:
    """Join runs by short lines where a slight bend opens a gap."""
    joined: list[Segment] = list(runs[0])
    for run in runs[1:]:
        gap = abs(joined[-1].controls[-1] - run[0].controls[0])
        if gap > widest:
            raise DraftError(
                "path of the parallel",
                joined[-1].controls[-1],
                f"bends of {WIDEST_BEND_DEG:g} degrees or less at the joints",
                "part the path at its corners",
            )
        if gap > 1e-9:
            joined.append(Line(joined[-1].controls[-1], run[0].controls[0]))
        joined.extend(run)
    return joined


def _hermite_run(cubic: Cubic, left: float, steps: int) -> tuple[tuple[Segment, ...], float] | None:
    """Cubics with the true points and velocities of the parallel, and their largest gap; None where it folds back."""
    t = np.linspace(0, 1, steps + 1)
    inside = t[:-1, None] + _INSIDE / steps
    ends, between = _parallel_points(cubic, left, t), _parallel_points(cubic, left, inside.ravel())
    if ends is None or between is None:
        return None
    place, handle = ends[0], ends[1] / (3 * steps)
    controls = (place[:-1], place[:-1] + handle[:-1], place[1:] - handle[1:], place[1:])
    gap = float(np.max(np.abs(Cubic(*controls).points(_INSIDE).ravel() - between[0])))  # type: ignore[arg-type]
    return tuple(Cubic(*(complex(c[i]) for c in controls)) for i in range(steps)), gap


def _parallel_points(cubic: Cubic, left: float, t: Floats) -> tuple[Points, Points] | None:
    """Points and velocities of the true parallel at many parameters; None where it folds back or stands still."""
    beside = t
    if np.min(cubic.speeds(t)) < _REST_MM:  # a handle without length: a hair beside the end the curve moves
        beside = np.clip(t, _HAIR, 1 - _HAIR)
    velocity, acceleration = np.asarray(cubic.velocity(beside)), np.asarray(cubic.acceleration(beside))  # type: ignore[arg-type]
    size = np.abs(velocity)
    if np.min(size) == 0:
        return None
    stretch = 1 - left * np.asarray(cross(velocity, acceleration)) / size**3  # type: ignore[arg-type]
    if np.min(stretch) <= 0:
        return None
    direction = velocity / size
    direction = np.where(t == 0, cubic.start_dir, np.where(t == 1, cubic.end_dir, direction))
    return np.asarray(cubic.point(t)) + 1j * left * direction, velocity * stretch  # type: ignore[arg-type]
