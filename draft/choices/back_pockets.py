"""Back pockets to choose from: a patch sewn onto the back, and a mouth with one welt or two cut into it."""

from __future__ import annotations

from draft.choice import choice, mm, one_of, whole, yes_no
from draft.errors import DraftError
from draft.style import BackPocket

LEAST_WITH_FLAP = 35.0  # the flap is sewn 15 above the mouth, and 20 stay clear below the waist seam


@choice
class PatchPocket(BackPocket):
    """Patch pocket on each back, centred on the back darts, or on the back where it has none.

    width : of the mouth; None: 140, less on small bodies.
    height : from the mouth to the lowest point; None: 1.07 of the width, longer where a dart ends under the pocket.
    below : from the waist seam to the mouth, at its middle; None: 65, less on small bodies, counted from the body's
        waist where the waist is raised; with a yoke, at least 12 below its seam.
    shape : of the lower edge: ``"pointed"``, ``"rounded"`` or ``"square"``.
    point : how much lower the middle of a pointed edge lies than its corners.
    taper : how much each side comes in from the mouth to the lower corner.
    hem, turn : depth of the mouth's turned hem, and what is folded under its raw edge.
    flap : with a flap, sewn 15 above the mouth and 2 wider at each end.
    flap_depth : from its seam to its lowest point; None: 55, less on small pockets.
    flap_button, flap_button_thickness : diameter and thickness of a button on the pocket, with its buttonhole in the
        flap; None: no button.

    Examples
    --------
    >>> PatchPocket(width="13 cm").width
    130.0
    """

    width: float | None = mm(None, 40, 260)
    height: float | None = mm(None, 40, 280)
    below: float | None = mm(None, 20, 150)
    shape: str = one_of("pointed", "pointed", "rounded", "square")
    point: float = mm(18.0, 4, 60)
    taper: float = mm(4.0, 0, 15)
    hem: float = mm(25.0, 10, 40)
    turn: float = mm(10.0, 0, 15)
    flap: bool = yes_no(default=False)
    flap_depth: float | None = mm(None, 30, 90)
    flap_button: float | None = mm(None, 8, 40)
    flap_button_thickness: float = mm(3.0, 0.5, 10)

    def __post_init__(self) -> None:
        super().__post_init__()
        if self.flap_button is not None and not self.flap:
            raise DraftError(
                f"{self.where}.flap_button", self.flap_button, "None without a flap", "write flap=True, or leave it out"
            )
        if self.flap and self.below is not None and self.below < LEAST_WITH_FLAP:
            raise DraftError(
                f"{self.where}.below",
                self.below,
                f"at least {LEAST_WITH_FLAP:g} mm with a flap, which is sewn above the mouth",
                "set the pocket lower or leave the flap out",
            )


@choice
class WeltPocket(BackPocket):
    """Back pocket whose mouth is cut into the back, parallel to the waist seam and centred on the darts.

    width : of the mouth; None: 130, less on small bodies.
    below : from the waist seam to the upper edge of the mouth, at its middle; None: 70, less on small bodies, counted
        from the body's waist where the waist is raised; with a yoke, at least 12 below its seam.
    welts : one, standing up from the lower edge, or two that meet in the middle.
    welt : finished height of each; None: 12 for one, 6 for two.
    bag_depth : from the mouth to the bottom of the bag; None: 150, less where the back is short.

    Examples
    --------
    >>> WeltPocket(welts=2).each
    6.0
    """

    width: float | None = mm(None, 40, 240)
    below: float | None = mm(None, 25, 150)
    welts: int = whole(1, 1, 2)
    welt: float | None = mm(None, 4, 25)
    bag_depth: float | None = mm(None, 60, 260)

    @property
    def each(self) -> float:
        """Finished height of one welt, mm."""
        return (12.0 if self.welts == 1 else 6.0) if self.welt is None else self.welt

    @property
    def opening(self) -> float:
        """Height of the box that is cut open, mm."""
        return self.welts * self.each
