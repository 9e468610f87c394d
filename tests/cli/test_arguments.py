"""The command line itself: help with examples, wrong arguments, pipes, and never a traceback."""

import subprocess
import sys
from pathlib import Path

import pytest

COMMANDS = ["new", "grade", "check", "print", "fit", "explain", "schema"]


@pytest.mark.parametrize("command", COMMANDS)
def test_each_command_has_help_with_an_example_and_the_exit_codes(gradegen, command: str) -> None:
    run = gradegen(command, "--help")
    assert run.returncode == 0
    assert f"example:\n  gradegen {command} " in run.stdout
    assert "exit codes:" in run.stdout


def test_the_help_names_every_command(gradegen) -> None:
    text = gradegen("--help").stdout
    assert [command for command in COMMANDS if f"\n    {command} " not in text] == []


@pytest.mark.parametrize(
    "arguments",
    [
        [],
        ["chek", "x.yaml"],
        ["check"],
        ["check", "x.yaml", "--nonsense"],
        ["print", "x.yaml", "--paper", "a3"],
        ["print", "x.yaml", "--size", "M", "--all-sizes"],
        ["print", "x.yaml", "--jobs", "0"],
        ["grade"],
        ["grade", "x.yaml", "--table", "women"],
        ["grade", "--table", "womn"],
        ["fit", "x.yaml"],
        ["explain", "no-such-rule"],
        ["new", "!!!"],
        ["new", "Hat", "--kind", "hat", "--size-table", "women"],
    ],
    ids=" ".join,
)
def test_wrong_arguments_are_two_with_a_sentence(gradegen, arguments: list[str], tmp_path: Path) -> None:
    run = gradegen(*arguments, cwd=tmp_path)
    assert run.returncode == 2
    assert run.stderr.strip()
    assert "Traceback" not in run.stderr


def test_the_version_is_the_package_version(gradegen) -> None:
    from importlib.metadata import version

    assert gradegen("--version").stdout.strip() == f"gradegen {version('gradegen')}"


def test_a_pipe_closed_early_is_no_fault() -> None:
    script = f"{sys.executable} -m gradegen schema | head -c 10"
    run = subprocess.run(["/bin/sh", "-c", script], capture_output=True, text=True, timeout=60)
    assert run.stdout.startswith("{")
    assert run.stderr == ""


def test_output_survives_a_terminal_without_our_signs(gradegen) -> None:
    run = gradegen("grade", "--table", "head", PYTHONIOENCODING="ascii")
    assert run.returncode == 0
    assert "head" in run.stdout


def test_python_dash_m_and_the_script_do_the_same(gradegen) -> None:
    script = Path(sys.executable).with_name("gradegen")
    if not script.exists():
        pytest.skip("the gradegen script is not installed beside this Python")
    direct = subprocess.run([script, "schema"], capture_output=True, text=True, timeout=60)
    assert direct.stdout == gradegen("schema").stdout
