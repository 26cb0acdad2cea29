"""Tables, demo designs, icons and templates, read as files."""
