"""One piece on the hook: where it begins, the edge it has come to, its row numbers, and what is told of it."""
