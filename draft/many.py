"""Many bodies at once: blocks in arrays, drafted and fitted in one pass."""

from __future__ import annotations

import sys
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np

from draft.block import Block, PanelBlock
from draft.body import Body
from draft.errors import DraftError
from draft.fitting.fit import Fit, by_formula, checked_fit, fitted, joined, row_of
from draft.geometry.arrays import Floats
from draft.methods.base import Method, Recipe
from draft.methods.catalogue import method_of
from draft.style import Ease, Style

ROWS_AT_ONCE = 1024
LONG_RUN = 10_000  # bodies from which a progress bar is shown when nothing is said


@dataclass(frozen=True, eq=False)
class Blocks(Sequence[Block]):
    """Blocks of many bodies; made by :func:`draft.blocks`. Row i is the block of body i.

    ``front`` and ``back`` are all panels in arrays, one entry for each body: ``front.fork`` are all front forks.
    ``fit`` tells how they came about; ``fit[i]`` does so for one body.
    """

    bodies: tuple[Body, ...]
    method: str
    fit: Fit

    def __len__(self) -> int:
        return len(self.bodies)

    def __getitem__(self, row: int) -> Block:  # type: ignore[override]
        if not -len(self) <= row < len(self):
            raise IndexError(f"body {row} of {len(self)}")
        return row_of(self.fit.block, row)

    @property
    def front(self) -> PanelBlock:
        """All fronts, in arrays."""
        return self.fit.block.front

    @property
    def back(self) -> PanelBlock:
        """All backs, in arrays."""
        return self.fit.block.back

    @property
    def block(self) -> Block:
        """All blocks, in arrays."""
        return self.fit.block

    @cached_property
    def lengths(self) -> Mapping[str, Floats]:
        """Lengths of the blocks in mm: crotch seams, thigh, width of the forks, waist and hip (whole girths)."""
        return self.fit.lengths

    @cached_property
    def misses(self) -> Mapping[str, Floats]:
        """Reached less asked, mm; nan where nothing was asked. The thigh counts only where it is too small."""
        found = {name: self.lengths[name] - np.asarray(aim) for name, aim in self.fit.aims.items()}
        found["thigh"] = np.minimum(found["thigh"], 0.0)
        return found

    def __repr__(self) -> str:
        return f"<Blocks: {len(self)} bodies, method {self.method}>"


def blocks(
    bodies: Sequence[Body],
    style: Style | Ease | None = None,
    *,
    method: str | Method | Recipe = "centre_line",
    fit: str = "measured",
    progress: bool | None = None,
) -> Blocks:
    """Draft and fit the blocks of many bodies in arrays: the same code as for one body, and the same result.

    Parameters
    ----------
    bodies : sequence of Body
        At least one.
    style : Style or Ease, optional
        Of a style only the ease counts here.
    method : str, Method or function
    fit : {"measured", "formula"}
    progress : bool, optional
        Show a progress bar on the error stream; left out: for 10,000 bodies or more.

    Raises
    ------
    DraftError
        For no bodies, something else than bodies, and an unknown method or fit.

    Examples
    --------
    >>> import draft
    >>> size = dict(crotch_depth=270, waist_to_hip=200, inside_leg=770, back_crotch=380)
    >>> many = draft.blocks([draft.Body(waist=w, hip=w + 250, **size) for w in (700, 720, 740)])
    >>> many.lengths["back_crotch"].round(3).tolist(), many[2].method
    ([395.0, 395.0, 395.0], 'centre_line')
    """
    wrong = next((body for body in bodies if not isinstance(body, Body)), None)
    if wrong is not None or not len(bodies):
        raise DraftError(
            "bodies", wrong if wrong is not None else list(bodies), "one draft.Body or more", "pass a list of them"
        )
    ease = style.ease if isinstance(style, Style) else Ease() if style is None else style
    if not isinstance(ease, Ease):
        raise DraftError("style", style, "a draft.Style or a draft.Ease", "write draft.Ease(hip=60)")
    recipe = method_of(method)
    run = fitted if checked_fit(fit) == "measured" else by_formula
    chunks = [bodies[start : start + ROWS_AT_ONCE] for start in range(0, len(bodies), ROWS_AT_ONCE)]
    shown = len(bodies) >= LONG_RUN if progress is None else progress
    found = [run(recipe, chunk, ease) for chunk in (_with_bar(chunks, len(bodies)) if shown else chunks)]
    return Blocks(tuple(bodies), recipe.name, joined(found))


def _with_bar(chunks: list[Sequence[Body]], count: int) -> Iterator[Sequence[Body]]:
    from tqdm import tqdm

    with tqdm(total=count, unit="body", file=sys.stderr) as bar:
        for chunk in chunks:
            yield chunk
            bar.update(len(chunk))
