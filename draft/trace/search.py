"""What a refit varies, and how far a draft of it is from the traced pattern."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from draft.body import Body
from draft.errors import DraftError
from draft.fitting.fit import FORK_OF_DEPTH, fitted
from draft.geometry.arrays import Floats, Points
from draft.geometry.meet import meet_line
from draft.measure import width_at
from draft.methods.base import Method
from draft.shape.build import shell_of
from draft.shape.shell import Shell
from draft.style import Darts, Ease, Leg, PlainHem, Style
from draft.trace.likeness import laid, panel_of, places, seams_of_panel, seams_of_piece, weighed_sizes
from draft.trace.traced import Traced
from draft.units import to_mm

LONG_LEG = 1.4  # a leg whose inseam is longer than this times the crotch depth is a trouser leg
ABOVE_FLOOR_MM = 20.0  # of a trouser hem, when the style does not say
LEG_OF_DEPTH = 2.9  # inside leg by crotch depth, for shorts, which do not show it (assumed; it places the knee only)
LEAST_DEPTH, MOST_DEPTH = 0.14, 0.38  # hip depth by hip: forks of other widths say nothing of the body
STEP_MM = 0.2
REFUSED_MM = 300.0


@dataclass(frozen=True, eq=False)
class Search:
    """What is varied (`free`: name -> start in mm), what stays, and what is to be met."""

    garment: Any
    style: Style
    method: Method
    free: Mapping[str, float]
    fixed: Mapping[str, float]
    places: tuple[Points, Points]
    sizes: Floats
    heights: tuple[float, float]
    """Of the hip line above the fork of front and back."""

    @classmethod
    def of(
        cls, traced: Traced, ease: Ease, method: Method, known: Mapping[str, float | str], garment: str | None
    ) -> Search:
        """Search for the body of a traced pattern; `known` measures stay as they are."""
        sizes, levels = traced.measure(), traced.levels
        depth = levels["waist"]
        long = garment == "trousers" if garment else sizes["inside_leg"] > LONG_LEG * depth
        start = {
            "waist": sizes["waist"] - (ease.waist or 0.0),
            "hip": sizes["hip"] - (ease.hip or 0.0),
            "crotch_depth": depth,
            "waist_to_hip": levels["waist"] - levels["hip"],
            "front_crotch": sizes["front_crotch"] - (ease.front_crotch or 0.0),
            "back_crotch": sizes["back_crotch"] - (ease.back_crotch or 0.0),
        }
        depth_front_to_back = _forks(traced) / FORK_OF_DEPTH
        if LEAST_DEPTH <= depth_front_to_back / start["hip"] <= MOST_DEPTH:
            start["hip_depth"] = depth_front_to_back
        if long:
            start["inside_leg"] = sizes["inside_leg"] + ABOVE_FLOOR_MM
            start["knee"] = _knee(traced, start["inside_leg"])
        fixed = {"inside_leg": LEG_OF_DEPTH * depth} if not long else {}
        if traced.waist_to_hip is not None:
            fixed["waist_to_hip"] = start["waist_to_hip"]
        fixed |= {name: to_mm(value, f"known {name}") for name, value in known.items()}
        front, back = traced.pieces["front"], traced.pieces["back"]
        style = Style(
            name=traced.name,
            pocket=None,
            hem=PlainHem(),
            ease=ease,
            leg=Leg(hem=sizes["hem"], inside_leg=None if long else sizes["inside_leg"]),
            darts=Darts(front=min(1, len(front.darts)), back=min(2, len(back.darts))),
        )
        aims = tuple(places(seams_of_piece(piece)) for piece in (front, back))
        heights = tuple(levels["hip"] - piece.edge("crotch").start.imag for piece in (front, back))
        lengths = weighed_sizes([seams_of_piece(piece) for piece in (front, back)], heights)  # type: ignore[arg-type]
        free = {name: mm for name, mm in start.items() if name not in fixed}
        return cls("trousers" if long else "shorts", style, method, free, fixed, aims, lengths, heights)  # type: ignore[arg-type]

    def start(self, share: float | None) -> Floats:
        """Values to start from; `share`: the hip lies so far down from the waist to the crotch line."""
        start = dict(self.free)
        if share is not None and "waist_to_hip" in start:
            start["waist_to_hip"] = share * start.get("crotch_depth", self.fixed.get("crotch_depth", 0.0))
        return np.array(list(start.values()))

    def recipe(self, values: Floats) -> tuple[Body, Style]:
        """Body and style of a set of values."""
        sizes = dict(zip(self.free, (float(v) for v in values), strict=True)) | dict(self.fixed)
        knee = sizes.pop("knee", None) if "knee" in self.free else None
        style = self.style if knee is None else replace(self.style, leg=replace(self.style.leg, knee=knee))
        return Body(**sizes, name=self.style.name), style  # type: ignore[arg-type]

    def checked(self, values: Floats) -> None:
        """Tell why nothing can be drafted from where the search starts."""
        try:
            body, style = self.recipe(values)
            shell_of(fitted(self.method, [body], style.ease)[0].block, body, style, self.garment)
        except DraftError as error:
            raise DraftError(
                f"traced pattern, {error.field}",
                error.value,
                error.expected,
                "look whether corners, allowance and unit are right, or give another ease",
            ) from error

    def residuals(self, values: Floats) -> Floats:
        """Distances of places on all seams and of their lengths, mm."""
        return self.many([values])[0]

    def many(self, rows: Sequence[Floats]) -> list[Floats]:
        """Residuals of several sets of values, their blocks fitted all at once; what is refused has large ones."""
        recipes = [self._recipe_or_none(values) for values in rows]
        found = [np.full(2 * sum(len(p) for p in self.places) + len(self.sizes), REFUSED_MM) for _ in rows]
        drafted = [row for row, recipe in enumerate(recipes) if recipe is not None]
        if not drafted:
            return found
        fits = fitted(self.method, [recipes[row][0] for row in drafted], self.style.ease)  # type: ignore[index]
        for place, row in enumerate(drafted):
            body, style = recipes[row]  # type: ignore[misc]
            try:
                found[row] = self._apart(shell_of(fits[place].block, body, style, self.garment))
            except DraftError:
                continue
        return found

    def _recipe_or_none(self, values: Floats) -> tuple[Body, Style] | None:
        try:
            return self.recipe(values)
        except DraftError:
            return None

    def _apart(self, shell: Shell) -> Floats:
        """Residuals of a shell."""
        panels = [seams_of_panel(panel_of(shell, name)) for name in ("front", "back")]
        found: list[Floats] = []
        for edges, aim in zip(panels, self.places, strict=True):
            mine = places(edges)
            turn, shift = laid(mine, aim)
            gap = turn * aim + shift - mine
            found += [gap.real, gap.imag]
        return np.concatenate([*found, weighed_sizes(panels, self.heights) - self.sizes])

    def slopes(self, values: Floats) -> Floats:
        """Slopes of the residuals, by steps of 0.2 mm; the other way where a step is refused."""
        steps = STEP_MM * np.eye(len(values))
        here, *ahead = self.many([values, *(values + steps)])
        columns = []
        for step, there in zip(steps, ahead, strict=True):
            if there[0] != REFUSED_MM:
                columns.append((there - here) / STEP_MM)
            else:
                columns.append((here - self.residuals(values - step)) / STEP_MM)
        return np.stack(columns, axis=1)


def _knee(traced: Traced, inside_leg: float) -> float:
    """Girth of the leg midway between crotch and hem, 40 mm up: about where the knee is."""
    y = -(inside_leg - ABOVE_FLOOR_MM) / 2 + 40
    return width_at(traced.pieces["front"], y) + width_at(traced.pieces["back"], y)


def _forks(traced: Traced) -> float:
    """Width of both forks, each from the centre line at the hip."""
    total = 0.0
    for piece in traced.pieces.values():
        crotch = piece.edge("crotch").path
        places = [crotch.point_at(s).real for s in meet_line(crotch, 1j * traced.levels["hip"], 1 + 0j)]
        total += crotch.start.real - (places[-1] if places else crotch.end.real)
    return total
