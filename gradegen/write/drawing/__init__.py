"""Schematics of pieces, to scale."""
