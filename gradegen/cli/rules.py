"""Every rule by its name, wherever it is made, with what it finds and why it matters."""

from __future__ import annotations

import inspect
import pkgutil
from difflib import get_close_matches
from functools import lru_cache
from importlib import import_module

from gradegen.check.rules import RULES
from gradegen.findings import Rule, Severity
from gradegen.findings.internal import INTERNAL

ROOMS = ("gradegen.read", "gradegen.grade", "gradegen.work", "gradegen.reckon", "gradegen.check", "gradegen.write")
ALIASES = {"count-off-multiple": "foundation-off-multiple"}  # other names a rule is known by -> its name here
PROMISES = {
    Severity.ERROR: "cannot be right as written: two numbers contradict each other, or something named isn't there",
    Severity.WARNING: "probably not meant",
    Severity.NOTE: "a choice made on the way, said so that it can be changed",
    Severity.INTERNAL: "a fault in gradegen itself",
}


@lru_cache(maxsize=1)
def all_rules() -> dict[str, Rule]:
    """Rules by name, in the order of the alphabet."""
    found = {INTERNAL.id: INTERNAL}
    for room in ROOMS:
        package = import_module(room)
        for module in pkgutil.walk_packages(package.__path__, room + "."):
            for value in vars(import_module(module.name)).values():
                if isinstance(value, Rule):
                    found.setdefault(value.id, value)
    return dict(sorted(found.items()))


def rule_docs(name: str) -> str | None:
    """What is known of a rule: grave or not, whose it is, and its docs; None for an unknown name."""
    name = ALIASES.get(name, name)
    rule = all_rules().get(name)
    if rule is None:
        return None
    head = f"{rule.id}\n  {rule.severity}: {PROMISES[rule.severity]}\n  whose rule: {rule.whose}"
    docs = next((inspect.getdoc(module) for module in RULES if module.RULE.id == name), None)
    return f"{head}\n\n{docs or rule.about}"


def nearest_rules(name: str) -> list[str]:
    """Up to three rules whose names look like this one."""
    return get_close_matches(name, all_rules(), n=3, cutoff=0.5)
