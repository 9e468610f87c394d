"""The steps of a row, clause after clause, and what is left unread."""
