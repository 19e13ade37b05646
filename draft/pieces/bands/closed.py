"""A panel's waist with its darts closed: the stretches between darts turned about the dart points until they meet."""

from __future__ import annotations

from dataclasses import dataclass

from draft.geometry.path import Path
from draft.geometry.points import angle_deg
from draft.geometry.segments import Motion
from draft.shape.shell import Waist


@dataclass(frozen=True, eq=False)
class ClosedWaist:
    """Waist seam from centre to side as one line, and the move that took its last stretch there."""

    path: Path
    last: Motion

    @property
    def turn_deg(self) -> float:
        """How far the line turns from centre to side, degrees, counter-clockwise positive."""
        return sum(angle_deg(s.start_dir, s.end_dir) for s in self.path)


def closed_waist(waist: Waist) -> ClosedWaist:
    """Waist with all darts closed; the stretch at the centre stays where it is.

    Each stretch is square to the legs of its darts, so the joined line has no corners.
    """
    motion, runs = Motion(), [waist.parts[0]]
    for dart, part in zip(waist.darts, waist.parts[1:], strict=True):
        closing = dart.closing
        motion = Motion(motion.turn * closing.turn, motion.turn * closing.shift + motion.shift)
        runs.append(part.moved(motion))
    return ClosedWaist(Path.join(*runs), motion)
