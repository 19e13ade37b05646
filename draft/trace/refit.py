"""Refit: the body and the style whose draft lies nearest to a traced pattern.

A handful of measures is varied until the seams of the draft lie as near to those of the traced pieces as they can. Each
seam is looked at in equal shares of its length, each panel laid on its partner by the best turn and shift; sizes count
beside the places. The ease is not found: a large body with little ease and a small one with much have the same pattern.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from draft.body import Body
from draft.drafting import shorts, trousers
from draft.errors import DraftError
from draft.methods.base import Method
from draft.methods.catalogue import method_of
from draft.pattern import Pattern
from draft.style import Ease, Style
from draft.trace.likeness import (
    FLAT_MM,
    distances,
    laid,
    panel_of,
    places,
    seams_of_panel,
    seams_of_piece,
)
from draft.trace.picture import pair_svg
from draft.trace.search import Search
from draft.trace.traced import Traced

EASE = Ease(waist=10, hip=60, thigh=25, front_crotch=10, back_crotch=15)
"""Ease that is taken for granted when none is said (common practice, no source)."""

WIDEST = 0.3  # a measure may move this share from where it starts
ROUNDS = 15
HIP_SHARES = (None, 0.8, 0.55)  # None: as the traced pattern says
GOOD_MM = 0.15  # root mean square of all residuals, from which no other start is tried


@dataclass(frozen=True, eq=False)
class Refit:
    """What was found: draft it again with ``draft.trousers(body, style, method=...)`` and change it from there.

    ``rms`` and ``largest`` are the remaining distances in mm from places on the seams of the traced pieces to the
    nearest place on the draft's.
    """

    body: Body
    style: Style
    pattern: Pattern
    traced: Traced
    rms: float
    largest: float

    def svg(self) -> str:
        """Picture of both outlines: traced dashed, drafted solid."""
        pairs = []
        for name in ("front", "back"):
            mine, theirs = panel_of(self.pattern.shell, name), self.traced.pieces[name]
            turn, shift = laid(places(seams_of_panel(mine)), places(seams_of_piece(theirs)))
            outline = theirs.sew_line.points(FLAT_MM)
            pairs.append((name.capitalize(), turn * outline + shift, mine.outline.points(FLAT_MM)))
        title = f"{self.traced.name} and the draft nearest to it: {self.rms:.1f} mm apart (rms)"
        return pair_svg(pairs, ("traced", "drafted"), title)

    def _repr_svg_(self) -> str:
        return self.svg()

    def __repr__(self) -> str:
        return (
            f"<Refit of {self.traced.name}: {self.body!r}, {self.rms:.1f} mm apart (rms), at most {self.largest:.1f}>"
        )


def refit(
    traced: Traced,
    *,
    ease: Ease | None = None,
    method: str | Method = "centre_line",
    known: Mapping[str, float | str] | None = None,
    garment: str | None = None,
) -> Refit:
    """The body and style whose draft lies nearest to a traced pattern.

    Parameters
    ----------
    traced : Traced
    ease : Ease, optional
        What the pattern has more than the body; what is None in it, or when it is left out: waist 10, hip 60, thigh 25,
        front crotch 10, back crotch 15 mm.
    method : str or Method
        Drafting method whose block is bent to the outline.
    known : mapping, optional
        Measures of the body that are known, by name, in mm: they are kept, as is a ``waist_to_hip`` of the trace.
        A pair of shorts does not show the ``inside_leg``; when it is not given, 2.9 times the crotch depth is taken.
    garment : {"trousers", "shorts"}, optional
        None: trousers when the inseam is longer than 1.4 times the crotch depth.

    Returns
    -------
    Refit
        Body, style, pattern and the remaining distance. The body's hip depth is the one that asks for
        forks of this width, not a measured one.

    Raises
    ------
    DraftError
        When no body has a pattern like this one.

    Examples
    --------
    >>> import draft
    >>> from draft.trace import Outline, Traced
    >>> body = draft.Body(waist=740, hip=1000, crotch_depth=270, waist_to_hip=200, inside_leg=770)
    >>> style = draft.Style(pocket=None, hem=draft.PlainHem(), ease=EASE, darts=draft.Darts(back=0))
    >>> pieces = draft.trousers(body, style).pieces
    >>> front, back = (Outline(pieces[name].sew_line.points(0.05)) for name in ("front", "back"))
    >>> found = refit(Traced(front=front, back=back, allowance=0))
    >>> round(found.body.waist), round(found.body.hip), found.rms < 1
    (740, 1000, True)
    """
    if garment not in (None, "trousers", "shorts"):
        raise DraftError("garment", garment, "'trousers' or 'shorts'", "choose one of these")
    search = Search.of(traced, filled_ease(ease), method_of(method), dict(known or {}), garment)
    from scipy.optimize import least_squares

    search.checked(np.array(list(search.free.values())))
    found: Any = None
    for share in HIP_SHARES:  # the level of the hip shows least: from a bad start the search may end in a hollow
        start = search.start(share)
        here: Any = least_squares(
            search.residuals,
            start,
            jac=search.slopes,
            bounds=(start * (1 - WIDEST), start * (1 + WIDEST)),
            x_scale=start * 0.05,
            ftol=1e-6,
            xtol=1e-6,
            max_nfev=ROUNDS,
        )
        found = here if found is None or here.cost < found.cost else found
        if found.cost < GOOD_MM**2 * len(found.fun) / 2 or "waist_to_hip" in search.fixed:
            break
    body, style = search.recipe(found.x)
    pattern = (trousers if search.garment == "trousers" else shorts)(body, style, method=search.method)
    gaps = np.concatenate([distances(pattern.shell, traced.pieces[name], name) for name in ("front", "back")])
    rms = float(np.sqrt(np.mean(gaps**2)))
    return Refit(body, style, pattern, traced, rms, float(gaps.max()))


def filled_ease(ease: Ease | None) -> Ease:
    """Ease with what is taken for granted in the place of what was not said.

    >>> filled_ease(Ease(hip=40)).hip, filled_ease(Ease(hip=40)).waist
    (40.0, 10.0)
    """
    if ease is None:
        return EASE
    if not isinstance(ease, Ease):
        raise DraftError("ease", ease, "a draft.Ease", "write draft.Ease(waist=10, hip=60)")
    missing = {name: getattr(EASE, name) for name in EASE.__dataclass_fields__ if getattr(ease, name) is None}
    return replace(ease, **missing)
