"""One drawing for each lesson: a body, the tape on it, and labels.

Sizes of a figure are millimetres of the body drawn, y up from the floor; sizes of its lines and letters are pixels of
the picture.

Glossary
--------
window   the part of the body that is shown; all windows have one shape
ring     a girth seen a little from above: the near half of the tape, and the half behind the body
level    a dotted line at a landmark
prop     chair, book, wall, floor
lead     a fine line from a label to its tape
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from types import MappingProxyType
from typing import Literal, TypeAlias

from draft.geometry.meet import along_at_height
from draft.geometry.path import Path
from draft.geometry.points import mid
from draft.guide import bodies as body
from draft.guide.bodies import View, at_level

WIDE, HIGH = 300, 290  # pixels of a picture
LETTERS, LEADING = 13, 15  # pixels
TAPE_OUT = 5.0  # mm: how far outside a section its tape is drawn, so that both are seen
SAG = 0.14  # of a ring: half its height per half its breadth

Look: TypeAlias = Literal["body", "plain", "prop", "level", "lead", "behind", "tape"]
Anchor: TypeAlias = Literal["start", "middle", "end"]


@dataclass(frozen=True, eq=False)
class Mark:
    """A line of a figure; ``heads`` puts an arrowhead at both ends."""

    look: Look
    path: Path
    heads: bool = False


@dataclass(frozen=True)
class Label:
    """Words beside a line: ``at`` is where the first baseline starts, is centred or ends, as ``anchor`` says."""

    lines: tuple[str, ...]
    at: complex
    anchor: Anchor = "start"
    tape: bool = False


@dataclass(frozen=True, eq=False)
class Figure:
    """Lines and labels inside a window.

    Examples
    --------
    >>> figure = figure_of("calf")
    >>> figure.top - figure.bottom, round(figure.right - figure.left)
    (580, 600)
    """

    left: float
    bottom: float
    top: float
    marks: tuple[Mark, ...]
    labels: tuple[Label, ...]

    @property
    def right(self) -> float:
        """Right edge of the window, mm."""
        return self.left + (self.top - self.bottom) * WIDE / HIGH

    @property
    def scale(self) -> float:
        """Pixels per millimetre of body."""
        return HIGH / (self.top - self.bottom)

    def of_look(self, *looks: Look) -> tuple[Path, ...]:
        """Paths of some looks."""
        return tuple(mark.path for mark in self.marks if mark.look in looks)


def _figure(centre: float, bottom: float, top: float, marks: list[Mark], labels: list[Label]) -> Figure:
    return Figure(centre - (top - bottom) * WIDE / HIGH / 2, bottom, top, tuple(marks), tuple(labels))


def _drawn(view: View) -> list[Mark]:
    return [*(Mark("body", path) for path in view.outline), *(Mark("plain", path) for path in view.plain)]


def _straight(start: complex, end: complex) -> Mark:
    return Mark("tape", Path.line(start, end), heads=True)


def _level(height: float, left: float, right: float) -> Mark:
    return Mark("level", Path.line(complex(left, height), complex(right, height)))


def _lead(start: complex, end: complex) -> Mark:
    return Mark("lead", Path.line(start, end))


def _floor(centre: float, half: float) -> Mark:
    return Mark("prop", Path.line(centre - half, centre + half))


def _box(corner: complex, size: complex) -> Mark:
    wide, high = size.real, 1j * size.imag
    return Mark("prop", Path.line(corner, corner + wide, corner + size, corner + high, corner))


def _ring(left: complex, right: complex) -> list[Mark]:
    """Tape round a body between two points of its outline."""
    centre, half = mid(left, right), abs(right - left) / 2
    right_top, left_top, left_low, right_low = body.ellipse(centre, half, SAG * half).segments
    return [
        Mark("behind", Path((right_top, left_top))),
        Mark("tape", Path((left_low, right_low)), heads=True),
    ]


def _on_leg(level: float) -> list[Mark]:
    return _ring(at_level(body.INNER, level), at_level(body.OUTER, level))


def _on_side(level: float) -> list[Mark]:
    return _ring(at_level(body.SIDE_BACK, level), at_level(body.SIDE_FRONT, level))


def _waist() -> Figure:
    edge = at_level(body.OUTER, body.WAIST)
    marks = [*_drawn(body.BONY_VIEW), *_ring(-edge.conjugate(), edge)]
    labels = [
        Label(("waist",), 148 + 1033j, tape=True),
        Label(("lowest rib",), 1068j, "middle"),
        Label(("hip bone",), 962j, "middle"),
    ]
    return _figure(0, 650, 1170, marks, labels)


def _hip() -> Figure:
    marks = [*_drawn(body.SIDE_VIEW), *_on_side(body.HIP), _level(body.WAIST, -74, 118)]
    return _figure(0, 650, 1170, marks, [Label(("hip",), 112 + 843j, tape=True), Label(("waist",), 124 + 1033j)])


def _crotch_depth_seated() -> Figure:
    waist = body.SEATED_WAIST
    chair = Path.line(-200 + 430j, 302 + 430j, 302 + 402j, -200 + 402j, -200 + 430j)
    marks = [*_drawn(body.SEATED_VIEW), Mark("prop", chair), _floor(190, 420), _level(waist, -78, 97)]
    marks += [Mark("prop", Path.line(complex(x, 402), complex(x, 0))) for x in (-180, -158, 260, 282)]
    marks += [_straight(complex(0, waist), complex(0, body.SEAT)), _lead(135 + 694j, 6 + 670j)]
    labels = [Label(("crotch depth",), 142 + 690j, tape=True), Label(("hard flat", "chair"), -130 + 350j)]
    labels += [Label(("waist",), 106 + 740j)]
    return _figure(190, -40, 855, marks, labels)


def _crotch_depth_standing() -> Figure:
    waist, crotch = body.WAIST, body.CROTCH
    marks = [*_drawn(body.FRONT_VIEW), _floor(0, 420), _level(waist, -240, 240), _level(crotch, -240, 0)]
    marks += [_straight(complex(225, waist), 225), _straight(complex(0, crotch), 0)]
    marks += [_straight(complex(-225, waist), complex(-225, crotch)), _lead(-205 + 330j, -6 + 330j)]
    labels = [
        Label(("waist", "height"), 245 + 560j, tape=True),
        Label(("inside", "leg"), -215 + 340j, "end", tape=True),
        Label(("crotch", "depth: the", "difference"), -245 + 960j, "end", tape=True),
    ]
    return _figure(0, -40, 1180, marks, labels)


def _waist_to_hip() -> Figure:
    marks = [*_drawn(body.SIDE_VIEW), _level(body.WAIST, -74, 118), _level(body.HIP, -138, 118)]
    marks += [_straight(complex(0, body.WAIST), complex(0, body.HIP)), _lead(128 + 950j, 5 + 950j)]
    labels = [Label(("waist",), 124 + 1033j), Label(("hip",), 124 + 843j)]
    labels += [Label(("waist", "to hip"), 134 + 955j, tape=True)]
    return _figure(0, 650, 1170, marks, labels)


def _inside_leg() -> Figure:
    front, side = -290.0, 320.0
    wall, crotch = side - 145, body.CROTCH
    marks = [*_drawn(body.FRONT_VIEW.moved(front)), *_drawn(body.SIDE_VIEW.moved(side)), _floor(0, 600)]
    marks += [Mark("prop", Path.line(wall, complex(wall, 1150))), _box(complex(wall, crotch - 170), 240 + 170j)]
    marks += [_straight(complex(front, crotch), front), _straight(complex(wall + 16, crotch), wall + 16)]
    marks += [_lead(-92 + 400j, complex(front + 6, 400))]
    labels = [Label(("inside", "leg"), -82 + 405j, tape=True), Label(("book",), complex(side + 115, 680))]
    labels += [Label(("wall",), complex(wall - 16, 940), "end")]
    return _figure(0, -40, 1180, marks, labels)


def _crotch_part(mine: Path, other: Path, out: float, label: Label) -> Figure:
    """Tape from the waist to the crotch point, where the weight hangs; `out` mm to its left is outside the body."""
    point = body.CROTCH_POINT
    tape, rest = (body.beside(_below_waist(path), gap) for path, gap in ((mine, out), (other, -out)))
    marks = [*_drawn(body.SECTION_VIEW), _level(body.WAIST, -110, 135), Mark("behind", rest)]
    marks += [Mark("tape", tape, heads=True), Mark("prop", Path.line(point, point - 38j))]
    marks += [Mark("prop", body.ellipse(point - 52j, 14, 14))]
    labels = [label, Label(("weight",), point - 96j, "middle"), Label(("waist",), 140 + 1033j)]
    return _figure(0, 640, 1160, marks, labels)


def _below_waist(contour: Path) -> Path:
    return contour.split_at(along_at_height(contour, body.WAIST))[1]


def _front_crotch() -> Figure:
    label = Label(("front", "crotch"), 126 + 900j, tape=True)
    return _crotch_part(body.SECTION_FRONT, body.SECTION_BACK, TAPE_OUT, label)


def _back_crotch() -> Figure:
    label = Label(("back", "crotch"), -148 + 900j, "end", tape=True)
    return _crotch_part(body.SECTION_BACK, body.SECTION_FRONT, -TAPE_OUT, label)


def _thigh() -> Figure:
    marks = [*_drawn(body.BACK_VIEW), *_on_leg(728), Mark("plain", Path.line(-184 + 770j, -140 + 770j))]
    labels = [Label(("thigh",), 180 + 722j, tape=True), Label(("fold",), -188 + 763j, "end")]
    return _figure(0, 520, 1020, marks, labels)


def _knee() -> Figure:
    marks = [*_drawn(body.FRONT_VIEW), *_on_leg(body.KNEE)]
    return _figure(0, 270, 680, marks, [Label(("knee",), 153 + 465j, tape=True)])


def _calf() -> Figure:
    marks = [*_drawn(body.SIDE_VIEW), *_on_side(body.CALF), _floor(40, 230)]
    return _figure(40, -20, 560, marks, [Label(("calf",), 64 + 339j, tape=True)])


def _ankle() -> Figure:
    marks = [*_drawn(body.FRONT_VIEW), *_on_leg(body.ANKLE + 4), _floor(10, 185)]
    return _figure(10, -20, 350, marks, [Label(("ankle",), 142 + 80j, tape=True)])


def _knee_height() -> Figure:
    marks = [*_drawn(body.FRONT_VIEW), _level(body.KNEE, 91, 200), _floor(40, 260)]
    marks += [_straight(complex(185, body.KNEE), 185)]
    labels = [Label(("knee", "height"), 198 + 250j, tape=True)]
    return _figure(40, -20, 580, marks, labels)


def _hip_depth() -> Figure:
    top = body.HIP + 10
    back, front = at_level(body.SIDE_BACK, body.HIP).real, at_level(body.SIDE_FRONT, top).real
    marks = [*_drawn(body.SIDE_VIEW), _level(body.WAIST, -74, 118)]
    marks += [_box(complex(back - 30, top - 130), 30 + 130j), _box(complex(front, top - 130), 30 + 130j)]
    marks += [_straight(complex(back, body.HIP), complex(front, body.HIP))]
    labels = [Label(("hip depth",), -18 + 864j, "middle", tape=True), Label(("waist",), 124 + 1033j)]
    labels += [Label(("book",), complex(back, top - 162), "end"), Label(("book",), complex(front + 2, top - 162))]
    return _figure(0, 650, 1170, marks, labels)


FIGURES: Mapping[tuple[str, str], Callable[[], Figure]] = MappingProxyType(
    {
        ("waist", ""): _waist,
        ("hip", ""): _hip,
        ("crotch_depth", "seated"): _crotch_depth_seated,
        ("crotch_depth", "standing"): _crotch_depth_standing,
        ("waist_to_hip", ""): _waist_to_hip,
        ("inside_leg", ""): _inside_leg,
        ("front_crotch", ""): _front_crotch,
        ("back_crotch", ""): _back_crotch,
        ("thigh", ""): _thigh,
        ("knee", ""): _knee,
        ("calf", ""): _calf,
        ("ankle", ""): _ankle,
        ("knee_height", ""): _knee_height,
        ("hip_depth", ""): _hip_depth,
    }
)
"""Measure and way of taking it -> its drawing."""


@lru_cache(maxsize=len(FIGURES))
def figure_of(field: str, taken: str = "") -> Figure:
    """Figure of a measure, by the way of taking it where there are two."""
    return FIGURES[field, taken]()
