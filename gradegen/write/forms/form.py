"""A tester's form of one size written as a PDF to fill in, once it has been read back."""

from __future__ import annotations

from pathlib import Path

from gradegen.design.checked import Checked
from gradegen.findings import Finding
from gradegen.write.editions.edition import Edition
from gradegen.write.forms.proof import prove_form
from gradegen.write.forms.view import FormView, form_view
from gradegen.write.page.assets import PageFiles
from gradegen.write.page.html import laid_out
from gradegen.write.page.press import Typeset, typeset_here

Findings = tuple[Finding, ...]


def form_html(form: FormView) -> str:
    """The form as one HTML page."""
    return laid_out("form.html", form=form)


def form_bytes(checked: Checked, edition: Edition, typeset: Typeset = typeset_here) -> tuple[bytes | None, Findings]:
    """The form's PDF; None with findings where it could not be made, or says something else than the pattern."""
    form = form_view(checked, edition)
    place = checked.pattern.place
    html = form_html(form)
    closer = html.replace('<body class="', '<body class="closer ', 1)
    data, findings = typeset(html, PageFiles(Path(checked.pattern.file).parent), place, closer)()
    if data is None:
        return None, findings
    differences = prove_form(data, form, place)
    return (None, (*findings, *differences)) if differences else (data, findings)
