"""Picture files: found, told apart by their content, and looked at without being drawn."""
