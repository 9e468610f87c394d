"""Rows worked on the edge, stitch for stitch in closed form."""
