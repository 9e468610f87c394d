"""Stitch charts drawn from the worked edges."""
