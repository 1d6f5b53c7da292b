"""What a plan looks like, as plain marks and words; nothing here knows a screen or a sheet."""
