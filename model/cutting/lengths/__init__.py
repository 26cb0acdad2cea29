"""Sticks of one section: everything is crosscut, nothing is ripped."""
