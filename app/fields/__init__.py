"""One widget for each kind of choice: it shows the value in force, takes a wish, says why not."""
