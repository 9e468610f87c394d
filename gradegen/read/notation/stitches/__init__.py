"""Stitches, chains, groups and what goes into one place."""
