"""Names for the arrays that the geometry room passes around."""

from __future__ import annotations

from typing import Any, TypeAlias

import numpy as np
from numpy.typing import NDArray

Points = NDArray[np.complex128]
Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]
Real: TypeAlias = Any
"""A number, or an array with one number for each of many drafts, in code that takes both."""
