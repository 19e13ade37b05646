"""All alterations by name."""

from __future__ import annotations

from draft.alter import crotch, darts, girth, leg, waist
from draft.alter.base import Alteration, Spec
from draft.errors import DraftError, nearest
from draft.table import Table

_ROOMS = (girth, waist, crotch, leg, darts)
SPECS: dict[str, Spec] = {spec.name: spec for room in _ROOMS for spec in vars(room).values() if isinstance(spec, Spec)}


class Alterations(tuple[Spec, ...]):
    """All alterations; prints as a table."""

    __slots__ = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Their names."""
        return tuple(spec.name for spec in self)

    def named(self, name: str) -> Spec:
        """Alteration of a name.

        Raises
        ------
        DraftError
            For a name that does not exist; with the nearest one.
        """
        found = SPECS.get(name)
        if found is None:
            near = nearest(str(name), self.names)
            remedy = f"write {near!r}" if near else "draft.alterations() lists them"
            raise DraftError("alteration", name, "one of " + ", ".join(self.names), remedy)
        return found

    def table(self) -> Table:
        """Name, fault, what moves, and the promise."""
        rows = tuple((spec.name, _limits(spec), spec.cures, spec.moves, spec.promise) for spec in self)
        return Table("Alterations", ("name", "mm", "cures", "moves", "promise"), rows)

    def __str__(self) -> str:
        return str(self.table())

    def __repr__(self) -> str:
        return f"<Alterations: {', '.join(self.names)}>"

    def _repr_html_(self) -> str:
        return self.table().html()


def _limits(spec: Spec) -> str:
    return ", ".join(
        " or ".join(argument.choices) or f"{argument.low:g} to {argument.high:g}" for argument in spec.arguments
    )


def alterations() -> Alterations:
    """List the alterations: what each cures, what it moves and what it keeps.

    Examples
    --------
    >>> alterations().names[:3]
    ('waist_ease', 'hip_ease', 'all_girths')
    """
    return Alterations(SPECS.values())


def alteration(name: str, **amounts: object) -> Alteration:
    """Alteration of a name with its amounts (mm, or text with a unit).

    Examples
    --------
    >>> alteration("crotch_depth", by=-8)
    crotch_depth(by=-8)
    """
    return alterations().named(name)(**amounts)
