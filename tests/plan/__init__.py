"""Tests of the plan, its edits, its file and the catalogue."""
