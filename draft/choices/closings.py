"""Closings beyond the zip fly with separate facing: buttons, a facing grown on, a zip at the side, none."""

from __future__ import annotations

from draft.choice import choice, mm, one_of
from draft.style import Closing, FlyFront


@choice
class ButtonFly(FlyFront):
    """Fly that closes with buttons: facing and shield as of the zip fly, and a folded stand with the buttonholes.

    The widths and lengths of the zip fly mean the same here; the opening ends where its zip would stop.

    button : diameter; None: 15, less where the topstitching leaves less room.
    button_thickness : the buttonhole is as long as diameter and thickness together.
    spacing : about how far the buttons lie apart; they are spread evenly from the band's button to the lowest, and
        their number follows.

    Examples
    --------
    >>> ButtonFly(spacing="4.5 cm").spacing
    45.0
    """

    button: float | None = mm(None, 8, 25)
    button_thickness: float = mm(3.0, 0.5, 10)
    spacing: float = mm(40.0, 20, 80)


@choice
class GrownOnFly(FlyFront):
    """Zip fly whose facing is cut in one with the overlapping front and folded back along the centre front.

    Both fronts are cut with it; the underlapping one is cut off past its underlap. ``width`` and ``facing_beyond`` are
    those of the grown-on facing; its fold has to be straight, so the opening ends that much above the curve.

    under : how far the underlapping front reaches past the centre front; it is folded 5 past it.
    """

    under: float = mm(15.0, 10, 20)


@choice
class SideZip(Closing):
    """Zip in the left side seam; the front is sewn up to the waist. A band without an underlap of its own gets 30.

    length : from the waist seam to the zip stop along the side seam; None: to 25 above the hip line.
    insertion : ``"concealed"``: edge to edge; ``"lapped"``: the front lies over the zip and is topstitched.
    lap : which end of the band lies on top: ``"left_over_right"``, the front over the back, as is usual, or
        ``"right_over_left"``, the back over the front.
    """

    length: float | None = mm(None, 60, 300)
    insertion: str = one_of("concealed", "concealed", "lapped")


@choice
class NoClosing(Closing):
    """No opening at all: for an elastic waist that is pulled on over the hip."""
