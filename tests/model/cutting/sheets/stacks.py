"""Trees of cuts written short: `rip(leaf(300, 200), crosscut(...))`, extents with kerf."""

from model.cutting.sheets.tree import Leaf, Stack, Tree, stacked


def leaf(x: int, y: int, size: int = 0) -> Leaf:
    return Leaf(x, y, size, False)


def rip(*members: Tree) -> Stack:
    made = stacked("rip", list(members))
    assert isinstance(made, Stack)
    return made


def crosscut(*members: Tree) -> Stack:
    made = stacked("crosscut", list(members))
    assert isinstance(made, Stack)
    return made
