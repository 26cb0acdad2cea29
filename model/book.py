"""The one rule book of the bed family: which chapters it has, and for which sides and ends each is
read.
"""

from __future__ import annotations

from functools import cache
from importlib import import_module

from model.brief import all_choices
from model.checks.run import CheckList
from model.rules import Chapter, RuleBook

SIDES = ("left", "right")
ENDS = ("head", "foot")
ROWS = ("left", "right", "foot")
BED = ("",)

# In the order of building: it decides the order of marks.
DIMENSIONS: dict[tuple[str, ...], str] = {
    BED: "stock heights well joinery connector_sizes deck beam beam_rest slides box_make "
    "runners brackets stop_heights loads climate deck_seasons route floor",
    ("left",): "left_side",
    ("right",): "right_side",
    ("head",): "head_end",
    ("foot",): "foot_end foot_row",
    ENDS: "ends end_members end_panels end_planks end_slats end_cap posts end_seasons",
    SIDES: "long_sides side_row closing connectors fixed_fronts nightstand closing_seasons",
    ROWS: "layout side_frames boxes slide_places bearers dividers runner_places stops fronts "
    "front_frames pulls room drawer_load drawer_forces front_seasons",
}
PARTS: dict[tuple[str, ...], str] = {
    BED: "joinery box_corners deck beam",
    ("foot",): "foot_frame",
    ENDS: "posts ends end_filling end_planks end_dowels beam_block",
    SIDES: "connector_work side_frames closing connectors cleat_screws cleats fixed_fronts",
    ROWS: "rail_work stile_kinds stiles frame_dowels bearers brackets bearer_screwing runners "
    "guides stops boxes slides fronts front_fixing framed_fronts",
}
CHECKS: dict[str, dict[tuple[str, ...], str]] = {
    "fit": {
        BED: "mattress deck stock connectors fasteners",
        ENDS: "ends",
        SIDES: "side_connectors nightstand",
        ROWS: "drawers",
    },
    "strength": {
        BED: "frame sway screw_places",
        ENDS: "end_joints",
        SIDES: "cleat_screws slat_screws plate_screws bolts connector_loads",
        ROWS: "stile_screws stile_glue bracket_screws "
        "drawer_bottoms drawer_boxes drawer_slides drawer_runners drawer_fronts drawers_open",
    },
    "movement": {
        BED: "parts glue layers deck squeaks",
        ENDS: "ends",
        SIDES: "closing",
        ROWS: "fronts",
    },
    "safety": {
        BED: "gaps height corners weights carry_through",
        ENDS: "openings posts",
        SIDES: "beside",
        ROWS: "moving wall pulls",
    },
}

# What checks may ask for beside dimensions: see `model.bed.Bed.facts`.
FACTS = (
    "pieces",
    "parts",
    "masses",
    "screw_points",
    "drawer_travel",
    "holding",
    "weights",
    "strength",
    "carried",
    "materials",
)


def _chapters(folder: str, listed: dict[tuple[str, ...], str]) -> list[Chapter]:
    return [
        Chapter(import_module(f"model.{folder}.{name}"), scopes)
        for scopes, names in listed.items()
        for name in names.split()
    ]


@cache
def open_book() -> RuleBook:
    """The rule book, opened and checked once."""
    kinds = {name: choice.kind for name, choice in all_choices().items()}
    return RuleBook(kinds, _chapters("dimensions", DIMENSIONS) + _chapters("parts", PARTS))


@cache
def check_list() -> CheckList:
    """All checks, bound once to the dimensions and facts they need."""
    chapters = [
        (chapter.module, chapter.scopes)
        for folder, listed in CHECKS.items()
        for chapter in _chapters(f"checks.{folder}", listed)
    ]
    return CheckList(open_book(), chapters, FACTS)
