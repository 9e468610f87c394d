"""Rows in working order: ranges, rows that come again, rows that go on growing."""
