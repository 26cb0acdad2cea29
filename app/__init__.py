"""The command line and the window."""

import gc
import os

# One thread for numpy's matrix products: they are small here, and more threads fight OpenGL for
# the processor while a slider is dragged. Must be said before numpy is loaded.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

# A dragged slider makes thousands of small records a step, none of them in circles: looking for
# circles every 700 of them costs a tenth of the pictures. Measured by bench_window.
gc.set_threshold(200_000, 50, 50)
