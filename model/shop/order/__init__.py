"""The work order: what is done at the machines, each setting made once."""
