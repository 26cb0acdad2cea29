"""Memory that was freed is there again without asking the system."""

import resource
import sys

import numpy as np
import pytest

from app.memory import keep_freed_memory


def faults_of_a_megabyte() -> int:
    """How many pages the system had to give for an array that was there just before."""
    before = resource.getrusage(resource.RUSAGE_SELF).ru_minflt
    np.ones(1_000_000 // 8).sum()
    return resource.getrusage(resource.RUSAGE_SELF).ru_minflt - before


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="only Linux is told")
def test_a_freed_megabyte_costs_no_pages_the_next_time() -> None:
    assert keep_freed_memory()
    for _ in range(3):
        faults_of_a_megabyte()

    assert faults_of_a_megabyte() < 50  # 245 pages where the array is mapped anew each time
