"""Values and size lists as words of a page."""
