"""The printed document: layout, PDF, and the proof of the print."""
