"""Outlines from points: measured with a ruler, or clicked on a photograph that shows a known square.

A photograph of a flat piece is a perspective picture: straight lines stay straight, and eight numbers (the homography)
carry every point of the picture into the plane of the piece. Four corners of a square fix them. What they cannot mend:
a bulging lens (1 to 2 % at the edges of a telephone's picture), and paper that does not lie flat (common practice, no
source).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from draft.errors import DraftError
from draft.geometry.arrays import Floats, Points
from draft.geometry.polygon import first_crossing
from draft.geometry.segments import Cubic
from draft.trace.outline import Outline, finite

SQUARE = np.array([0, 1, 1 + 1j, 1j], dtype=complex)  # in order round it, from its lower left corner
CORNER_DEG = 35.0  # a sharper turn between measured points stays a corner
CHECK_SHARE, CHECK_MM = 0.003, 3.0  # a check length may be off by so much (common practice, no source)
FLAT = 16  # chords of a smooth stretch
LEAST_SQUARE_PX = 20.0


def from_points(points: Sequence[complex], *, smooth: bool = False, source: str = "points") -> Outline:
    """Outline through points measured on the paper, mm, y up, in order round the piece.

    Parameters
    ----------
    points : sequence of complex
        x + 1j * y of each; three or more.
    smooth : bool
        Whether the line runs in curves through the points; where it turns by more than 35 degrees a corner stays.
    source : str
        Where they came from, for messages.

    Raises
    ------
    DraftError
        As :class:`Outline`.

    Examples
    --------
    >>> from_points([0, 300, 300 + 400j, 400j]).size
    (300.0, 400.0)
    >>> round(from_points([100, 100j, -100, -100j], smooth=True).area)
    20000
    """
    outline = Outline(finite(points, f"outline ({source})"), source)
    return replace(outline, points=smoothed(outline.points)) if smooth else outline


def smoothed(ring: Points) -> Points:
    """Closed polyline through the corners of another, curved where that one bends by less than 35 degrees."""
    ahead = np.roll(ring, -1) - ring
    behind = np.roll(ahead, 1)
    bends = np.abs(np.angle(ahead / behind))
    tangents = ahead + behind  # chords weighed by their lengths: a long straight stretch stays straight
    tangents = np.where(tangents == 0, ahead, tangents)
    tangents /= np.abs(tangents)
    sharp = np.radians(CORNER_DEG) < bends
    found = []
    for i, j in zip(range(len(ring)), [*range(1, len(ring)), 0], strict=True):
        leave = ahead[i] / abs(ahead[i]) if sharp[i] else tangents[i]
        arrive = ahead[i] / abs(ahead[i]) if sharp[j] else tangents[j]
        handle = abs(ahead[i]) / 3
        curve = Cubic(ring[i], ring[i] + handle * leave, ring[j] - handle * arrive, ring[j])
        found.append(curve.points(np.arange(FLAT) / FLAT))
    return np.concatenate(found)


def from_photo(
    points_px: Sequence[complex],
    square_px: Sequence[complex],
    square_mm: float,
    *,
    checks: Sequence[tuple[complex, complex, float]] = (),
    click_px: float = 1.0,
    smooth: bool = False,
    source: str = "photo",
) -> Outline:
    """Outline of points clicked on a photograph, with the perspective taken out.

    Parameters
    ----------
    points_px : sequence of complex
        Points round the piece in pixels, x to the right and y down, as pictures count them.
    square_px : sequence of complex
        The four corners of a square that lies in the plane of the piece, in order round it, from its lower left corner
        as it is to be read.
    square_mm : float
        Its side.
    checks : sequence of (complex, complex, float)
        Two places in pixels and the distance between them measured with a tape, mm; not used for the correction.
    click_px : float
        Likely error of a click in each direction, pixels.
    smooth, source
        As for :func:`from_points`.

    Returns
    -------
    Outline
        In mm from the first corner of the square, the second to the right of it. ``error`` is the root of the mean
        squared error of all points when each click, on the square too, is off by `click_px`: it grows with the distance
        from the square. ``notes`` say how each check came out.

    Raises
    ------
    DraftError
        For corners that are no square's, and when a check is off by more than 3 mm and more than 0.3 %.

    Examples
    --------
    >>> seen = from_photo([0, 1000, 1000 - 500j, -500j], [0, 200, 200 - 200j, -200j], 100, checks=[(0, 1000, 500.0)])
    >>> [round(side) for side in seen.size], seen.notes
    ([500, 250], ('check 1: 500.0 mm, measured 500.0',))
    """
    corners = _corners(square_px, square_mm)
    clicked = finite(points_px, f"points ({source})")
    if not (np.isfinite(click_px) and click_px >= 0):
        raise DraftError("click_px", click_px, "0 pixels or more", "give the likely error of a click")
    place = homography(corners, np.asarray(SQUARE * square_mm, dtype=complex))
    notes = tuple(_check(place, check, n) for n, check in enumerate(checks, start=1))
    outline = Outline(_carried(place, clicked, source), source)
    if smooth:
        outline = replace(outline, points=smoothed(outline.points))
    return replace(outline, error=_error(clicked, corners, square_mm, click_px), notes=notes)


def _corners(square_px: Sequence[complex], square_mm: float) -> Points:
    corners = finite(square_px, "square_px")
    if len(corners) != 4:
        raise DraftError("square_px", f"{len(corners)} points", "the four corners of the square", "click each once")
    if not (np.isfinite(square_mm) and 10 <= square_mm <= 5000):
        raise DraftError("square_mm", square_mm, "10 to 5000 mm", "give the side of the square")
    bends = np.angle(np.roll(corners, -1) - corners)
    turns = (np.diff(bends, append=bends[0]) + np.pi) % (2 * np.pi) - np.pi
    sides = np.abs(np.roll(corners, -1) - corners)
    if (
        first_crossing(corners) is not None
        or sides.min() < LEAST_SQUARE_PX
        or not ((turns > 0.2).all() or (turns < -0.2).all())
    ):
        expected = f"corners in order round a square, its sides {LEAST_SQUARE_PX:g} pixels or more"
        raise DraftError("square_px", [str(c) for c in corners], expected, "click them again, one after the other")
    return corners


def homography(seen: Points, true: Points) -> Floats:
    """The 3 x 3 matrix that carries four or more points of a picture onto their true places, by least squares.

    >>> np.round(homography(np.array([0, 2, 2 + 2j, 2j]), np.array([0, 1, 1 + 1j, 1j])), 6) + 0.0
    array([[0.5, 0. , 0. ],
           [0. , 0.5, 0. ],
           [0. , 0. , 1. ]])
    """
    middle, spread = seen.mean(), float(np.abs(seen - seen.mean()).mean())
    p = (seen - middle) / spread  # near 1, so that all columns weigh alike
    x, y, zero, one = p.real, p.imag, np.zeros(len(p)), np.ones(len(p))
    u, v = true.real, true.imag
    rows_u = np.stack([x, y, one, zero, zero, zero, -u * x, -u * y], axis=1)
    rows_v = np.stack([zero, zero, zero, x, y, one, -v * x, -v * y], axis=1)
    found = np.linalg.lstsq(np.concatenate([rows_u, rows_v]), np.concatenate([u, v]), rcond=None)[0]
    centred = np.array([[1 / spread, 0, -middle.real / spread], [0, 1 / spread, -middle.imag / spread], [0, 0, 1.0]])
    matrix = np.append(found, 1.0).reshape(3, 3) @ centred
    return np.asarray(matrix / matrix[2, 2])


def _carried(place: Floats, points: Points, source: str) -> Points:
    flat = np.stack([points.real, points.imag, np.ones(len(points))])
    x, y, w = place @ flat
    scale = (place @ np.array([0, 0, 1.0]))[2]
    if (w / scale <= 1e-9).any():
        raise DraftError(f"points ({source})", "beyond the horizon", "points of the plane of the square", "click again")
    return np.asarray((x + 1j * y) / w)


def _check(place: Floats, check: tuple[complex, complex, float], number: int) -> str:
    ends = _carried(place, finite(check[:2], f"check {number}"), f"check {number}")
    found, told = float(abs(ends[1] - ends[0])), float(check[2])
    off = abs(found - told)
    if not off <= max(CHECK_MM, CHECK_SHARE * told):
        raise DraftError(
            f"check {number}",
            round(found, 1),
            f"{told:g} mm as measured, within {max(CHECK_MM, CHECK_SHARE * told):.1f} mm",
            "lay the paper flat, take a larger square, keep to the middle of the picture",
        )
    return f"check {number}: {found:.1f} mm, measured {told:.1f}"


def _error(clicked: Points, corners: Points, square_mm: float, click_px: float) -> float:
    """Root mean square error in mm: slopes by all clicks (a hair to each side), their squares added."""
    true = np.asarray(SQUARE * square_mm, dtype=complex)
    hair, total = 0.01, np.zeros(len(clicked))

    def moved(points: Points, square: Points) -> Points:
        return _carried(homography(square, true), points, "photo")

    for way in (hair, 1j * hair):
        total += np.abs(moved(clicked + way, corners) - moved(clicked - way, corners)) ** 2
        for index in range(4):
            step = np.where(np.arange(4) == index, way, 0)
            total += np.abs(moved(clicked, corners + step) - moved(clicked, corners - step)) ** 2
    return float(np.sqrt(total.mean())) / (2 * hair) * click_px
