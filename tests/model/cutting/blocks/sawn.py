"""Trees sawn again by hand, and blocks found in the plainest way: what ours are held against."""

from collections import Counter
from itertools import product

from model.cutting.blocks.record import Join, Tree
from model.cutting.bounds.question import Question, Way


def saw(tree: Tree, length: int, width: int) -> list[tuple[int, int, int]]:
    """(size, length, width) of each piece, after every cut has been made from edge to edge."""
    assert tree.length <= length and tree.width <= width
    if not isinstance(tree, Join):
        return [tree]
    if tree.way == "crosscut":
        assert 0 < tree.at < length
        return saw(tree.low, tree.at, width) + saw(tree.high, length - tree.at, width)
    assert 0 < tree.at < width
    return saw(tree.low, length, tree.at) + saw(tree.high, length, width - tree.at)


def check_pieces(asked: Question, pieces: list[tuple[int, int, int]]) -> Counter[int]:
    """How many of each size, every one of them lying as it may."""
    for number, length, width in pieces:
        assert (length, width) in asked.sizes[number].ways
    return Counter(number for number, *_ in pieces)


def plain_blocks(asked: Question) -> set[tuple[int, ...]]:
    """Every multiset of pieces that fits the (only) sheet: all splits of all multisets, and of the
    boxes of each all that are not larger than another both ways."""
    (sheet,) = asked.sheets
    boxes: dict[tuple[int, ...], set[Way]] = {}
    counts = product(*(range(each.demand + 1) for each in asked.sizes))
    for whole in sorted(counts, key=lambda each: (sum(each), each)):
        found: set[Way] = set()
        if sum(whole) == 1:
            found = set(asked.sizes[whole.index(1)].ways)
        for part in product(*(range(count + 1) for count in whole)):
            rest = tuple(map(int.__sub__, whole, part))
            for a, b in product(boxes.get(part, ()), boxes.get(rest, ())):
                found.add((a[0] + b[0], max(a[1], b[1])))
                found.add((max(a[0], b[0]), a[1] + b[1]))
        fitting = {each for each in found if sheet.takes(each)}
        boxes[whole] = {
            a for a in fitting if not any(b != a and b[0] <= a[0] and b[1] <= a[1] for b in fitting)
        }
    return {whole for whole, found in boxes.items() if found}
