"""What a part of a plan keeps of a file that this version does not know."""

Unknown = tuple[tuple[str, str], ...]
"""Fields of a file that this version does not know: name and JSON text, kept and written back."""
