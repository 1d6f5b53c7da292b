"""The drawing and the counts as files for other programs."""
