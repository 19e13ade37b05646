"""The invented population against its model, and the model against the survey."""

import json

import numpy as np
import population
import pytest
import survey
from builders.population_model import MODEL, model, text

COUNT = 3000
STANDARD_ERRORS = 4  # of 52 comparisons less than one in a hundred runs would go beyond; the seed is fixed anyway
BOTH = pytest.mark.parametrize("people", ["women", "men"])

# Mean and SD in mm, women and men; the second as a sum of its two parts. Computed from the survey's data.
PUBLISHED = {
    "crotch depth": {"women": (198, 21), "men": (211, 21)},
    "total crotch length": {"women": (621, 42), "men": (622, 47)},
}


def sizes_of(bodies):
    return np.array([[getattr(body, field) for field in population.FIELDS] for body in bodies])


def test_model_is_that_of_the_survey():
    assert MODEL.read_text("utf-8") == text(model())
    assert json.loads(text(model())) == population.MODEL


@BOTH
def test_means_and_deviations_are_met_within_sampling_error(people):
    """The error of a mean is SD / root n, that of a deviation SD / root 2n (normal distribution)."""
    sizes = sizes_of(population.drawn(COUNT, people).bodies)
    mean, covariance = population.moments(people)
    sd = np.sqrt(np.diag(covariance))
    assert np.all(np.abs(sizes.mean(axis=0) - mean) < STANDARD_ERRORS * sd / np.sqrt(COUNT))
    assert np.all(np.abs(sizes.std(axis=0, ddof=1) - sd) < STANDARD_ERRORS * sd / np.sqrt(2 * COUNT))


@BOTH
def test_correlations_are_met_within_sampling_error(people):
    """The error of a correlation near 0 is 1 / root n, and smaller for stronger ones."""
    found = np.corrcoef(sizes_of(population.drawn(COUNT, people).bodies).T)
    _, covariance = population.moments(people)
    sd = np.sqrt(np.diag(covariance))
    assert np.abs(found - covariance / np.outer(sd, sd)).max() < STANDARD_ERRORS / np.sqrt(COUNT)


@BOTH
@pytest.mark.parametrize("size", PUBLISHED)
def test_population_has_the_sizes_of_the_survey(people, size):
    bodies = population.drawn(COUNT, people).bodies
    mm = [b.crotch_depth if size == "crotch depth" else b.front_crotch + b.back_crotch for b in bodies]
    assert (np.mean(mm), np.std(mm)) == pytest.approx(PUBLISHED[size][people], abs=2)


def test_few_draws_are_refused():
    for people in ("women", "men"):
        assert population.drawn(COUNT, people).refused < 0.003


def test_women_and_men_come_by_turns_and_the_same_each_time():
    first = population.drawn(10).bodies
    assert [body.name.split()[1] for body in first] == ["women", "men"] * 5
    population.drawn.cache_clear()
    assert population.drawn(10).bodies == first
    assert population.drawn(10, seed=population.SEED + 1).bodies != first


@BOTH
def test_tails_are_those_of_the_survey(people):
    """Nine of ten lie between the 5th and the 95th percentile of the survey, but for its not being quite normal."""
    sizes, measured = sizes_of(population.drawn(COUNT, people).bodies), survey.table()[people]
    for column, field in enumerate(population.FIELDS):
        low, high = np.percentile(measured[:, column], (5, 95))
        inside = np.mean((sizes[:, column] > low) & (sizes[:, column] < high))
        assert inside == pytest.approx(0.9, abs=0.03), field
