"""Paper and tables."""
