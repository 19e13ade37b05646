"""Let the tests of this folder import what lies beside the folder (the zoo of shapes)."""

import sys
from pathlib import Path

_BESIDE = str(Path(__file__).resolve().parent.parent)
if _BESIDE not in sys.path:
    sys.path.insert(0, _BESIDE)
