"""Every stitch of the work, counted by piece, row, colour and name."""
