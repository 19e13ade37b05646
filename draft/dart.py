"""A waist dart: two legs of equal length, and the cap that lets its edge close into one line.

Glossary
--------
legs   the two seam lines, from the mouth to the point
mouth  the gap in the waist seam between the legs
fold   the middle line, along which the cloth is folded when the dart is sewn
cap    the edge of the piece across the mouth; with the dart folded towards the centre and the waist cut straight
       across, it is the image of the centre side's edge in the leg, and of that in the fold
"""

from __future__ import annotations

from dataclasses import dataclass

from draft.geometry.meet import meet_line
from draft.geometry.path import Path
from draft.geometry.points import mid, unit
from draft.geometry.segments import Line, Motion


@dataclass(frozen=True, eq=False)
class Dart:
    """One dart between two stretches of an edge; `centre_leg` is the mouth's end nearer the centre seam.

    An edge runs from the centre to the side, unless it was mirrored: then the side leg comes first. ``pleat`` is empty
    for a dart; a pleat is folded ``"forward"``, towards the centre as a dart is, or in ``"reverse"``, towards the side.
    """

    centre_leg: complex
    side_leg: complex
    point: complex
    side_first: bool = False
    pleat: str = ""

    @property
    def legs(self) -> tuple[complex, complex]:
        """Ends of the mouth in the order in which the edge comes to them."""
        return (self.side_leg, self.centre_leg) if self.side_first else (self.centre_leg, self.side_leg)

    def mirrored(self, motion: Motion) -> Dart:
        """Image in a mirror, on an edge that is walked the other way."""
        return Dart(motion(self.centre_leg), motion(self.side_leg), motion(self.point), not self.side_first, self.pleat)

    def between(self, first: complex, second: complex) -> Dart:
        """Return the same dart with its legs run on to other ends, in the order of the edge."""
        centre, side = (second, first) if self.side_first else (first, second)
        return Dart(centre, side, self.point, self.side_first, self.pleat)

    def across(self, before: Path, after: Path) -> Path:
        """Edge across the mouth, from the stretch before the dart to the stretch after it."""
        from_before = self.side_first == (self.pleat == "reverse")
        return self.cap(before) if from_before else self.cap(after.reversed()).reversed()

    @property
    def intake(self) -> float:
        """Width of the mouth in mm."""
        return abs(self.side_leg - self.centre_leg)

    @property
    def length(self) -> float:
        """Length of either leg in mm."""
        return abs(self.centre_leg - self.point)

    @property
    def fold_dir(self) -> complex:
        """Direction of the fold from the point to the mouth."""
        return unit(mid(self.centre_leg, self.side_leg) - self.point)

    def cap(self, edge: Path) -> Path:
        """Edge across the mouth, from the leg onto which it is folded to the other.

        Parameters
        ----------
        edge : Path
            The edge on the side to which the dart is folded, walked towards it; its end lies on the line of that leg
            (the seam line, or the cut line beyond it).
        """
        leg = self.side_leg if self.pleat == "reverse" else self.centre_leg
        in_leg = Motion.mirror(self.point, leg)
        image = edge.reversed().moved(in_leg)
        image = Path.join(image, Line(image.end, image.end + image.end_dir * 4 * self.intake))
        crossings = meet_line(image, self.point, self.fold_dir)
        half = image.between(0, crossings[0])
        other = half.moved(Motion.mirror(self.point, self.point + self.fold_dir)).reversed()
        return Path.join(half, other)
