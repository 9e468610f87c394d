"""Places inside a larger thing: the 3rd dc of the next fan, the centre of a shell, a whole group skipped."""

from __future__ import annotations

from collections.abc import Sequence

from gradegen.design.edge import Edge, Target
from gradegen.design.rows import Into, Repeat, Step, Thing, Work
from gradegen.findings import Place
from gradegen.trade.stitches import stitches
from gradegen.work.along.centre import go_to_centre
from gradegen.work.along.walk import Walk
from gradegen.work.edge import kinds
from gradegen.work.edge.cursor import Cursor
from gradegen.work.edge.kinds import Kind
from gradegen.work.edge.makes import targets_of
from gradegen.work.edge.stops import LEFT_OVER, RUNS_SHORT, Fault, Unclear

_FAR = 64


def work_in_part(walk: Walk, step: Work) -> None:
    """Stitches into one numbered or centre stitch of a larger thing."""
    if walk.site.blind:
        walk.take(walk.kind(step.into.things), 1, step.into.place)
        walk.make(step.makes)
        return
    find_part(walk, step.into)
    walk.use_next()
    whole = step.into.of if not step.into.things or _stands_for_whole(walk, step.into) else None
    name = whole.things[0].name if whole is not None and whole.things else "part"
    walk.begun, walk.here, walk.last_kind = True, False, f"@{name}"
    walk.make(step.makes)
    _pass_bare_group(walk, step.into)


def _pass_bare_group(walk: Walk, into: Into) -> None:
    """Past the rest of `next 3-dc group`, which bears no name, where no later step goes on in the same one."""
    of = into.of
    if (
        of is None
        or of.which != "next"
        or [thing.name for thing in of.things] != ["group"]
        or _goes_on_in_it(walk.ahead)
    ):
        return
    one = walk.cursor.peek()
    if one is None or one.kind != "st" or one.group:
        return
    if one.nth > 1:
        left = one.size - one.nth + 1
    else:
        times, passed = walk.cursor.like_here()
        left = times - passed if passed else 0
    for _ in range(left):
        walk.cursor.step()


def _goes_on_in_it(steps: Sequence[Step]) -> bool:
    for step in steps:
        if isinstance(step, Work) and step.into.of is not None and step.into.of.which == "same":
            return True
        if isinstance(step, Repeat) and _goes_on_in_it(step.body):
            return True
    return False


_REST = ("the rest of that group is worked on", "the rest of that group is passed by")


def _stands_for_whole(walk: Walk, into: Into) -> bool:
    """`shell in ch-2 sp of shell, ch 2, dc in next dc`: in another reading that dc stands beyond the shell."""
    of = into.of.things[0].name if into.of is not None and into.of.things else ""
    if into.things[0].name != "sp" or of not in walk.site.definitions:
        return False
    return walk.site.choose("rest of group", "the group worked into", _REST, into.place, silent=True) == 1


def is_space_of_group(walk: Walk, into: Into) -> bool:
    """`in ch-2 sp of shell`, where the edge is known to hold shells: not the first space there is."""
    if walk.site.blind or into.of is None or len(into.of.things) != 1 or not into.things or into.things[0].name != "sp":
        return False
    name = into.of.things[0].name
    return name in walk.site.definitions and kinds.holds(
        walk.before, lambda one: one.group == name and 1 < one.nth < one.size and one.kind == "sp"
    )


def pass_rest(walk: Walk, into: Into) -> None:
    """Past what is left of the group just worked into, where the next place is not a part of the same group."""
    if not walk.last_kind.startswith("@") or walk.site.blind:
        return
    name = walk.last_kind[1:]
    if name[:1] in "<>":
        return
    if into.which not in ("next", "each", "last", "first") or (into.of is not None and into.of.which == "same"):
        return
    walk.last_group = name
    while (one := walk.cursor.peek()) is not None and one.group == name and one.nth > 1:
        walk.cursor.step()


def keep_whole(walk: Walk, tail: Sequence[Step], place: Place) -> None:
    """`dc in each dc, ch 2, shell in shell`: a fault where the dcs of that shell were begun on."""
    one = None if walk.site.blind else walk.cursor.peek()
    if one is None or not one.group or one.nth < 2 or walk.last_kind == f"@{one.group}":
        return
    named = {thing.name for step in tail if isinstance(step, Work) for thing in (step.into.of or step.into).things}
    if one.group in named:
        raise Fault(LEFT_OVER, place, f"The {one.group} is needed whole by what comes after.")


def find_part(walk: Walk, into: Into) -> None:
    """Move to just before the part that `into` names."""
    if into.of is None:
        _to_nth(walk, into)
        return
    if not into.things or _is_loop(into.of):
        _to_whole(walk, into.of)
        return
    ahead = _ahead(walk)
    group = into.of.things[0] if into.of.things else Thing("group")
    if into.things[0].name == "sp" and not _is_known(walk, group.name):
        _to_loop_of_figure(walk, ahead, group, into)
        return
    if into.of.which == "last":
        _to_last_group(walk, group)
        ahead = _ahead(walk)
    elif into.nth is None and into.of.which in ("next", "same") and _to_centre_from_within(walk, group.name):
        return
    member = walk.kind(into.things)
    start, size = _find_group(walk, ahead, group, into)
    inside = [i for i in range(start, min(start + size, len(ahead))) if member.fits(ahead[i])]
    nth = None if into.nth is None else walk.site.number(into.nth)
    if not inside or (nth is not None and not 1 <= nth <= len(inside)):
        raise Fault(
            RUNS_SHORT,
            into.place,
            f"The {group.name} has no such stitch.",
            expected=str(nth or "a centre"),
            found=f"{len(inside)} sts",
        )
    wanted = inside[(len(inside) - 1) // 2 if nth is None else nth - 1]
    for _ in range(wanted):
        walk.cursor.step()


def _to_nth(walk: Walk, into: Into) -> None:
    """`in 2nd st`: counted from where the row begins, its starting chain standing on the first; `in centre st`."""
    kind, one = walk.kind(into.things), walk.cursor.peek()
    if into.nth is None and one is not None and _is_centre(one) and kind.fits(one):
        walk.owe(kind)  # `sc in each st to centre sc of next corner, 3 sc in centre sc`: it stands there
        return
    if into.nth is None and one is None and walk.inside and kinds.holds(walk.before, _is_centre):
        raise walk.short(kind, 1, into.place)
    if into.nth is None and (kind is kinds.ANY_STITCH or kind.key.startswith("sp")):
        go_to_centre(walk, kind, into.place)
        return
    used = Cursor(walk.before).remaining(kind.key, kind.fits) - walk.remaining(kind)
    if into.nth is None or walk.inside or len(walk.out) > 1 or used > 1 or not kind.key.startswith(("st", "=")):
        raise Unclear("what this is a part of is not said", into.place)
    walk.owe(kind)
    before = walk.site.number(into.nth) - 1 - used
    if before > 0:
        walk.take(kind, before, into.place)


def _is_centre(one: Target) -> bool:
    """The middle one of three or more in one place."""
    return one.size > 2 and one.nth == (one.size + 1) // 2


def _to_centre_from_within(walk: Walk, name: str) -> bool:
    """Behind `skip 2 dc` the walk may stand in the shell already, its centre still ahead: that is the next one's."""
    one = walk.cursor.peek()
    if one is None:
        return False
    if one.kind == "sp":
        return one.group == name and one.nth > 1  # `dc in each of next 2 dc, dc in sp of shell`: those were its own
    is_same = one.group == name or (not one.group and one.size > 1 and _usual_size(walk, name) in (None, one.size))
    if is_same and 1 < one.nth <= (one.size + 1) // 2:
        if one.group:
            walk.owe(kinds.group_start_kind(name))
        steps = (one.size + 1) // 2 - one.nth
    elif not one.group:
        times, passed = walk.cursor.like_here()
        centre = (times - 1) // 2
        if times != _usual_size(walk, name) or not 0 < passed <= centre:
            return False
        steps = centre - passed
    else:
        return False
    for _ in range(steps):
        walk.cursor.step()
    return True


def _is_known(walk: Walk, name: str) -> bool:
    return name == "group" or name in stitches() or name in walk.site.definitions


def _to_loop_of_figure(walk: Walk, ahead: Sequence[Target], figure: Thing, into: Into) -> None:
    """`1st loop of pineapple`: the first loop that stands between two stitches of one kind."""
    for i in range(1, len(ahead) - 1):
        before, one, after = ahead[i - 1 : i + 2]
        if one.kind == "sp" and before.kind == after.kind == "st" and before.name == after.name and not one.group:
            for _ in range(i):
                walk.cursor.step()
            walk.owe(walk.kind(into.things))
            return
    raise Unclear(f"no {figure.name} can be told apart on the row before", into.place)


def _is_loop(into: Into) -> bool:
    """A chain of a loop has no place of its own on the edge: `center st of next loop` is that loop."""
    return bool(into.things) and into.things[0].name == "sp"


def _to_whole(walk: Walk, into: Into) -> None:
    """Move to just before the next (or last) of a kind: the centre of a loop is that loop."""
    kind = walk.kind(into.things)
    there = walk.remaining(kind)
    number = there if into.which == "last" else 1
    spot = walk.cursor.save()
    if not walk.cursor.pass_over(kind.key, kind.fits, number):
        raise walk.short(kind, 1, into.place)
    walk.cursor.load(spot)
    walk.owe(kind)
    if number > 1:
        walk.cursor.pass_over(kind.key, kind.fits, number - 1)
    while (one := walk.cursor.peek()) is not None and not kind.fits(one):
        walk.cursor.step()


def _ahead(walk: Walk) -> list[Target]:
    """The next targets, as far as a group can reach."""
    spot = walk.cursor.save()
    found: list[Target] = []
    while len(found) < _FAR and (one := walk.cursor.peek()) is not None:
        found.append(one)
        walk.cursor.step()
    walk.cursor.load(spot)
    return found


def _find_group(walk: Walk, ahead: Sequence[Target], group: Thing, into: Into) -> tuple[int, int]:
    """Where the next group starts in `ahead`, and its size."""
    name = group.name
    for i, one in enumerate(ahead):
        if one.nth == 1 and one.group == name:
            walk.owe(kinds.group_start_kind(name))
            return i, one.size
    size = _usual_size(walk, name)
    for i, one in enumerate(ahead):
        if one.nth == 1 and not one.group and one.size > 1 and size in (None, one.size):
            return i, one.size
    found = _equal_run(ahead, size) or (_centre_alone(walk, ahead, into) if size is None else None)
    if found is None and _is_on(walk.before, name, size):
        raise Fault(RUNS_SHORT, into.place, f"No {name} is left on the edge.", expected=f"a {name}", found="none left")
    if found is None:
        raise Unclear(f"no {name} can be told apart on the row before", into.place)
    return found


def _centre_alone(walk: Walk, ahead: Sequence[Target], into: Into) -> tuple[int, int] | None:
    """`centre dc of next petal`, nobody explained: dcs with one stitch at either side, as `hdc, dc, hdc`."""
    member = walk.kind(into.things)
    start = next((i for i, one in enumerate(ahead) if member.fits(one)), None)
    if into.nth is not None or into.things == (Thing("st"),) or not start:
        return None
    end = start
    while end < len(ahead) and member.fits(ahead[end]):
        end += 1
    alike = end < len(ahead) and ahead[start - 1].name == ahead[end].name and ahead[end].kind == "st"
    return (start, end - start) if alike and (end - start) % 2 else None


def _is_on(edge: Edge, name: str, size: int | None) -> bool:
    """True when the edge holds a group of that name, or a run of stitches that can be one."""
    if size is not None and _equal_run([one for one in edge if isinstance(one, Target)], size) is not None:
        return True
    for item in edge:
        if isinstance(item, Target):
            if item.group == name or (item.nth and item.size == size):
                return True
        elif _is_on(item.items, name, size) or (
            len(item.items) == 1 and isinstance(item.items[0], Target) and item.times == size
        ):
            return True
    return False


def _usual_size(walk: Walk, name: str) -> int | None:
    definition = walk.site.definitions.get(name)
    return len(targets_of(definition.makes, walk.site)) if definition and definition.makes else None


def _equal_run(ahead: Sequence[Target], size: int | None) -> tuple[int, int] | None:
    """The next run of like stitches that can be the group, where the row before did not label one."""
    start = 0
    while start < len(ahead):
        end = start
        while end < len(ahead) and ahead[end].name == ahead[start].name and ahead[end].kind == "st":
            end += 1
        length = end - start
        if length and (length == size or (size is None and 3 <= length < _FAR // 2)):
            return start, length
        start = max(end, start + 1)
    return None


def _to_last_group(walk: Walk, group: Thing) -> None:
    starts = kinds.group_start_kind(group.name)
    there = walk.remaining(starts) - Cursor(walk.passed).remaining(starts.key, starts.fits)
    if there > 1:
        walk.cursor.pass_over(starts.key, starts.fits, there - 1)


def skips_group(walk: Walk, into: Into, number: int) -> bool:
    """Pass over whole groups when the step names one; True when it did."""
    name = into.things[0].name if into.things else "st"
    if name == "group":
        for _ in range(number):
            _past_group(walk, into)
        return True
    ends = kinds.group_end_kind(name)
    if name not in walk.site.definitions or not kinds.holds(walk.before, ends.fits):
        return False
    _skip_labelled(walk, ends, number, into)
    return True


def _skip_labelled(walk: Walk, ends: Kind, number: int, into: Into) -> None:
    walk.owe(ends)
    walk.take(ends, number, into.place)


def _past_group(walk: Walk, into: Into) -> None:
    """Past the next run of stitches, as far as the next space or the next group."""
    one = walk.cursor.peek()
    while one is not None and one.kind == "sp":
        walk.cursor.step()
        one = walk.cursor.peek()
    if one is None:
        raise walk.short(kinds.ANY_STITCH, 1, into.place)
    group = one
    while one is not None and one.kind != "sp" and (one is group or not one.nth or one.nth > 1):
        walk.cursor.step()
        one = walk.cursor.peek()
    walk.begun = True
