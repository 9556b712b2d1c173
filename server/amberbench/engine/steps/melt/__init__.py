"""Melt."""
