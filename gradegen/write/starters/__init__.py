"""New pattern files to start from."""
