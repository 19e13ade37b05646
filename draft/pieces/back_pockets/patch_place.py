"""How large a patch pocket is, and where it lies on the back.

Where darts run through the mouth, the open back is wider there than the patch. Each side line of the marks is as long
as the patch's side and leans outwards, so that its upper end comes to the patch's corner when the darts are sewn.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import ceil, floor, sqrt

from draft.choice import Choice
from draft.choices.back_pockets import LEAST_WITH_FLAP, PatchPocket
from draft.errors import DraftError
from draft.geometry.path import Path
from draft.geometry.segments import Line, Motion
from draft.pieces.back_pockets.mouth import (
    CLEAR,
    Frame,
    clear_of_seams,
    closed_back,
    frame_at,
    lowest_mouth,
)
from draft.pieces.back_pockets.room import below_waist, dart_too_long, lowest_start, no_room, rise_of
from draft.pieces.back_pockets.shield import Shield, shield
from draft.pieces.plan import Plan
from draft.shape.leg import largest
from draft.units import HAIR, at_least, at_most

USUAL_WIDTH, WIDTH_SHARE = 140.0, 0.73  # of the back at the mouth (130-150 read; the share common practice, no source)
HEIGHT_SHARE = 1.07  # of the width (150 to 140, read)
USUAL_BELOW, BELOW_SHARE = 65.0, 0.34  # 60-80 read; of the way from the waist seam to the hip line
SMALLEST, LEAST_BELOW = 40.0, 20.0
DEEPER_ROUNDS = 4  # each leaves about a hundredth of what was left
SURELY_CLEAR = 0.5  # so that the largest width named works at every height
FLAP_ABOVE, FLAP_WIDER = 15.0, 2.0  # common practice, no source
USUAL_FLAP, FLAP_SHARE, SMALLEST_FLAP, LARGEST_FLAP_SHARE = 55.0, 0.38, 30.0, 0.7  # of the pocket's height
PAST_DART = 8.0  # the pocket's straight sides reach this far below a dart that runs under it


@dataclass(frozen=True)
class Sizes:
    """Sizes that the choice and the back together give, mm; `flap` 0: none."""

    width: float
    height: float
    below: float
    flap: float


def chosen(plan: Plan) -> PatchPocket:
    """The chosen pocket."""
    pocket: Choice | None = plan.style.back_pocket
    assert isinstance(pocket, PatchPocket)
    return pocket


@lru_cache(maxsize=4)
def sizes(plan: Plan) -> Sizes:
    """Sizes of the pocket on this back.

    Raises
    ------
    DraftError
        When the mouth comes near the hip line, or the pocket near a seam or below the crotch line, with the largest
        size that works; or when a dart ends below the pocket's sides, with the least height.
    """
    below = _below(plan)
    width = _width(plan, below)
    height = _height(plan, below, width)
    return Sizes(width, height, below, _flap(plan, height))


def _below(plan: Plan) -> float:
    pocket, back = chosen(plan), closed_back(plan.shell.back)
    most = lowest_mouth(back, plan.shell.levels["hip"], SMALLEST)
    clear, above = (LEAST_WITH_FLAP, FLAP_ABOVE) if pocket.flap else (LEAST_BELOW, 0.0)
    rise = rise_of(plan)
    usual = rise + min(USUAL_BELOW, floor(BELOW_SHARE * (most - rise)))
    return below_waist(plan, pocket.below, usual, lowest_start(plan, clear, above), most, "set the pocket higher")


def _width(plan: Plan, below: float) -> float:
    def fits(width: float) -> bool:
        if width <= 0:
            return True
        height = max(HEIGHT_SHARE * width, _least_height(plan, below, width))
        tried = Sizes(width, height, below, SMALLEST_FLAP if chosen(plan).flap else 0.0)
        return clear_of_seams(plan.shell.back, _top_corners(plan, tried), CLEAR + SURELY_CLEAR)

    most = largest(fits, 280.0)
    asked = chosen(plan).width
    if most < SMALLEST - HAIR:
        raise no_room(plan, f"{SMALLEST:g} mm of width clear of all seams of the back, which has {at_most(most)}")
    if asked is None:
        return min(max(SMALLEST, min(USUAL_WIDTH, floor(WIDTH_SHARE * most))), most)
    if asked > most + HAIR:
        expected = f"at most {at_most(most)} mm on this back"
        raise DraftError("style.back_pocket.width", asked, expected, "make the pocket narrower or leave it out")
    return asked


def _height(plan: Plan, below: float, width: float) -> float:
    def fits(height: float) -> bool:
        if height <= 0:
            return True
        points = _corners(plan, Sizes(width, height, below, 0.0))
        above_crotch = min(p.imag for p in points) >= plan.shell.levels["crotch"]
        return above_crotch and clear_of_seams(plan.shell.back, points)

    most, least = largest(fits, 320.0), _least_height(plan, below, width)
    asked = chosen(plan).height
    if most < SMALLEST - HAIR:
        room = f"{SMALLEST:g} mm of height above the crotch line of this back, which has {at_most(most)}"
        raise no_room(plan, room)
    if most < least:
        raise _dart_under(plan, below, width, least - most)
    least = max(least, SMALLEST)
    if asked is None:
        return min(max(min(floor(HEIGHT_SHARE * width), floor(most)), ceil(least)), most)
    if not least - HAIR <= asked <= most + HAIR:
        why = f", and at least {at_least(least)}" + (" (a dart ends under it)" if least > SMALLEST else "")
        expected = f"at most {at_most(most)} mm above the crotch line of this back{why}"
        remedy = "choose another height, set the pocket higher, or shorten the darts"
        raise DraftError("style.back_pocket.height", asked, expected, remedy)
    return asked


def _dart_under(plan: Plan, below: float, width: float, too_long: float) -> DraftError:
    """Say which dart ends under the pocket lower than any height covers."""
    frame = frame_at(closed_back(plan.shell.back), below, width)
    deepest = max(_under(frame, width), key=lambda dart: frame.cross_at(dart, 0.0)[1])
    return dart_too_long(plan, deepest, too_long)


def _least_height(plan: Plan, below: float, width: float) -> float:
    """Height at which the sides reach past every dart that ends under the pocket."""
    frame = frame_at(closed_back(plan.shell.back), below, width)
    deepest = max((frame.cross_at(dart, 0.0)[1] for dart in _under(frame, width)), default=0.0)
    if not deepest:
        return 0.0

    def short(height: float) -> bool:
        return -outline_of(plan, Sizes(width, height, below, 0.0)).side.end.imag < deepest + PAST_DART

    return largest(short, 2000.0)


def _under(frame: Frame, width: float) -> list[int]:
    return [dart for dart in frame.crossing(0.0) if abs(frame.cross_at(dart, 0.0)[0]) < width / 2]


def _flap(plan: Plan, height: float) -> float:
    pocket = chosen(plan)
    if not pocket.flap:
        return 0.0
    most = LARGEST_FLAP_SHARE * height + FLAP_ABOVE
    usual = max(SMALLEST_FLAP, min(USUAL_FLAP, floor(FLAP_SHARE * height)))
    depth = usual if pocket.flap_depth is None else pocket.flap_depth
    if depth > most + HAIR:
        expected = f"at most {at_most(most)} mm on a pocket {height:g} high"
        raise DraftError("style.back_pocket.flap_depth", depth, expected, "make the flap shallower")
    return depth


def frame_of(plan: Plan, s: Sizes) -> Frame:
    """Place of the pocket on the closed back."""
    return frame_at(closed_back(plan.shell.back), s.below, s.width)


def outline_of(plan: Plan, s: Sizes) -> Shield:
    """Outline of the patch in its frame."""
    pocket = chosen(plan)
    taper = min(pocket.taper, 0.2 * s.width)
    return shield(s.width, s.height, 0.0, taper, pocket.shape, pocket.point)


def flap_outline(plan: Plan, s: Sizes) -> Shield:
    """Outline of the flap in the frame."""
    pocket = chosen(plan)
    return shield(s.width + 2 * FLAP_WIDER, s.flap, FLAP_ABOVE, 0.0, pocket.shape, pocket.point)


def _top_corners(plan: Plan, s: Sizes) -> list[complex]:
    """Ends of the mouth, and of the flap's seam, in the flat back."""
    found = [*marks_of(plan, s).tops]
    if s.flap:
        half = s.width / 2 + FLAP_WIDER
        line = frame_of(plan, s).line(-half, half, FLAP_ABOVE)
        found += [line[0].start, line[-1].end]
    return found


def _corners(plan: Plan, s: Sizes) -> list[complex]:
    return [complex(p) for p in marks_of(plan, s).outline.points(1.0)]


@dataclass(frozen=True, eq=False)
class Marks:
    """The patch on the flat back: outline without the mouth, parts of the mouth, ends of both side lines."""

    outline: Path
    mouth: tuple[Path, ...]
    tops: tuple[complex, complex]
    feet: tuple[complex, complex]


def marks_of(plan: Plan, s: Sizes) -> Marks:
    """The patch on the flat back.

    The cloth around the point of a dart does not lie flat under a flat patch. Lower edge, sides and mouth keep the
    patch's lengths; the lower edge lies so much deeper that the mouth is where it was asked for.
    """
    frame, half = frame_of(plan, s), s.width / 2
    drawn, deeper = outline_of(plan, s), 0.0
    for _ in range(DEEPER_ROUNDS):
        heights = _top_heights(frame, drawn.moved(Motion(shift=-1j * deeper)), half)
        deeper += sum(heights) / 2
    made = drawn.moved(Motion(shift=-1j * deeper)).moved(frame.place)
    mouth = frame.line(-half, half, *heights)
    top_a, top_b = mouth[0].start, mouth[-1].end
    outline = Path.join(Line(top_a, made.side.end), *made.lower, Line(made.centre.start, top_b))
    return Marks(outline, tuple(mouth), (top_a, top_b), (made.side.end, made.centre.start))


def _top_heights(frame: Frame, drawn: Shield, half: float) -> tuple[float, float]:
    """Heights in the closed frame at which sides of the patch's length end, the mouth's width apart."""
    parts = frame.stretches(-half, half, 0.0)
    found = []
    for x, foot, side, part in (
        (-half, drawn.side.end, drawn.side, parts[0]),
        (half, drawn.centre.start, drawn.centre, parts[-1]),
    ):
        turned = part.from_flat(frame.closed(foot))  # the foot as part of the stretch in which the side's top lies
        across = x - turned.real
        found.append(turned.imag + sqrt(max(0.0, side.length**2 - across**2)))
    return found[0], found[1]
