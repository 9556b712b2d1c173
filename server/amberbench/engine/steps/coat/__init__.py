"""Coat."""
