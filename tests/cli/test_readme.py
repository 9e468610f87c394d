"""What README promises: its pattern checks clean, its commands exist, its pictures are there."""

import re
from pathlib import Path

from gradegen.cli import command_line
from gradegen.pipeline import check_file

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text("utf-8")


def test_the_pattern_in_it_checks_clean(tmp_path: Path) -> None:
    found = re.search(r"```yaml\n(.*?)```", README, re.DOTALL)
    assert found is not None
    path = tmp_path / "readme.yaml"
    path.write_text(found[1], encoding="utf-8")
    outcome = check_file(path)
    assert [finding for finding in outcome.findings if finding.severity != "note"] == []
    assert outcome.proved.proved > 0
    assert outcome.proved.not_checked == 0


def test_the_two_commands_stand_first() -> None:
    commands = [line.strip() for line in README.splitlines() if line.startswith("    ")]
    assert [line.split("  ")[0] for line in commands[:2]] == ["sh shared/start demo", "sh shared/start test"]


def test_every_command_it_names_exists_and_none_is_missing() -> None:
    offered = set(re.findall(r"^    ([a-z-]+)(?: |$)", command_line().format_help(), re.MULTILINE))
    named = set(re.findall(r"^    gradegen ([a-z-]+)", README, re.MULTILINE))
    assert named == offered


def test_its_links_lead_somewhere() -> None:
    links = re.findall(r"\]\(([^)#]+)\)", README)
    assert [link for link in links if "://" not in link and not (ROOT / link).exists()] == []
    assert "shared/pictures/page.png" in links
    assert "shared/pictures/finding.png" in links
