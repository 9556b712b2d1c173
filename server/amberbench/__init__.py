"""Amberbench: plan a batch of caramels, run it at the bench, learn from it."""
