"""Tests of lengths, shares and rates."""
