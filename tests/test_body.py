import copy
import dataclasses
import inspect
import pickle

import numpy as np
import pytest
import survey
from bad_inputs import BAD_BODIES, GOOD
from hypothesis import given
from hypothesis import strategies as st
from zoo import MAN, ONLY_REQUIRED, STOUT, TODDLER, VERY_LARGE, WOMAN, ZOO, bodies, measurements

from draft.body import OPTIONAL, REQUIRED, Body
from draft.body_checks import HIP_BELOW_CROTCH_MM, MEASURES, RATIOS, STANDING_TO_SEATED_MM, measured
from draft.errors import CollectedError, DraftError
from draft.size_tables import TABLES

ALL_BODIES = pytest.mark.parametrize("body", ZOO.values(), ids=ZOO)
EACH_MEASURE = pytest.mark.parametrize("field", MEASURES)
CM = 10.0
INCH = 25.4

# Children: height, waist, hip, inside leg (mm) of two shop size charts (read); the inside leg above 980 mm of height by
# its own line. EN 13402-3:2004 women: waist and hip (mm, from memory).
CHILDREN = [
    (860, 490, 530, 310),
    (920, 510, 545, 350),
    (980, 520, 565, 390),
    (1080, 530, 620, 450),
    (1200, 550, 640, 528),
    (1380, 590, 720, 637),
    (1500, 660, 780, 702),
    (1740, 740, 920, 841),
]
WOMEN_WAIST_HIP = [(600, 840), (680, 920), (760, 1000), (840, 1080), (940, 1170), (1060, 1270), (1180, 1370)]


SIZES = [Body.from_size(table, size) for table in ("women by hip", "men by hip") for size in TABLES[table].sizes]


def sizes_of(body):
    return {field: getattr(body, field) for field in MEASURES}


# What is refused


@pytest.mark.parametrize(("given_", "message"), [row[1:] for row in BAD_BODIES], ids=[row[0] for row in BAD_BODIES])
def test_wrong_input_is_told(given_, message):
    with pytest.raises(DraftError, match=message) as caught:
        Body(**given_)
    for single in caught.value.many:
        assert single.field.startswith("body.")
        assert single.expected
        assert single.remedy


def test_the_unspoilt_body_is_accepted():
    assert Body(**GOOD).waist == 720


def test_table_of_wrong_inputs_is_large_and_its_names_unique():
    names = [name for name, *_ in BAD_BODIES]
    assert len(names) == len(set(names)) >= 40


def test_all_wrong_fields_are_told_at_once():
    with pytest.raises(CollectedError) as caught:
        Body(**dict.fromkeys(MEASURES, -1))
    assert [error.field for error in caught.value.many] == [f"body.{field}" for field in MEASURES]
    assert caught.value.value == (-1.0,) * len(MEASURES)
    assert all(str(error) in str(caught.value) for error in caught.value.many)


def test_a_single_error_stands_alone():
    with pytest.raises(DraftError) as caught:
        Body(**GOOD | {"waist": "28 parsecs"})
    assert type(caught.value) is DraftError
    assert caught.value.many == (caught.value,)


def test_errors_survive_pickling():
    with pytest.raises(CollectedError) as caught:
        Body()
    again = pickle.loads(pickle.dumps(caught.value))
    assert str(again) == str(caught.value)
    assert again.field == caught.value.field


def test_sizes_without_names_are_refused():
    with pytest.raises(DraftError, match=r"body is \(720, 980\), expected measures by name: write Body\(waist=720"):
        Body(720, 980)


@EACH_MEASURE
def test_no_slip_of_unit_fits_the_limits_by_chance(field):
    low, high, _ = MEASURES[field]
    assert high / CM < low
    assert high / INCH < low


@EACH_MEASURE
@pytest.mark.parametrize("body", [WOMAN, TODDLER, VERY_LARGE], ids=lambda body: body.name)
@pytest.mark.parametrize(("unit", "mm", "word"), [("cm", CM, "centimetres"), ("in", INCH, "inches")])
def test_a_slip_of_unit_is_named(field, body, unit, mm, word):
    slip = round(getattr(body, field) / mm, 1)
    with pytest.raises(DraftError) as caught:
        measured(field, slip)
    assert f'{word}; write "{slip:g} {unit}"' in caught.value.remedy
    assert measured(field, f"{slip:g} {unit}") == pytest.approx(slip * mm)


@EACH_MEASURE
def test_limits_are_reached_and_not_passed(field):
    low, high, take = MEASURES[field]
    assert (measured(field, low), measured(field, high)) == (low, high)
    for outside in (low - 0.1, high + 0.1):
        with pytest.raises(
            DraftError, match=rf"body\.{field} is {outside}, .*: measure it again, {take.split(';')[0]}"
        ):
            measured(field, outside)


def test_the_largest_hip_level_that_is_told_works():
    assert Body(**GOOD | {"waist_to_hip": 262}).waist_to_hip == 262
    assert Body(**GOOD | {"waist_to_hip": 302, "crotch_depth_taken": "standing"}).waist_to_hip == 302


def test_every_body_of_the_survey_is_accepted():
    assert len(survey.bodies()) == 3064


def test_the_limit_of_the_hip_level_lies_beyond_the_survey_but_not_far():
    """The survey's lowest hip lies 29 mm below its crotch: the limit leaves room for one more class of 10 mm."""
    lowest = max(body.waist_to_hip - body.crotch_depth for body in survey.bodies())
    assert lowest == 29
    assert HIP_BELOW_CROTCH_MM["standing"] - 15 < lowest < HIP_BELOW_CROTCH_MM["standing"]


@pytest.mark.parametrize("rule", RATIOS, ids=lambda rule: f"{rule.field} of {rule.of}")
def test_ratio_rules_hold_for_mean_bodies_and_the_zoo(rule):
    for body in (*ZOO.values(), *SIZES):
        filled = body.filled()
        assert rule.low < getattr(filled, rule.field) / getattr(filled, rule.of) < rule.high


# What is accepted


@pytest.mark.parametrize(("height", "waist", "hip", "inside_leg"), CHILDREN)
def test_children_of_size_charts_are_accepted(height, waist, hip, inside_leg):
    depth = 0.105 * height + 90  # invented: the charts have no crotch depth
    body = Body(waist=waist, hip=hip, crotch_depth=depth, waist_to_hip=0.68 * depth, inside_leg=inside_leg)
    filled = body.filled()
    assert filled.ankle < filled.calf < filled.knee * 1.1
    assert filled.knee < filled.thigh < filled.hip


@pytest.mark.parametrize(("waist", "hip"), WOMEN_WAIST_HIP)
def test_women_of_the_size_standard_are_accepted(waist, hip):
    assert Body(**GOOD | {"waist": waist, "hip": hip}).hip == hip


@given(bodies())
def test_plausible_bodies_are_accepted(body):
    assert all(type(size) is float for size in sizes_of(body).values() if size is not None)


@given(st.integers(400, 1000).map(lambda half: half * 2.0), st.integers(85, 115))
def test_very_large_bodies_are_accepted(waist, percent):
    hip = min(max(waist * percent / 100, 450.0), 2100.0)
    assert Body(**GOOD | {"waist": waist, "hip": hip}).filled().thigh <= 1200


@given(measurements())
def test_units_do_not_change_a_body(sizes):
    in_cm = {k: v if isinstance(v, str) else f"{v / 10:.1f} cm" for k, v in sizes.items()}
    assert Body(**in_cm) == Body(**sizes)


def test_numpy_sizes_become_plain_floats():
    body = Body(**{field: np.float64(size) for field, size in GOOD.items()}, thigh=np.int64(580), name=np.str_("x"))
    assert "np." not in repr(body)
    assert type(body.thigh) is float
    assert type(body.name) is str


# A value among values


@ALL_BODIES
def test_repr_is_one_line_that_makes_the_body_again(body):
    assert "\n" not in repr(body)
    assert eval(repr(body)) == body


@ALL_BODIES
def test_copies_are_equal(body):
    for again in (copy.deepcopy(body), pickle.loads(pickle.dumps(body)), dataclasses.replace(body)):
        assert again == body
        assert hash(again) == hash(body)


def test_a_changed_copy_is_checked():
    with pytest.raises(DraftError, match=r"body\.waist is 72\.0"):
        dataclasses.replace(WOMAN, waist=72)


def test_a_body_is_frozen():
    with pytest.raises(dataclasses.FrozenInstanceError):
        WOMAN.waist = 700


def test_help_shows_the_real_signature():
    parameters = inspect.signature(Body).parameters
    assert {*MEASURES, "crotch_depth_taken", "name"} == parameters.keys()
    required = {name for name, parameter in parameters.items() if parameter.default is inspect.Parameter.empty}
    assert required == set(REQUIRED)
    assert all(parameter.kind is inspect.Parameter.KEYWORD_ONLY for parameter in parameters.values())


def test_glossary_explains_every_measure():
    glossary = inspect.getmodule(Body).__doc__
    assert all(field in glossary.split("Glossary")[1] for field in MEASURES)


# Measured or estimated


def test_known_prefers_the_measured():
    assert MAN.known("knee") == MAN.knee
    assert ONLY_REQUIRED.known("hip") == ONLY_REQUIRED.hip
    with pytest.raises(DraftError, match=r"field is 'kneee', expected one of waist, .*: ask for knee instead of kneee"):
        MAN.known("kneee")
    with pytest.raises(DraftError, match=r"field is 'name', expected one of waist, "):
        MAN.known("name")


@given(bodies())
def test_a_filled_body_is_a_body_that_keeps_its_measures(body):
    filled = body.filled()
    for field, size in sizes_of(body).items():
        if size is not None:
            assert getattr(filled, field) == size
    assert all(getattr(filled, field) == body.known(field) for field in OPTIONAL if "crotch" not in field)
    assert (filled.front_crotch, filled.back_crotch) == (body.front_crotch, body.back_crotch)
    assert filled.filled() == filled


# Crotch depth and girth between waist and hip


def test_standing_depth_is_made_seated():
    assert 10 <= STANDING_TO_SEATED_MM <= 20  # common practice, no source
    assert ONLY_REQUIRED.seated_crotch_depth() == ONLY_REQUIRED.crotch_depth + STANDING_TO_SEATED_MM
    assert WOMAN.seated_crotch_depth() == WOMAN.crotch_depth


@given(measurements())
def test_how_the_depth_was_taken_changes_nothing_else(sizes):
    seated = {**sizes, "crotch_depth_taken": "seated"}
    standing = {
        **seated,
        "crotch_depth_taken": "standing",
        "crotch_depth": seated["crotch_depth"] - STANDING_TO_SEATED_MM,
    }
    one, other = (Body(**{f: s for f, s in body.items() if f not in OPTIONAL}) for body in (seated, standing))
    assert one.seated_crotch_depth() == other.seated_crotch_depth()
    assert one.estimates == other.estimates


@ALL_BODIES
def test_girth_runs_from_waist_to_hip(body):
    levels = np.linspace(0, body.waist_to_hip, 50)
    girths = np.array([body.girth_at(level) for level in levels])
    assert girths[0] == body.waist
    assert girths[-1] == pytest.approx(body.hip)
    assert np.all(np.diff(girths) * np.sign(body.hip - body.waist) > 0)
    assert abs(girths[-1] - girths[-2]) < 0.002 * abs(body.hip - body.waist)  # level at the hip
    assert body.waist <= body.girth_at(-20) <= body.waist + 10
    assert body.girth_at(body.waist_to_hip + 5) == body.girth_at(body.waist_to_hip)


def test_a_stout_body_narrows_to_the_hip():
    assert STOUT.waist > STOUT.girth_at(100) > STOUT.hip
