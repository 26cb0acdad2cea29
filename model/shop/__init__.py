"""From a bed to its cut list, its plans, the order of work, and how far it is."""
