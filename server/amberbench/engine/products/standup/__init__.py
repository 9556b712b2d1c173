"""Standup."""
