"""Questions to a graded pattern: the maker between the sizes, another gauge, what half a stitch does."""
