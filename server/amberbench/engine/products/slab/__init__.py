"""Slab."""
