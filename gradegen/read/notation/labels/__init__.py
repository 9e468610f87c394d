"""Row labels and row numbers."""
