"""Edges of pieces, and the seams sewn along them."""
