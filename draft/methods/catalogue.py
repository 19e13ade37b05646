"""The methods there are, as a list that prints, and the method that a user names or brings along."""

from __future__ import annotations

from collections.abc import Callable

from draft.block import Block
from draft.errors import DraftError, nearest
from draft.geometry.segments import Cubic, Line
from draft.methods import METHODS
from draft.methods.base import Measures, Method, Recipe
from draft.table import Table


class Methods(tuple[Method, ...]):
    """All drafting methods; prints as a table."""

    __slots__ = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Their names."""
        return tuple(method.name for method in self)

    def table(self) -> Table:
        """Name, tradition, required measures and source, one row each."""
        rows = tuple((m.name, m.title, m.made_for, ", ".join(m.required), m.unit, m.source) for m in self)
        return Table("Drafting methods", ("name", "title", "made for", "needs", "unit", "source"), rows)

    def __str__(self) -> str:
        return str(self.table())

    def _repr_html_(self) -> str:
        return self.table().html()


def methods() -> Methods:
    """List the published drafting methods, with the measures they need, their source and whom they were made for.

    Examples
    --------
    >>> import draft
    >>> draft.methods().names
    ('centre_line', 'seat_sixths', 'ten_degrees', 'tenths_of_hip', 'third_of_hip')
    >>> draft.methods()[1].required
    ('waist', 'hip', 'crotch_depth', 'inside_leg')
    """
    return Methods(METHODS.values())


def method_of(method: str | Method | Recipe) -> Method:
    """Method of a name, or of a function ``(measures) -> block`` that a user brings along.

    Raises
    ------
    DraftError
        For a name that does not exist, and for what is neither name, method nor function.

    Examples
    --------
    >>> method_of("centre_line").unit
    'cm'
    """
    if isinstance(method, Method):
        return method
    if isinstance(method, str) and method in METHODS:
        return METHODS[method]
    if callable(method):
        return _own(method)
    near = nearest(method, tuple(METHODS)) if isinstance(method, str) else None
    remedy = f"write {near!r}" if near else "choose a method that exists, or pass a function (measures) -> block"
    raise DraftError("method", method, "one of " + ", ".join(METHODS), remedy)


def _own(recipe: Callable[[Measures], Block]) -> Method:
    name = getattr(recipe, "__name__", "own")

    def drafted(measures: Measures) -> Block:
        block = recipe(measures)
        _check_block(name, block)
        return block

    first_line = ((recipe.__doc__ or "").strip().splitlines() or [""])[0]
    return Method(name, first_line or name, "your own function", "your bodies", "mm", (), drafted, one_by_one=True)


def _check_block(name: str, block: object) -> None:
    if not isinstance(block, Block):
        raise DraftError(f"method {name}", block, "a draft.Block", "return draft.Block(name, front, back, levels)")
    for side in ("front", "back"):
        kinds = [type(segment) for segment in getattr(block, side).crotch]
        if kinds != [Cubic, Line]:
            raise DraftError(
                f"method {name}, {side} crotch seam",
                [kind.__name__ for kind in kinds],
                "one curve from the fork and one straight line to the waist",
                "draw it with draft.crotch_seam(waist_centre, top, fork, k)",
            )
    missing = {"waist", "hip", "crotch", "knee"} - set(block.levels)
    if missing:
        raise DraftError(
            f"method {name}, levels", sorted(block.levels), "waist, hip, crotch and knee", "add " + ", ".join(missing)
        )
