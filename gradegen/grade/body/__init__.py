"""Bodies, and sums worked out exactly for each of them."""
