"""Measures wanted and finished, gauges, and lengths snapped to what the stitch pattern allows."""
