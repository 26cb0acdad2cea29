"""Joints drawn large, one for each kind that the bed has, and its drawers with their fronts."""
