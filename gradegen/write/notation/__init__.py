"""Rows written back in house style."""
