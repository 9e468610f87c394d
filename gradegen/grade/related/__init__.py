"""Counts that hang on each other, solved together in whole numbers."""
