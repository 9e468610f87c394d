"""Where a value stands, and what is wrong with it."""

from gradegen.findings.finding import Finding, Severity
from gradegen.findings.place import Place, Written
from gradegen.findings.rule import Rule

__all__ = ["Finding", "Place", "Rule", "Severity", "Written"]
