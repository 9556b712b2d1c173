"""Cluster."""
