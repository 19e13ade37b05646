"""Not written yet."""


def pattern_svg(pattern: object) -> str:
    """Fail."""
    raise NotImplementedError


def piece_svg(piece: object) -> str:
    """Fail."""
    raise NotImplementedError
