"""Size tables against the survey they were computed from, and every size as a body."""

from itertools import pairwise

import pytest
from builders.class_means import class_means

from draft.body import REQUIRED, Body
from draft.body_checks import MEASURES
from draft.errors import DraftError
from draft.size_tables import NAVEL_TO_WAIST_MM, TABLES, table_named

EVERY = [(table, size) for table, rows in TABLES.items() for size in rows.sizes]
EVERY_SIZE = pytest.mark.parametrize(("table", "size"), EVERY, ids=[" ".join(one) for one in EVERY])
SURVEY_TABLES = pytest.mark.parametrize(("table", "people"), [("women by hip", "women"), ("men by hip", "men")])

# Waist and hip of women, cm: EN 13402-3:2004, from memory.
EN_PAIRS = {"64": 88, "68": 92, "72": 96, "76": 100, "80": 104, "84": 108, "88": 112, "94": 117}


@EVERY_SIZE
def test_every_size_is_a_body(table, size):
    body = Body.from_size(table, size)
    assert body.name == f"{table} {size}"
    assert body.crotch_depth_taken == TABLES[table].crotch_depth_taken
    for field, mm in TABLES[table].sizes[size].items():
        assert getattr(body, field) == mm
    assert set(REQUIRED) <= TABLES[table].sizes[size].keys() <= set(MEASURES)


@pytest.mark.parametrize("table", TABLES)
def test_sizes_grow_in_girth(table):
    rows = list(TABLES[table].sizes.values())
    for smaller, larger in pairwise(rows):
        for field in {"waist", "hip", "thigh", "knee", "calf", "ankle"} & smaller.keys():
            assert larger[field] > smaller[field]


@pytest.mark.parametrize("table", TABLES)
def test_a_table_says_where_it_comes_from_and_how_that_is_known(table):
    said = str(TABLES[table])
    assert said.startswith(f"{table} (sizes {', '.join(TABLES[table].sizes)}: ")
    assert "For adult" in said
    assert f"Waist at the {TABLES[table].waist_level}" in said
    assert f"crotch depth {TABLES[table].crotch_depth_taken}" in said
    assert "computed from its public data" in said or "from memory, not checked" in said


@SURVEY_TABLES
def test_survey_tables_are_the_class_means(table, people):
    means = class_means()[people]
    assert list(TABLES[table].sizes) == list(means)
    for size, (_, row) in means.items():
        assert tuple(TABLES[table].sizes[size][field] for field in MEASURES) == row


@SURVEY_TABLES
def test_survey_tables_tell_how_few_bodies_stand_behind_a_size(table, people):
    counts = {size: count for size, (count, _) in class_means()[people].items()}
    few = {size: count for size, count in counts.items() if count < 20}
    others = [count for size, count in counts.items() if size not in few]
    for size, count in few.items():
        assert f"{count} " in TABLES[table].how_known
        assert f"size {size}" in TABLES[table].how_known
    assert f"{min(others)} to {max(others)} in the others" in TABLES[table].how_known


def test_women_of_the_standard_have_its_girths():
    assert {size: row["hip"] / 10 for size, row in TABLES["women EN 13402-3"].sizes.items()} == EN_PAIRS
    assert all(row["waist"] == 10 * int(size) for size, row in TABLES["women EN 13402-3"].sizes.items())


def test_women_of_the_standard_are_raised_from_the_navel():
    """Hip 1000 lies 1 mm above the survey's class 100: what starts at the waist differs by the height added."""
    standard, navel = TABLES["women EN 13402-3"]["76"], TABLES["women by hip"]["100"]
    assert 30 <= NAVEL_TO_WAIST_MM <= 50  # common practice, no source
    for field in set(MEASURES) - {"waist", "hip"}:
        raised = NAVEL_TO_WAIST_MM if field in ("crotch_depth", "waist_to_hip", "front_crotch", "back_crotch") else 0
        assert standard[field] == pytest.approx(navel[field] + raised, abs=1)


# Own measures in place of a size's


def test_own_measures_replace_those_of_the_size():
    plain = Body.from_size("women by hip", 100)
    own = Body.from_size("women by hip", 100, inside_leg="74 cm", thigh=620, name="me")
    assert (own.inside_leg, own.thigh, own.name) == (740, 620, "me")
    assert own.knee == plain.knee


def test_an_own_crotch_depth_is_seated_unless_said():
    assert Body.from_size("women by hip", 100, crotch_depth=215).crotch_depth_taken == "seated"
    told = Body.from_size("women by hip", 100, crotch_depth=200, crotch_depth_taken="standing")
    assert told.seated_crotch_depth() == 215


def test_none_takes_an_optional_measure_away():
    assert Body.from_size("men by hip", 100, front_crotch=None, back_crotch=None).front_crotch is None


@pytest.mark.parametrize("size", ["100", 100, 100.0])
def test_a_size_may_be_a_number_or_text(size):
    assert Body.from_size("men by hip", size) == Body.from_size("men by hip", "100")


@pytest.mark.parametrize(
    ("table", "size", "own", "message"),
    [
        ("women by hips", 100, {}, r'table is \'women by hips\', expected one of "women by .*: write "women by hip"'),
        ("shoes", 42, {}, r"table is 'shoes', expected one of .*: choose one of these"),
        (None, 42, {}, r"table is 'None', expected one of .*: choose one of these"),
        (["women by hip"], 42, {}, r"table is \['women by hip'\], expected one of "),
        (
            "women by hip",
            101,
            {},
            r'size is 101, expected one of 88, 92, .*\(hip in cm, table "women by hip"\): choose',
        ),
        ("women textbook", "XL", {}, r"size is 'XL', expected one of 6, 8, 10, 12, 14, 16, 18 \(British size"),
        ("women by hip", None, {}, r"size is 'None', expected one of 88, "),
        ("women by hip", True, {}, r"size is True, expected one of 88, "),
        ("women by hip", [100], {}, r"size is \[100\], expected one of 88, "),
        ("women by hip", float("nan"), {}, r"size is nan, expected one of 88, "),
        (
            "women by hip",
            100,
            {"insideleg": 740},
            r"body\.insideleg is 740, expected one of waist, .*: write inside_leg",
        ),
        ("women by hip", 100, {"waist": 84}, r'body\.waist is 84\.0, expected 400 to 2000 mm .*"84 cm" or 840'),
        ("women by hip", 100, {"thigh": 950}, r"body\.thigh is 950\.0, expected 349\.6 to 899\.1 mm, .*: measure the"),
        (
            "women by hip",
            100,
            {"crotch_depth_taken": "seated"},
            r"body\.crotch_depth_taken is 'seated', expected a crotch depth .*: give the crotch depth too, or leave",
        ),
    ],
)
def test_a_wrong_size_is_told(table, size, own, message):
    with pytest.raises(DraftError, match=message):
        Body.from_size(table, size, **own)


def test_tables_cannot_be_changed():
    table = table_named("women EN 13402-3")
    with pytest.raises(TypeError):
        table.sizes["76"]["hip"] = 1
    with pytest.raises(TypeError):
        table.sizes["77"] = {}
