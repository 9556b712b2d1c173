"""Common."""
