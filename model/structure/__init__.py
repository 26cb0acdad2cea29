"""The bed as one frame under its sleepers: what each piece of it carries, and how much it may."""
