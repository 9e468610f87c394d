"""Which of the forms sent back count: of this pattern, each tester and size once."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from gradegen.design.checked import Checked
from gradegen.design.testing import FilledForm
from gradegen.findings import Finding, Rule, Severity

FORM_OF_OTHER_PATTERN = Rule(
    "form-of-other-pattern", Severity.WARNING, "file format", "A form belongs to another pattern than the one named."
)
FORM_OF_UNKNOWN_SIZE = Rule(
    "form-of-unknown-size", Severity.ERROR, "file format", "A form is for a size that the pattern does not have."
)
FORM_OF_OTHER_VERSION = Rule(
    "form-of-other-version", Severity.WARNING, "house", "A form was printed of another version of the pattern."
)
FORM_SENT_TWICE = Rule("form-sent-twice", Severity.WARNING, "house", "The same form lies in the folder twice.")
FORMS_CONTRADICT = Rule(
    "forms-contradict", Severity.ERROR, "house", "One tester sent two forms for one size, and they differ."
)

Findings = tuple[Finding, ...]


def forms_that_count(forms: Sequence[FilledForm], checked: Checked | None) -> tuple[tuple[FilledForm, ...], Findings]:
    """The forms to merge. Two that are the same count once; two that differ count not at all, until one is chosen."""
    findings: list[Finding] = []
    if checked is not None:
        findings = list(_strangers(forms, checked))
        left = {finding.place.file for finding in findings if finding.rule != FORM_OF_OTHER_VERSION.id}
        forms = [form for form in forms if form.file not in left]
    counted: list[FilledForm] = []
    for same in _by_tester(forms):
        if len(same) == 1:
            counted += same
        elif all(_answers(form) == _answers(same[0]) for form in same):
            counted.append(same[0])
            findings += [_twice(form, same[0]) for form in same[1:]]
        else:
            findings += [_contradicts(form, [one for one in same if one is not form]) for form in same]
    return tuple(counted), tuple(findings)


def _strangers(forms: Sequence[FilledForm], checked: Checked) -> Iterator[Finding]:
    pattern, sizes = checked.pattern, [size.name for size in checked.sizes]
    version = pattern.version.text if pattern.version else ""
    for form in forms:
        asked = form.asked
        if asked.pattern != pattern.title.text:
            message = f"This form is for {asked.pattern}, so it is left aside."
            yield FORM_OF_OTHER_PATTERN.at(form.place, message, hint="Name its own pattern with --pattern.")
        elif asked.size not in sizes:
            message = f"The pattern has no size {asked.size}, so this form is left aside."
            hint = f"Its sizes are {', '.join(sizes)}."
            yield FORM_OF_UNKNOWN_SIZE.at(form.place, message, size=asked.size, hint=hint)
        elif asked.version != version:
            yield FORM_OF_OTHER_VERSION.at(
                form.place,
                "This form was printed of another version. It counts, held against the pattern as it is now.",
                size=asked.size,
                expected=version or "no version",
                found=asked.version or "no version",
            )


def _by_tester(forms: Sequence[FilledForm]) -> list[list[FilledForm]]:
    """Forms of one tester and size together; forms without a name belong together only where all is the same."""
    groups: dict[object, list[FilledForm]] = {}
    for form in forms:
        named = " ".join(form.tester.casefold().split())
        key = (form.asked.pattern, form.asked.size, named or repr(_answers(form)))
        groups.setdefault(key, []).append(form)
    return list(groups.values())


def _answers(form: FilledForm) -> FilledForm:
    """What was answered, whatever the file is called."""
    return replace(form, file="")


def _twice(form: FilledForm, first: FilledForm) -> Finding:
    message = f"This form says the same as {first.file}, so it counts once."
    return FORM_SENT_TWICE.at(form.place, message, size=form.asked.size, hint="Take one of the two away.")


def _contradicts(form: FilledForm, others: Sequence[FilledForm]) -> Finding:
    files = ", ".join(other.file for other in others)
    message = f"{form.tester} sent another form for this size that says something else: {files}. None of them counts."
    hint = "Keep the right one, or give the tester's second piece another name."
    return FORMS_CONTRADICT.at(form.place, message, size=form.asked.size, hint=hint)
