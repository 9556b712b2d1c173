"""What closed batches teach."""
