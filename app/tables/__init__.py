"""Item models over tuples of records: parts, hardware, checks."""
