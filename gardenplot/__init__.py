"""Beds, rows, plants and stakes for people who grow vegetables for market."""

__version__ = "0.1.0"
