"""What a plan looks like, as marks and words."""
