"""Wash."""
