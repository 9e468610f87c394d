"""A pattern designer's bench: grade every size, prove every row in every size, print the pattern."""
