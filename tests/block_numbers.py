"""Numbers read off a block, for the tests of the drafting methods."""

import numpy as np
from shapely import LineString, Point

FLAT_MM = 0.01


def off(path, p):
    """Distance of a point from a path, mm, to 0.01."""
    points = path.points(FLAT_MM)
    return LineString(np.column_stack((points.real, points.imag))).distance(Point(p.real, p.imag))


def width(panel, y, turn=1):
    """Width from side to inseam at height `y`, once the panel is turned by a direction of length 1."""
    side, inseam = panel.side.points(FLAT_MM)[::-1] * turn, panel.inseam.points(FLAT_MM) * turn
    return np.interp(y, inseam.imag, inseam.real) - np.interp(y, side.imag, side.real)


def net_waist(panel):
    """Waist of a panel less its darts, pleats and gores."""
    return panel.waist.length - sum(dart.intake for dart in panel.darts)


def hip_width(panel):
    """Width of a panel on the hip line, from the side to the crotch seam."""
    return (panel.hip_centre - panel.hip_side).real


def thigh_to_side(panel, y, turn=1):
    """Width at the thigh, then lengths of crotch seam, inseam and side."""
    return [width(panel, y, turn), panel.crotch.length, panel.inseam.length, panel.side.length]


def assert_hip_line(panel, level):
    """Both hip points lie at the level and on their seams, and the crotch seam is level at the fork."""
    assert abs(panel.hip_centre.imag - level) < 1e-9
    assert abs(panel.hip_side.imag - level) < 1e-9
    assert off(panel.crotch, panel.hip_centre) < 2 * FLAT_MM
    assert off(panel.side, panel.hip_side) < 2 * FLAT_MM
    assert abs(panel.crotch.start - panel.fork) < 1e-9
    assert abs(panel.crotch.start_dir + 1) < 1e-9


def assert_crotch_flows(panel):
    """The curve runs on into the straight line, and turns one way all along."""
    curve, straight = panel.crotch.segments
    assert abs(curve.end_dir - straight.start_dir) < 1e-9
    t = np.linspace(0.001, 0.999, 500)
    velocity, bend = curve.velocity(t), curve.acceleration(t)
    assert np.all((velocity.conjugate() * bend).imag < 0)


def numbers(block, row):
    """Every number of a block of one body, or of one row of a block of two."""
    found = [*block.levels.values(), *block.ease.values(), block.crease]
    for panel in (block.front, block.back):
        found += panel.points.values()
        found += [c for segment in panel.outline for c in segment.controls]
        found += [value for dart in panel.darts for value in (dart.mouth, dart.point, dart.intake)]
    return [complex(np.broadcast_to(value, 2)[row]) for value in found]
