"""What a command loads: `check` and `grade` never load the typesetter, the PDF reader or number arrays."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

HEAVY = ("weasyprint", "pypdf", "pikepdf", "numpy", "jinja2", "fontpkg", "PIL")
SCRIPT = """
import json, sys
from gradegen.cli import main
code = main(sys.argv[1:])
print(json.dumps([code, sorted(sys.modules)]), file=sys.stderr)
"""


def loaded(*arguments: object) -> tuple[int, set[str]]:
    run = subprocess.run(
        [sys.executable, "-c", SCRIPT, *map(str, arguments)],
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=60,
    )
    code, modules = json.loads(run.stderr.splitlines()[-1])
    return code, set(modules)


@pytest.mark.parametrize("arguments", [("check",), ("check", "--json"), ("grade", "--json"), ("grade",)], ids=" ".join)
def test_nothing_heavy_is_loaded(arguments: tuple[str, ...], wrap: Path) -> None:
    code, modules = loaded(arguments[0], wrap, *arguments[1:])
    assert code == 0
    assert modules.isdisjoint(HEAVY)


def test_a_piped_check_does_not_load_the_colours_either(wrap: Path) -> None:
    assert "rich" not in loaded("check", wrap)[1]


def test_import_gradegen_loads_no_room() -> None:
    script = "import gradegen, sys; print([name for name in sys.modules if name.startswith('gradegen.')])"
    assert subprocess.run([sys.executable, "-c", script], capture_output=True, text=True).stdout.strip() == "[]"
