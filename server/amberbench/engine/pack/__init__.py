"""Boxes that were packed: from which batches and lots, under which code."""
