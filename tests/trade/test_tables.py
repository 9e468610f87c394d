"""The reader of our own data files."""

from __future__ import annotations

from fractions import Fraction

import pytest

from gradegen.trade.folders import data_folder
from gradegen.trade.tables import exact, read_table


def test_a_table_is_read_once() -> None:
    assert read_table("hooks") is read_table("hooks")


def test_a_file_that_is_not_there_is_our_fault_and_raises() -> None:
    with pytest.raises(FileNotFoundError):
        read_table("no such table")


def test_numbers_are_exact() -> None:
    assert exact(2.25) == Fraction(9, 4)
    assert exact("3.125") == Fraction(25, 8)
    assert exact(6) == 6


def test_every_shared_table_is_a_mapping_with_a_source() -> None:
    for path in sorted(data_folder("shared").glob("*.yaml")):
        table = read_table(path.stem)
        named = {"source", "sources"} & set(table)
        assert named or path.stem == "house_style", path.name
