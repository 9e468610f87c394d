"""Sheets, tables and texts beside the document."""
