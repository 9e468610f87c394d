"""A written row as a tree: what each step makes and where it goes, before anybody works it.

Stitch names in the tree are the ids of shared/stitches.yaml (US abbreviations: sc, dc, dc2tog, FPdc) whatever the
text was written in; a stitch the pattern defines itself keeps the name it was given. Places do not count in
comparisons, so a row read, printed in house style and read again gives an equal tree.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Literal

from gradegen.design.into import Bound as Bound
from gradegen.design.into import Into as Into
from gradegen.design.into import Thing as Thing
from gradegen.design.into import Which as Which
from gradegen.design.number import Listed as Listed
from gradegen.design.number import Number as Number
from gradegen.design.passages import Change as Change
from gradegen.design.passages import EvenRows, Sentence, Shaping, Until
from gradegen.findings import Place


@dataclass(frozen=True, slots=True)
class Make:
    """`times` stitches of one name (None: 1); name "ch" with times n is a chain of n inside a group."""

    stitch: str
    times: Number | None = None
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Counts:
    """What a chain was said to count as: () = "does not count", ("dc",) , ("dc", "ch-1 sp")."""

    as_: tuple[str, ...]
    from_here_on: bool = False
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Work:
    """Everything in `makes` goes into each place of `into`.

    `2 sc in next st`: makes (sc x 2), next. `sc in next 3 sts`, `3 sc`, `sc 3`: makes (sc), next with number 3. `(2 dc,
    ch 2, 2 dc) in sp`: makes (dc x 2, ch x 2, dc x 2). `sc2tog`: makes (sc2tog), next: the stitch itself says it takes
    two. `inc`: makes ("inc"). `bare`: no place was written (`3 sc`). `skipped`: what chains skipped before the first
    stitch were said to count as. `called`: what the text calls the whole, "(shell)", "(half shell)".
    """

    makes: tuple[Make, ...]
    into: Into
    bare: bool = field(default=False, compare=False)
    skipped: Counts | None = None
    called: str = field(default="", compare=False)
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Mixed:
    """`sc in each sc and 2 sc in each loop around`: which of `works` is done follows from what comes next."""

    works: tuple[Work, ...]
    bound: Bound | None = None
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Chain:
    """`ch 3`, with what it was said to count as (None: nothing said); `for_all`: `ch 4 to turn all rows`."""

    number: Number
    counts: Counts | None = None
    for_all: bool = field(default=False, compare=False)
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Join:
    """A slip stitch that closes a round or a ring: never a stitch. `to`: where, as far as the text says.

    "ring": `join to form ring`, `join with sl st in first ch` straight after the chain. `stitch`: the stitch it goes
    into, where the text names one, "dtr" of `sl st in 1st dtr`.
    """

    to: Literal["ring", "first st", "top of chain", ""] = ""
    nth: Number | None = None  # "to 3rd ch of ch-4"
    half_twist: bool = False
    stitch: str = field(default="", compare=False)
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Slip:
    """Slip stitches that travel or bind off: never counted. `to`: only moves the start (`sl st to ch-2 sp`)."""

    into: Into
    to: bool = False
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Skip:
    """Places passed over on purpose: `sk next 2 sts`, `skip 1 loop`, `sk first st`.

    `held`: kept for later, in so many words: `place next 30 sts on hold`.
    """

    into: Into
    held: bool = False
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Times:
    """How often a repeat runs.

    "in all": `(...) 6 times`. "more": besides the first (`2 more times`, `once`, `twice more`). "unsure": `rep from * 5
    times`, in all or more. "bound": to the end or a limit. `stop_at`: in the last run only the first `stop_at` steps of
    the body are worked (`ending last rep at **`, `omitting last corner`). `corresponds`: the last run ends as the row
    began (`ending to correspond`); `end_named`: as the words behind it say (`ending last repeat with`). `last_run`:
    what is left of the last run where those words stand in place of its end. `but`: what is done otherwise in some of
    the runs, in words that can't be computed ("working all corners same as 1st corner").
    """

    how: Literal["in all", "more", "unsure", "bound"]
    number: Number | None = None
    bound: Bound | None = None
    stop_at: int | None = None
    corresponds: bool = False
    end_named: bool = False
    last_run: tuple[Step, ...] = field(default=(), compare=False)
    but: str = field(default="", compare=False)


@dataclass(frozen=True, slots=True)
class Repeat:
    """Steps that run again: stars, double stars, brackets."""

    body: tuple[Step, ...]
    times: Times
    mark: Literal["*", "**", "(", "[", "{"] = field(default="(", compare=False)
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Even:
    """`work even`, `continue in pattern`, `sc even`: as many as before; `stitch` when named."""

    stitch: str | None = None
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Turn:
    """`turn`."""

    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Unworked:
    """`leaving rem sts unworked`: what is left on the edge stays there, and that is meant."""

    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Aside:
    """Words that never change a count: colours, markers, fasten off, stuff firmly."""

    text: str
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Elsewhere:
    """`working along side of edging`: from here the work goes into places that are not on the edge handed on."""

    text: str
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class OtherSide:
    """`working along other side of ch`: from here the free loops of the foundation come next."""

    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Either:
    """One wording, several readings; the first is the likelier. `why` names each in trade words."""

    readings: tuple[tuple[Step, ...], ...]
    why: tuple[str, ...] = field(compare=False)
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class SizesOnly:
    """`for size M only, ...`: steps only these sizes work (empty `sizes`: all the others, "for the larger sizes")."""

    sizes: tuple[str, ...]
    body: tuple[Step, ...]
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Unread:
    """Words the reader could not turn into a step: the row is kept, printed and reported as not checked.

    `known`: their meaning is plain but cannot be computed ("ending to correspond", "3 sp" where no space is explained).
    """

    text: str
    known: bool = field(default=False, compare=False)
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class RowsAgain:
    """`Rep Rows 3 and 4 5 (6, 7) times`: whole rows worked again.

    `labels`: row numbers (or names) in the order named, ranges spelled out. `times` None: as often as this row's own
    label range says. `more`: the rows were worked once already. `ending`: "ending with a Row 7".
    `until`: a measure ("until piece measures 9 in"), kept as words; `measure`: the same where it could be read.
    `sums`: the labels that differ from size to size, `{armhole + 1}` or `8 (11)`, and what they come to.
    """

    labels: tuple[str, ...]
    times: Number | None = None
    more: bool = False
    ending: str | None = None
    until: str | None = None
    except_: tuple[Step, ...] = ()
    measure: Until | None = None
    sums: tuple[tuple[str, Number], ...] = ()
    place: Place = field(compare=False, kw_only=True)


Step = (
    Work | Mixed | Chain | Join | Slip | Skip | Repeat | Change | Even | Turn | Unworked | Aside | Elsewhere | OtherSide
    | Either | SizesOnly | Unread | RowsAgain | EvenRows | Shaping
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Stated:
    """One printed count: `number` of `unit`; "st" when the count names no unit.

    `unit` is a Thing, so that "ch-2 sps" keeps its length; a unit we don't know keeps its word as the name.
    """

    number: Number
    unit: Thing
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Label:
    """What stands before the row: `Row 5`, `Rnds 10-16 (17, 18)`, `8th (10th) Round`, `Next row`, or nothing.

    `first` and `last` are row numbers (last None: a single row); `listed` for `Rows 4 and 5` or `2, 4, 6`; `name`
    holds what is not a number ("Foundation", "Next", "Thumb", "Cuff"). `rows`: "Next 4 rows".
    """

    text: str
    kind: Literal["row", "round", ""] = ""
    name: str = ""
    first: Number | None = None
    last: Number | None = None
    listed: tuple[Number, ...] = ()
    rows: Number | None = None
    place: Place = field(compare=False, kw_only=True)


@dataclass(frozen=True, slots=True)
class Row:
    """One written instruction under one label; a range is one Row worked several times.

    `text` is the whole instruction, label included, exactly as written; `lists` are the size lists and sums in it.
    `sizes`: the only sizes that work it (None: all). `turning_chain`: a chain made at the end of this row for the next
    one (`Ch 3, turn` in the older manner); it belongs to the next row. `defines`: stitches it explains in passing,
    for itself and the rows after it.
    """

    label: Label
    steps: tuple[Step, ...]
    stated: tuple[Stated, ...] = ()
    side: Literal["RS", "WS"] | None = None
    sizes: tuple[str, ...] | None = None
    turning_chain: Chain | None = None
    text: str = field(default="", compare=False)
    lists: tuple[Listed, ...] = field(default=(), compare=False)
    sentences: tuple[Sentence, ...] = field(default=(), compare=False)
    defines: tuple[Definition, ...] = field(default=(), compare=False)
    place: Place = field(compare=False, kw_only=True)

    @property
    def is_prose(self) -> bool:
        """True when no step could be read at all: finishing notes, advice."""
        return all(isinstance(step, (Unread, Aside)) for step in self.steps)


@dataclass(frozen=True, slots=True)
class Definition:
    """A stitch the pattern explains itself.

    `makes`: what goes into one place when that could be read ("V-st: (dc, ch 1, dc) in st or sp"), else (). `steps`:
    the longer kind, over several places ("sp = ch 2, skip 2, dc in next"), else (). `one`: the whole counts as one
    stitch ("5 dc worked together, counts as 1 st", popcorn, puff, cluster). `takes`: places used (None: 1). `into`: the
    space it goes into where a row names no place ("(2 dc, ch 2, 2 dc) in the ch-2 sp").
    `in_passing`: named by a remark in a row, so that a later row may call something else by that name.
    """

    name: str
    text: str
    makes: tuple[Make, ...] = ()
    steps: tuple[Step, ...] = ()
    one: bool = False
    takes: int | None = None
    into: Into | None = None
    in_passing: bool = field(default=False, compare=False)
    place: Place = field(compare=False, kw_only=True)


PLACELESS = (Aside, Chain, Join, Turn)  # steps that use up no place of the edge


def worked(steps: Sequence[Step]) -> Iterator[Work]:
    """All works of a row, however deep in its repeats."""
    for step in steps:
        if isinstance(step, Work):
            yield step
        elif isinstance(step, Repeat):
            yield from worked(step.body)
