"""Repeats, stars and brackets."""
