"""What is bought to make the parts from."""
