"""How each kind of step is worked: stitches, chains, skips, groups, picots, foundations."""
