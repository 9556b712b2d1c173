"""Amberbench: plan a batch of caramels, run it at the bench, learn from it."""

__version__ = "0.1.0"
