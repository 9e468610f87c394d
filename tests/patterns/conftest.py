"""Lets the tests here say `from patterns.by_hand import Edge` however pytest was started."""

import sys
from pathlib import Path

TESTS = str(Path(__file__).resolve().parents[1])
if TESTS not in sys.path:
    sys.path.append(TESTS)
