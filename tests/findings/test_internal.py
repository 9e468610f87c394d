"""A fault of our own is told once, says whose fault it is, and names the spot in our code."""

from gradegen.findings import Place, Severity
from gradegen.findings.internal import fault_finding


def test_it_names_the_kind_of_fault_and_the_line_of_code() -> None:
    try:
        raise KeyError("band")
    except KeyError as fault:
        finding = fault_finding("The rule a-rule", fault, Place("f", 1, 1, 1, 1))
    assert finding.rule == "internal"
    assert finding.severity == Severity.INTERNAL
    assert finding.because is not None
    assert "KeyError in test_internal.py, line " in finding.because
    assert "Traceback" not in str(finding)
