"""Where segments and paths meet.

``line`` in a name means the endless line, ``Line`` the stretch between two points. Paths that only touch are found
too, as far as rounding lets anything be found there.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from draft.geometry.length import length, partial_length
from draft.geometry.path import Path
from draft.geometry.points import cross
from draft.geometry.segments import Cubic, Line, Segment

MEET_TOL_MM = 1e-7
_SLACK = 1e-9


@dataclass(frozen=True)
class Meeting:
    """One meeting point, with its distance (mm) along either path."""

    point: complex
    along_a: float
    along_b: float


def line_crossings(segment: Segment, p: complex, direction: complex) -> list[float]:
    """Parameters where a segment crosses the endless line through `p` along `direction`, in order.

    A segment that lies on the line has none.

    >>> line_crossings(Line(0, 10), 4 + 9j, 1j)
    [0.4]
    """
    heights = [float(cross(direction, c - p)) for c in segment.controls]
    if isinstance(segment, Line):
        h0, h1 = heights
        roots = [] if h0 == h1 else [h0 / (h0 - h1)]
    else:
        h0, h1, h2, h3 = heights
        coefficients = [h3 - h0 + 3 * (h1 - h2), 3 * (h0 - 2 * h1 + h2), 3 * (h1 - h0), h0]
        roots = _real_roots(coefficients)
    return sorted({min(1.0, max(0.0, r)) for r in roots if -_SLACK <= r <= 1 + _SLACK})


def _real_roots(coefficients: list[float]) -> list[float]:
    largest = max(abs(c) for c in coefficients)
    if largest == 0:
        return []
    kept = np.trim_zeros(np.where(np.abs(coefficients) < 1e-13 * largest, 0.0, coefficients), "f")
    return [float(r.real) for r in np.roots(kept) if abs(r.imag) < 1e-7]


def meet_line(path: Path, p: complex, direction: complex) -> list[float]:
    """Arc lengths where a path crosses the endless line through `p` along `direction`, in order.

    >>> meet_line(Path.line(0, 10, 10 + 10j, 10j), 4 + 3j, 1)
    [13.0]
    """
    found: list[float] = []
    before = 0.0
    for segment in path.segments:
        here = length(segment)
        for t in line_crossings(segment, p, direction):
            along = before + (partial_length(segment, t) if isinstance(segment, Cubic) else t * here)
            if not found or along - found[-1] > 1e-6:
                found.append(along)
        before += here
    return found


def meet(a: Path, b: Path) -> list[Meeting]:
    """All points where two paths cross or touch, in order along `a`.

    Examples
    --------
    >>> meet(Path.line(0j, 10), Path.line(5 - 5j, 5 + 5j))
    [Meeting(point=(5+0j), along_a=5.0, along_b=5.0)]
    """
    found: list[Meeting] = []
    before_a = 0.0
    for one in a.segments:
        before_b = 0.0
        for two in b.segments:
            for s, t in _crossings(one, two):
                where = Meeting(one.point(s), before_a + _along(one, s), before_b + _along(two, t))
                if all(abs(where.point - other.point) > 1e-5 for other in found):
                    found.append(where)
            before_b += length(two)
        before_a += length(one)
    return sorted(found, key=lambda m: m.along_a)


def _along(segment: Segment, t: float) -> float:
    return float(partial_length(segment, t) if isinstance(segment, Cubic) else t * length(segment))


def _crossings(one: Segment, two: Segment) -> list[tuple[float, float]]:
    """Pairs of parameters where two segments meet."""
    if not _boxes_touch(one, two):
        return []
    if isinstance(two, Line):
        return [
            (s, t) for s in line_crossings(one, two.p0, two.p1 - two.p0) if (t := _on(two, one.point(s))) is not None
        ]
    if isinstance(one, Line):
        return [
            (s, t) for t in line_crossings(two, one.p0, one.p1 - one.p0) if (s := _on(one, two.point(t))) is not None
        ]
    return _cubic_crossings(one, two)


def _on(line: Line, p: complex) -> float | None:
    """Parameter of a point known to lie on the endless line, or None when it is beyond the ends."""
    run = line.p1 - line.p0
    if run == 0:
        return None
    t = float(((p - line.p0) / run).real)
    return min(1.0, max(0.0, t)) if -_SLACK <= t <= 1 + _SLACK else None


def _box(segment: Segment) -> tuple[float, float, float, float]:
    xs = [c.real for c in segment.controls]
    ys = [c.imag for c in segment.controls]
    return min(xs), max(xs), min(ys), max(ys)


def _boxes_touch(one: Segment, two: Segment) -> bool:
    ax0, ax1, ay0, ay1 = _box(one)
    bx0, bx1, by0, by1 = _box(two)
    return ax0 <= bx1 + 1e-9 and bx0 <= ax1 + 1e-9 and ay0 <= by1 + 1e-9 and by0 <= ay1 + 1e-9


_FLAT_MM = 0.02


def _flatness(c: Cubic) -> float:
    return max(abs(c.p0 - 2 * c.p1 + c.p2), abs(c.p1 - 2 * c.p2 + c.p3))


def _cubic_crossings(one: Cubic, two: Cubic) -> list[tuple[float, float]]:
    """Halve both curves wherever their boxes touch, until they are nearly straight; then polish by Newton's method."""
    found: list[tuple[float, float]] = []
    stack: list[tuple[Cubic, float, float, Cubic, float, float]] = [(one, 0.0, 1.0, two, 0.0, 1.0)]
    budget = 20_000
    while stack and budget:
        budget -= 1
        a, a0, a1, b, b0, b1 = stack.pop()
        if not _boxes_touch(a, b):
            continue
        bend_a, bend_b = _flatness(a), _flatness(b)
        if bend_a < _FLAT_MM and bend_b < _FLAT_MM:
            pair = _polish(one, two, (a0 + a1) / 2, (b0 + b1) / 2)
            if pair is not None and all(abs(pair[0] - s) + abs(pair[1] - t) > 1e-6 for s, t in found):
                found.append(pair)
            continue
        if bend_a >= bend_b:
            middle = (a0 + a1) / 2
            left, right = a.split(0.5)
            stack += [(left, a0, middle, b, b0, b1), (right, middle, a1, b, b0, b1)]
        else:
            middle = (b0 + b1) / 2
            left, right = b.split(0.5)
            stack += [(a, a0, a1, left, b0, middle), (a, a0, a1, right, middle, b1)]
    return found


def _polish(one: Cubic, two: Cubic, s: float, t: float) -> tuple[float, float] | None:
    for _ in range(30):
        gap = two.point(t) - one.point(s)
        u, v = one.velocity(s), two.velocity(t)
        turn = cross(u, v)
        if abs(turn) < 1e-12:
            return None
        ds, dt = float(cross(gap, v) / turn), float(cross(gap, u) / turn)
        s, t = s + ds, t + dt
        if abs(ds) + abs(dt) < 1e-14:
            break
    if abs(two.point(t) - one.point(s)) > MEET_TOL_MM * 10 or not (
        -_SLACK <= s <= 1 + _SLACK and -_SLACK <= t <= 1 + _SLACK
    ):
        return None
    return min(1.0, max(0.0, s)), min(1.0, max(0.0, t))
