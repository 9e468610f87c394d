"""The nouns: frozen values that hold what was written, graded and worked, each with its place."""
