"""Measures over the sizes: shrinking, plateaus, honest differences, steps unlike the bodies'."""


def test_a_typed_list_that_shrinks_points_at_the_entry(graded):
    made = graded({"depth": "[11, 11, 12, 12, 11, 13, 14, 14, 15] in"})
    finding = made.only("measure-shrinks")
    assert (finding.severity, finding.size, finding.place.line, finding.place.column) == ("error", "XL", 10, 37)
    assert (finding.expected, finding.found) == ("at least 12 in", "11 in")
    assert made.rules() == ["measure-shrinks"]


def test_plateaus_are_no_fault(graded):
    assert graded({"depth": "[11, 11, 11, 12, 12, 12, 12, 13, 13] in"}).rules() == []


def test_an_honest_difference_is_a_warning(graded):
    """A dropped shoulder lengthens with the body, so the sleeve below it shortens."""
    made = graded({"sleeve": "40 in - bust / 4"})
    assert {finding.severity for finding in made.findings} == {"warning"}
    assert set(made.rules()) == {"measure-shrinks"}


def test_a_body_column_that_falls_is_not_the_patterns_fault(graded, size_table):
    table = size_table(("A", "B", "C"), "chest", {"chest": [30, 32, 34], "arm": [16, 15, 17]})
    made = graded({"sleeve": "arm + 1 in"}, table=table)
    assert (made.only("measure-shrinks").severity, made.only("measure-shrinks").size) == ("warning", "B")


def test_other_wearers_are_not_compared(graded, size_table):
    wearers = ("child", "child", "adult", "adult")
    table = size_table(("10", "12", "XS", "S"), "chest", {"chest": [28, 30, 29, 33]}, wearers=wearers)
    assert graded({"around": "chest"}, table=table).rules() == []


def test_sizes_written_backwards_do_not_flood(graded):
    assert graded({"around": "bust"}, sizes=["L", "M", "S", "XS"]).rules() == ["size-order-differs"]


def test_one_odd_entry_is_told_once(graded):
    made = graded({"around": "[32, 36, 40, 44, 50, 52, 56, 60, 64] in"})
    finding = made.only("uneven-size-step")
    assert (finding.severity, finding.size, finding.place.column) == ("warning", "XL", 37)
    assert made.rules() == ["uneven-size-step"]


def test_ease_typed_wrongly_in_one_size(graded):
    made = graded({"around": "bust + [3, 3, 3, 3, 6, 3, 3, 3, 3] in"})
    assert made.only("uneven-size-step").size == "XL"


def test_uneven_steps_of_the_bodies_are_followed(graded, size_table):
    """Head sizes jump where children become adults; a girth that goes with them is even."""
    table = size_table(("NB", "B", "T", "S", "M"), "head", {"head": [13, 14.5, 17, 22, 23]})
    assert graded({"around": "[12, 13.5, 16, 21, 22] in"}, table=table).rules() == []


def test_unequal_steps_of_a_good_pattern_pass(graded):
    """Rowan, nine sizes, steps of 9.5, 10.5, 11, 11, 9, 11, 9, 11 cm in finished chest."""
    girths = [82.5]
    for step in (9.5, 10.5, 11, 11, 9, 11, 9, 11):
        girths.append(girths[-1] + step)
    assert graded({"around": f"[{', '.join(map(str, girths))}] cm"}).rules() == []


def test_a_falling_list_in_a_count(graded):
    made = graded({}, {"n": {"across": "[8, 9, 10, 11, 10, 12, 13, 14, 15] in"}, "twice": {"sum": "2 * n"}})
    finding = made.only("count-falls")
    assert (finding.severity, finding.size, finding.place.line, finding.place.column) == ("warning", "XL", 40, 35)
    assert made.rules() == ["count-falls"]
    made = graded({}, {"n": {"sum": "[3, 3, 4, 4, 5, 5, 4, 6, 6] + 1"}})
    assert made.only("count-falls").size == "3X"


def test_honest_differences_of_counts_may_fall(graded):
    made = graded({"a": "bust"}, {"n": {"across": "a"}, "plain": {"sum": "400 - n"}})
    assert made.rules() == []
