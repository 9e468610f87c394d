"""What a pattern explains itself: notes, definitions, its own stitches."""
