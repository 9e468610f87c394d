"""Lets the tests here use the slow worker and the stitch patterns, however pytest was started."""

import sys
from pathlib import Path

TESTS = str(Path(__file__).resolve().parents[1])
if TESTS not in sys.path:
    sys.path.append(TESTS)
