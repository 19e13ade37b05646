"""Not written yet."""

from __future__ import annotations

from pathlib import Path


def save(pattern: object, path: str | Path) -> Path:
    """Fail."""
    raise NotImplementedError
