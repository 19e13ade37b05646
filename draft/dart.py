"""A waist dart: two legs of equal length, and the cap that lets its edge close into one line.

Pleats, tucks and gathers take up cloth at an edge as a dart does, and are the same thing here: only what is sewn below
the mouth differs.

Glossary
--------
legs   the two seam lines, from the mouth to the point
mouth  the gap in the waist seam between the legs
bends  where the legs turn, on a dart that reaches above the waist: there they run on parallel
fold   the middle line, along which the cloth is folded when the dart is sewn
cap    the edge of the piece across the mouth; with the dart folded towards the centre and the waist cut straight
       across, it is the image of the centre side's edge in the leg, and of that in the fold
"""

from __future__ import annotations

from dataclasses import dataclass

from draft.geometry.construct import smooth
from draft.geometry.meet import meet_line
from draft.geometry.path import Path
from draft.geometry.points import mid, unit
from draft.geometry.segments import Line, Motion


@dataclass(frozen=True, eq=False)
class Dart:
    """One dart between two stretches of an edge; `centre_leg` is the mouth's end nearer the centre seam.

    An edge runs from the centre to the side, unless it was mirrored: then the side leg comes first. ``pleat`` is empty
    for a dart; a pleat is folded ``"forward"``, towards the centre as a dart is, or in ``"reverse"``, towards the side;
    ``"gathers"`` are drawn up, and their edge runs straight on across the mouth. ``bends`` lie on the centre leg and on
    the side leg.
    """

    centre_leg: complex
    side_leg: complex
    point: complex
    side_first: bool = False
    pleat: str = ""
    bends: tuple[complex, complex] | None = None

    @property
    def roots(self) -> tuple[complex, complex]:
        """Where the last straight stretch of the centre leg and of the side leg begins."""
        return (self.point, self.point) if self.bends is None else self.bends

    @property
    def legs_from(self) -> tuple[complex, complex]:
        """Roots of the legs in the order in which the edge comes to them."""
        centre, side = self.roots
        return (side, centre) if self.side_first else (centre, side)

    @property
    def runs(self) -> tuple[Path, Path]:
        """Centre leg and side leg from the point to the mouth."""
        bends = () if self.bends is None else self.bends
        return (
            Path.line(self.point, *bends[:1], self.centre_leg),
            Path.line(self.point, *bends[1:], self.side_leg),
        )

    @property
    def closing(self) -> Motion:
        """Move that closes the dart: of the cloth that the edge comes to after it, onto the leg before it."""
        (first, second), (one, two) = self.legs, self.legs_from
        turn = unit(first - one) / unit(second - two)
        return Motion(turn, one - turn * two)

    @property
    def legs(self) -> tuple[complex, complex]:
        """Ends of the mouth in the order in which the edge comes to them."""
        return (self.side_leg, self.centre_leg) if self.side_first else (self.centre_leg, self.side_leg)

    def mirrored(self, motion: Motion) -> Dart:
        """Image in a mirror, on an edge that is walked the other way."""
        bends = None if self.bends is None else (motion(self.bends[0]), motion(self.bends[1]))
        centre, side, point = motion(self.centre_leg), motion(self.side_leg), motion(self.point)
        return Dart(centre, side, point, not self.side_first, self.pleat, bends)

    def between(self, first: complex, second: complex) -> Dart:
        """Return the same dart with its legs run on to other ends, in the order of the edge."""
        centre, side = (second, first) if self.side_first else (first, second)
        return Dart(centre, side, self.point, self.side_first, self.pleat, self.bends)

    def across(self, before: Path, after: Path) -> Path:
        """Edge across the mouth, from the stretch before the dart to the stretch after it."""
        if self.pleat == "gathers":
            return Path((smooth(before.end, before.end_dir, after.start, after.start_dir),))
        from_before = self.side_first == (self.pleat == "reverse")
        return self.cap(before) if from_before else self.cap(after.reversed()).reversed()

    @property
    def intake(self) -> float:
        """Width of the mouth in mm."""
        return abs(self.side_leg - self.centre_leg)

    @property
    def length(self) -> float:
        """Length of either leg in mm."""
        return self.runs[0].length

    @property
    def fold_dir(self) -> complex:
        """Direction of the fold at the mouth, away from the point."""
        return unit(mid(self.centre_leg, self.side_leg) - mid(*self.roots))

    def cap(self, edge: Path) -> Path:
        """Edge across the mouth, from the leg onto which it is folded to the other.

        Parameters
        ----------
        edge : Path
            The edge on the side to which the dart is folded, walked towards it; its end lies on the line of that leg
            (the seam line, or the cut line beyond it).
        """
        at_side = self.pleat == "reverse"
        leg, foot = (self.side_leg if at_side else self.centre_leg), mid(*self.roots)
        in_leg = Motion.mirror(self.roots[at_side], leg)
        image = edge.reversed().moved(in_leg)
        image = Path.join(image, Line(image.end, image.end + image.end_dir * 4 * self.intake))
        crossings = meet_line(image, foot, self.fold_dir)
        half = image.between(0, crossings[0])
        other = half.moved(Motion.mirror(foot, foot + self.fold_dir)).reversed()
        return Path.join(half, other)
