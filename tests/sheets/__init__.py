"""Paper, read back and measured."""
