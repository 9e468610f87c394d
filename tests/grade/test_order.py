from hypothesis import given, settings
from hypothesis import strategies as st

from gradegen.grade.body.order import work_order

names = st.sampled_from("abcdefgh")


@settings(derandomize=True, max_examples=200)
@given(st.dictionaries(names, st.lists(names, max_size=3)))
def test_each_after_all_it_needs(needs):
    order = work_order(needs)
    assert len(set(order.names)) == len(order.names)
    for at, name in enumerate(order.names):
        assert all(need in order.names[:at] for need in needs[name] if need in needs)
    for circle in order.circles:
        assert all(circle[(at + 1) % len(circle)] in needs[name] for at, name in enumerate(circle))
    if len(order.names) < len(needs):
        assert order.circles


def test_a_circle_is_told_once():
    assert work_order({"a": ["b"], "b": ["c"], "c": ["a"], "d": ["a"], "e": []}).circles == (("a", "b", "c"),)
    assert work_order({"a": ["a"]}).circles == (("a",),)
