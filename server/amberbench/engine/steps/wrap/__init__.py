"""Wrap."""
