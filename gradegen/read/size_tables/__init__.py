"""Body size tables: ready ones and the user's own."""
