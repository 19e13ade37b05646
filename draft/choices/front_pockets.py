"""Front pockets beside the curved one: slanted, in the side seam, and a patch.

Defaults and ranges were read in a construction sheet of common practice; where the sheet says nothing, the docstring
says so. Every size that follows from the body when left out is smaller on small bodies.
"""

from __future__ import annotations

from draft.choice import choice, mm, yes_no
from draft.style import CurvedPocket, Pocket


@choice
class SlantedPocket(Pocket):
    """Front pocket with a straight slanted mouth from the waist to the side seam.

    Sizes in mm. Three pieces, front bag, back bag and a facing of the garment's cloth; or two, see `grown_on`.

    width, depth : from the side seam along the waist, and from the waist down the side seam, to the ends of the mouth;
        None: 75 and 160, less on small bodies.
    bag_depth : from the lower end of the mouth to the bottom of the bag; None: 110, less where the leg is short.
    bag_beyond : how far the bag reaches past the mouth towards the centre at the waist.
    facing_depth : how far the facing reaches under the front beyond the ends of the mouth, along waist and side seam.
    mouth_ease : how much looser the front lies over the facing at the waist.
    grown_on : the facing is cut in one with the back bag, of the garment's cloth (light cloths only).
    stay : width of the strip of interfacing along the mouth; None: no strip, a tape is sewn on instead.

    Examples
    --------
    >>> SlantedPocket(width="8 cm", grown_on=True).width
    80.0
    >>> SlantedPocket(facing_depth=50)
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: style.pocket.facing_depth is 50.0, expected at most 40 mm, the bag_beyond: the facing \
lies on the bag: make the facing narrower or the bag wider.
    """

    width: float | None = mm(None, 25, 160)
    depth: float | None = mm(None, 40, 220)
    bag_depth: float | None = mm(None, 40, 220)
    bag_beyond: float = mm(40.0, 25, 90)
    facing_depth: float = mm(30.0, 20, 60)
    mouth_ease: float = mm(0.0, 0, 8)
    grown_on: bool = yes_no(default=False)
    stay: float | None = mm(None, 10, 25)

    def __post_init__(self) -> None:
        super().__post_init__()
        CurvedPocket(bag_beyond=self.bag_beyond, facing_depth=self.facing_depth)  # refuses what does not go together


@choice
class InSeamPocket(Pocket):
    """Front pocket whose mouth is a stretch of the side seam left open; the front is not cut away.

    Sizes in mm. Two bags, hung from the waist seam, each with a strip of the garment's cloth along the side seam.

    below_waist : from the waist seam down the side seam to the upper end of the mouth; None: 45, less on small bodies.
    mouth : length of the mouth along the side seam; None: 160, less on small bodies.
    bag_depth : from the lower end of the mouth to the bottom of the bag; None: 110, less where the leg is short.
    bag_width : from the side seam along the waist to the inner end of the bag; None: 180, less on small bodies.
    strip : width of the strips of cloth on both bags; None: 45, less where the bag is small.

    Examples
    --------
    >>> InSeamPocket(mouth="15 cm").mouth
    150.0
    """

    below_waist: float | None = mm(None, 15, 120)
    mouth: float | None = mm(None, 60, 220)
    bag_depth: float | None = mm(None, 40, 220)
    bag_width: float | None = mm(None, 60, 260)
    strip: float | None = mm(None, 20, 60)


@choice
class FrontPatchPocket(Pocket):
    """Patch pocket sewn onto the front, upright on its grain; the front is not cut away.

    Sizes in mm. Width and height of such a patch were read for the back; on the front they are taken over, and the
    place is common practice without a source.

    width, height : finished; None: 140 and 150, less on small bodies. The height is that of both sides.
    below_waist : level of the mouth below the waist at the side seam; None: 70, less on small bodies, and below a dart.
    from_side : from the side seam, where it comes nearest, to the outer edge; None: 30, less on small bodies.
    point : how much lower the middle of the bottom lies than its corners.
    mouth_hem : turned to the inside along the mouth.
    turn : folded under along the other edges.

    Examples
    --------
    >>> FrontPatchPocket(point=0).point
    0.0
    """

    width: float | None = mm(None, 50, 220)
    height: float | None = mm(None, 50, 240)
    below_waist: float | None = mm(None, 20, 200)
    from_side: float | None = mm(None, 12, 90)
    point: float = mm(15.0, 0, 40)
    mouth_hem: float = mm(25.0, 15, 40)
    turn: float = mm(10.0, 6, 15)
