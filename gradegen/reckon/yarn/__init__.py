"""Yarn, skeins, cost and time, fitted to what was weighed."""
