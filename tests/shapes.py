"""A zoo of curves, strategies that draw more of them, and the comparison of two paths.

Lengths are mm. The zoo holds what a drafting library must survive; the calm strategies hold what it draws every day.
"""

from __future__ import annotations

import numpy as np
import shapely
from hypothesis import strategies as st
from scipy.integrate import quad

from draft.geometry.path import Path
from draft.geometry.segments import Cubic, Line, Motion, Segment

ZOO = {
    "calm": Cubic(0j, 60 + 40j, 180 + 70j, 240 + 10j),
    "crotch": Cubic(0 + 230j, 5 + 95j, 20 + 12j, 95 + 0j),
    "straight": Cubic(0j, 20 + 10j, 140 + 70j, 200 + 100j),
    "no_first_handle": Cubic(0j, 0j, 50 + 80j, 200 + 0j),
    "no_last_handle": Cubic(0j, 90 + 90j, 200 + 0j, 200 + 0j),
    "no_handles": Cubic(0j, 0j, 200 + 10j, 200 + 10j),
    "loop": Cubic(0j, 300 + 200j, -200 + 200j, 100 + 0j),
    "cusp": Cubic(0j, 100 + 100j, 0 + 100j, 100 + 0j),
    "near_cusp": Cubic(0j, 100.001 + 100j, 0 + 100j, 100 + 0j),
    "turns_back": Cubic(0j, 300 + 75j, -100 - 25j, 200 + 50j),
    "s_curve": Cubic(0j, 150 + 0j, 50 + 200j, 200 + 200j),
    "returns": Cubic(0j, 100 + 0j, 0 + 100j, 0j),
    "tiny": Cubic(0j, 0.02j, 0.03 + 0.02j, 0.03 + 0j),
    "huge": Cubic(0j, 3e5 + 4e5j, 8e5 - 3e5j, 1e6 + 0j),
    "far_away": Cubic(9000 + 9000j, 9060 + 9040j, 9180 + 9070j, 9240 + 9010j),
}
CALM_ONES = ("calm", "crotch", "straight", "s_curve", "far_away")


def quarter_circles(radius: float, centre: complex = 0j) -> Path:
    """Four cubics close to a circle, counter-clockwise.

    The handle 4/3 (sqrt 2 - 1) of the radius puts the middle of each on the circle; none strays more than 0.0273 % of
    the radius, outwards (from memory: the figure that textbooks on curves give).
    """
    handle = 4 / 3 * (2**0.5 - 1)
    quarters = (Cubic(*(centre + radius * 1j**k * p for p in (1, 1 + handle * 1j, handle + 1j, 1j))) for k in range(4))
    return Path(tuple(quarters))


def numbers(low: float, high: float) -> st.SearchStrategy[float]:
    """Draw plain numbers of six decimals: nothing in a garment is finer."""
    return st.floats(low, high, allow_nan=False).map(lambda x: round(x, 6))


@st.composite
def places(draw: st.DrawFn, reach: float = 500.0) -> complex:
    """Draw points within `reach` mm of the origin, across and up."""
    return complex(draw(numbers(-reach, reach)), draw(numbers(-reach, reach)))


@st.composite
def directions(draw: st.DrawFn) -> complex:
    """Draw directions of length 1."""
    return complex(np.exp(1j * draw(numbers(-np.pi, np.pi))))


@st.composite
def calm_cubics(draw: st.DrawFn, longest: float = 600.0) -> Cubic:
    """Draw curves like seams: 50 mm or longer, handles of 0.2 to 0.5 of the chord, turned from it up to 57 degrees."""
    start, chord = draw(places()), draw(numbers(50, longest)) * draw(directions())
    near, far = (draw(numbers(0.2, 0.5)) * np.exp(1j * draw(numbers(-1, 1))) for _ in range(2))
    end = start + chord
    return Cubic(start, complex(start + near * chord), complex(end - far * chord), end)


@st.composite
def wild_cubics(draw: st.DrawFn) -> Cubic:
    """Draw any four points: loops, near cusps, handles longer than the chord."""
    return Cubic(*(draw(places(300)) for _ in range(4)))


@st.composite
def lines(draw: st.DrawFn) -> Line:
    """Draw lines from 1 to 600 mm long."""
    start = draw(places())
    return Line(start, start + draw(numbers(1, 600)) * draw(directions()))


@st.composite
def paths(draw: st.DrawFn) -> Path:
    """Draw open paths of one to four calm segments, usually with corners."""
    found: list[Segment] = []
    for segment in draw(st.lists(st.one_of(calm_cubics(), lines()), min_size=1, max_size=4)):
        shift = found[-1].controls[-1] - segment.controls[0] if found else 0j
        moved = segment.moved(Motion(shift=shift))
        # the first point is taken over, so that the joint is exact
        start = found[-1].controls[-1] if found else moved.controls[0]
        found.append(type(moved)(start, *moved.controls[1:]))
    return Path(tuple(found))


@st.composite
def outlines(draw: st.DrawFn) -> Path:
    """Draw closed paths; they may cross themselves."""
    path = draw(paths())
    return Path.join(path, Line(path.end, path.start))


@st.composite
def motions(draw: st.DrawFn) -> Motion:
    """Draw rigid moves, half of them mirrored."""
    return Motion(draw(directions()), draw(places()), draw(st.booleans()))


def as_line(points: np.ndarray) -> shapely.LineString:
    """Polyline for shapely."""
    return shapely.LineString(np.column_stack([points.real, points.imag]))


def as_points(points: np.ndarray) -> np.ndarray:
    """Points for shapely."""
    return shapely.points(points.real, points.imag)


def sampled(path: Path | Segment, steps: int = 1000) -> np.ndarray:
    """Points at equal parameter steps of every segment: no use is made of the library's flattening."""
    segments = path.segments if isinstance(path, Path) else (path,)
    t = np.arange(steps) / steps
    return np.concatenate([s.points(t) for s in segments] + [np.array([segments[-1].controls[-1]])])


def sampling_error(path: Path | Segment, steps: int = 1000) -> float:
    """How far (mm) the polyline through `sampled` may stray: |B''| / (8 steps^2), the error of linear interpolation."""
    segments = path.segments if isinstance(path, Path) else (path,)
    bend = max(abs(s.acceleration(t)) for s in segments for t in (0.0, 1.0))
    return float(bend / (8 * steps**2)) + 1e-9


def true_length(cubic: Cubic, until: float = 1.0) -> float:
    """Arc length by scipy.integrate.quad (adaptive Gauss-Kronrod, QUADPACK), cut where the speed is smallest."""
    velocity = [np.poly1d(_velocity_powers(cubic, part)) for part in ("real", "imag")]
    slowest = (velocity[0] ** 2 + velocity[1] ** 2).deriv().roots
    cuts = [0.0]
    for t in sorted(float(r.real) for r in np.atleast_1d(slowest)):
        if cuts[-1] + 1e-6 < t < until - 1e-6:
            cuts.append(t)
    total = 0.0
    for low, high in zip(cuts, [*cuts[1:], until], strict=True):
        part, error, *_ = quad(
            lambda t: abs(cubic.velocity(t)), low, high, epsabs=1e-9, epsrel=1e-11, limit=200, full_output=1
        )
        assert error < 1e-6 * max(1.0, part), "the reference itself must be good"
        total += part
    return total


def _velocity_powers(cubic: Cubic, part: str) -> list[float]:
    p0, p1, p2, p3 = (float(getattr(complex(p), part)) for p in cubic.controls)
    return [3 * (p3 - p0 + 3 * (p1 - p2)), 6 * (p0 - 2 * p1 + p2), 3 * (p1 - p0)]


def stacked(cubics: list[Cubic]) -> Cubic:
    """Many cubics as one with array control points."""
    return Cubic(*(np.array([complex(c.controls[k]) for c in cubics]) for k in range(4)))  # type: ignore[arg-type]


def assert_paths_close(found: Path, expected: Path, within: float, steps: int = 400) -> None:
    """Two paths run along the same places, either way, within a distance in mm; says the largest gap and where."""
    for one, other, name in ((found, expected, "found"), (expected, found, "expected")):
        line = as_line(sampled(other, 4 * steps))
        points = sampled(one, steps)
        gaps = shapely.distance(as_points(points), line)
        worst = int(np.argmax(gaps))
        if not gaps[worst] <= within + sampling_error(other, 4 * steps):
            along = float(np.sum(np.abs(np.diff(points[: worst + 1]))))
            raise AssertionError(
                f"largest gap {gaps[worst]:.6f} mm (allowed {within:g}) at {complex(points[worst]):.3f}, "
                f"{along:.1f} mm along the {name} path"
            )
    for end in ("start", "end"):
        gap = abs(getattr(found, end) - getattr(expected, end))
        assert gap <= within, f"the {end}s lie {gap:.6f} mm apart (allowed {within:g})"
