"""Pour."""
