"""Names for the arrays that the geometry room passes around."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Points = NDArray[np.complex128]
Floats = NDArray[np.float64]
Flags = NDArray[np.bool_]
