"""What a bed takes to buy and to make, and what it is quoted at."""
