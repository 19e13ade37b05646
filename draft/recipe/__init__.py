"""The recipe of a garment: everything that its pattern is made from, kept as a file that people can read and edit."""

from draft.recipe.entries import Fitting
from draft.recipe.recipe import Recipe, load

__all__ = ["Fitting", "Recipe", "load"]
