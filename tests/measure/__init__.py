"""`make measure`: one table of speeds, each beside a baseline timed in turn with it; its ratios are the product."""
