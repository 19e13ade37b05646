"""Ten named styles to begin with: each one line to draft.

The names and the garments are ours.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from draft.body import Body
from draft.choices.back_pockets import PatchPocket, WeltPocket
from draft.choices.bands import ContourBand
from draft.choices.hems import BlindHem, FacedHem, GatheredHem, VentedHem
from draft.choices.small_parts import BeltLoops, Braces, CoinPocket, Lining
from draft.drafting import shorts, trousers
from draft.errors import DraftError, nearest
from draft.pattern import Pattern
from draft.style import (
    CurvedPocket,
    Darts,
    Ease,
    FlyFront,
    Leg,
    PlainHem,
    Pleats,
    StraightBand,
    Style,
    TurnedCuff,
    Yoke,
)
from draft.table import Table


@dataclass(frozen=True)
class Preset:
    """A named style: the garment it is meant for, and what it is."""

    name: str
    garment: str
    words: str
    style: Style

    def draft(self, body: Body, **options: Any) -> Pattern:
        """Draft it for a body; `options` are those of :func:`draft.shorts` (method, fit).

        Examples
        --------
        >>> body = Body(waist=740, hip=1000, crotch_depth=270, waist_to_hip=200, inside_leg=770)
        >>> presets().named("quay shorts").draft(body).check()
        []
        """
        make = shorts if self.garment == "shorts" else trousers
        return make(body, self.style, **options)


class Presets(tuple[Preset, ...]):
    """All presets; prints as a table."""

    __slots__ = ()

    @property
    def names(self) -> tuple[str, ...]:
        """Their names."""
        return tuple(preset.name for preset in self)

    def named(self, name: str) -> Preset:
        """Preset of a name.

        Raises
        ------
        DraftError
            For a name that does not exist; it lists them.
        """
        for preset in self:
            if preset.name == name:
                return preset
        near = nearest(name, self.names)
        remedy = f"write {near!r}" if near else "choose one of these"
        raise DraftError("preset", name, "one of " + ", ".join(self.names), remedy)

    def table(self) -> Table:
        """Name, garment and what it is."""
        rows = tuple((preset.name, preset.garment, preset.words) for preset in self)
        return Table("Presets", ("name", "garment", "what"), rows)

    def __str__(self) -> str:
        return str(self.table())

    def _repr_html_(self) -> str:
        return self.table().html()


def presets() -> Presets:
    """List the named styles.

    Examples
    --------
    >>> presets().names[:3]
    ('quay shorts', 'gallery trousers', 'ridge shorts')
    """
    return Presets(
        Preset(name, garment, words, Style(name=name.capitalize(), **parts))  # type: ignore[arg-type]
        for name, garment, words, parts in _LISTED
    )


_LISTED: tuple[tuple[str, str, str, dict[str, object]], ...] = (
    (
        "quay shorts",
        "shorts",
        "turned cuffs, curved pockets, the plain beginning",
        {"leg": Leg(inside_leg=150), "hem": TurnedCuff(depth=35)},
    ),
    (
        "gallery trousers",
        "trousers",
        "one reverse pleat on a pressed crease, straight leg, blind hem, welt pockets, hook at the waist",
        {
            "leg": Leg(shape="straight", pressed=True), "pleats": Pleats(depth=35), "hem": BlindHem(),
            "back_pocket": WeltPocket(), "ease": Ease(hip=60), "band": StraightBand(fastener="hook"),
        },
    ),
    (
        "ridge shorts",
        "shorts",
        "roomy and long for walking, patch pockets with flaps, coin pocket, belt loops",
        {
            "leg": Leg(inside_leg=210, shape="wide"), "ease": Ease(waist=20, hip=110), "hem": PlainHem(depth=30),
            "back_pocket": PatchPocket(flap=True), "small_parts": (BeltLoops(), CoinPocket()),
        },
    ),
    (
        "orchard culottes",
        "trousers",
        "wide to the calf, two forward pleats, faced hem",
        {
            "leg": Leg(inside_leg=430, shape="culottes"), "pleats": Pleats(count=2, direction="forward"),
            "hem": FacedHem(depth=40),
        },
    ),
    (
        "mill breeches",
        "trousers",
        "full to below the knee and gathered into a band there, back gathered at the waist",
        {
            "leg": Leg(inside_leg=440, shape="balloon"), "hem": GatheredHem(), "ease": Ease(hip=90),
            "darts": Darts(back_as="gathers"),
        },
    ),
    (
        "meridian flares",
        "trousers",
        "contoured band below the waist, yoke at the back, flared from the knee",
        {
            "leg": Leg(shape="flared"), "band": ContourBand(), "waist_drop": 30, "pocket": None,
            "yoke": Yoke(centre=60, side=35), "darts": Darts(back=1), "hem": BlindHem(depth=30),
        },
    ),
    (
        "belfry trousers",
        "trousers",
        "bell bottoms, faced hem, no pockets in front, welts behind",
        {"leg": Leg(shape="bell"), "hem": FacedHem(), "pocket": None, "back_pocket": WeltPocket(welts=2)},
    ),
    (
        "signal trousers",
        "trousers",
        "tapered, vented hem, right over left, straight band in sections",
        {
            "leg": Leg(shape="tapered"), "hem": VentedHem(), "closing": FlyFront(lap="right_over_left"),
            "band": StraightBand(sections="side_seams"),
        },
    ),
    (
        "bandstand trousers",
        "trousers",
        "raised waist on braces, two pleats, wide leg, turned cuffs",
        {
            "waist_drop": -35, "leg": Leg(shape="wide"), "pleats": Pleats(count=2, depth=40, second=30),
            "hem": TurnedCuff(depth=45), "small_parts": (Braces(),), "ease": Ease(waist=25),
        },
    ),
    (
        "veranda shorts",
        "shorts",
        "short and light for hot weather, half lined",
        {
            "leg": Leg(inside_leg=90, shape="flared"), "hem": FacedHem(depth=25, turn=6),
            "pocket": CurvedPocket(bag_depth=60), "darts": Darts(back=1), "small_parts": (Lining(length="half"),),
        },
    ),
)  # fmt: skip
