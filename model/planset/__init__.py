"""The plan set: what a bed is built from and what is sold, page by page, ready for any player."""
