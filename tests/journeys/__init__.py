"""Whole jobs through the real window, by mouse and by keys, on a screen of their own."""
