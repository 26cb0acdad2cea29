"""What may be turned so that a check holds, and in which steps.

What the client asked for is never turned, nor what was measured, nor who sleeps in the bed, what it
is loaded with and where it stands: a bed that holds because nobody sleeps in it is no remedy.
"""

from __future__ import annotations

from collections.abc import Callable, Collection
from functools import cache
from typing import Any

from model.brief import all_choices, deck, drawers, ends, heights, posts, shop, sides
from model.brief.declare import Choice, choices_of
from model.brief.stock_turns import MATERIAL_OF, other_materials, thicknesses
from model.brief.turn import ANOTHER_KIND, Now, Run, Turns, runs_of, turn_to
from model.materials import Material, OwnRows
from model.materials.own import NONE
from model.units import GRIDS, ShopGrid

# The topics of the workshop. A topic that is not listed is the client's, the house's or the room's.
WORKSHOP: tuple[type, ...] = (
    heights.Heights, sides.SideFrames, drawers.Slides, drawers.Boxes, drawers.Fronts, deck.Deck,
    deck.CleatScrews, deck.Beam, posts.Posts, ends.End, ends.Ends, shop.Shop,
)  # fmt: skip
# Of the topics above, what the client asked for, how the maker measures and reads, and what the
# maker demands: a check that holds because less is demanded is not mended.
ASKED_FOR = {
    *("height_from", "wished_sleeping_height", "deck", "head.style", "foot.style"),
    *("front_style", "front_fit", "grid", "shown_unit", "screw_cover", "pull_count_from"),
}
# Of the client's topics, what the workshop decides.
DECIDED = {
    *("side_fit", "end_fit", "left.depth", "right.depth", "foot.depth"),
    *("slide_length", "board_cut", "joint_play"),
}

STEPS_LEAST = 8  # a choice whose range is narrower than this many steps goes on finer ones


@cache
def turnable() -> frozenset[str]:
    """The choices that may be turned so that a check holds."""
    listed = {c.name for topic in WORKSHOP for c in choices_of(topic) if not c.may_be_empty}
    return frozenset((listed - ASKED_FOR) | DECIDED)


def turns(
    name: str,
    value: Callable[[str], Any],
    own: OwnRows = NONE,
    used: Collection[str] | None = None,
) -> Turns:
    """The ways to turn a choice from what a design has; `value` gives the design's choices, `own`
    its own materials, `used` the keys of those that are in the bed.
    """
    if name not in turnable():
        return Turns()
    return _turns(name, Now(value, all_choices(own), used))


def _turns(name: str, now: Now) -> Turns:
    choice, value = now.known[name], now.value(name)
    if name in MATERIAL_OF:
        return thicknesses(choice, now)
    if name == "slide_length":
        return _slide_lengths(now)
    if choice.kind == Material:
        return Turns(alone=other_materials(choice, now))
    if choice.is_flag:
        return Turns(alone=(turn_to(name, not value, ANOTHER_KIND + 0.5),))
    if choice.keys:
        return Turns(alone=_kinds(choice, value))
    if choice.is_count:
        assert choice.least is not None and choice.most is not None
        return runs_of(name, value, range(int(choice.least), int(choice.most) + 1))
    return runs_of(name, value, _sizes(choice, GRIDS[now.value("grid")]))


def _sizes(choice: Choice, grid: ShopGrid) -> tuple[float, ...]:
    """Every step over the range: of the shop grid, or of a finer one where the range is short."""
    if not choice.is_length or choice.least is None or choice.most is None:
        return ()
    span = choice.most - choice.least
    step = next((g for g in grid.finer() if span >= STEPS_LEAST * g.step), grid.finer()[-1])
    low, high = step.up(choice.least), step.down(choice.most)
    return tuple(step.near(low + i * step.step) for i in range(round((high - low) / step.step) + 1))


def _slide_lengths(now: Now) -> Turns:
    """The lengths that the slide is sold in; where none is asked for, the longest is taken."""
    asked, table = now.value("slide_length"), now.known["slide"].table
    assert table is not None
    sold = table()[now.value("slide")].lengths_mm
    return runs_of("slide_length", asked, sold) if asked else Turns()


def _kinds(choice: Choice, now: str) -> Run:
    """The other keys, those listed next to the present one first."""
    at = choice.keys.index(now)
    far = {key: abs(i - at) / len(choice.keys) for i, key in enumerate(choice.keys) if i != at}
    return tuple(
        turn_to(choice.name, k, ANOTHER_KIND + far[k]) for k in sorted(far, key=far.__getitem__)
    )
