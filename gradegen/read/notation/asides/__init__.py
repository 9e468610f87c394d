"""Words that change no count, printed counts, and what only some sizes work."""
