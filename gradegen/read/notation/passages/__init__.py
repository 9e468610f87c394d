"""Shaping and even work over rows, and rows that point to other rows."""
