"""The command line and the window."""
