"""Files for other programs, read back."""
