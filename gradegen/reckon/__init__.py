"""What the work takes: stitches, yarn, skeins, time, and which counts it allows."""
