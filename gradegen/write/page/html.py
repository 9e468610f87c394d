"""View values laid out by the templates: one self-contained HTML page; every text of a pattern is escaped."""

from __future__ import annotations

from functools import cache
from typing import Any

from jinja2 import Environment, FileSystemLoader, StrictUndefined

from gradegen.trade.folders import data_folder
from gradegen.write.page.look import coloured
from gradegen.write.view.whole import Document


@cache
def _templates() -> Environment:
    environment = Environment(
        loader=FileSystemLoader(data_folder("templates")),
        undefined=StrictUndefined,
        autoescape=True,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    environment.filters["coloured"] = coloured
    return environment


def document_html(document: Document) -> str:
    """The document as HTML."""
    return _templates().get_template("pattern.html").render(document=document)


def laid_out(template: str, **values: Any) -> str:
    """Another page of ours, by the name of its template and the values it shows."""
    return _templates().get_template(template).render(**values)
