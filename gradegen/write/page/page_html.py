"""A document as one HTML file for a browser: nothing outside it is asked for, and it fits a narrow screen."""

from __future__ import annotations

import base64
import re

from gradegen.design.checked import Checked
from gradegen.write.editions.edition import Edition
from gradegen.write.page.assets import PageFiles, Refused
from gradegen.write.pattern import pattern_html

_FACE = re.compile(r"@font-face\s*\{[^}]*\}\s*")
_STYLE = re.compile(r"<style>.*?</style>", re.DOTALL)
_COMMENT = re.compile(r"/\*.*?\*/", re.DOTALL)
_SOURCE = re.compile(r'(?P<before><img[^>]*\bsrc=")(?P<source>[^"]+)(?P<after>")')
_FONTS = {
    "Body": "Inter, 'Helvetica Neue', Arial, 'Segoe UI Symbol', sans-serif",
    "Serif": "'Source Serif 4', Georgia, 'Times New Roman'",
    "Large": "'Atkinson Hyperlegible', Verdana, Arial, sans-serif",
}
_SCREEN = """
<meta name="viewport" content="width=device-width, initial-scale=1">
<style>
@media screen {
  body { max-width: 46rem; margin: 1.5rem auto; padding: 0 1rem }
  html { font-size: 100% }
  figure svg, img { max-width: 100%; height: auto }
  table { display: block; overflow-x: auto }
  .whole { white-space: normal }
}
</style>
"""


def page_html(checked: Checked, edition: Edition, files: PageFiles) -> str:
    """The edition for a browser: fonts by name with others behind them, pictures inside the file."""
    html = _STYLE.sub(lambda found: _styled(found[0]), pattern_html(checked, edition))
    html = html.replace('font-family="Body"', f'font-family="{_FONTS["Body"]}"')
    html = _SOURCE.sub(lambda found: found["before"] + _inside(found["source"], files) + found["after"], html)
    return html.replace("</head>", f"{_SCREEN}</head>", 1)


def _styled(sheet: str) -> str:
    """A style sheet without fonts of its own: in their place stand names that a machine may know."""
    sheet = _FACE.sub("", _COMMENT.sub("", sheet))
    for name, family in _FONTS.items():
        sheet = re.sub(rf"(?<=[\s,:]){name}(?=[\s,;}}])", family, sheet)
    return sheet


def _inside(source: str, files: PageFiles) -> str:
    """A picture as part of the file; its name alone where it may not be opened."""
    if source.startswith("data:"):
        return source
    try:
        body, kind = files.open(source if "://" in source else f"file:///pattern/{source}")
    except Refused:
        return ""
    return f"data:{kind};base64,{base64.b64encode(body).decode('ascii')}"
