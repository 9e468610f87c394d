"""Numbers for several sizes, and the sizes that a phrase names."""
