"""Outlines of an invented lower body from ribs to floor: front, back, side, seated, and cut through the middle.

Millimetres, y up from the floor; a body seen from the side faces right. Nobody was traced: levels and breadths are
chosen so that the girths they enclose lie among those of measured adults (the test of this room compares them with a
survey).

Glossary
--------
level    height of a landmark above the floor
contour  one line of an outline, run from the top down
plain    a line inside the outline: a kneecap, a fold, a bone
section  the trunk cut through the middle, where a tape between the legs runs
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from draft.geometry.construct import smooth
from draft.geometry.meet import along_at_height
from draft.geometry.path import Path
from draft.geometry.points import unit
from draft.geometry.segments import Cubic, Motion

RIBS, WAIST, HIP, CROTCH, FOLD = 1150.0, 1040.0, 850.0, 770.0, 762.0
KNEE, CALF, ANKLE, FLOOR = 470.0, 345.0, 80.0, 0.0
CLEFT_TOP = 940.0
SEAT, SEATED_WAIST = 430.0, 715.0
CROTCH_POINT = 4 + 770j
"""Of the section: where the inseams will meet."""

_BESIDE_STEPS = 16
_CIRCLE = 0.5523  # handle of a quarter circle per radius


@dataclass(frozen=True, eq=False)
class View:
    """A body seen from one side: its outline, and the plain lines inside."""

    outline: tuple[Path, ...]
    plain: tuple[Path, ...] = ()

    def moved(self, shift: complex) -> View:
        """Return the view at another place."""
        motion = Motion(shift=shift)
        return View(*(tuple(path.moved(motion) for path in paths) for paths in (self.outline, self.plain)))


def through(*points: complex) -> Path:
    """Smooth path through points: at each it runs between the chords on either side, closer to the shorter one.

    >>> through(0, 10 + 5j, 20).length > 20
    True
    """
    chords = [q - p for p, q in pairwise(points)]
    inner = [unit(unit(one) * abs(two) + unit(two) * abs(one)) for one, two in pairwise(chords)]
    dirs = [unit(chords[0]), *inner, unit(chords[-1])]
    return Path(tuple(smooth(p, d, q, e) for (p, q), (d, e) in zip(pairwise(points), pairwise(dirs), strict=True)))


def ellipse(centre: complex, across: float, up: float) -> Path:
    """Ellipse by its half breadth and half height, counter-clockwise from the right."""
    places = [1, 1j, -1, -1j, 1]
    quarters = []
    for p, q in pairwise(complex(place) for place in places):
        corners = (p, p + _CIRCLE * q, q + _CIRCLE * p, q)
        quarters.append(Cubic(*(centre + complex(c.real * across, c.imag * up) for c in corners)))
    return Path(tuple(quarters))


def beside(path: Path, gap: float) -> Path:
    """Path that keeps about `gap` mm to the left of another (negative: to the right).

    >>> round(beside(Path.line(0, 100), 4).point_at(50).imag, 6)
    4.0
    """
    places = [path.length * i / _BESIDE_STEPS for i in range(_BESIDE_STEPS + 1)]
    return through(*(path.point_at(at) + 1j * gap * path.direction_at(at) for at in places))


def at_level(contour: Path, level: float) -> complex:
    """Point of a contour at a level."""
    return contour.point_at(along_at_height(contour, level))


def mirrored(*paths: Path) -> tuple[Path, ...]:
    """Return the paths and their mirror images in the upright through x = 0."""
    return (*paths, *(path.moved(Motion.mirror(0, 1j)) for path in paths))


def _points(*pairs: Sequence[float]) -> Path:
    return through(*(complex(x, y) for x, y in pairs))


# Front and back, the half on the right of the picture.
OUTER = _points(
    (143, 1150), (134, 1090), (133, 1040), (143, 990), (161, 925), (173, 850), (175, 790), (170, 720), (160, 620),
    (149, 530), (145, 470), (144, 420), (149, 345), (143, 260), (130, 160), (127, 115), (133, 80), (134, 55),
)  # fmt: skip
INNER = _points(
    (0, 770), (5, 769), (13, 755), (16, 720), (22, 640), (31, 550), (36, 500), (37, 470), (42, 425), (39, 345),
    (49, 250), (65, 160), (69, 115), (64, 80), (67, 55),
)  # fmt: skip
FOOT = Path.join(
    _points((134, 55), (150, 34), (159, 14), (149, 0)),
    Path.line(149, 66),
    _points((66, 0), (56, 14), (61, 36), (67, 55)),
)

# Side, facing right.
SIDE_FRONT = _points(
    (105, 1150), (98, 1090), (97, 1040), (104, 985), (109, 930), (101, 850), (92, 770), (87, 680), (79, 580), (68, 510),
    (70, 470), (60, 425), (51, 345), (40, 240), (32, 150), (34, 110),
)  # fmt: skip
SIDE_BACK = _points(
    (-94, 1150), (-80, 1095), (-74, 1040), (-85, 985), (-115, 920), (-138, 850), (-122, 795), (-96, 755), (-86, 680),
    (-70, 580), (-52, 500), (-48, 465), (-60, 410), (-69, 345), (-60, 260), (-45, 170), (-41, 115),
)  # fmt: skip
SIDE_FOOT = Path.join(
    _points((34, 110), (50, 84), (88, 60), (132, 41), (164, 26), (172, 10), (160, 0)),
    Path.line(160, -48),
    _points((-48, 0), (-66, 18), (-60, 52), (-44, 90), (-41, 115)),
)

# The trunk cut through the middle: down the front, under, and up the back.
SECTION_FRONT = Path.join(
    SIDE_FRONT.split_at(along_at_height(SIDE_FRONT, 930))[0],
    Path((smooth(at_level(SIDE_FRONT, 930), -1j, 84 + 812j, unit(-2 - 3j)),)),
    Path((smooth(84 + 812j, unit(-2 - 3j), CROTCH_POINT, unit(-1 - 0.08j)),)),
)
SECTION_BACK = Path.join(
    SIDE_BACK.split_at(along_at_height(SIDE_BACK, CLEFT_TOP))[0],
    Path((smooth(at_level(SIDE_BACK, CLEFT_TOP), unit(-0.5 - 1j), -110 + 845j, unit(0.25 - 1j)),)),
    Path((smooth(-110 + 845j, unit(0.25 - 1j), CROTCH_POINT, unit(1 - 0.08j), 0.4, 0.4),)),
)

# Seated, facing right; the seat of the chair is at SEAT.
SEATED = _points(
    (100, 827), (96, 770), (97, 715), (109, 667), (128, 629), (163, 605), (215, 595), (300, 588), (390, 574),
    (438, 556), (461, 525), (458, 478), (443, 425), (433, 345), (424, 240), (417, 150), (419, 110),
)  # fmt: skip
SEATED_FOOT = SIDE_FOOT.moved(Motion(shift=385))
SEATED_BACK = _points((-92, 827), (-81, 770), (-76, 715), (-90, 650), (-118, 575), (-130, 500), (-116, 450), (-82, 430))
SEATED_UNDER = Path.join(
    Path.line(-82 + 430j, 296 + 430j),
    _points((296, 430), (318, 424), (325, 395), (318, 345), (326, 260), (340, 170), (344, 115)),
)

KNEECAP = ellipse(91 + 470j, 21, 26)
BONES = (_points((128, 94), (122, 82), (128, 70)), _points((70, 98), (76, 86), (69, 74)))
FOLDS = _points((30, 764), (70, 754), (112, 760), (136, 776))
CLEFT = Path.line(898j, 770j)
SIDE_FOLD = _points((-96, 757), (-66, 756), (-40, 766))
SIDE_KNEECAP = _points((62, 498), (52, 486), (50, 470), (53, 454), (60, 444))
SIDE_BONE = ellipse(-6 + 82j, 12, 13)
LOWEST_RIB = _points((34, 1122), (70, 1094), (104, 1080), (134, 1084))
HIP_BONE = _points((70, 955), (96, 986), (124, 997), (140, 992))

FRONT_VIEW = View(mirrored(OUTER, INNER, FOOT), mirrored(KNEECAP, *BONES))
BONY_VIEW = View(FRONT_VIEW.outline, mirrored(LOWEST_RIB, HIP_BONE))
BACK_VIEW = View(FRONT_VIEW.outline, (*mirrored(FOLDS), CLEFT))
SIDE_VIEW = View((SIDE_FRONT, SIDE_BACK, SIDE_FOOT), (SIDE_FOLD, SIDE_KNEECAP, SIDE_BONE))
SECTION_VIEW = View(
    (SECTION_FRONT, SECTION_BACK),
    (
        SIDE_FRONT.split_at(along_at_height(SIDE_FRONT, 805))[1],
        SIDE_BACK.split_at(along_at_height(SIDE_BACK, CLEFT_TOP))[1],
    ),
)
SEATED_VIEW = View(
    (SEATED, SEATED_BACK, SEATED_UNDER, SEATED_FOOT),
    (_points((452, 555), (430, 540), (424, 515), (436, 492), (458, 484)), SIDE_BONE.moved(Motion(shift=385))),
)
