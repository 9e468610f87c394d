"""What the typesetter's tags leave open, put right before the file is written, so that a screen reader can follow.

Header cells get the scope that tells which way they point, and the tree the list of their names; running heads and
feet, which hang on no part of the text, become artifacts, so that they are not spoken on every page; links get their
print flag. All of it is asked for by PDF/UA-1 (ISO 14289-1); seen with WeasyPrint 70.0 and pydyf 0.13. Spans that say
nothing of their own, three in a row for every size mark, are taken out: what they hold hangs on the sentence itself, so
that the file is smaller and is read several times as fast, by us and by a screen reader.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

_PRINT_FLAG = 4
_CELL = re.compile(rb"-(\d+)-(\d+)$")


def finish_tags(document: Any, pdf: Any) -> None:
    """Changes the file's objects in place, as the typesetter asks of a finisher."""
    objects = {each.number: each for each in pdf.objects}
    named = list(_give_scopes(pdf))
    tree = _at(objects, pdf.catalog.get("StructTreeRoot"))
    if tree is None:
        return
    _drop_empty(objects, tree)
    _unwrap_spans(objects, pdf, tree)
    if named:
        _list_names(pdf, tree, named)
    _make_artifacts(objects, pdf, tree)


def _at(objects: dict[int, Any], reference: Any) -> Any:
    """The object a reference points at; None for anything else."""
    if isinstance(reference, str):
        reference = reference.encode()
    if not isinstance(reference, bytes) or not reference.endswith(b" R"):
        return None
    return objects.get(int(reference.split()[0]))


def _give_scopes(pdf: Any) -> Iterator[tuple[Any, bytes]]:
    """Header cells of the first row point down, those of later rows across; gives each name with its cell."""
    for each in _dictionaries(pdf):
        if each.get("S") == "/TH" and "ID" in each:
            found = _CELL.search(each["ID"].data.strip(b"()"))
            row = int(found[1]) if found else 0
            each["A"]["Scope"] = "/Column" if row == 0 else "/Row"
            yield each["ID"], each.reference
        if each.get("Type") == "/Annot" or each.get("Subtype") in ("/Link", "/Widget"):
            each["F"] = (each.get("F") or 0) | _PRINT_FLAG


def _dictionaries(pdf: Any) -> Iterator[Any]:
    return (each for each in pdf.objects if isinstance(each, dict))


_MAY_GO = ("/Span", "/P")  # other kinds have a place to keep: an empty cell holds its column


def _drop_empty(objects: dict[int, Any], element: Any) -> None:
    """Takes the elements below that hold nothing out of the tree, such as boxes to tick, which are only drawn."""
    kept = []
    for kid in element.get("K") or []:
        below = _at(objects, kid)
        if isinstance(below, dict) and "S" in below:
            _drop_empty(objects, below)
            if below["S"] in _MAY_GO and not below.get("K"):
                continue
        kept.append(kid)
    if isinstance(element.get("K"), list):
        element["K"][:] = kept


_SENTENCES = ("/P", "/H1", "/H2", "/H3", "/LBody", "/Lbl", "/TD", "/TH", "/Caption", "/NonStruct", "/Span")
_PLAIN = {"Type", "S", "K", "Pg", "P"}  # what every element has


def _unwrap_spans(objects: dict[int, Any], pdf: Any, tree: Any) -> None:
    """Takes spans without a meaning of their own out of sentences; what they held hangs on the sentence instead."""
    owners = _owners_by_page(objects, pdf, tree)
    freed: list[int] = []
    for kid in tree["K"]:
        _unwrap(objects, _at(objects, kid), owners, freed)
    for number in freed:
        pdf.objects[number] = pdf.objects[0]  # the format's own free object
        del objects[number]


def _owners_by_page(objects: dict[int, Any], pdf: Any, tree: Any) -> dict[Any, list[Any]]:
    """For every page, by its reference, which element owns each of its marked pieces."""
    numbers = _at(objects, tree["ParentTree"])["Nums"]
    lists = {numbers[at]: numbers[at + 1] for at in range(0, len(numbers), 2)}
    pages = (each for each in _dictionaries(pdf) if each.get("Type") == "/Page" and "StructParents" in each)
    return {page.reference: lists[page["StructParents"]] for page in pages}


def _unwrap(objects: dict[int, Any], element: Any, owners: dict[Any, list[Any]], freed: list[int]) -> None:
    """Where nothing but marked pieces and bare spans of them hang on a sentence, the spans go."""
    kids = element.get("K") or []
    below: list[Any] = [each for each in (_at(objects, kid) for kid in kids) if isinstance(each, dict) and "S" in each]
    for each in below:
        _unwrap(objects, each, owners, freed)
    pieces = [kid for kid in kids if isinstance(kid, int)]
    if not below or len(below) + len(pieces) < len(kids) or not all(_is_bare_span(each, element) for each in below):
        return
    element["K"][:] = [piece for kid in kids for piece in ([kid] if isinstance(kid, int) else _at(objects, kid)["K"])]
    for piece in element["K"]:
        owners[element["Pg"]][piece] = element.reference
    freed += [each.number for each in below]


def _is_bare_span(below: Any, element: Any) -> bool:
    """True for a span, or for its like, of marked pieces alone that may hang on this element themselves."""
    if below["S"] not in ("/Span", "/NonStruct", element["S"]) or not below.keys() <= _PLAIN:
        return False
    holds_pieces = all(isinstance(kid, int) for kid in below["K"])
    return holds_pieces and element["S"] in _SENTENCES and below.get("Pg") == element.get("Pg")


def _list_names(pdf: Any, tree: Any, named: list[tuple[Any, bytes]]) -> None:
    """The tree's list of cell names, in order, as the format wants it."""
    import pydyf

    named.sort(key=lambda pair: pair[0].data)
    leaf = pydyf.Dictionary(
        {
            "Limits": pydyf.Array([named[0][0], named[-1][0]]),
            "Names": pydyf.Array([part for pair in named for part in pair]),
        }
    )
    pdf.add_object(leaf)
    names = pydyf.Dictionary({"Kids": pydyf.Array([leaf.reference])})
    pdf.add_object(names)
    tree["IDTree"] = names.reference


def _make_artifacts(objects: dict[int, Any], pdf: Any, tree: Any) -> None:
    """Marked pieces that hang on no element of the tree become artifacts of the page."""
    reached = _reached(objects, tree)
    owners = _at(objects, tree["ParentTree"])["Nums"]
    by_page = {owners[at]: owners[at + 1] for at in range(0, len(owners), 2) if isinstance(owners[at + 1], list)}
    for page in (each for each in _dictionaries(pdf) if each.get("Type") == "/Page"):
        pieces = by_page.get(page.get("StructParents"))
        stray = {at for at, owner in enumerate(pieces or ()) if int(owner.split()[0]) not in reached}
        stream = _at(objects, page.get("Contents"))
        if stray and stream is not None and pieces is not None:
            _mark(stream.stream, stray)
            for at in stray:
                pieces[at] = "null"


def _mark(stream: list[Any], stray: set[int]) -> None:
    import pydyf

    for at, item in enumerate(stream):
        if isinstance(item, dict) and item.get("MCID") in stray:
            stream[at - 1] = "/Artifact"
            stream[at] = pydyf.Dictionary({"Type": "/Pagination"})


def _reached(objects: dict[int, Any], tree: Any) -> set[int]:
    """The numbers of all elements that hang on the tree."""
    seen: set[int] = set()
    waiting = list(tree["K"])
    while waiting:
        element = _at(objects, waiting.pop())
        if element is not None and element.number not in seen:
            seen.add(element.number)
            waiting += (element.get("K") or []) if hasattr(element, "get") else []
    return seen
