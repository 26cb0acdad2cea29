"""The command line and the window."""

import os

# One thread for numpy's matrix products: they are small here, and more threads fight OpenGL for
# the processor while a slider is dragged. Must be said before numpy is loaded.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
