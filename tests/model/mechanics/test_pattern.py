"""The pattern of a stiffness is kept, and gives the same answer as a full matrix."""

import numpy as np
import pytest

from model.mechanics.pattern import pattern

RNG = np.random.default_rng(7)


def chain(count: int) -> np.ndarray:
    """Unknowns of members one after the other; the last is held by the ground."""
    nodes = np.array([(i, i + 1) for i in range(count)])
    return np.asarray((nodes[:, :, None] * 6 + np.arange(6)).reshape(-1, 12))


def blocks(count: int) -> np.ndarray:
    drawn = RNG.normal(size=(count, 12, 12))
    return np.asarray(drawn @ np.swapaxes(drawn, 1, 2) + np.eye(12))


def full(unknowns: np.ndarray, each: np.ndarray, size: int) -> np.ndarray:
    matrix = np.zeros((size + 6, size + 6))
    for at, block in zip(unknowns, each, strict=True):
        matrix[np.ix_(at, at)] += block
    return matrix[:size, :size]


def test_blocks_are_solved_as_the_full_matrix_is() -> None:
    unknowns, each, size = chain(5), blocks(5), 30
    right = RNG.normal(size=(size, 3))
    met = pattern(unknowns, size)

    found = met.factored(met.added(each))(right)

    assert found == pytest.approx(np.linalg.solve(full(unknowns, each, size), right))


def test_the_diagonal_is_told_in_the_unknowns_own_order() -> None:
    unknowns, each, size = chain(4), blocks(4), 24
    met = pattern(unknowns, size)

    assert met.of_unknowns(met.added(each)) == pytest.approx(np.diag(full(unknowns, each, size)))


def test_a_pattern_is_found_once_for_what_meets_alike() -> None:
    assert pattern(chain(3), 18) is pattern(chain(3), 18)
    assert pattern(chain(3), 18) is not pattern(chain(4), 24)


def test_an_unknown_that_nothing_stiffens_stays_in_the_matrix() -> None:
    met = pattern(chain(2), 30)  # three nodes of two members, and two that none meets

    assert met.of_unknowns(met.added(blocks(2)))[18:].tolist() == [0.0] * 12
