"""Sums as a designer writes them."""
