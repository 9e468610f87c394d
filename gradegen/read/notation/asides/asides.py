"""Words that never change a count: colours, markers, fasten off, stuff firmly."""

from __future__ import annotations

from itertools import pairwise

from gradegen.design.rows import Aside, Unworked
from gradegen.read.notation.places.things import STITCHES
from gradegen.read.notation.words.reading import Reading
from gradegen.read.notation.words.word_lists import ROWS, phrases, words

_BEGIN = phrases(
    "fasten off|fo|fasten and cut|fasten|break off|break|cut off|cut|tie off|finish off|end off|bind off|"
    "weave in|do not turn|do not join|do not fasten|don't turn|don't join|do not break|do not cut|"
    "place marker|place a marker|place markers|place m|pm|move marker|move m|mark|stuff firmly|"
    "stuff lightly|stuff|fill firmly|fill lightly|fill|"
    "with rs facing|with ws facing|with right side facing|with wrong side facing|"
    "with two strands|with 2 strands|with both strands|with yarn held|with 2 strands of yarn|"
    "with rs|with ws|with right side|with wrong side|changing to|changing colour|changing color|changing|"
    "switch to|switching to|change to|change colour|change color|change|drop|pick up|carry|carrying|"
    "remove marker|remove|"
    "beginning with|alternating|using|leaving a|leaving an|leave a|leave an|leaving long|leaving 6|"
    "adding|losing|holding picots|holding|in this manner|in same manner|in like manner|as before|"
    "as established|same as before|working in pattern|(rs)|rs facing|ws facing|mr|do not count|hook|"
    "continue|now|as set|begin|spacing evenly|turn work over|secure|sew in|hide|block|press|starch|sew|"
    "working in front of|working in front|working behind|working in back of|working in back|crossing in front|"
    "crossing behind|"
    "rotate work|rotate|applique|overcast|baste|trim|gather|starting at|beginning at|start at|"
    "complete picot|tie|pull ring|pull the ring|pull closed|pull tight|pull tail|pull the tail|pull to close|"
    "close ring|close the ring|draw ring|draw the ring|tighten|"
    "joining last|keeping picot|making last|having last|working last|work last|make last|placing last|"
    "making the last|having the last|working the last|work the last|make the last|placing the last|"
    "omitting turning|omitting the turning|omitting last turning|omit turning|omit the turning|"
    "being careful|be careful|taking care|take care|making sure|make sure|without twisting|careful not to"
)
_COLOUR_WORDS = words("mc cc a b c d e f main contrast colour color yarn thread")
_STOPS = frozenset({",", ";", ".", "end", "close", "star", ":"})


def read_aside(r: Reading) -> Aside | Unworked | None:
    """A remark up to the end of its clause; None when the words are none of these."""
    mark = r.at
    unworked = _unworked(r)
    if unworked is not None:
        return unworked
    if r.here.value == "magic ring" and (r.peek().kind in (",", ";", ".", ":", "number") or r.low(1) == "and"):
        r.at += 1
        return Aside("magic circle" if r.tokens[mark].low == "mc" else r.text(mark), place=r.place(mark))
    if r.phrase(_SLIP_KNOT):
        while r.here.kind not in _STOPS:
            r.at += 1
        return Aside(r.text(mark), place=r.place(mark))
    if r.low() in ("with", "using") and (tool := _with_hook(r)) is not None:
        return tool
    if r.at == 0 and r.low() == "in" and r.peek().kind == "word" and r.tokens[min(2, len(r.tokens) - 1)].kind == ":":
        r.at = 2  # `In cream: 6 ch`
        return Aside(r.text(mark), place=r.place(mark))
    if r.low(1) == "with" and r.accept("start", "starting", "begin", "beginning"):
        if (colour := _with_colour(r)) is not None and r.at_break():
            return Aside(r.text(mark), place=r.place(mark))
        r.at = mark
    if r.low() == "at" and (edge := _at_edge(r)) is not None:
        return edge
    if r.low() == "turn" and (sideways := _turned_sideways(r)) is not None:
        return sideways
    if r.low() == "with" and (colour := _with_colour(r)) is not None:
        return colour
    if r.low() in ("working", "having", "with") and _like_over_like(r):
        return Aside(r.text(mark), place=r.place(mark))
    if r.low() in ("continue", "continuing", "keeping", "working") and (opening := _opening(r)) is not None:
        return opening
    if (more := read_growth(r)) is not None:
        return more
    if not r.phrase(_BEGIN):
        r.at = mark
        return None
    if r.tokens[mark].low == "continue" and _goes_on(r):
        r.at = mark
        return None
    crosses = r.tokens[mark].low in ("working", "crossing") and r.tokens[mark + 1].low in ("in", "behind")
    closes = r.tokens[mark].low in ("pull", "close", "draw", "tighten")
    while r.here.kind not in _STOPS:
        if r.here.kind == "open" and (close := r.partner(r.at)) is not None:
            if _is_count(r, close):
                break  # `Fasten off (13 sc).`
            r.at = close + 1
            continue
        if r.low() in ("and", "then") and (r.peek().kind == "stitch" or (closes and r.low(1) in ("turn", "join"))):
            break
        if crosses and (r.here.kind == "stitch" or r.peek().kind == "stitch") and _is_worked(r):
            break  # `working in front of the sts just made FPtr around next st`
        if r.tokens[mark].low == "using" and r.here.value == "ch" and r.peek().kind in ("number", "count"):
            break  # `Using 4 mm hook ch 59`
        if r.here.kind == "stitch" and r.here.value not in ("ch",) and r.tokens[mark].low not in _LONG:
            r.at = mark
            return None
        r.at += 1
    return Aside(r.text(mark), place=r.place(mark))


def _like_over_like(r: Reading) -> bool:
    """`working bls over bls and sps over sps`: what the row's own numbers say as well; else False."""
    mark = r.at
    r.at += 1
    while r.peek().low == "over" and r.here.low == r.tokens[r.at + 2].low:
        r.at += 3
        if not r.accept("and", ","):
            break
    if r.at > mark + 1 and r.at_break():
        return True
    r.at = mark
    return False


def _is_count(r: Reading, close: int) -> bool:
    """True for the bracket here where it ends the row with a number of stitches."""
    ends = r.tokens[close + 1].kind in (".", "end")
    counted = close == r.at + 2 or r.peek(2).kind in ("stitch", "chain") or r.low(2) in STITCHES
    return ends and r.peek().kind in ("number", "count") and counted


def _at_edge(r: Reading) -> Aside | None:
    """`At armhole edge,` before the slip stitches along it."""
    mark, end = r.at, r.next_break(r.at)
    slips = r.tokens[end + 1].value == "sl st" if r.tokens[end].kind == "," else False
    if not slips or r.tokens[end - 1].low != "edge" or end - mark > _SIDEWAYS:
        return None
    r.at = end
    return Aside(r.text(mark), place=r.place(mark))


def _turned_sideways(r: Reading) -> Aside | None:
    """`turn the rib sideways`, `turn work 90 degrees clockwise`: no turn of the row, but another edge to work on."""
    mark = r.at
    end = r.next_break(mark)
    if end - mark <= _SIDEWAYS and {token.low for token in r.tokens[mark:end]} & _QUARTER:
        r.at = end
        return Aside(r.text(mark), place=r.place(mark))
    return None


_SIDEWAYS = 7  # words
_QUARTER = words("sideways 90 clockwise degrees counterclockwise anticlockwise anti-clockwise counter-clockwise")


def _is_worked(r: Reading) -> bool:
    """True where a stitch stands here, with or without its number, and the place it goes into behind it."""
    ahead = r.here.kind in ("number", "count")
    one, after = r.peek(int(ahead)), r.low(1 + ahead)
    return one.kind == "stitch" and one.value != "ch" and after in ("in", "into", "around", "over", "through")


_SLIP_KNOT = phrases(
    "make a slip knot|make a slipknot|make slip knot|slip knot|begin with a slip knot|beginning with a slip knot|"
    "place a slip knot|start with a slip knot|with a slip knot"
)


def _opening(r: Reading) -> Aside | None:
    """`Continuing in sc,` before the words that say what is done."""
    mark = r.at
    r.at += 1
    if r.phrase(phrases("in this manner|in same manner|in this way|in like manner|in the same manner|in the same way")):
        if r.here.kind == "," and r.peek().low[:3] in ("inc", "dec"):
            return Aside(r.text(mark), place=r.place(mark))
        r.at = mark + 1
    if r.accept("in") and (r.here.kind == "stitch" or r.low() in ("pattern", "pat", "patt", "rib", "rnds", "rows")):
        r.at += 1
        r.phrase(phrases("as set|as established|throughout|pattern"))
        if r.here.kind == ",":
            return Aside(r.text(mark), place=r.place(mark))
    r.at = mark
    return None


def read_growth(r: Reading) -> Aside | None:
    """`working 2 more groups on each row`: how the rows grow, which the row they repeat says by itself."""
    end = next(i for i in range(r.at, r.next_break(r.at) + 1) if r.tokens[i].kind in (*_STOPS, "open"))
    said = [token.low for token in r.tokens[r.at : end]]
    more = {"more", "fewer", "less", "extra", "additional"} & set(said)
    each_row = any(a in ("each", "every", "per") and b in ROWS for a, b in pairwise(said))
    if r.low() not in ("working", "having", "with", "making", "adding") or not (more and each_row):
        return None
    mark, r.at = r.at, end
    return Aside(r.text(mark), place=r.place(mark))


def _goes_on(r: Reading) -> bool:
    """`continue all around in same manner`: that is work."""
    said = {token.low for token in r.tokens[r.at : r.next_break(r.at)]}
    return bool(said & {"around", "across", "manner", "row", "rnd", "round"})


_LONG = words(
    "place pm mark move changing change weave fasten beginning adding losing having holding leaving leave "
    "carrying alternating cut break do don't stuff block press starch making working make work sew "
    "applique overcast starting beginning start being be taking take without careful"
)


def _with_hook(r: Reading) -> Aside | None:
    """`With 4 mm hook and MC,`, `using US H-8 (5 mm) hook`: up to the comma, or before what is worked."""
    mark = r.at
    while r.here.kind not in (*_STOPS - {"close"}, "stitch") and r.at - mark < _TOOL:
        if r.low() in ("hook", "hooks"):
            r.at += 1
            if r.low() == "and" and r.peek().kind == "word" and r.low(1) not in _VERBS:
                _with_colour(r)
            return Aside(r.text(mark), place=r.place(mark))
        r.at += 1
    r.at = mark
    return None


_TOOL = 12  # words from `with` to `hook`
_VERBS = words("work make ch join begin start rejoin then")


def _with_colour(r: Reading) -> Aside | None:
    """`with MC`, `with Red`, `with colour B`: up to the comma, or before a stitch."""
    mark = r.at
    r.at += 1
    r.accept("the")
    words = 0
    while (
        r.here.kind == "word"
        and words < 5
        and r.low() not in ("ch", "between", "in", "each", "and", "work", "working", "make", "having")
    ):
        r.at += 1
        words += 1
        if r.here.kind == "." and r.tokens[r.at - 1].low in ("dk", "lt", "med"):
            r.at += 1
    if words == 0 or r.low() in ("between", "in", "each", "having"):
        r.at = mark
        return None
    return Aside(r.text(mark), place=r.place(mark))


def _unworked(r: Reading) -> Unworked | None:
    """`leaving rem sts unworked`, `leave the rest for the neck`."""
    mark = r.at
    if r.phrase(_THESE_ONLY) and r.at_break():
        return Unworked(place=r.place(mark))
    r.at = mark
    if not r.accept("leaving", "leave"):
        return None
    r.accept("the", "these", "those", "all")
    words = 0
    while r.here.kind not in _STOPS and r.here.kind not in ("open", "=", "-") and words < 10:
        r.at += 1
        words += 1
    said = [token.low for token in r.tokens[mark + 1 : r.at]]
    if "unworked" in said or "free" in said or "rest" in said or _rest_named(said):
        return Unworked(place=r.place(mark))
    r.at = mark
    return None


_THESE_ONLY = phrases(
    "work on these sts only|work on these stitches only|working on these sts only|continue on these sts only|"
    "continue on these sts|working on these stitches only|work this side only|working this side only|"
    "leave these sts|leave those sts|leave these stitches|"
    "work on these sts|continue working on these sts only|work each side separately"
)


def _rest_named(said: list[str]) -> bool:
    return bool({"rem", "remaining", "other"} & set(said)) and bool({"sts", "stitches"} & set(said))


_TRAILS = phrases(
    "for thumb|for thumb hole|for sleeve|for sleeves|for armhole|for armholes|for neck|for underarm|"
    "for buttonhole|for picot|for next row|for next rnd|for strap|for handle|for heel|as before|"
    "as established|as set|in same manner|in this manner|in like manner|in pattern|made|loosely|tightly|"
    "evenly|to fasten|to close|to join|just made|again|firmly|along edge|along top|along side|"
    "along bottom|of ch|of chain|with right side facing|with wrong side facing|up to here|in same way|"
    "indicated|specified|stated|given|where indicated|as indicated|at corner|at point|on side|at center|"
    "at each corner|at neck edge|at the neck edge|at armhole edge|at the armhole edge|at front edge|at side edge"
)


def read_trailing(r: Reading) -> Aside | None:
    """Harmless words behind a step: `for thumb`, `with MC`, `as before`; else None."""
    mark = r.at
    said = r.phrase(_TRAILS) or _from_limb(r) or (r.low() in ("with", "using") and _coloured(r)) or _in_colour(r)
    if not (said and r.at_break()):
        r.at = mark
        said = _purpose(r)
    if said and r.at_break():
        return Aside(r.text(mark), place=r.place(mark))
    r.at = mark
    return None


def _from_limb(r: Reading) -> bool:
    """`ch 3 from second leg`."""
    mark = r.at
    if r.accept("from") and (r.accept("the") or True) and r.low() in ("first", "second", "last", "this", "other"):
        r.at += 1
        if r.here.kind == "word":
            r.at += 1
            return r.at_break()
    r.at = mark
    return False


def _purpose(r: Reading) -> bool:
    """`for thumb opening`, `for the left front band`, `to complete last fan`: what it is for, in a few plain words."""
    mark = r.at
    if r.phrase(_TO_COMPLETE):
        return r.here.kind in ("stitch", "word") and _pass_name(r)
    if not r.accept("for"):
        return False
    if (r.here.kind == "ordinal" or r.low() in _WHICH) and r.peek().kind == "word" and r.low(1) not in _NO_PURPOSE:
        r.at += 1  # `for first sleeve`
    while r.here.kind == "word" and r.at - mark <= _PURPOSE and r.low() not in _NO_PURPOSE:
        r.at += 1
    return r.at > mark + 1


def _pass_name(r: Reading) -> bool:
    """One name of one or two words up to the end of the clause."""
    r.at += 1
    if r.here.kind in ("stitch", "word") and not r.at_break():
        r.at += 1
    return r.at_break()


_TO_COMPLETE = phrases(
    "to complete last|to complete the last|to complete first|to complete the first|to complete|to finish last|"
    "to finish the last"
)
_PURPOSE = 4  # words behind `for`
_WHICH = words("first second each other last")
_NO_PURPOSE = words(
    "row rows rnd rnds round rounds times size sizes each next last first and then until to in st sts stitch stitches"
)


_COLOURS = words(
    "a b c d e f mc cc ca cb white black red green blue yellow pink grey gray cream brown orange purple teal navy"
)


def _in_colour(r: Reading) -> bool:
    """`12 sc in A`, `12 sc in white`."""
    if r.low() != "in" or r.low(1) not in _COLOURS:
        return False
    r.at += 2
    return True


def _coloured(r: Reading) -> bool:
    r.at += 1
    words = 0
    while r.here.kind == "word" and words < 4 and r.low() not in ("and", "then"):
        r.at += 1
        words += 1
    return words > 0


def read_rows_said(r: Reading) -> Aside | None:
    """`- 5 rnds` behind the steps that so many rounds are worked in."""
    mark = r.at
    if r.here.kind != "-" or r.peek().kind != "number" or r.low(2) not in ROWS or r.next_break(mark) != mark + 3:
        return None
    r.at += 3
    return Aside(r.text(mark), place=r.place(mark))


def read_heading(r: Reading, mark: int) -> Aside | None:
    """`Start petals:`, `First Point:` before the steps they announce."""
    end = r.next_break(mark)
    words = r.tokens[mark:end]
    begins = r.low() in ("start", "begin", "divide", "petals", "ruffle", "border", "corner")
    follows = r.tokens[end + 1].kind in ("stitch", "chain", "star") if r.tokens[end].kind == ":" else False
    names = mark == 0 and follows and len(words) <= 3 and not {token.low for token in words} & _ELSEWHERE
    worded = all(token.kind in ("word", "ordinal") for token in words)
    if (begins or names) and r.tokens[end].kind == ":" and len(words) <= 5 and worded:
        r.at = end + 1
        return Aside(r.text(mark, end), place=r.place(mark, end))
    return None


_ELSEWHERE = frozenset({"rep", "repeat", "same", "as"})
