"""Orders: what is wanted by when, and what was handed over."""
