"""Deposit."""
