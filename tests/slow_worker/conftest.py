"""Lets the tests here say `from slow_worker.row import work` however pytest was started."""

import sys
from pathlib import Path

HERE = str(Path(__file__).resolve().parents[1])
if HERE not in sys.path:
    sys.path.append(HERE)
