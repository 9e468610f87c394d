"""The commands a person types: arguments into one pipeline call, findings into an exit code."""

from gradegen.cli.command_line import command_line, main

__all__ = ["command_line", "main"]
