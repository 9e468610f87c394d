"""A row's way along the edge: what is taken and made, repeats in closed form, and the count it comes to."""
