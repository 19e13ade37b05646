"""Recipes for the tests: bodies of the zoo, any style, any history of mock-ups."""

from __future__ import annotations

from datetime import date

from hypothesis import strategies as st
from styles import styles
from zoo import ZOO

from draft.alter.base import Alteration
from draft.alter.catalogue import alteration, alterations
from draft.recipe import Fitting, Recipe


def extremes() -> list[Alteration]:
    """Every alteration that there is, with the first and with the last value that each of its amounts takes."""
    found = []
    for spec in alterations():
        for end in (0, -1):
            amounts = {a.name: (a.choices or (a.low, a.high))[end] for a in spec.arguments}
            found.append(alteration(spec.name, **amounts))
    return found


LEARNED = [*extremes(), alteration("sway_back", by=12), alteration("lengthen_at_hem", by="-7.5 mm")]
NOTES = st.text(st.characters(exclude_categories=("Cc", "Cs"), include_characters='\n\t"\\'), max_size=60)

MOCK_UPS = st.builds(
    Fitting,
    date=st.dates(date(1000, 1, 1)),
    notes=NOTES,
    alterations=st.lists(st.sampled_from(LEARNED), max_size=3).map(tuple),
)
RECIPES = st.builds(
    Recipe,
    body=st.sampled_from(list(ZOO.values())),
    style=styles(),
    garment=st.sampled_from(["shorts", "trousers"]),
    method=st.sampled_from(["centre_line", "third_of_hip"]),
    fit=st.sampled_from(["measured", "formula"]),
    mock_ups=st.lists(MOCK_UPS, max_size=3).map(tuple),
)
