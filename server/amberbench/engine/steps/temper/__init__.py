"""Temper."""
