"""The spoken edition."""
