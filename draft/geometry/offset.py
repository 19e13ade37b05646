"""Parallel curves: the line at a constant distance from a path, with a bound on its error.

The true parallel of a cubic is not a cubic. Its points and velocities are known exactly, so each parameter step is
replaced by the cubic that has them at both ends; its error falls with the fourth power of the step. Steps are halved
until the largest gap at seven places inside every step, with a fifth added, is below the bound.
"""

from __future__ import annotations

import numpy as np

from draft.errors import DraftError
from draft.geometry.path import Path
from draft.geometry.points import cross
from draft.geometry.segments import Cubic, Line, Segment

PARALLEL_TOL_MM = 0.005
_INSIDE = np.arange(1, 8) / 8
_MOST_STEPS = 256


def parallel_segment(segment: Segment, left: float, tolerance: float = PARALLEL_TOL_MM) -> tuple[Segment, ...]:
    """Segments at the distance `left` mm on the left hand of one segment (negative: on the right)."""
    if left == 0:
        return (segment,)
    if isinstance(segment, Line):
        shift = 1j * segment.start_dir * left
        return (Line(segment.p0 + shift, segment.p1 + shift),)
    steps = 1
    while steps <= _MOST_STEPS:
        run = _hermite_run(segment, left, steps)
        if run is not None and run[1] * 1.2 <= tolerance:
            return run[0]
        steps *= 2
    raise DraftError(
        "distance of the parallel",
        left,
        "less than the smallest radius on that side of the curve",
        "use a narrower one",
    )


def parallel(path: Path, left: float, tolerance: float = PARALLEL_TOL_MM) -> Path:
    """Path at a constant distance on the left hand of a smooth path; negative `left`: on the right hand.

    Corners wider than a hair's breadth must be joined by the caller: a parallel breaks open there.

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
    return Path(tuple(_bridged(runs)))


def _bridged(runs: list[tuple[Segment, ...]]) -> list[Segment]:
    """Join runs by short lines where a slight bend (below a degree or so) opens a gap."""
    joined: list[Segment] = list(runs[0])
    for run in runs[1:]:
        if abs(joined[-1].controls[-1] - run[0].controls[0]) > 1e-9:
            joined.append(Line(joined[-1].controls[-1], run[0].controls[0]))
        joined.extend(run)
    return joined


def _hermite_run(cubic: Cubic, left: float, steps: int) -> tuple[tuple[Segment, ...], float] | None:
    """Cubics with the true points and velocities of the parallel, and their largest gap; None where it folds back."""
    t = np.linspace(0, 1, steps + 1)
    place, speed = _parallel_points(cubic, left, t)
    if speed is None:
        return None
    handle = speed / (3 * steps)
    controls = (place[:-1], place[:-1] + handle[:-1], place[1:] - handle[1:], place[1:])
    inside = t[:-1, None] + _INSIDE / steps
    true, _ = _parallel_points(cubic, left, inside.ravel())
    gap = float(np.max(np.abs(Cubic(*controls).points(_INSIDE).ravel() - true)))  # type: ignore[arg-type]
    return tuple(Cubic(*(complex(c[i]) for c in controls)) for i in range(steps)), gap


def _parallel_points(cubic: Cubic, left: float, t: np.ndarray) -> tuple[np.ndarray, np.ndarray | None]:
    velocity = np.asarray(cubic.velocity(t))  # type: ignore[arg-type]
    size = np.abs(velocity)
    if np.min(size) < 1e-9:
        velocity, size = _away_from_rest(cubic, t)
    direction = velocity / size
    place = np.asarray(cubic.point(t)) + 1j * left * direction  # type: ignore[arg-type]
    bend = cross(velocity, np.asarray(cubic.acceleration(t))) / size**3  # type: ignore[arg-type]
    stretch = 1 - left * np.asarray(bend)
    if np.min(stretch) <= 0:
        return place, None
    return place, velocity * stretch


def _away_from_rest(cubic: Cubic, t: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Velocities a hair beside the places where the curve stands still (a handle without length)."""
    nudged = np.clip(t, 1e-6, 1 - 1e-6)
    velocity = np.asarray(cubic.velocity(nudged))
    return velocity, np.abs(velocity)
