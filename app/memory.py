"""Keep the memory that a solve frees for the next one.

Every change of a slider fills and frees some megabytes. Handed back to the system in between, their
pages must be given and wiped anew each time, which costs a quarter of the time that it takes to
tell what the bed bears. Only the C library of Linux is told; elsewhere nothing is done.
"""

from __future__ import annotations

import ctypes
import sys

# What mallopt calls them in <malloc.h>, and the most that it lets us keep.
TRIM_THRESHOLD, TOP_PAD, MMAP_THRESHOLD = -1, -2, -3
KEPT = 64 * 1024 * 1024  # bytes
MMAP_MOST = 32 * 1024 * 1024  # bytes: DEFAULT_MMAP_THRESHOLD_MAX of 64-bit systems


def keep_freed_memory() -> bool:
    """Tell the C library not to give freed memory back; whether it was told."""
    if not sys.platform.startswith("linux"):
        return False
    try:
        mallopt = ctypes.CDLL(None).mallopt
    except (OSError, AttributeError):  # a C library without it, such as musl
        return False
    wanted = ((MMAP_THRESHOLD, MMAP_MOST), (TRIM_THRESHOLD, 2 * KEPT), (TOP_PAD, KEPT))
    return all(mallopt(which, size) for which, size in wanted)
