"""A pattern in an ordinary text file."""
