"""YAML files as trees of written values that know their places."""
