"""What the window is made of: choices, clearances, checks, parts, the answer to why."""
