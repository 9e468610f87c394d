"""What lies on an edge, what a name on it means, and why the working of a row stops."""
