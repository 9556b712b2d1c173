"""Published relations; no product, no step."""
