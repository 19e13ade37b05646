"""More ways to finish the waist, one file each; `KINDS` says which file makes which choice."""

from __future__ import annotations

from draft.choices.bands import ContourBand, DrawstringBand, ElasticCasing, FacedWaist
from draft.pieces.bands import contour_band, drawstring_band, elastic_casing, faced_waist
from draft.pieces.plan import BandKind
from draft.style import Choice

KINDS: dict[type[Choice], BandKind] = {
    FacedWaist: faced_waist,
    ElasticCasing: elastic_casing,
    DrawstringBand: drawstring_band,
    ContourBand: contour_band,
}
