"""Ways to finish the waist, one file each; `KINDS` says which file makes which choice."""

from __future__ import annotations

from draft.choice import Choice
from draft.choices.bands import ContourBand, DrawstringBand, ElasticCasing, FacedWaist
from draft.pieces import straight_band
from draft.pieces.bands import contour_band, drawstring_band, elastic_casing, faced_waist
from draft.pieces.plan import BandKind
from draft.style import StraightBand

KINDS: dict[type[Choice], BandKind] = {
    StraightBand: straight_band,
    FacedWaist: faced_waist,
    ElasticCasing: elastic_casing,
    DrawstringBand: drawstring_band,
    ContourBand: contour_band,
}
