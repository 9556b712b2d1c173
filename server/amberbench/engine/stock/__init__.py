"""Lots of what a shop buys and makes: deliveries, leftovers, what is left of them."""
