"""The options of `gradegen print` that choose an edition, and the editions they ask for."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from gradegen.design.pattern import Pattern
    from gradegen.write.editions.edition import Edition

STYLES = ("print", "low-ink", "large-print", "spoken")


def add_edition_options(parser: argparse.ArgumentParser) -> None:
    """Options that combine with each other and with one size."""
    parser.add_argument("--terms", choices=("US", "UK"), help="print in these terms (default: the pattern's)")
    parser.add_argument("--units", choices=("in", "cm"), help="the unit that stands first (default: the pattern's)")
    parser.add_argument(
        "--style",
        choices=STYLES,
        default="print",
        help="low-ink: no fills, no pictures; large-print: 22 pt, one column; spoken: text and HTML for a voice",
    )
    parser.add_argument(
        "--form", action="store_true", help="write the tester's form instead, one to fill in for each size asked for"
    )
    parser.add_argument("--editions", choices=("all",), help="write every edition, one PDF per size, and an index")


def wanted_sizes(options: argparse.Namespace) -> tuple[str, ...]:
    """The sizes named by --size or --sizes; () for all."""
    if options.size is not None:
        return (options.size,)
    return tuple(name.strip() for name in (options.sizes or "").split(",") if name.strip())


def own_paper(pattern: Pattern) -> Literal["a4", "letter"]:
    """The paper that the pattern's look names; A4 where it names none."""
    return "letter" if pattern.look is not None and pattern.look.paper == "Letter" else "a4"


def editions_asked(options: argparse.Namespace, pattern: Pattern, known: Sequence[str]) -> list[Edition]:
    """One edition, one per size, or the whole set."""
    from gradegen.write.editions.edition import Edition, all_editions

    chosen = wanted_sizes(options)
    one = Edition(
        Path(options.out),
        options.size,
        options.paper or own_paper(pattern),
        options.draft,
        () if options.size is not None else chosen,
        options.terms,
        options.units,
        options.style,
        options.with_source,
    )
    if options.form:
        form = replace(one, is_form=True, style="print" if one.style == "spoken" else one.style, with_source=False)
        return [form] if form.size is not None else form.for_each(chosen or known)
    if options.editions:
        return all_editions(one, known, (pattern.terms, "in" if pattern.units == "inches first" else "cm"))
    return one.for_each(known) if options.all_sizes else [one]
