"""What a person wrote into the file by hand outlives loading, changing and saving."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

import draft
from draft.alter.catalogue import alteration
from draft.recipe import Recipe, load
from draft.recipe.recipe import of_text

HAND = """\
# For the choir's summer tour.
fit = 'formula'   # no crotch lengths taken
format   =   1

[style]   # cool and short
waist_drop = "1.5 cm"
[style.hem]
kind = "TurnedCuff"  # he likes cuffs
depth = "1 3/8 in"   # as on the old pair
clearance = 1.0      # the default, said all the same

[body]
inside_leg = 31.5e+1  # a boy
waist = "60 cm"
hip = 72_0
crotch_depth = 205
waist_to_hip = 150

[[mock_up]]
date = 2026-03-01    # at the rehearsal
notes = '''
Band is loose.'''
alterations = [ {name = "waist_ease", by = -8.0}, ]  # one hand fits in
"""
COMMENTS = [line.partition("#")[2] for line in HAND.splitlines() if "#" in line]


@pytest.fixture
def recipe() -> Recipe:
    return of_text(HAND)


def added_lines(text: str) -> list[str]:
    """Lines that were added to the text; everything that was there must still be there, in its order."""
    rest = iter(text.splitlines())
    added = []
    for line in HAND.splitlines():
        for got in rest:
            if got == line:
                break
            added.append(got)
        else:
            raise AssertionError(f"lost: {line}")
    return added + list(rest)


def test_saving_what_was_loaded_changes_nothing(recipe, tmp_path):
    path = tmp_path / "choir.toml"
    path.write_bytes(HAND.encode())
    load(path).save(path)
    assert path.read_bytes() == HAND.encode()


def test_mock_up_is_added_at_the_end(recipe):
    more = recipe.with_mock_up([alteration("lengthen_at_hem", by=12)], notes="Short.", date=date(2026, 4, 2))
    assert added_lines(more.toml()) == [
        "",
        "[[mock_up]]",
        "date = 2026-04-02",
        'notes = "Short."',
        "",
        "[[mock_up.alterations]]",
        'name = "lengthen_at_hem"',
        "by = 12",
    ]


def test_change_of_one_value_leaves_the_rest(recipe):
    body = replace(recipe.body, waist=610)
    text = replace(recipe, body=body).toml()
    assert text == HAND.replace('waist = "60 cm"', "waist = 610")


def test_comment_beside_a_changed_value_stays(recipe):
    style = replace(recipe.style, hem=draft.TurnedCuff(depth=30, clearance=2))
    text = replace(recipe, style=style).toml()
    for kept in ("depth = 30   # as on the old pair", "clearance = 2      # the default, said all the same"):
        assert kept in text


def test_other_kind_of_part_keeps_the_comment_of_its_table(recipe):
    text = replace(recipe, style=replace(recipe.style, hem=draft.FacedHem())).toml()
    assert 'kind = "FacedHem"  # he likes cuffs' in text
    assert "clearance" not in text


def test_value_of_a_default_written_by_hand_stays(recipe):
    assert "clearance = 1.0      # the default, said all the same" in replace(recipe, garment="trousers").toml()


def test_windows_line_ends_stay(recipe):
    windows = HAND.replace("\n", "\r\n")
    read = of_text(windows)
    assert read == recipe
    more = read.with_mock_up(notes="a\nb", date=date(2026, 4, 2)).toml()
    assert more.startswith(windows.rstrip())
    assert "\n" not in more.replace("\r\n", "")
    assert of_text(more).mock_ups[-1].notes == "a\nb"


def test_file_without_a_last_line_end_takes_a_mock_up(recipe):
    more = of_text(HAND.rstrip()).with_mock_up(date=date(2026, 4, 2))
    assert of_text(more.toml()) == more


def test_byte_order_mark_is_read_over(tmp_path, recipe):
    path = tmp_path / "a.toml"
    path.write_bytes(b"\xef\xbb\xbf" + HAND.encode())
    assert load(path) == recipe


BODY = "body = {waist = 740, hip = 1000, crotch_depth = 270, waist_to_hip = 200, inside_leg = 770}"
LAYOUTS = {
    "inline": f"format = 1\n{BODY}  # taken twice\n"
    "style = {waist_drop = 10, hem = {kind = 'PlainHem'}}\nfit = 'formula'",
    "dotted": f"format = 1 # taken twice\n{BODY}\nstyle.waist_drop = 10\nstyle.hem.kind = 'PlainHem'",
    "short": f"format = 1 # taken twice\n{BODY}\n[style]\nhem = 'PlainHem'\nwaist_drop = 10",
    "out of order": f"format = 1 # taken twice\n{BODY}\n[style.hem]\nkind = 'PlainHem'\n"
    "[[mock_up]]\ndate = 2026-03-01\n[style.leg]\ninside_leg = 150",
    "only heads": f"format = 1 # taken twice\n{BODY}\n[style.hem]\nkind = 'PlainHem'\n[style.leg]",
    "inline mock-ups": f"format = 1 # taken twice\n{BODY}\nmock_up = [{{date = 2026-03-01}}]\n",
    "no style": f"# taken twice\n{BODY}\nformat = 1",
}
CHANGES = {
    "hem": lambda r: replace(r, style=replace(r.style, hem=draft.FacedHem(depth=33))),
    "default style": lambda r: replace(r, style=draft.Style()),
    "no pocket, small parts": lambda r: replace(
        r, style=replace(r.style, pocket=None, small_parts=(draft.BeltLoops(), draft.CoinPocket(width=50)))
    ),
    "mock-up": lambda r: r.with_mock_up([alteration("sway_back", by=8)], notes="a\nb", date=date(2026, 5, 1)),
    "no mock-up": lambda r: replace(r, mock_ups=()),
    "garment and body": lambda r: replace(r, garment="trousers", body=replace(r.body, hip=1011.5, name="Jo")),
}


@pytest.mark.parametrize("change", CHANGES)
@pytest.mark.parametrize("layout", LAYOUTS)
def test_any_layout_takes_any_change(layout, change):
    read = of_text(LAYOUTS[layout])
    changed = CHANGES[change](read)
    text = changed.toml()
    assert of_text(text) == changed
    if change != "garment and body":  # there the table itself is written anew
        assert "# taken twice" in text


def test_comments_all_stay_with_a_mock_up(recipe):
    text = recipe.with_mock_up(date=date(2026, 4, 2)).toml()
    assert len(COMMENTS) == 9
    assert [comment for comment in COMMENTS if comment not in text] == []
