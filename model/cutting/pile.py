"""What comes off a yard's pile: boards of random widths and lengths, as their grade allows."""

from __future__ import annotations

from dataclasses import dataclass
from random import Random

from model.cutting.record import Box, Stock, Trim
from model.units import INCH, Mm, Mm2, Share

FOOT: Mm = 12 * INCH
BOARD_FOOT = 144 * INCH**3  # mm3


@dataclass(frozen=True, kw_only=True)
class Recipe:
    """What comes off the pile. `thickness` is that of the class (25.4 for 4/4).

    Widths have a triangular distribution; lengths come in steps, each as often as the others. Of
    every board just the `clear_share` is clear: its bad wood lies right across it, in spans between
    clear stretches of at least `least_clear`, and at its ends. A grade promises just this, a share
    in clear cuttings of a least size; that bad wood lies right across and that no board is better
    than its grade is on the safe side, how many spans it makes is our own assumption.
    """

    thickness: Mm = INCH
    narrowest: Mm = 4 * INCH
    usual: Mm = 6.5 * INCH
    widest: Mm = 10 * INCH
    shortest: Mm = 6 * FOOT
    longest: Mm = 12 * FOOT
    step: Mm = FOOT
    clear_share: Share = 1.0
    least_clear: Mm = 5 * FOOT
    end_trim: Mm = 25.0


def board_feet(area: Mm2, thickness: Mm) -> float:
    """Board feet of a class: 144 cubic inches each, by its nominal thickness, an inch at least.

    Source: American Softwood Lumber Standard PS 20, board measure (from memory); the inch at least
    is common practice for hardwood too, no source.
    """
    return area * max(thickness, INCH) / BOARD_FOOT


def sample_rack(recipe: Recipe, area: Mm2, seed: int) -> tuple[Stock, ...]:
    """Boards as they might come, until their area is reached; more of one seed begins alike."""
    random = Random(seed)
    boards: list[Stock] = []
    total = 0.0
    while total < area:
        boards.append(_board(recipe, random, len(boards) + 1))
        total += boards[-1].length * boards[-1].width
    return tuple(boards)


def _board(recipe: Recipe, random: Random, number: int) -> Stock:
    length = random.choice(board_lengths(recipe))
    width = round(random.triangular(recipe.narrowest, recipe.widest, recipe.usual), 1)
    return Stock(
        key=f"board {number}",
        length=length,
        width=width,
        quantity=1,
        trim=Trim(left=recipe.end_trim, right=recipe.end_trim),
        bad=_bad(recipe, length, width, random),
        is_assumed=True,
    )


def board_lengths(recipe: Recipe) -> tuple[Mm, ...]:
    """From the shortest to the longest."""
    steps = int((recipe.longest - recipe.shortest) / recipe.step + 1e-9)
    return tuple(round(recipe.shortest + recipe.step * step, 6) for step in range(steps + 1))


def _bad(recipe: Recipe, length: Mm, width: Mm, random: Random) -> tuple[Box, ...]:
    """Spans right across, so that the clear share of the board is that of the recipe."""
    clear, stretches = recipe.clear_share * length, _stretches(recipe, length)
    spare = max(0.0, clear - stretches * recipe.least_clear)
    least = min(recipe.least_clear, clear / stretches)
    good = [least + share * spare for share in _shares(stretches, random)]
    bad = [share * (length - clear) for share in _shares(stretches + 1, random)]
    spans, at = [], 0.0
    for before, after in zip(bad, [*good, 0.0], strict=True):
        if before > 0.05:
            spans.append(Box(round(at, 3), 0.0, min(round(at + before, 3), length), width))
        at += before + after
    return tuple(spans)


def _stretches(recipe: Recipe, length: Mm) -> int:
    """Half as many clear stretches as there could be: some are long, none is too short."""
    if recipe.clear_share == 1:
        return 1
    return max(1, int(recipe.clear_share * length / recipe.least_clear / 2 + 0.5))


def _shares(count: int, random: Random) -> list[float]:
    """Shares of a whole at random, each division as likely as any other."""
    lines = [0.0, *sorted(random.random() for _ in range(count - 1)), 1.0]
    return [after - before for before, after in zip(lines, lines[1:], strict=False)]


def longest_clear(recipe: Recipe) -> Mm:
    """The longest clear stretch that any board of the recipe can have."""
    return max(longest_in(recipe, length) for length in board_lengths(recipe))


def longest_in(recipe: Recipe, length: Mm) -> Mm:
    """The longest clear stretch that a board of this length can have."""
    clear = recipe.clear_share * length
    others = (_stretches(recipe, length) - 1) * recipe.least_clear
    return min(clear - others, length - 2 * recipe.end_trim)
