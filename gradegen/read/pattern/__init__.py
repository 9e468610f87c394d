"""The pattern file: its keys, and what each part becomes."""
