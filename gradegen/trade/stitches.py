"""The stitches of shared/stitches.yaml: what each takes and makes, and what it is called."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Any, Literal

from gradegen.trade.sources import Source, source_of
from gradegen.trade.stitch_names import spelling, spellings_of
from gradegen.trade.tables import read_table

Terms = Literal["US", "UK"]
Vocabulary = Literal["US", "UK", "booklet"]


@dataclass(frozen=True, slots=True)
class Stitch:
    """One stitch.

    `id`: the US abbreviation, as it stands in a row's tree. `takes`: places of the edge it uses up. `makes`: the ids
    it leaves there, in working order (a shell's only as usual: `varies`). `counts`: whether the trade counts it.
    `height`: in chains, by the habit of its turning chain (None: none of its own). `chains`: its usual turning chains,
    the likeliest first, with what habit makes of each (True: counts, False: does not, None: both ways are met).
    `base`: the plain stitch it is a kind of and answers to. `behind`: what a post stitch is seen from the other side.
    `own_chain`: a foundation stitch. `names`: per vocabulary, what is printed first, the full name second.
    """

    id: str
    takes: int
    makes: tuple[str, ...]
    counts: bool
    height: int | None
    chains: Mapping[int, bool | None]
    base: str | None
    post: Literal["front", "back"] | None
    behind: str | None
    own_chain: bool
    varies: bool
    usual: str | None
    glyph: str | None
    chart: str | None
    names: Mapping[Vocabulary, tuple[str, ...]]
    source: Source
    trust: str

    @property
    def turning_chain(self) -> int | None:
        """The likeliest turning chain before a row of it."""
        return next(iter(self.chains), None)

    def abbreviation(self, terms: Terms) -> str:
        """What is printed for it in US or UK terms."""
        return self.names[terms][0]

    def full_name(self, terms: Terms) -> str:
        """Its name in full words."""
        names = self.names[terms]
        return names[1] if len(names) > 1 else names[0]


@cache
def stitches() -> Mapping[str, Stitch]:
    """All stitches by id, in the order of the file, families last."""
    table = read_table("stitches")
    known: dict[str, Stitch] = {}
    for group in table["groups"]:
        for id_, written in group["stitches"].items():
            known[id_] = _stitch(id_, {"source": group["source"], "trust": group["trust"], **written}, table)
    for family in table["families"]:
        for id_, written in _family(family, known):
            known[id_] = _stitch(id_, written, table)
    return MappingProxyType(known)


_HABITS: Mapping[str, bool | None] = {"counts": True, "does not count": False, "both ways": None}


def _stitch(id_: str, written: Mapping[str, Any], table: Mapping[str, Any]) -> Stitch:
    names: dict[Vocabulary, tuple[str, ...]] = {
        "US": tuple(written["US"]),
        "UK": tuple(written.get("UK", written["US"])),
        "booklet": tuple(written.get("booklet", ())),
    }
    glyph = written.get("glyph")
    return Stitch(
        id=id_,
        takes=written.get("takes", 1),
        makes=tuple(written.get("makes", (id_,))),
        counts=written.get("counts", True),
        height=written.get("height"),
        chains=MappingProxyType({number: _HABITS[habit] for number, habit in written.get("chain", {}).items()}),
        base=written.get("base"),
        post=written.get("post"),
        behind=written.get("behind"),
        own_chain=written.get("own chain", False),
        varies=written.get("varies", False),
        usual=written.get("usual"),
        glyph=glyph,
        chart=table["glyphs"][glyph]["draws"] if glyph else None,
        names=MappingProxyType(names),
        source=source_of(table["sources"][written["source"]]),
        trust=written["trust"],
    )


def _family(family: Mapping[str, Any], known: Mapping[str, Stitch]) -> Iterator[tuple[str, dict[str, Any]]]:
    for of in family["of"]:
        base = known[of]
        for n in family.get("n", (None,)):
            yield family["id"].format(of=of, n=n), _relative(family, base, n)


def _relative(family: Mapping[str, Any], base: Stitch, n: int | None) -> dict[str, Any]:
    """One stitch of a family, as if it stood written out in the file."""
    spelled_alike = family["names"]
    written: dict[str, Any] = {
        "US": _names(spelled_alike, base.names["US"], n),
        "UK": _names(family.get("UK names", spelled_alike), base.names["UK"], n),
        "booklet": _names(spelled_alike, base.names["booklet"], n),
        "base": base.base or base.id,
        "height": base.height,
        "glyph": family.get("glyphs of", {}).get(base.id, family.get("glyph")),
        "takes": n if family.get("takes") == "n" else family.get("takes", 1),
    }
    for key in ("behind", "usual"):
        if key in family:
            written[key] = family[key].format(of=base.id, n=n)
    if "makes" in family:
        written["makes"] = [made.format(of=base.id, n=n) for made in family["makes"]]
    if family.get("own chain"):
        written["makes"] = [base.id]
    return written | {key: family[key] for key in ("post", "own chain", "source", "trust") if key in family}


def _names(forms: Sequence[str], base_names: Sequence[str], n: int | None) -> list[str]:
    if not base_names:
        return []
    full = base_names[1] if len(base_names) > 1 else base_names[0]
    printed = [form.format(name=base_names[0], full=full, n=n) for form in forms]
    others = [form.format(name=name, full=full, n=n) for form in forms if "{name}" in form for name in base_names[1:]]
    return list(dict.fromkeys(printed + others))


@cache
def _by_spelling(terms: Terms) -> Mapping[str, Stitch]:
    """Every spelling of every stitch; those of these terms win over the booklets', and both over the other terms'."""
    other: Terms = "UK" if terms == "US" else "US"
    order: tuple[Vocabulary, ...] = ("US", "booklet", other) if terms == "US" else ("UK", other, "booklet")
    found: dict[str, Stitch] = {}
    for vocabulary in order:
        for stitch in stitches().values():
            for key in spellings_of(stitch.names[vocabulary], plain=stitch.height is not None and stitch.takes == 1):
                found.setdefault(key, stitch)
    return found


@cache
def _longest_by_first_word(terms: Terms) -> Mapping[str, int]:
    longest: dict[str, int] = {}
    for key in _by_spelling(terms):
        first, *rest = key.split(" ")
        longest[first] = max(longest.get(first, 0), 1 + len(rest))
    return longest


def find_stitch(words: str, terms: Terms) -> Stitch | None:
    """The stitch these words name, all of them, in US or UK terms.

    Spaced booklet writing, full words, plurals and any capitals are understood. A word that only the other terms have
    (`htr` in a US pattern) still names its stitch: that the terms are mixed is another finding.
    """
    known = _by_spelling(terms)
    return next((known[key] for key in spelling(words) if key in known), None)


def longest_stitch(words: Sequence[str], terms: Terms) -> tuple[Stitch, int] | None:
    """The longest stitch name at the start of the words, and how many of the words it uses."""
    if not words:
        return None
    for used in range(_most_words(words, terms), 0, -1):
        if not words[used - 1].strip(" .,;:()[]{}*"):
            continue
        stitch = find_stitch(" ".join(words[:used]), terms)
        if stitch is not None and not _crosses_sentences(words[:used], terms):
            return stitch, used
    return None


def _crosses_sentences(words: Sequence[str], terms: Terms) -> bool:
    """True for `sc . Sts`: the name is whole before the full stop; `s . c` is one name."""
    return any(word == "." and find_stitch(" ".join(words[:at]), terms) for at, word in enumerate(words))


def _most_words(words: Sequence[str], terms: Terms) -> int:
    """At most this many words can belong to one name: twice the longest, for hyphens that stand apart."""
    if len(words) > 1 and words[0].isdigit() and words[1] in ("-", "\u2010", "\u2011"):
        return min(len(words), 8)  # 3 - dc cluster
    longest = _longest_by_first_word(terms)
    heads = [key.split(" ")[0] for key in spelling(words[0])]
    return min(len(words), 2 * max((longest.get(head, 0) for head in heads), default=0))
