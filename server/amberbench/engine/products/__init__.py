"""What is made, one folder a kind, each with its KIND; nothing else need know their names."""
