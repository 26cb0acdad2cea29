"""Random-width lumber by the board foot: how much to ask for, and which long and wide ones."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from math import ceil, isfinite

from model.bed import Bed
from model.cutting.plan import Stop
from model.cutting.racks import RackOdds, Recipe, board_feet, rack_odds
from model.cutting.record import Effort, Task
from model.shop.assumed_boards import Asked, asked_for, recipe_of, usual
from model.shop.remembered import Remembered
from model.shop.tasks import CutTask, tasks
from model.stock.prices import BoardMeasure
from model.units import INCH, Mm, Mm2, Share, show_length

NINE_IN_TEN: Share = 0.9  # of the racks drawn at random: what is asked for


@dataclass(frozen=True, kw_only=True)
class Lumber:
    """What to ask a yard for of one wood and class.

    `asked` boards must be among it, or narrower ones in place of those for several strips; `odds`
    tell of the rest, whose pieces any board may give: how much of it held these pieces in racks
    drawn at random.
    """

    key: str
    material: str
    material_name: str
    asked: tuple[Asked, ...]
    odds: RackOdds

    @property
    def asked_area(self) -> Mm2:
        """Of the boards that are asked for, as long as a yard has them and no wider than that."""
        return sum(each.boards * each.length * each.width for each in self.asked)

    def area(self, share: Share) -> Mm2 | None:
        """All boards together, so that this share of the racks holds all pieces; None if none do,
        or none was tried.
        """
        if not self.odds.net:
            return self.asked_area
        rest = self.odds.area(share)
        return None if rest is None else self.asked_area + rest

    def board_feet(self, share: Share) -> float | None:
        """The same in board feet of the class."""
        area = self.area(share)
        return None if area is None else board_feet(area, self.odds.recipe.thickness)

    def sentences(self, unit: str, by: BoardMeasure = "board foot") -> tuple[str, ...]:
        """What to say at the yard, and how sure that is; lengths in the maker's unit, quantities by
        the measure that the yard bills.
        """
        return (*self.asked_sentences(unit), *self._odds_sentence(by))

    def asked_sentences(self, unit: str) -> Iterator[str]:
        """The long and wide boards that must be among it; lengths in the maker's unit."""
        for each in self.asked:
            wide = each.least_width or each.width
            size = f"{_tape(each.clear, unit)} clear and {_tape(wide, unit)} wide"
            boards = "One board" if each.boards == 1 else f"{each.boards} boards"
            marks = ", ".join(each.marks)
            if not each.side_by_side:
                yield f"{boards} at least {size}, for {marks}."
                continue
            strips = ", ".join(f"{mark} {_tape(own, unit)}" for mark, own in each.side_by_side)
            yield (
                f"{boards} at least {size}, for {marks} side by side; or narrower ones as long, "
                f"one for each piece: {strips} wide."
            )

    def _odds_sentence(self, by: BoardMeasure) -> Iterator[str]:
        half, most = self._billed(0.5, by), self._billed(NINE_IN_TEN, by)
        if half is None or most is None:
            if self.odds.racks:
                yield (
                    "So few racks held all pieces that no quantity can be named: ask for clearer "
                    "boards."
                )
            return
        if not self.odds.net:
            yield f"{most} in all."
            return
        area = self.odds.area(NINE_IN_TEN)
        low, high = self.odds.interval(area if area is not None else 0.0)
        yield (
            f"{most} in all held every piece in 9 of 10 racks drawn at random, "
            f"{half.partition(' ')[0]} in half of them; with {self.odds.racks} racks tried, "
            f"between {low:.0%} and {high:.0%} of all such racks would do with the first. No whole "
            "plan is made of each: now and then it takes a board more."
        )

    def _billed(self, share: Share, by: BoardMeasure) -> str | None:
        """`37 board feet`, `0.088 m3`: rounded up; None if no quantity can be named."""
        area, feet = self.area(share), self.board_feet(share)
        if area is None or feet is None or not isfinite(feet):
            return None
        if by == "board foot":
            return f"{ceil(feet)} board feet"
        volume = area * self.odds.recipe.thickness / 1e9  # mm3 in a m3
        return f"{ceil(volume * 1000 - 1e-9) / 1000:.3f} m3"


def _tape(size: Mm, unit: str) -> str:
    """A least size as one asks for it, on the next eighth of an inch, or mm: what is rounded up
    farther turns boards away that would do.
    """
    step = INCH / 8 if unit == "inch" else 1.0
    return show_length(ceil(size / step - 1e-9) * step, unit)


Told = Callable[[Lumber], None]


def lumber(
    bed: Bed,
    racks: int | None = None,
    better: Told = lambda _: None,
    stop: Stop = lambda: False,
) -> tuple[Lumber, ...]:
    """What to ask for, for every task that is reckoned by the board foot; told to `better` rack by
    rack. `racks` is how many are tried, as many as the maker wants where it is None.
    """
    tried: int = bed.design.value("racks_tried") if racks is None else racks
    return tuple(_lumber(bed, task, tried, better, stop) for task in by_foot(bed))


def by_foot(bed: Bed) -> tuple[CutTask, ...]:
    """The tasks whose boards nobody has typed in."""
    return tuple(
        task
        for task in tasks(bed)
        if task.task.stock and all(each.is_assumed for each in task.task.stock)
    )


def _lumber(bed: Bed, task: CutTask, racks: int, better: Told, stop: Stop) -> Lumber:
    recipe = recipe_of(bed.design, task.thickness)
    whole = replace(task.task, stock=())
    asked = asked_for(whole, recipe)

    def of(odds: RackOdds) -> Lumber:
        return Lumber(
            key=task.key,
            material=task.material,
            material_name=task.material_name,
            asked=asked,
            odds=odds,
        )

    rest = replace(whole, pieces=usual(whole, recipe))
    return of(_odds(rest, recipe, racks, lambda odds: better(of(odds)), stop))


def _odds(
    task: Task, recipe: Recipe, racks: int, better: Callable[[RackOdds], None], stop: Stop
) -> RackOdds:
    """Worked out once for each list and recipe; what was stopped is not kept."""
    known = _ODDS.get((task, recipe, racks))
    if known is None:
        known = rack_odds(task, recipe, Effort(racks=racks), better, stop)
        if known.racks == racks or not task.pieces:
            _ODDS.keep((task, recipe, racks), known)
    better(known)
    return known


_ODDS: Remembered[tuple[Task, Recipe, int], RackOdds] = Remembered(400)
