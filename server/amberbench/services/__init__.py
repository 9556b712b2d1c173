"""What the server can do: one use case a file. Each owns its transaction."""
