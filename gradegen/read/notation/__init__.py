"""Rows as the trade writes them, read into trees."""
