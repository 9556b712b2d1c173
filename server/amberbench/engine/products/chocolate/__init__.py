"""Chocolate."""
