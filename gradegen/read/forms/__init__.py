"""Testers' forms that were filled in and sent back."""
