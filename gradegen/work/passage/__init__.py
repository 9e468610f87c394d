"""Passages over rows: even rows, shaping every so many rows, and their totals."""
