"""Jacket."""
