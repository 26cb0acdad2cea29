"""Joints: what each adds to a size, which cut it makes. One file per joint."""
