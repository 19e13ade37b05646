"""Corners of a leg: where side, hem, inseam, crotch seam and waist meet, named or proposed from the shape.

A proposal tries every way in which the sharp corners of an outline can be the five of a leg, the piece as it lies and
mirrored, and takes the one whose edges are most like those of trousers: the crotch seam is hollow and deepest near the
fork, hem and waist run alike, the side seam is longer than the inseam by the rise.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, fields
from itertools import combinations

import numpy as np

from draft.errors import DraftError
from draft.geometry.arrays import Floats, Points
from draft.trace.outline import Outline, thinned

NAMES = ("waist_side", "hem_side", "hem_inseam", "fork", "waist_centre")
"""Corners counter-clockwise, the piece seen from the right side of the cloth, its side seam on the left."""

WINDOW_MM = 8.0  # over which a turn is looked at, to either side
SHARPEST = 16  # corners that are tried
LEAST_TURN_DEG = 28.0
STEP_MM = 2.0
SHORTEST_CROTCH_MM = 80.0
HOLLOW = 0.06  # least depth of a crotch seam by its chord
WORST = 6.0  # a proposal worse than this is none


@dataclass(frozen=True)
class Corners:
    """Five corners of a front or back, in the coordinates of its outline."""

    waist_side: complex
    hem_side: complex
    hem_inseam: complex
    fork: complex
    waist_centre: complex

    def __post_init__(self) -> None:
        for entry in fields(self):
            value = getattr(self, entry.name)
            if isinstance(value, bool) or not isinstance(value, int | float | complex) or not np.isfinite(value):
                raise DraftError(f"corners.{entry.name}", value, "a point x + 1j * y in mm", "give its place")
            object.__setattr__(self, entry.name, complex(value))

    @property
    def mirrored(self) -> bool:
        """Whether the piece lies with its wrong side up: its corners run clockwise."""
        ring = np.array([getattr(self, name) for name in NAMES])
        return bool(np.sum((np.conj(ring) * np.roll(ring, -1)).imag) < 0)


def propose_corners(outline: Outline) -> Corners:
    """The five corners that are most likely those of a leg; the piece may be mirrored, turned or upside down.

    Raises
    ------
    DraftError
        When the outline is not like that of a front or back.

    Examples
    --------
    >>> leg = Outline([100j - 110, -160j - 110, -160j + 110, 130, 80 + 20j, 70 + 45j, 65 + 100j, 65 + 250j, 250j - 110])
    >>> found = propose_corners(leg)
    >>> found.fork, found.waist_centre, propose_corners(leg.moved(turn=-1)).fork
    ((130+0j), (65+250j), (-130+0j))
    """
    shape = _Shape.of(outline.points)
    mirror = _Shape.of(-np.conj(outline.points[::-1]))
    options = [(cost, ring.ring[list(chosen)], flip) for ring, flip in ((shape, False), (mirror, True))
               for cost, chosen in _readings(ring)]  # fmt: skip
    best = min(options, key=lambda option: option[0], default=None)
    if best is None or best[0] > WORST:
        told = "no hollow between two corners" if best is None else f"a shape unlike a leg ({best[0]:.1f})"
        raise DraftError(
            f"corners of {outline.source or 'the outline'}",
            told,
            "a front or back with waist, side, hem, inseam and a hollow crotch seam",
            "choose another outline, or name the corners with draft.trace.Corners(...)",
        )
    found = -np.conj(best[1]) if best[2] else best[1]
    return Corners(*(complex(p) for p in found))


@dataclass(frozen=True, eq=False)
class _Shape:
    """Outline as a ring of close points, with the places and turns (degrees) of its convex corners."""

    ring: Points
    along: Floats
    corners: tuple[int, ...]
    turns: dict[int, float]

    @classmethod
    def of(cls, outline: Points) -> _Shape:
        ring = close_points(outline)
        steps = np.abs(np.roll(ring, -1) - ring)
        along = np.append(0.0, np.cumsum(steps))
        turns = window_turns(ring, along)
        found: list[int] = []
        for index in np.argsort(-turns):
            if turns[index] < LEAST_TURN_DEG or len(found) == SHARPEST:
                break
            gaps = [abs(along[index] - along[k]) for k in found]
            if all(min(gap, along[-1] - gap) > WINDOW_MM for gap in gaps):
                found.append(int(index))
        return cls(ring, along, tuple(sorted(found)), {k: float(turns[k]) for k in found})

    def arc(self, i: int, j: int) -> Points:
        """Points from corner i on to corner j, counter-clockwise."""
        return self.ring[i : j + 1] if i <= j else np.concatenate([self.ring[i:], self.ring[: j + 1]])

    def length(self, i: int, j: int) -> float:
        return float((self.along[j] - self.along[i]) % self.along[-1])


def close_points(outline: Points) -> Points:
    """Closed polyline with points no further than 2 mm apart, its corners among them."""
    corners = thinned(outline, 0.02)
    ahead = np.roll(corners, -1)
    runs = [
        a + (b - a) * np.arange(n) / n
        for a, b, n in zip(corners, ahead, np.ceil(np.abs(ahead - corners) / STEP_MM).astype(int), strict=True)
    ]
    return np.concatenate(runs)


def window_turns(ring: Points, along: Floats) -> Floats:
    """Turn to the left in degrees at each point of a ring, between the chords of 8 mm behind and ahead of it."""
    total = along[-1]
    line = np.append(ring, ring[0])

    def at(places: Floats) -> Points:
        places = places % total
        return np.asarray(np.interp(places, along, line.real) + 1j * np.interp(places, along, line.imag))

    places = along[:-1]
    return np.asarray(np.degrees(np.angle((at(places + WINDOW_MM) - ring) / (ring - at(places - WINDOW_MM)))))


def _readings(shape: _Shape) -> Iterator[tuple[float, tuple[int, ...]]]:
    """Every way to name five corners, with what speaks against it."""
    hollows = sorted(_hollows(shape), reverse=True)[:3]
    for _, fork, centre, deepest in hollows:
        order = [k for k in shape.corners if k not in (fork, centre)]
        order.sort(key=lambda k: shape.length(centre, k))
        order = [k for k in order if shape.length(centre, k) < shape.length(centre, fork)]
        for side, hem, inner in combinations(order, 3):
            chosen = (side, hem, inner, fork, centre)
            yield _against(shape, chosen, deepest), chosen


def _hollows(shape: _Shape) -> Iterator[tuple[float, int, int, float]]:
    """Stretches from corner to corner that lie inside their chord: how hollow, both ends, where deepest (share)."""
    for i in shape.corners:
        for j in shape.corners:
            chord = shape.ring[j] - shape.ring[i]
            if i == j or abs(chord) < SHORTEST_CROTCH_MM or shape.length(i, j) > shape.along[-1] / 2:
                continue
            within = (k for k in shape.corners if k not in (i, j) and 0 < shape.length(i, k) < shape.length(i, j))
            if any(shape.turns[k] > 50 and shape.length(k, j) > 60 and shape.length(i, k) > 60 for k in within):
                continue
            aside = (shape.arc(i, j) - shape.ring[i]) / chord
            deep = float(aside.imag.max())
            if deep > HOLLOW and aside.imag.min() > -0.03:
                yield deep**2 * abs(chord), i, j, float(aside.real[np.argmax(aside.imag)])


def _against(shape: _Shape, chosen: tuple[int, ...], deepest: float) -> float:
    """What speaks against five corners: sum of squares, each 1 where a measure is as far off as legs commonly are."""
    side, hem, inner, fork, centre = chosen
    ring = shape.ring
    level = ring[inner] - ring[hem]  # along the hem, towards the inseam
    across = level / abs(level)
    rise = ((ring[centre] - ring[fork]) / across).imag
    if rise <= 0:
        return np.inf
    longer = shape.length(side, hem) - shape.length(inner, fork)
    waist = ring[centre] - ring[side]
    lean = [np.degrees(np.angle(v / (1j * across))) for v in (ring[side] - ring[hem], ring[fork] - ring[inner])]
    spread = abs(level) / max(abs(waist), 1.0)
    terms = [
        (longer / rise - 1) / 0.3,
        float(np.degrees(np.angle(waist / across))) / 20,
        (deepest - 0.3) / 0.2,
        (shape.length(hem, inner) / abs(level) - 1) / 0.05,
        *(angle / 25 for angle in lean),
        *((shape.turns[k] - 90) / 45 for k in chosen),
        (spread - 1.2) / 1.0 if spread < 1.2 else (spread - 1.2) / 2.5,
    ]
    near = 45.0  # the allowances of a corner may have two corners of their own
    skipped = [
        shape.turns[k] / 45
        for k in shape.corners
        if shape.length(side, k) < shape.length(side, fork)
        and all(min(shape.length(k, c), shape.length(c, k)) > near for c in chosen)
    ]
    return float(np.sum(np.square(np.minimum(np.abs([*terms, *skipped]), 4.0)))) / 2
