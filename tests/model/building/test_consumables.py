"""Whatever a step or the schedule names is on a list that is read before the work begins."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest

from model.bed import Bed
from model.building.consumables import consumables
from model.building.finishing import finishing_schedule
from model.building.steps import build_steps
from model.building.tools import tool_list
from tests.model.building.beds import DEMOS, GUEST, LOFT, QUEEN, demo, turned

# Things that are used up or taken in hand, as makers name them; each with the words that list it.
THINGS = {
    r"tape\b(?! or bar)(?! measure)": "tape", r"double-sided": "double-sided", r"\bcard\b": "card",
    r"\bshim under": "shim", r"\bfelt\b": "felt", r"\bwax (or|them)\b": "wax",
    r"\bfill (nail|what)": "filler", r"\bcloth": "cloth", r"\bmallet": "mallet",
    r"\bcauls?\b": "caul", r"\bbrush": "brush", r"\bby hand with\b": "sandpaper",
    r"\bspacer\b": "spacer", r"\bscrape\b": "scraper", r"\bpencil": "pencil",
    r"\bstraight edge": "straight edge", r"\bwrench": "wrench", r"\bscrewdriver": "screwdriver",
    r"\bdrill\b": "drill", r"\bdiagonal": "diagonal", r"\bclamps?\b": "clamp",
}  # fmt: skip


def said(bed: Bed) -> Iterator[str]:
    for step in bed.once(build_steps):
        yield from step.text
        yield from step.tools
    schedule = finishing_schedule(bed)
    yield from (each.text for each in schedule.passes)
    yield from schedule.bare


def listed(bed: Bed) -> str:
    steps = bed.once(build_steps)
    small = (f"{each.name} {each.use}" for each in consumables(bed, steps))
    tools = (item for group in tool_list(bed, steps) for item in group.items)
    return " ".join((*small, *tools)).lower()


BEDS = {
    **{name: lambda name=name: demo(name) for name in DEMOS},
    "wooden runners": lambda: turned(GUEST, slide="wooden_runner", box_top_room=30.0),
    "plain oil": lambda: turned(QUEEN, finish="oil"),
    "bare": lambda: turned(LOFT, finish="none"),
}


def test_every_thing_that_is_looked_for_is_named_somewhere() -> None:
    """A word that no step says any more would be looked for in vain, and never missed."""
    text = " ".join(words for make in BEDS.values() for words in said(make())).lower()

    assert [words for words in THINGS if not re.search(words, text)] == []


@pytest.mark.parametrize("name", BEDS)
def test_what_steps_and_schedule_name_is_on_a_list(name: str) -> None:
    bed = BEDS[name]()
    text, lists = " ".join(said(bed)).lower(), listed(bed)

    missing = [thing for words, thing in THINGS.items()
               if re.search(words, text) and thing not in lists]  # fmt: skip

    assert missing == []


def test_every_spacer_is_listed_with_its_size() -> None:
    names = {
        each.name: each.use for each in consumables(demo(QUEEN), demo(QUEEN).once(build_steps))
    }

    assert '2 7/16"' in names["Scrap for the slat spacer"]
    assert any("slide spacer" in name for name in names)


def test_spacers_between_rails_are_listed_too() -> None:
    """Steps clamp the queen's frames on spacers: between the headboard's rails stand 28 3/4 in."""
    bed = demo(QUEEN)

    names = {each.name: each.use for each in consumables(bed, bed.once(build_steps))}

    assert '28 3/4"' in names["Scrap for spacers between what is clamped"]


def test_a_bare_bed_needs_no_brush_for_paint() -> None:
    bare = turned(LOFT, finish="none")

    names = " ".join(each.name for each in consumables(bare, bare.once(build_steps)))

    assert "Brushes" not in names
    assert "Masking tape" not in names
