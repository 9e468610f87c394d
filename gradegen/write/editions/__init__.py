"""Which documents a pattern can become, and what makes each its own."""
