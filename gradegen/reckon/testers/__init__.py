"""What testers sent back, put together over all sizes."""
