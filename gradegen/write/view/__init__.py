"""The values a page shows, as strings."""
