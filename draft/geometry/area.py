"""Area enclosed by segments, exact for cubics (Green's theorem in Bernstein form)."""

from __future__ import annotations

from collections.abc import Iterable
from math import comb

from draft.geometry.points import cross
from draft.geometry.segments import Line, Segment

# Half the integral of B x B' over a cubic is half the sum over i, j of cross(p_i, p_j+1 - p_j) times the integral of
# 3 b_i,3 b_j,2, which is 3 C(3,i) C(2,j) / (6 C(5,i+j)).
_WEIGHTS = tuple(tuple(comb(3, i) * comb(2, j) / (4 * comb(5, i + j)) for j in range(3)) for i in range(4))


def signed_area(segments: Iterable[Segment]) -> float:
    """Area in mm2 swept from the origin; for closed outlines the enclosed area, counter-clockwise positive.

    >>> signed_area([Line(0, 10), Line(10, 10 + 5j), Line(10 + 5j, 5j), Line(5j, 0)])
    50.0
    """
    total = 0.0
    for segment in segments:
        if isinstance(segment, Line):
            total = total + cross(segment.p0, segment.p1) / 2
            continue
        p = segment.controls
        steps = (p[1] - p[0], p[2] - p[1], p[3] - p[2])
        for i in range(4):
            for j in range(3):
                total = total + _WEIGHTS[i][j] * cross(p[i], steps[j])
    return total
