"""Cool."""
