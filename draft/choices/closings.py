"""Closings beyond the zip fly with separate facing."""

from __future__ import annotations

from draft.style import FlyFront, choice, mm


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
