"""The worked example of the contributor's guide is a kind that works."""

from __future__ import annotations

import re
import sys
import types
from pathlib import Path

import pytest
from zoo import ZOO

import draft
from draft.pieces import small_parts

GUIDE = Path(__file__).parent.parent / "DEVELOPERS.md"


@pytest.fixture
def kind(monkeypatch):
    block = re.search(r"<!-- example: a kind -->\n```python\n(.+?)```", GUIDE.read_text("utf-8"), re.DOTALL)
    assert block is not None
    made = types.ModuleType("key_loop")
    monkeypatch.setitem(sys.modules, made.__name__, made)
    exec(block.group(1), made.__dict__)
    monkeypatch.setitem(small_parts.KINDS, made.KeyLoop, made)
    return made


@pytest.mark.parametrize("body", ["woman", "man", "ten years"])
def test_kind_of_the_guide_sews(kind, body):
    pattern = draft.shorts(ZOO[body], draft.Style(small_parts=(kind.KeyLoop(width=12),)))
    assert pattern.check() == []
    assert pattern.pieces["key_loop"].edge("left").length == 24
    assert any(note.startswith("key loop") for note in pattern.garment.notes)


def test_kind_of_the_guide_tells_its_limit(kind):
    def short(length):
        leg = draft.Leg(inside_leg=70)
        return draft.shorts(
            ZOO["toddler"],
            draft.Style(leg=leg, pocket=None, hem=draft.PlainHem(depth=15), small_parts=(kind.KeyLoop(length=length),)),
        )

    with pytest.raises(draft.DraftError, match=r"small_parts\.length is 120.*at most \d+ mm") as told:
        short(120)
    limit = float(re.search(r"at most (\d+)", told.value.expected)[1])
    assert short(limit).check() == []
