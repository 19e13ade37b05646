"""Rectangles that become loops, straps and braces: one outline, its fold lines, its grain."""

from __future__ import annotations

from draft.edge import Corner, Edge
from draft.geometry.path import Path
from draft.geometry.segments import Line
from draft.piece import Cut, InnerLine, Piece

GRAIN_FROM, GRAIN_TO = 0.15, 0.85


def strip(
    name: str,
    title: str,
    size: complex,
    cut: Cut,
    allowance: float,
    made_for: str,
    folds: tuple[float, ...] = (),
    marks: tuple[float, ...] = (),
    notes: tuple[str, ...] = (),
) -> Piece:
    """Strip of a length and a width (`size`), with folds along it at heights, and marks across it at distances.

    >>> strip("loop", "Loop", 100 + 30j, Cut(1, "self"), 0.0, "", folds=(10.0, 20.0)).edge("lower").length
    100.0
    """
    a, b, c, d = 0j, complex(size.real, 0), size, complex(0, size.imag)
    turned = Corner("extended")
    corners = (("lower", a, b), ("right", b, c), ("upper", c, d), ("left", d, a))
    edges = tuple(Edge(edge, (Path.line(p, q),), allowance=allowance, corner=turned) for edge, p, q in corners)
    lines = [InnerLine("fold", Path.line(complex(0, y), complex(size.real, y)), "fold") for y in folds]
    lines += [InnerLine("guide", Path.line(complex(x, 0), complex(x, size.imag)), "cut apart") for x in marks]
    middle = size.imag / 2 if not folds else folds[0] / 2
    grain = Line(complex(GRAIN_FROM * size.real, middle), complex(GRAIN_TO * size.real, middle))
    return Piece(
        name=name,
        title=title,
        edges=edges,
        cut=cut,
        grainline=grain,
        lines=tuple(lines),
        made_for=made_for,
        notes=notes,
    )
