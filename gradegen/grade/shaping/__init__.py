"""Shaping schedules: how many events in every size, on which rows, in the trade's sentence."""
