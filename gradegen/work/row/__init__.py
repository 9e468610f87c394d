"""One row to its end, and several readings of it settled by arithmetic."""
