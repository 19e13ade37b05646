"""The waist walked once around: what lies along it, whether it opens, and how much ease it has at a level.

A band is measured along the wearer's half from the centre front (0) to the centre back; both halves are alike but for
what lies over and under at the opening.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from draft.errors import DraftError
from draft.piece import Piece
from draft.pieces import closings
from draft.pieces.plan import ClosingKind, Plan, WaistEdges
from draft.seams import Run
from draft.units import at_least

HIP_TOL_MM = 0.5
LARGEST_EASE = 300.0  # limit of the style's waist ease


@dataclass(frozen=True)
class Stretch:
    """One run of a waist edge, from `start` to `stop` along the half; `ease` is how much longer the run is."""

    name: str
    run: Run
    start: float
    stop: float
    ease: float = 0.0


@dataclass(frozen=True)
class Half:
    """Places along one half of the waist, mm from the centre front."""

    mouth: float  # where the front ends and the pocket facing begins; the side seam without a pocket
    side: float
    back: float  # centre back

    @property
    def places(self) -> dict[str, float]:
        """Notch places by name."""
        found = {"centre front": 0.0, "side seam": self.side, "centre back": self.back}
        return found | ({"pocket mouth": self.mouth} if self.mouth < self.side else {})


def half_of(waist: WaistEdges) -> Half:
    """Places that follow from the waist edges of front, pocket facing and back."""
    mouth = waist.legs["front"].edge("waist").length - waist.mouth_ease
    side = mouth + waist.pocket
    return Half(mouth, side, side + waist.legs["back"].edge("waist").length)


def check_not_at_side(plan: Plan, waist: WaistEdges) -> None:
    """Refuse a waist that opens at the side, for a band that does not.

    Raises
    ------
    DraftError
        With the bands that do.
    """
    if waist.opens == "left side":
        expected = "a StraightBand or ContourBand with an opening at the side"
        raise DraftError("style.band", type(plan.style.band).__name__, expected, "take one, or another closing")


def stretches(waist: WaistEdges, pieces: Mapping[str, Piece]) -> list[Stretch]:
    """Runs of the waist seam from the centre front to the centre back."""
    h = half_of(waist)
    found = [Stretch("front", Run("front", "waist"), 0.0, h.mouth, waist.mouth_ease)]
    if waist.pocket:
        facing = pieces["pocket_facing"].edge("waist").length
        found.append(Stretch("pocket", Run("pocket_facing", "waist", facing - waist.pocket), h.mouth, h.side))
    return [*found, Stretch("back", Run("back", "waist", back=True), h.side, h.back)]


def turned(run: Run) -> Run:
    """Same run walked the other way."""
    return replace(run, back=not run.back)


def closing_kind(plan: Plan) -> ClosingKind | None:
    """File that makes the chosen closing; None when none does."""
    return closings.KINDS.get(type(plan.style.closing))


def opens(plan: Plan) -> bool:
    """Whether the waist opens at the centre front."""
    kind = closing_kind(plan)
    return kind is not None and kind.opens() == "centre front"


def left_over_right(plan: Plan) -> bool:
    """Whether the wearer's left side lies on top."""
    return plan.style.closing.lap == "left_over_right"


def seam_length(plan: Plan) -> float:
    """Whole waist seam of the shell, darts closed, mm."""
    return 2 * (plan.shell.front.waist.length + plan.shell.back.waist.length)


def _nearness(plan: Plan, drop: float) -> float:
    """How much of the way from the waist's ease to the hip's is gone at a level: as the girth of the body grows."""
    u = min(max(drop / plan.body.waist_to_hip, 0.0), 1.0)
    return u * (2 - u)


def waist_ease(plan: Plan) -> float:
    """Ease at the natural waist, read back from the sizes that the shell was drawn for, mm."""
    drop = plan.style.waist_drop
    at_seam = plan.shell.targets["waist"] - plan.body.girth_at(drop)
    near = _nearness(plan, drop)
    return (at_seam - _hip_ease(plan) * near) / (1 - near)


def _hip_ease(plan: Plan) -> float:
    """Ease at the hip without the fullness of pleats, which are folded at the waist: as they are spread, mm."""
    ease, pleats, levels = plan.shell.targets["hip"] - plan.body.hip, plan.style.pleats, plan.shell.levels
    if pleats is None:
        return ease
    opened = sum((pleats.depth, pleats.second)[: pleats.count])
    at_waist = levels["waist"] + plan.style.waist_drop
    return ease - 2 * opened * (levels["hip"] - levels["knee"]) / (at_waist - levels["knee"])


def girth_with_ease(plan: Plan, drop: float) -> float:
    """Girth that the garment is to have at a level: the body's and the ease there, mm."""
    at_waist, at_hip = waist_ease(plan), _hip_ease(plan)
    return plan.body.girth_at(drop) + at_waist + (at_hip - at_waist) * _nearness(plan, drop)


def check_passes_hip(plan: Plan, length: float) -> None:
    """Refuse a waist that does not open and is narrower than the hip.

    Raises
    ------
    DraftError
        With the ease of the waist that lets it pass, or, where that is more than a style may have, the closing.
    """
    if opens(plan) or length >= plan.body.hip - HIP_TOL_MM:
        return
    near = _nearness(plan, plan.style.waist_drop)
    least = waist_ease(plan) + (plan.body.hip - length) / (1 - near)
    if least > LARGEST_EASE:
        raise DraftError(
            "style.closing",
            plan.style.closing,
            f"one that opens: the waist must pass a hip of {plan.body.hip:g} mm",
            "choose a closing that opens, or a larger waist_drop",
        )
    raise DraftError(
        "style.ease.waist",
        plan.style.ease.waist,
        f"at least {at_least(least)} mm, so that a waist without a closing passes the hip",
        "put that ease in, or choose a closing that opens",
    )
