"""The shop as the fold of its edits."""
