"""What the program does without a window, for scripts and for machines with no screen."""
