"""The log's order, replay and apply, advice, the day's order: over any list of KINDs."""
