"""Starting from a pattern that somebody else drew: read it, measure it, compare it with a body, draft it anew."""

from draft.trace.compare import Comparison, Suggestion, compare
from draft.trace.corners import Corners, propose_corners
from draft.trace.dxf_file import read_dxf
from draft.trace.marks import propose_darts
from draft.trace.outline import Outline
from draft.trace.points import from_photo, from_points
from draft.trace.refit import Refit, refit
from draft.trace.svg_file import read_svg
from draft.trace.traced import Traced

__all__ = [
    "Comparison",
    "Corners",
    "Outline",
    "Refit",
    "Suggestion",
    "Traced",
    "compare",
    "from_photo",
    "from_points",
    "propose_corners",
    "propose_darts",
    "read_dxf",
    "read_svg",
    "refit",
]
