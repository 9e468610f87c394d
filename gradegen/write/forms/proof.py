"""The proof of a form: what it expects and every field of it, read back from the PDF."""

from __future__ import annotations

import io
from collections.abc import Iterator

from gradegen.findings import Finding, Place, Rule, Severity
from gradegen.write.forms.view import FormView, LineView, SectionView
from gradegen.write.page.typeset import plain_again

FORM_DIFFERS = Rule(
    "form-differs-from-pattern", Severity.ERROR, "arithmetic", "A printed form says something else than its pattern."
)


def prove_form(data: bytes, form: FormView, place: Place) -> tuple[Finding, ...]:
    """A finding for everything that the form should say and does not."""
    return tuple(_differences(data, form, place))


def _differences(data: bytes, form: FormView, place: Place) -> Iterator[Finding]:
    from pypdf import PdfReader

    reader = PdfReader(io.BytesIO(data))
    fields = reader.get_fields() or {}
    for view in form.fields():
        found = fields.get(view.name)
        if found is None or found.get("/TU") != view.tip:
            yield FORM_DIFFERS.at(place, f"The field “{view.tip}” is missing in the form.", size=form.size)
        elif view.value and found.get("/V") != view.value:
            yield FORM_DIFFERS.at(place, f"The field “{view.tip}” does not hold what it should.", size=form.size)
    text = plain_again("".join(page.extract_text() for page in reader.pages))
    for section in form.sections:
        for line in section.lines:
            if any(plain_again(expected) not in text for expected in _printed(line, section, form.style)):
                yield FORM_DIFFERS.at(place, f"The line “{line.name}” is printed otherwise.", size=form.size)


def _printed(line: LineView, section: SectionView, style: str) -> tuple[str, ...]:
    """How a line of a table reads on the page: in one piece, or, in large print, each number under its own head."""
    if style != "large-print":
        return ("".join((line.name, *line.said)),)
    return (line.alone, *map(": ".join, zip(section.heads[1:], line.said, strict=False)))
