"""The kinds of places rows name: `st`, `ch-2 sp`, `3-dc group`, `corner`, `next loop`."""

from __future__ import annotations

from dataclasses import replace

from gradegen.design.rows import Number, Thing
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import words

SPACES = words(
    "sp sps space spaces loop loops lp lps mesh meshes arch arches ch-sp ch-sps chain-space ch-space ch-loop ch-lp"
)
STITCHES = words("st sts stitch stitches sts.")
_FIXED = {
    "corner": "corner",
    "corners": "corner",
    "ring": "ring",
    "rings": "ring",
    "circle": "ring",
    "group": "group",
    "groups": "group",
    "gap": "gap",
    "tch": "tch",
    "tip": "place",
    "base": "place",
}
_NOUNS = words(
    "scallop petal point block bl motif pineapple tile rib square leaf knot bead triangle wave medallion ray arm"
)
_BEFORE = words(
    "central center centre large small big single rem remaining free unused open solid long short little "
    "opposite end outer inner plain chain same marked underarm other joining corresponding raglan "
)
_CHAIN_NOUNS = words(
    "handle handles strap straps bar bars bridge bridges thumbhole buttonhole buttonholes opening openings underarm "
    "armhole gap gaps chain"
)
_AFTER_STITCH = frozenset({"group", "groups", "gr", "grp"})
_NO_NAMES = words(
    "previous following skipped unworked next last first each same other of in the a an and or to this "
    "that these those end every all any new extra more few two three some missed worked made remaining "
    "corresponding neck edge"
)

_SIZED = {"large": "large", "big": "large", "long": "large", "small": "small", "short": "small", "little": "small"}
_NOT_FOR_CHAIN = frozenset({"joining", "corresponding"})


def read_thing(r: Reading) -> Thing | None:
    """The kind of place named here; nothing is read when the words name none."""
    mark = r.at
    adjective = ""
    while r.low() in _BEFORE and r.low() not in ("chain", "end"):
        if r.low() in _NOT_FOR_CHAIN:
            r.at = mark
            return None
        adjective = r.low()
        r.at += 1
    thing = _named(r, adjective)
    if thing is None:
        r.at = mark
    elif thing.name == "sp" and adjective in _SIZED:
        return replace(thing, of=_SIZED[adjective])
    return thing


def _named(r: Reading, adjective: str) -> Thing | None:
    token = r.here
    if token.kind == "chain":
        return _chain_space(r)
    if token.kind == "stitch":
        return _stitch(r)
    if token.kind == "number" and r.peek().kind in ("stitch", "-"):
        return _counted_group(r) or _counted_chain_space(r)
    if token.kind != "word":
        return None
    word = token.low
    if word in STITCHES:
        return _st(r)
    if word in SPACES and r.low(1) not in STITCHES:
        r.at += 1
        return Thing("sp", said=_one(word))
    if word in _FIXED:
        return _fixed(r, word)
    if word in ("turning", "beginning", "beg", "starting"):
        return _turning_chain(r)
    if word in ("place", "space"):
        r.at += 1
        return Thing("place")
    if word == "it" and any(before.value == "magic ring" for before in r.tokens[: r.at]):
        r.at += 1
        return Thing("ring")
    if _one(word) in _NOUNS:
        r.at += 1
        _space_of_noun(r)
        return Thing(_one(word))
    if (word == "row" and r.low(1) in ("end", "ends")) or (word == "edge" and adjective):
        r.at += 2
        return Thing("row end")
    if r.low(1) in STITCHES and word not in _NO_NAMES:
        r.at += 2
        return Thing(f"{word} st")
    if word in ("half", "picots") and r.peek().kind in ("stitch", "word"):
        return _half(r)
    if word in _CHAIN_NOUNS and r.low(1) in ("sp", "sps", "space", "spaces", "loop", "loops"):
        r.at += 2  # `handle sp`
        return Thing("sp", said="sp")
    return None


def _one(word: str) -> str:
    """The word in the singular, in the form counts are named by."""
    short = {"sps": "sp", "space": "sp", "spaces": "sp", "lps": "loop", "lp": "loop", "loops": "loop", "meshes": "mesh"}
    if word in short:
        return short[word]
    return word[:-1] if word.endswith("s") and not word.endswith("ss") else word


def _space_word(r: Reading) -> str | None:
    word = r.low()
    if word in SPACES:
        r.at += 1
        return _one(word)
    return None


def _chain_space(r: Reading) -> Thing | None:
    """`ch-2 sp`, `ch-5 loop`, a bare `ch-2`, `ch-4 picot`."""
    token = r.here
    r.at += 1
    length = r.chain_length(token)
    if r.low() in ("corner", "corners"):
        r.at += 1
    said = _space_word(r)
    if said is None and r.low() in _CHAIN_NOUNS:
        r.at += 1
        _space_word(r)
        return Thing("sp", length, said="ch")
    if r.here.kind == "stitch" and r.here.value == "picot":
        r.at += 1
        said = said or _space_word(r)
        return Thing("picot")
    return Thing("sp", length, said=said or "ch")


def _stitch(r: Reading) -> Thing | None:
    token = r.here
    if token.value == "ch" and not token.own:
        return _chain(r)
    if token.value == "magic ring":
        r.at += 1
        return Thing("ring")
    if token.value == "sl st" or token.value in ("inc", "dec"):
        if not token.own:
            r.at += token.value == "sl st"
            return Thing("sl st") if token.value == "sl st" else None
        return None
    r.at += 1
    name = str(token.value)
    if r.low() in _AFTER_STITCH:
        r.at += 1
        return Thing("group", of=name)
    if r.low() in STITCHES and r.here.start > token.end:
        r.at += 1
    if name == "corner":
        _space_of_noun(r)
        return Thing("corner")
    if r.low() in SPACES:
        r.at += 1
        return Thing("sp", said="loop") if name == "picot" else Thing(name)
    kind = r.here
    if kind.kind == "stitch" and kind.value in ("cluster", "shell", "popcorn", "picot", "puff", "bobble", "group"):
        r.at += 1  # `dc cluster`
        return Thing(str(kind.value))
    return Thing(name)


def _chain(r: Reading) -> Thing | None:
    """`ch` as a chain stitch; `ch 1 loop`, `ch sp` as a space; `ch 3` as the space of so many chains."""
    start = r.at
    r.at += 1
    length = r.number() if r.here.kind in ("number", "count") else None
    said = _space_word(r)
    if said is not None:
        return Thing("sp", length, said=said)
    if length is not None:
        return Thing("sp", length, said="ch")
    if r.low() in STITCHES and r.here.start > r.tokens[start].end:
        r.at += 1
    return Thing("ch")


def _counted_group(r: Reading) -> Thing | None:
    """`3-dc group`, `5 dc group`."""
    mark = r.at
    r.at += 1
    r.accept("-")
    token = r.here
    if token.kind == "stitch" and r.tokens[r.at + 1].low in ("group", "groups", "gr", "grp"):
        r.at += 2
        return Thing("group", of=str(token.value))
    r.at = mark
    return None


def _counted_chain_space(r: Reading) -> Thing | None:
    """`5 ch loop`: one loop of 5 chains."""
    token, after = r.here, r.tokens[r.at + 2]
    if r.peek().value != "ch" or after.low not in SPACES or after.low in _PLURAL_SPACES:
        return None
    length = r.number()
    r.at += 2
    return Thing("sp", length, said=_one(after.low)) if token.kind == "number" else None


_PLURAL_SPACES = words("loops sps spaces lps meshes arches")


def _st(r: Reading) -> Thing:
    r.at += 1
    if r.low() == "or" and r.low(1) in SPACES:
        r.at += 2
        return Thing("place")
    return Thing("st")


def _fixed(r: Reading, word: str) -> Thing:
    r.at += 1
    if word.startswith("corner"):
        _space_of_noun(r)
    elif _FIXED[word] == "group" and r.low() == "of":
        mark = r.at
        r.at += 1
        r.number()
        if r.here.kind == "stitch":
            r.at += 1
            return Thing("group", of=str(r.tokens[r.at - 1].value))
        r.at = mark
    return Thing(_FIXED[word])


def _space_of_noun(r: Reading) -> None:
    """Passes the second noun of `corner sp`, `corner loop`, `corner st`, `corner dc`."""
    if r.low() in SPACES or r.low() in STITCHES or (r.here.kind == "stitch" and not r.here.own):
        r.at += 1
    elif r.here.kind == "chain" and r.low(1) in SPACES:
        r.at += 2


def _turning_chain(r: Reading) -> Thing | None:
    """`turning ch`, `beg ch-3`, `turning chain`."""
    mark = r.at
    r.at += 1
    if r.here.kind == "number" and r.peek(2 if r.peek().kind == "-" else 1).value == "ch":
        r.at += 2 if r.peek().kind == "-" else 1  # `beg 3-ch`, `starting 3 ch`
    if r.here.kind == "chain" or (r.here.kind == "stitch" and r.here.value == "ch"):
        is_named = r.here.kind == "stitch"
        r.at += 1
        length = r.number() if is_named and r.here.kind == "number" else None
        del length
        return Thing("tch")
    r.at = mark
    return None


def _half(r: Reading) -> Thing | None:
    mark = r.at
    r.at += 1
    rest = read_thing(r)
    if rest is None:
        r.at = mark
        return None
    return Thing(f"half {rest.said or rest.name}")


def is_space(thing: Thing) -> bool:
    """True for places that are chain spaces or may be: loops, corners, shells, picots."""
    return thing.name in ("sp", "corner", "place", "picot", "ring")


def several(first: Number | None) -> bool:
    """True when a number is written and is not a plain 1."""
    return first is not None and first.values != (1,)
