"""The cursor against a plain list: every move over nested repeats lands where stepping one by one would."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.design.edge import Edge, Run, Target
from gradegen.work.edge.cursor import Cursor
from gradegen.work.edge.edges import named, read_runs, stitches, tally, tidy, turned, turned_round, words

ONE = st.sampled_from([named("sc"), named("dc"), named("ch-1 sp"), named("ch-3 sp")])
EDGES = st.recursive(
    st.lists(ONE, min_size=1, max_size=4).map(tuple),
    lambda inner: st.lists(st.one_of(ONE, st.builds(Run, st.integers(1, 5), inner)), min_size=1, max_size=4).map(tuple),
    max_leaves=12,
)


def flat(edge: Edge) -> list[Target]:
    out: list[Target] = []
    for item in edge:
        out += flat(item.items) * item.times if isinstance(item, Run) else [item]
    return out


def is_dc(one: Target) -> bool:
    return one.name == "dc"


@settings(derandomize=True, max_examples=300, deadline=None)
@given(EDGES, st.lists(st.integers(0, 7), max_size=6))
def test_moving_agrees_with_a_plain_list(edge: Edge, moves: list[int]) -> None:
    plain, at = flat(edge), 0
    cursor = Cursor(edge)
    for move in moves:
        ahead = [i for i in range(at, len(plain)) if is_dc(plain[i])]
        assert cursor.remaining("dc", is_dc) == len(ahead)
        if move == 0:
            if at < len(plain):
                cursor.step()
                at += 1
        else:
            assert cursor.pass_over("dc", is_dc, move) == (len(ahead) >= move)
            at = ahead[move - 1] + 1 if len(ahead) >= move else at
        assert flat(cursor.rest()) == plain[at:]
        assert cursor.peek() == (plain[at] if at < len(plain) else None)


@settings(derandomize=True, max_examples=300, deadline=None)
@given(EDGES)
def test_tidying_and_turning_keep_the_targets(edge: Edge) -> None:
    plain = flat(edge)
    assert flat(tidy(edge)) == plain
    assert flat(turned(edge)) == plain[::-1]
    assert flat(turned_round(edge)) == plain[:1] + plain[1:][::-1]
    assert stitches(edge) == sum(one.kind == "st" for one in plain)
    assert all(plain.count(one) == number for one, number in tally(edge).items())


@settings(derandomize=True, max_examples=200, deadline=None)
@given(EDGES)
def test_an_edge_in_words_reads_back(edge: Edge) -> None:
    assert flat(read_runs(words(edge, most=10_000))) == flat(edge)


def test_passing_over_ten_million_is_one_move() -> None:
    cursor = Cursor(read_runs("10000000 x (dc, ch-1 sp), sc"))
    assert cursor.pass_over("dc", is_dc, 9_999_999)
    assert words(tidy(cursor.rest())) == "ch-1 sp, dc, ch-1 sp, sc"
