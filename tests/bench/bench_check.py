"""How long a whole `gradegen check` takes and how much memory it needs, start of Python included.

.venv/bin/python -m pytest tests/bench/bench_check.py -s
"""

import os
import statistics
import subprocess
import sys
import time
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
DEMOS = sorted(path for path in (ROOT / "shared" / "patterns").glob("*.yaml") if "sizes:" in path.read_text("utf-8"))
PATTERNS = [path for path in DEMOS if "\npieces:" in path.read_text("utf-8")]
SECONDS = {"bollard-hat": 0.4, "skerrywick-wrap": 0.4}  # median of ten, on the slower machine of development
GARMENT_SECONDS = 1.0  # counts of all sizes solved together
MEGABYTES = 80


def one_run(pattern: Path) -> tuple[float, float]:
    """Seconds and peak megabytes of one process."""
    start = time.perf_counter()
    process = subprocess.Popen(
        [sys.executable, "-m", "gradegen", "check", str(pattern)],
        cwd=ROOT,
        stdout=subprocess.DEVNULL,
        env={name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"},
    )
    _, status, used = os.wait4(process.pid, 0)
    process.returncode = os.waitstatus_to_exitcode(status)
    assert process.returncode == 0
    peak = used.ru_maxrss / (1024 * 1024 if sys.platform == "darwin" else 1024)
    return time.perf_counter() - start, peak


@pytest.mark.parametrize("pattern", PATTERNS, ids=lambda path: path.stem)
def test_whole_process(pattern: Path) -> None:
    one_run(pattern)  # byte code and disk cache
    runs = [one_run(pattern) for _ in range(10)]
    seconds, megabytes = statistics.median(run[0] for run in runs), max(run[1] for run in runs)
    sys.stdout.write(f"\n{pattern.name}: median {seconds:.3f} s of ten, peak {megabytes:.0f} MB\n")
    assert seconds < SECONDS.get(pattern.stem, GARMENT_SECONDS)
    assert megabytes < MEGABYTES
