"""Stitches a pattern explains itself: `V-st: (dc, ch 1, dc) in st or sp indicated`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from gradegen.design.rows import (
    Aside,
    Chain,
    Definition,
    Either,
    Into,
    Make,
    Repeat,
    Skip,
    Slip,
    Step,
    Thing,
    Unread,
    Work,
)
from gradegen.findings import Finding, Written
from gradegen.read.notation.clauses.steps import read_steps
from gradegen.read.notation.notes.spelling import spelled
from gradegen.read.notation.sizes.size_lists import join_lists
from gradegen.read.notation.stitches.makes import takes_several_known
from gradegen.read.notation.words.reading import Reading, plain
from gradegen.read.notation.words.row_names import RowNames, level
from gradegen.read.notation.words.tokens import Token
from gradegen.trade.stitch_names import begun_name
from gradegen.trade.stitches import find_stitch, stitches

_ONE = re.compile(
    r"count(?:s|ed)? as (?:1|one|a) (?:st\b|stitch|dc|sc|hdc|tr|d c|s c)|[;,.]\s*(?:1|one) st(?:itch)?\s*\.?\s*$"
    r"|\bdrop(?:ped)? (?:the )?(?:loop|lp)|\bremove (?:hook|loop)|\btog(?:ether)?\b"
    r"|(?:hold|keep|leav|retain)\w* (?:back )?(?:on hook )?(?:the )?last (?:loop|lp)"
    r"|through all (?:\w+ )?(?:loops|lps)|work off all|through (?:all )?(?:[3-9]|1\d) (?:loops|lps)"
    r"|\byo\b.*\bdraw up\b|\binsert (?:the )?hook\b.*\b(?:pull|draw|yo)\b",
    re.IGNORECASE,
)
_ONE_BY_NAME = ("cluster", "popcorn", "bobble", "puff", "cl", "pc", "bo")
_IN_ONE = re.compile(  # `dc3tog in same st`
    r"tog(?:ether)? (?:all )?(?:worked )?in(?:to)? (?:the )?(?:same|one|1) ", re.IGNORECASE
)
_TALK = re.compile(
    r"\b(?:worked )?tog(?:ether)?(?= in(?:to)? (?:the )?(?:same|one|next))"
    r"|\b(?:invisible|special|made|worked|as follows)\b[: ]*",
    re.IGNORECASE,
)
_STITCH = r"(?:sts?|stitch(?:es)?|sps?|spaces?|ch|chain|loops?|place|ch-\d+ sp|ch-sp)"
_SAID = r"(?:indicated|specified|named|given|stated|noted|called for|directed|mentioned)"
_GIVEN_PLACE = re.compile(
    rf"\b(?:all )?(?:in|into)(?: the| a| one| same| next| that| any| indicated| specified)* {_STITCH}"
    rf"(?:(?:(?: or |/| and )(?:the |a )?(?:same |next )?{_STITCH})+(?: {_SAID})?| {_SAID})(?=\s*(?:[.;,)]|$))"
    rf"|\b(?:all )?(?:in|into) (?:the )?(?:same )?{_SAID} {_STITCH}(?=\s*(?:[.;,)]|$))"
    rf"|\ball (?:in|into) (?:the )?same (?:space|place|loop)(?=\s*(?:[.;,)]|$))",
    re.IGNORECASE,
)
_DEEPEST = 400  # characters of a definition that are read as steps


def read_definition(name: str, written: Written, names: RowNames) -> tuple[Definition, tuple[Finding, ...]]:
    """The stitch under its name: what goes into one place, or its longer steps; neither when nothing could be read."""
    further = _FURTHER.search(written.text)
    if further is not None:  # `inc: 2 sc in same st. dec: sc 2 sts together`: the next name begins another
        written = written.part(0, further.start() + 1)
    text = written.text
    one = _is_one(name, text)
    known = replace(
        names, definitions={key: value for key, value in names.definitions.items() if level(key) != level(name)}
    )
    steps, findings = _steps(written, known)
    definition = Definition(name, text.strip(), one=one, place=written.place())
    return _filled(definition, steps, one), findings


_FURTHER = re.compile(r"[.;]\s+[A-Za-z][\w-]*(?: [\w-]+)?(?: \([^()]*\))?\s*(?::|=)\s")
_CHAIN_REMARK = re.compile(r"\bch(?:ain)?[ -]?\d+\s*\([^()]*\)", re.IGNORECASE)


def _is_one(name: str, text: str) -> bool:
    last = level(name).split(" ")
    drawn = _ONE.search(_CHAIN_REMARK.sub("", text)) or _IN_ONE.search(text)
    return bool(drawn) or any(word in _ONE_BY_NAME for word in last)


def _steps(written: Written, names: RowNames) -> tuple[list[Step], tuple[Finding, ...]]:
    text = _TALK.sub(lambda found: " " * len(found.group()), written.text[:_DEEPEST])
    text = _GIVEN_PLACE.sub(_in_same_place, text)
    blanked = Written(text, written.file, written.anchors)
    tokens = spelled(text, names)
    tokens = _without_own_name(tokens)
    listing = join_lists(blanked, tokens, names)
    reading = Reading(blanked, names, listing.tokens)
    level_ = read_steps(reading, len(listing.tokens))
    return list(level_.steps), tuple(listing.findings)


def _in_same_place(found: re.Match[str]) -> str:
    """`in the st or sp named` as `in same st`, of the same length where it is long enough."""
    return "in same st".ljust(len(found.group())) if len(found.group()) >= len("in same st") else found.group()


def _without_own_name(tokens: list[Token]) -> list[Token]:
    """`shell: 5 dc` where the text repeats the name before a colon."""
    for i, token in enumerate(tokens[:6]):
        if token.kind == ":" or token.kind == "=":
            return tokens[i + 1 :]
    return tokens


def _filled(definition: Definition, steps: list[Step], one: bool) -> Definition:
    body = [step for step in steps if not isinstance(step, Aside)]
    read = [step for step in body if not isinstance(step, Unread)]
    unread = len(read) < len(body)
    if _is_picot(read):
        is_picot = level(definition.name).startswith("picot")
        makes: tuple[Make, ...] = () if is_picot else (Make("picot", place=definition.place),)
        return replace(definition, makes=makes, one=False)
    works = [step for step in read if isinstance(step, Work)]
    if one:
        makes = _makes(works[:1]) or ()
        takes = None if _IN_ONE.search(definition.text) else _takes(makes)
        return replace(definition, makes=makes, one=takes is None, takes=takes)
    if unread or not read:
        return definition
    if len(read) == 1 and isinstance(read[0], Either):  # `dc, ch 1, dc in same st`: all of it
        read = [step for step in read[0].readings[0] if not isinstance(step, (Aside, Unread))]
        works = [step for step in read if isinstance(step, Work)]
    whole = _unrolled(read)
    crossed = _crossed(whole)
    if crossed is not None:
        return replace(definition, makes=crossed[0], takes=crossed[1])
    alone = _makes([step for step in whole if isinstance(step, Work)]) if len(whole) == 1 else None
    if alone is not None and [make.stitch for make in alone] == [definition.name]:
        return replace(definition, takes=_takes(alone))  # `dec = invisible decrease over next 2 sts`: the trade's own
    if alone is not None:
        return replace(definition, makes=alone, takes=_takes(alone), into=_own_space(whole[0]))
    if all(isinstance(step, (Work, Chain)) for step in whole) and _in_one_place(whole):
        return replace(definition, makes=_chained(_chain_as_stitch(definition.name, whole)))
    return replace(definition, steps=tuple(whole))


def _own_space(step: Step) -> Into | None:
    """The kind of space a stitch always goes into: `(2 dc, ch 2, 2 dc) in the ch-2 sp`; None for any other place."""
    if not isinstance(step, Work):
        return None
    into = step.into
    plainly = into.which == "next" and into.number is None and into.of is None
    return into if plainly and [thing.name for thing in into.things] == ["sp"] else None


def _unrolled(steps: Sequence[Step]) -> list[Step]:
    """`(dc, ch 1) 4 times, dc in same sp` stitch by stitch."""
    out: list[Step] = []
    for step in steps:
        times = plain(step.times.number) if isinstance(step, Repeat) and step.times.how == "in all" else None
        alone = isinstance(step, Repeat) and all(isinstance(one, (Work, Chain)) for one in step.body)
        if isinstance(step, Repeat) and alone and times is not None and times <= _MOST_CROSSED:
            out += list(step.body) * times
        else:
            out.append(step)
    return out


def _crossed(steps: Sequence[Step]) -> tuple[tuple[Make, ...], int] | None:
    """`skip next st, dc in next st, dc in skipped st`: as many stitches as places, in another order."""
    skips = [step for step in steps if isinstance(step, Skip)]
    works = [step for step in steps if isinstance(step, Work)]
    if len(skips) != 1 or skips[0] is not steps[0] or len(works) + 1 != len(steps) or len(works) < 2:
        return None
    skipped, total = plain(skips[0].into.number) or 1, 0
    makes: list[Make] = []
    for work in works:
        number = plain(work.into.number) or 1
        behind = any(thing.name == "unworked" for thing in work.into.things)
        if len(work.makes) != 1 or work.makes[0].times is not None or work.into.which not in ("next", "each", "first"):
            return None
        total += 0 if behind else number
        skipped -= number if behind else 0
        makes += [work.makes[0]] * min(number, _MOST_CROSSED)
    return (
        (tuple(makes), len(makes))
        if skipped == 0 and len(makes) == total + (plain(skips[0].into.number) or 1)
        else None
    )


_MOST_CROSSED = 12


def _is_picot(steps: Sequence[Step]) -> bool:
    """`ch 3, sl st in 3rd ch from hook`, `ch 4, sl st in last sc`."""
    if len(steps) != 2 or not isinstance(steps[0], Chain):
        return False
    last = steps[1]
    if isinstance(last, Slip):
        return True
    return isinstance(last, Work) and last.into.which == "from hook"


def _makes(works: list[Work]) -> tuple[Make, ...] | None:
    """What one work leaves in one place; None when it goes over several."""
    if len(works) != 1:
        return None
    work = works[0]
    number = work.into.number
    if number is None or takes_several_known(work.makes[0].stitch):
        return work.makes if work.into.which != "each" else None
    if work.bare and len(work.makes) == 1:
        return (replace(work.makes[0], times=number),)
    return None


def _takes(makes: tuple[Make, ...]) -> int | None:
    """How many places the whole uses, when that is more than one."""
    known = stitches().get(makes[0].stitch) if len(makes) == 1 else None
    if known is not None and known.takes > 1:
        return known.takes
    return None


def _in_one_place(steps: Sequence[Step]) -> bool:
    """`ch 3, 3 dc`; `dc in next st, ch 1, dc in same st`; not `dc in each of 3`."""
    works = [step for step in steps if isinstance(step, Work)]
    placed = [work for work in works if not work.bare]
    if not works or any(work.into.number is not None or work.into.which == "each" for work in placed):
        return False
    if any(work.bare and plain(work.into.number) is None and work.into.number is not None for work in works):
        return False
    begins = not placed or placed[0] is works[0] or placed[0] is works[-1] or placed[0].into.which == "same"
    return begins and all(work.into.which == "same" for work in placed[1:])


def _chain_as_stitch(name: str, steps: Sequence[Step]) -> Sequence[Step]:
    """`ch 3 (counts as dc), (dc, ch 2, 2 dc) in same sp`: the chain that begins it as the stitch it stands for."""
    chain, after = steps[0], steps[1] if len(steps) > 1 else None
    if not isinstance(chain, Chain) or not isinstance(after, Work):
        return steps
    if len(steps) == 2 and len(after.makes) == 1 and not begun_name(name):
        return steps  # a corner-to-corner tile, `ch 3 (counts as dc), 3 dc`, is worked on its chain in the next row
    if chain.counts is not None:
        stitch = chain.counts.as_[0] if len(chain.counts.as_) == 1 else None
    else:
        known = stitches().get(after.makes[0].stitch)
        as_high = known is not None and chain.number.values == (known.height,)
        stitch = known.id if known is not None and as_high and begun_name(name) else None
    if stitch is None:
        return steps
    into = Into("same", (Thing("st"),), place=chain.place)
    return [Work((Make(stitch, place=chain.place),), into, place=chain.place), *steps[1:]]


def _chained(steps: Sequence[Step]) -> tuple[Make, ...]:
    out: list[Make] = []
    for step in steps:
        if isinstance(step, Chain):
            number = None if step.number.values == (1,) else step.number
            out.append(Make("ch", number, place=step.place))
        elif isinstance(step, Work):
            if step.bare and step.into.number is not None:
                out.append(replace(step.makes[0], times=step.into.number))
            else:
                out.extend(step.makes)
    return tuple(out)


def renames(name: str, words: str, names: RowNames) -> bool:
    """True when the words only spell out a usual abbreviation: `s d c = short double crochet`."""
    known = find_stitch(name, names.terms)
    if known is None:
        return False
    head = re.split(r"[:;,.(]", words, maxsplit=1)[0].strip()
    other = find_stitch(head, names.terms) if head else None
    alike = other is not None and (other.takes, other.makes) == (known.takes, known.makes)
    return other is not None and (other.id == known.id or (alike and "crease" in head))  # `dec = invisible decrease`
