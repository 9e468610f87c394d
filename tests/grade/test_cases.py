"""Whole patterns with related counts: a set-in cardigan in nine sizes, a top-down raglan in twelve."""

import json
import resource
import subprocess
import sys
from itertools import pairwise, takewhile
from pathlib import Path

import pytest

from gradegen.pipeline import check_file, grade_file, sensitivity_file
from gradegen.write.sheets.machine_sensitivity import sensitivity_json

CASES = Path(__file__).with_name("cases")
ROOT = Path(__file__).resolve().parents[2]
RAGLAN, CARDIGAN = CASES / "raglan.yaml", CASES / "cardigan.yaml"


def counts_of(path):
    outcome = grade_file(path)
    assert outcome.checked is not None
    return outcome, [{name: count.n for name, count in size.counts.items()} for size in outcome.checked.sizes]


def test_the_raglan_meets_at_every_division_in_all_twelve_sizes():
    outcome, sizes = counts_of(RAGLAN)
    assert len(sizes) == 12
    for n in sizes:
        assert n["neck"] == 2 * n["back neck"] + 2 * n["sleeve neck"]
        assert n["back"] == n["back neck"] + 2 * n["body increases"]
        assert n["sleeve top"] == n["sleeve neck"] + 2 * n["sleeve increases"]
        assert n["body"] == 2 * n["back"] + 2 * n["underarm"]
        assert n["sleeve"] == n["sleeve top"] + n["underarm"]
        assert n["yoke"] == n["body"] + 2 * n["sleeve"] - 4 * n["underarm"]
        assert max(n["body increases"], n["sleeve increases"]) <= n["raglan rounds"]
        assert [n[name] % 2 for name in ("back", "back neck", "sleeve neck", "underarm", "sleeve")] == [0] * 5
        assert n["body"] % 4 == 0
    assert {finding.severity for finding in outcome.findings} <= {"note"}


def test_its_measures_are_as_near_as_their_repeats_let_them():
    outcome, _ = counts_of(RAGLAN)
    stitch = {"body": 4, "sleeve": 2, "back neck": 2, "sleeve neck": 2, "underarm": 2}
    for size in outcome.checked.sizes:
        for name, repeat in stitch.items():
            assert abs(size.counts[name].drift) <= repeat * size.counts[name].finished / size.counts[name].n / 2


def test_it_is_proved_by_its_rows():
    outcome = check_file(RAGLAN)
    assert (outcome.proved.wrong, outcome.proved.not_checked) == (0, 0)
    assert outcome.proved.proved == 24


def test_the_cardigan_meets_at_its_seams():
    _, sizes = counts_of(CARDIGAN)
    for n in sizes:
        assert n["cross"] == n["neck"] + 2 * n["shoulder"]
        assert n["back"] == n["cross"] + 2 * n["armhole"]
        assert n["front"] == n["front neck"] + n["shoulder"] + n["armhole"]
        assert n["sleeve"] >= n["cuff"]
    assert sizes[2]["cuff"] == 35
    assert len({(n["back"] - 1) // 6 % 2 for n in sizes}) == 1
    steps = {(b["sleeve"] - a["sleeve"]) // 2 for a, b in pairwise(sizes)}
    assert max(steps) - min(steps) <= 1


@pytest.mark.parametrize("case", [RAGLAN, CARDIGAN])
def test_twice_the_same(case):
    assert counts_of(case)[1] == counts_of(case)[1]


CONTRARY = {" <= ": "{} >= {} + 1", " >= ": "{} <= {} - 1", " = ": "{} = {} + 1"}


def breaking(text):
    """Each relation of a file contradicted in turn by one set before them all: one stitch more on one side."""
    start = text.index("relations:\n") + len("relations:\n")
    lines = list(takewhile(lambda line: line.startswith("  - "), text[start:].split("\n")))
    for at, line in enumerate(lines):
        relation = line.removeprefix("  - ")
        sign = next(sign for sign in CONTRARY if sign in relation)
        yield at, relation, f"{text[:start]}  - {CONTRARY[sign].format(*relation.split(sign))}\n{text[start:]}"


PATTERNS = ROOT / "shared" / "patterns"
DEMOS = [path for path in sorted(PATTERNS.glob("*.yaml")) if "relations:\n" in path.read_text("utf-8")]


@pytest.mark.parametrize("case", [CARDIGAN, *DEMOS], ids=lambda path: path.stem)
def test_every_relation_that_is_contradicted_is_named_with_its_place(case, tmp_path):
    text = case.read_text("utf-8")
    for part in case.parent.glob("*.yaml"):
        (tmp_path / part.name).write_text(part.read_text("utf-8"), encoding="utf-8")
    path = tmp_path / "broken.yaml"
    for at, relation, broken in breaking(text):
        path.write_text(broken, encoding="utf-8")
        outcome = grade_file(path)
        told = [finding for finding in outcome.findings if finding.rule == "relations-clash"]
        assert told, relation
        assert len({finding.size for finding in told}) == len(outcome.checked.sizes)
        line = broken[: broken.index("relations:\n")].count("\n") + 2
        for finding in told:
            assert finding.place.line == line
            assert [(place.line, words) for place, words in finding.see_also] == [(line + 1 + at, relation)]


def loaded(*arguments):
    script = "import sys; from gradegen.cli import main; print(main(sys.argv[1:]), *sys.modules, file=sys.stderr)"
    run = subprocess.run(
        [sys.executable, "-c", script, *map(str, arguments)], capture_output=True, text=True, encoding="utf-8", cwd=ROOT
    )
    code, *modules = run.stderr.splitlines()[-1].split()
    return int(code), set(modules), run.stdout


@pytest.mark.parametrize("demo", ["bollard-hat.yaml", "skerrywick-wrap.yaml"])
@pytest.mark.parametrize("command", ["check", "grade"])
def test_patterns_without_relations_never_load_the_solver(command, demo):
    code, modules, _ = loaded(command, ROOT / "shared" / "patterns" / demo)
    assert code == 0
    assert modules.isdisjoint({"highspy", "numpy"})


def test_patterns_with_relations_do_and_the_screen_shows_nothing_of_it():
    code, modules, out = loaded("grade", RAGLAN, "--json")
    assert code == 0
    assert "highspy" in modules
    assert json.loads(out)["counts"]["body"][0]["count"] % 4 == 0


def test_the_whole_process_is_quick_enough():
    """About 1 s on a quiet machine; 3 s, in the processor's own seconds, is far out on any."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    loaded("grade", RAGLAN)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    assert after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime < 3


def test_the_largest_drift_and_its_bound_are_printed():
    _, _, out = loaded("grade", RAGLAN)
    assert "largest drift of each count" in out
    row = next(line for line in out.splitlines() if line.strip().startswith("body ") and "multiple: 4" in line)
    assert "0.47 in" in row
    assert "0.53 in" in row


def test_sensitivity_on_the_screen_and_for_a_program():
    code, _, out = loaded("grade", RAGLAN, "--sensitivity")
    assert code == 0
    assert "half a stitch or row of gauge" in out
    assert "tried" in out
    found, _ = sensitivity_file(RAGLAN)
    assert found is not None
    told = json.loads(sensitivity_json(found))
    assert told["half_a_stitch"]["body"]["sizes"]["A"]["looser_in"] == 1.1402
    assert told["limits"]["body"]["kept_off_by"] == "multiple: 4"
    assert told["nearer"]["now"]["count"] == "body"


def test_sensitivity_of_a_file_that_cannot_be_read(tmp_path):
    code, _, out = loaded("grade", tmp_path / "none.yaml", "--sensitivity")
    assert (code, out) == (2, "")
    assert loaded("grade", RAGLAN, "--sensitivity", "--csv")[0] == 2
