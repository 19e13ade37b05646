"""Where segments and paths meet.

``line`` in a name means the endless line, ``Line`` the stretch between two points. Paths that only touch are found
too, as far as rounding lets anything be found there.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import copysign, sqrt

from draft.errors import DraftError
from draft.geometry.length import length, partial_length
from draft.geometry.path import Path
from draft.geometry.points import cross, dot, unit
from draft.geometry.segments import Cubic, Line, Segment

MEET_TOL_MM = 1e-7
_END_MM = 1e-6  # how far beyond the end of a segment a meeting point still counts as on it
_SAME_MM = 1e-3  # meeting points closer together than this are one
_ROUNDING_MM = 1e-11
_SLACK = 1e-9


@dataclass(frozen=True)
class Meeting:
    """One meeting point, with its distance (mm) along either path."""

    point: complex
    along_a: float
    along_b: float


def line_crossings(segment: Segment, p: complex, direction: complex) -> list[float]:
    """Parameters where a segment crosses or touches the endless line through `p` along `direction`, in order.

    A segment that lies on the line has none.

    >>> line_crossings(Line(0, 10), 4 + 9j, 1j)
    [0.4]
    """
    if direction == 0:
        return []
    along = unit(direction)
    heights = [float(cross(along, c - p)) for c in segment.controls]
    if max(abs(h) for h in heights) <= MEET_TOL_MM:
        return []
    return _zeros_of_line(*heights) if isinstance(segment, Line) else _zeros(*heights)


def _zeros_of_line(h0: float, h1: float) -> list[float]:
    for t, height in ((0.0, h0), (1.0, h1)):
        if abs(height) <= MEET_TOL_MM:
            return [t]
    return [h0 / (h0 - h1)] if (h0 < 0) != (h1 < 0) else []


def _zeros(h0: float, h1: float, h2: float, h3: float) -> list[float]:
    """Parameters from 0 to 1 where a cubic in Bernstein form is zero, in order.

    Between its turning points it rises or falls all the way and has one zero or none. An end or a turning point that
    is zero within MEET_TOL_MM is one itself: there the line meets an end, or touches. Neighbours of that kind are one.
    """
    a, b, c = 3 * (h1 - h0), 3 * (h0 - 2 * h1 + h2), h3 - h0 + 3 * (h1 - h2)
    inner = _turning_points(a, b, c)
    marks = [0.0, *inner, 1.0]
    values = [h0, *(h0 + t * (a + t * (b + t * c)) for t in inner), h3]
    found: list[float] = []
    touching = False
    for k, (t, height) in enumerate(zip(marks, values, strict=True)):
        if abs(height) <= MEET_TOL_MM:
            if not touching:
                found.append(t)
            elif t == 1 and found[-1] > 0:
                found[-1] = 1.0  # the end stands for the turning point just before it
            touching = True
            continue
        if k and not touching and (values[k - 1] < 0) != (height < 0):
            found.append(_zero_between((h0, a, b, c), marks[k - 1], t))
        touching = False
    return found


def _turning_points(a: float, b: float, c: float) -> list[float]:
    """Zeros of a + 2 b t + 3 c t^2 between 0 and 1, in order; the form with q loses no digits to subtraction."""
    inside = b * b - 3 * a * c
    if inside < 0:
        return []
    q = -(b + copysign(sqrt(inside), b))
    roots = {n / d for n, d in ((q, 3 * c), (a, q)) if abs(n) < abs(d)}
    return sorted(t for t in roots if 0 < t < 1)


def _zero_between(powers: tuple[float, float, float, float], low: float, high: float) -> float:
    """Newton's method kept inside a shrinking bracket."""
    h0, a, b, c = powers
    rising = h0 + high * (a + high * (b + high * c)) > 0
    t = (low + high) / 2
    for _ in range(80):
        height = h0 + t * (a + t * (b + t * c))
        if (height > 0) == rising:
            high = t
        else:
            low = t
        slope = a + t * (2 * b + 3 * c * t)
        step = t - height / slope if slope else low
        following = step if low < step < high else (low + high) / 2
        if abs(following - t) < 1e-15:
            break
        t = following
    return t


def meet_line(path: Path, p: complex, direction: complex) -> list[float]:
    """Arc lengths where a path crosses the endless line through `p` along `direction`, in order.

    >>> meet_line(Path.line(0, 10, 10 + 10j, 10j), 4 + 3j, 1)
    [13.0]
    """
    found: list[float] = []
    before = 0.0
    for segment in path.segments:
        for t in line_crossings(segment, p, direction):
            along = before + _along(segment, t)
            if not found or along - found[-1] > _SAME_MM:
                found.append(along)
        before += length(segment)
    return found


def along_at_height(path: Path, y: float) -> float:
    """Arc length at which a path first reaches the height `y`.

    >>> along_at_height(Path.line(100j, 0j), 30)
    70.0
    """
    found = meet_line(path, 1j * y, 1 + 0j)
    if not found:
        raise DraftError("height on the path", y, "a height that the path reaches", "choose another height")
    return found[0]


def meet(a: Path, b: Path) -> list[Meeting]:
    """All points where two paths cross or touch, in order along `a`.

    A stretch along which both run together has no single meeting point: only ends that they share are reported there.

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
                where = Meeting(complex(one.point(s)), before_a + _along(one, s), before_b + _along(two, t))
                if all(abs(where.point - other.point) > _SAME_MM for other in found):
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
    shared = [
        (s, t)
        for s, p in ((0.0, one.controls[0]), (1.0, one.controls[-1]))
        for t, q in ((0.0, two.controls[0]), (1.0, two.controls[-1]))
        if abs(p - q) <= MEET_TOL_MM
    ]
    if isinstance(two, Line):
        places = ((s, _on(two, one.point(s))) for s in line_crossings(one, two.p0, two.p1 - two.p0))
        return shared + [(s, t) for s, t in places if t is not None]
    if isinstance(one, Line):
        places = ((t, _on(one, two.point(t))) for t in line_crossings(two, one.p0, one.p1 - one.p0))
        return shared + [(s, t) for t, s in places if s is not None]
    crossings = _cubic_crossings(one, two)
    return shared if len(crossings) > _MOST_CROSSINGS else shared + crossings


def _on(line: Line, p: complex) -> float | None:
    """Parameter of a point known to lie on the endless line, or None when it is beyond the ends."""
    run = line.p1 - line.p0
    size = abs(run)
    if size == 0:
        return None
    reach = float(dot(p - line.p0, run)) / size
    return min(1.0, max(0.0, reach / size)) if -_END_MM <= reach <= size + _END_MM else None


def _box(segment: Segment) -> tuple[float, float, float, float]:
    """Left, right, bottom and top of the control points; kept with the segment, which never changes."""
    known: tuple[float, float, float, float] | None = segment.__dict__.get(_KNOWN)
    if known is None:
        xs = [c.real for c in segment.controls]
        ys = [c.imag for c in segment.controls]
        known = segment.__dict__[_KNOWN] = min(xs), max(xs), min(ys), max(ys)
    return known


def _boxes_touch(one: Segment, two: Segment) -> bool:
    ax0, ax1, ay0, ay1 = _box(one)
    bx0, bx1, by0, by1 = _box(two)
    return ax0 <= bx1 + 1e-9 and bx0 <= ax1 + 1e-9 and ay0 <= by1 + 1e-9 and by0 <= ay1 + 1e-9


_KNOWN = "_control_box"
_FLAT_MM = 0.02
_MOST_CROSSINGS = 9  # two different cubics meet no oftener (Bezout's theorem); more means that they run together


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
            for s, t in _starts(a, b):
                pair = _polish(one, two, a0 + s * (a1 - a0), b0 + t * (b1 - b0))
                if pair is not None and all(abs(one.point(pair[0]) - one.point(s)) > _SAME_MM for s, _ in found):
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


def _starts(a: Cubic, b: Cubic) -> list[tuple[float, float]]:
    """Where Newton's method sets out on two nearly straight stretches: two that bow apart may meet near both ends."""
    run = b.p3 - b.p0
    size = abs(run) ** 2
    if size == 0:
        return [(0.5, 0.5)]
    return [(s, min(1.0, max(0.0, float(dot(a.point(s) - b.p0, run)) / size))) for s in (0.0, 0.5, 1.0)]


def _polish(one: Cubic, two: Cubic, s: float, t: float) -> tuple[float, float] | None:
    for _ in range(30):
        gap = two.point(t) - one.point(s)
        if abs(gap) <= _ROUNDING_MM:  # further steps would only follow rounding, far where the curves touch
            break
        u, v = one.velocity(s), two.velocity(t)
        turn = cross(u, v)
        if abs(turn) <= 1e-12 * abs(u) * abs(v):
            break
        ds, dt = float(cross(gap, v) / turn), float(cross(gap, u) / turn)
        s, t = s + ds, t + dt
        if abs(ds) + abs(dt) < 1e-14:
            break
    if abs(two.point(t) - one.point(s)) > MEET_TOL_MM * 10 or not (
        -_SLACK <= s <= 1 + _SLACK and -_SLACK <= t <= 1 + _SLACK
    ):
        return None
    return min(1.0, max(0.0, s)), min(1.0, max(0.0, t))
