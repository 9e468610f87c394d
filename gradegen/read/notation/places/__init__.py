"""Where a step goes: kinds of places, bounds, loops, places named."""
