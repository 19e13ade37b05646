"""Closings, one file each; `KINDS` says which file makes which choice."""

from __future__ import annotations

from draft.choice import Choice
from draft.choices.closings import ButtonFly, GrownOnFly, NoClosing, SideZip
from draft.pieces import fly
from draft.pieces.closings import button_fly, grown_on_fly, none, side_zip
from draft.pieces.plan import ClosingKind
from draft.style import FlyFront

KINDS: dict[type[Choice], ClosingKind] = {
    FlyFront: fly,
    ButtonFly: button_fly,
    GrownOnFly: grown_on_fly,
    SideZip: side_zip,
    NoClosing: none,
}
