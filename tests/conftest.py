"""Hypothesis draws new examples at every run; where CI is set it draws the same ones, so that a run can be repeated."""

from __future__ import annotations

import os

from hypothesis import settings

settings.register_profile("repeatable", derandomize=True)
if os.environ.get("CI"):
    settings.load_profile("repeatable")
