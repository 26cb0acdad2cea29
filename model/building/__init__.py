"""What a stranger with a saw is told: how the bed is put together, finished and kept."""
