"""Words, numbers and signs of a row, what a reader knows beforehand, and where it stands."""
