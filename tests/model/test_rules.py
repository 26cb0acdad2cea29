"""The rule book finds its own mistakes, tells why, and derives again only what a change touches."""

from __future__ import annotations

import ast
import copy
import inspect
import json
import pickle
import textwrap
from collections.abc import Callable
from dataclasses import asdict, dataclass
from types import ModuleType
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from model.book import check_list, open_book
from model.brief import cutting, finish, publishing
from model.brief.declare import choices_of
from model.errors import CannotBuild
from model.rules import Chapter, Dim, Dimensions, RuleBook, rule
from model.units import GRIDS, Count, Mm, ShopGrid

CHOICES = {
    "rail_length": Mm,
    "end_stile_least": Mm,
    "mid_stile": Mm,
    "grid": ShopGrid,
    "left.drawers": Count,
    "right.drawers": Count,
}
READ_LATER = (
    *(finish.Finishing, finish.Spares),  # by the buying list: tests/model/cost
    *(cutting.Milling, cutting.Sawing, cutting.Buying),  # by cut list and plans: tests/model/shop
    publishing.Publishing,  # by the plan set: tests/model/planset
)
START: dict[str, Any] = {
    "rail_length": 1905.0,
    "end_stile_least": 45.0,
    "mid_stile": 38.0,
    "grid": GRIDS["1 mm"],
    "left.drawers": 2,
    "right.drawers": 3,
}


# ---------------------------------------------------------------- a small book of rules


@rule
def clear_length(rail_length: Mm, end_stile_least: Mm, mid_stile: Mm, drawers: Count) -> Mm:
    """What the stiles leave of the rail is shared by the drawers."""
    if drawers < 1:
        raise CannotBuild("drawers", "A row without drawers has no openings.")
    return rail_length - 2 * end_stile_least - (drawers - 1) * mid_stile


@rule
def opening_width(clear_length: Mm, drawers: Count, grid: ShopGrid) -> Mm:
    """Openings are alike, so that one spacer and one box size serve the whole row.

    What the grid leaves over goes to the stiles.
    Source: a maker's notebook, page 7
    """
    return grid.down(clear_length / drawers)


@rule
def has_wide_openings(opening_width: Mm) -> bool:
    """Wide openings want two pulls."""
    return opening_width > 610


@rule
def drawers_in_all(left_drawers: Count, right_drawers: Count) -> Count:
    """Both rows together."""
    return left_drawers + right_drawers


@rule
def is_even(drawers: Count, opposite_drawers: Count) -> bool:
    """Both sides look alike."""
    return drawers == opposite_drawers


def module(*functions: Callable[..., Any]) -> ModuleType:
    made = ModuleType(__name__)
    for function in functions:
        setattr(made, function.__name__, function)
    return made


def row_book() -> RuleBook:
    row = Chapter(module(clear_length, opening_width, has_wide_openings), ("left", "right"))
    both = Chapter(module(is_even), ("left", "right"))
    return RuleBook(CHOICES, [row, both, Chapter(module(drawers_in_all))])


def row_dimensions(**changes: Any) -> Dimensions:
    return Dimensions(row_book()).changed(START | changes)


def small_book(*functions: Callable[..., Any], **choices: Any) -> RuleBook:
    return RuleBook(choices, [Chapter(module(*functions))])


# ---------------------------------------------------------------- mistakes found on opening


def test_a_need_that_nothing_gives_is_named_with_its_rule() -> None:
    @rule
    def stile(plinth: Mm) -> Mm:
        """A stile stands on the plinth."""
        return plinth

    with pytest.raises(LookupError, match="stile needs plinth, which no rule or choice gives"):
        small_book(stile)


def test_a_need_in_another_unit_is_refused() -> None:
    @rule
    def stile(bays: Mm) -> Mm:
        """A stile per bay."""
        return bays

    with pytest.raises(TypeError, match="stile takes bays as .*mm.* but it is .*count"):
        small_book(stile, bays=Count)


def test_rules_in_a_circle_are_told_one_by_one() -> None:
    @rule
    def rail(post: Mm) -> Mm:
        """The rail fits the post."""
        return post

    @rule
    def post(rail: Mm) -> Mm:
        """The post fits the rail."""
        return rail

    with pytest.raises(ValueError, match="rules in a circle: ") as problem:
        small_book(rail, post)

    assert {"rail", "post"} <= set(str(problem.value).replace("<-", " ").split())


def test_a_rule_may_not_give_what_is_a_choice_already() -> None:
    @rule
    def rail() -> Mm:
        """A rail."""
        return 1.0

    with pytest.raises(ValueError, match="rail is given twice"):
        small_book(rail, rail=Mm)


def test_two_chapters_may_not_give_one_name() -> None:
    both = Chapter(module(drawers_in_all))

    with pytest.raises(ValueError, match="drawers_in_all is given twice"):
        RuleBook(CHOICES, [both, both])


def test_a_function_that_is_no_rule_gives_nothing() -> None:
    def helper(nothing_like_this: Mm) -> Mm:
        return nothing_like_this

    assert small_book(helper).rules == {}


def test_a_rule_that_a_chapter_only_imports_is_not_read_again() -> None:
    borrowed = ModuleType("another_chapter")
    setattr(borrowed, clear_length.__name__, clear_length)

    assert RuleBook(CHOICES, [Chapter(borrowed)]).rules == {}


# ---------------------------------------------------------------- where a need is looked up


def test_a_need_is_looked_up_in_its_own_row_first() -> None:
    book = row_book()

    assert book.needs("left.opening_width") == ("left.clear_length", "left.drawers", "grid")


def test_its_own_row_comes_before_a_bed_wide_name() -> None:
    @rule
    def front(overlay: Mm) -> Mm:
        """A front covers its frame."""
        return overlay

    choices = {"overlay": Mm, "left.overlay": Mm}

    book = RuleBook(choices, [Chapter(module(front), ("left", "right"))])

    assert book.needs("left.front") == ("left.overlay",)
    assert book.needs("right.front") == ("overlay",)


def test_a_bed_wide_rule_names_a_row_by_its_side() -> None:
    assert row_book().needs("drawers_in_all") == ("left.drawers", "right.drawers")


def test_the_opposite_of_left_is_right_and_of_right_left() -> None:
    book = row_book()

    assert book.needs("left.is_even") == ("left.drawers", "right.drawers")
    assert book.needs("right.is_even") == ("right.drawers", "left.drawers")


def test_the_opposite_of_the_foot_is_the_head() -> None:
    book = RuleBook({"head.height": Mm, "foot.height": Mm}, [])

    assert book.full_name("foot", "opposite_height") == "head.height"
    assert book.full_name("head", "opposite_height") == "foot.height"


def test_the_whole_bed_has_no_opposite() -> None:
    with pytest.raises(LookupError):
        row_book().full_name("", "opposite_drawers")


# ---------------------------------------------------------------- deriving


def test_a_row_is_derived_from_its_choices() -> None:
    bed = row_dimensions()

    assert bed["left.clear_length"] == 1905 - 2 * 45 - 38
    assert bed["left.opening_width"] == (1905 - 2 * 45 - 38) // 2
    assert bed["right.opening_width"] == (1905 - 2 * 45 - 2 * 38) // 3
    assert bed["drawers_in_all"] == 5
    assert bed["left.is_even"] is False


def test_only_what_hangs_on_a_change_is_derived_again() -> None:
    calls: list[str] = []

    @rule
    def post(stock: Mm) -> Mm:
        """A post of two layers."""
        calls.append("post")
        return 2 * stock

    @rule
    def rail(length: Mm) -> Mm:
        """A rail."""
        calls.append("rail")
        return length

    @rule
    def bed(rail: Mm, post: Mm) -> Mm:
        """Rail and posts."""
        calls.append("bed")
        return rail + 2 * post

    first = Dimensions(small_book(post, rail, bed, stock=Mm, length=Mm)).changed(
        {"stock": 20.0, "length": 2000.0}
    )
    assert sorted(calls) == ["bed", "post", "rail"]
    calls.clear()

    second = first.changed({"stock": 21.0, "length": 2000.0})

    assert calls == ["post", "bed"]
    assert second.moved == {"stock", "post", "bed"}
    assert second["bed"] == 2000 + 2 * 2 * 21


def test_rounding_stops_the_ripple() -> None:
    """One end stile wider by a hair: the openings on the grid stand still, and all behind them."""
    calls: list[float] = []

    @rule
    def shown(width: Mm) -> Mm:
        """What is seen."""
        calls.append(width)
        return width

    @rule
    def width(run: Mm, grid: ShopGrid) -> Mm:
        """Cut on the grid."""
        return grid.down(run)

    first = Dimensions(small_book(width, shown, run=Mm, grid=ShopGrid)).changed(
        {"run": 600.4, "grid": GRIDS["1 mm"]}
    )

    second = first.changed({"run": 600.6})

    assert calls == [600.0]
    assert second.moved == {"run"}


def test_a_change_on_the_left_moves_nothing_on_the_right() -> None:
    moved = row_dimensions().changed({"left.drawers": 4}).moved

    assert not [name for name in moved if name.startswith("right.") and name != "right.is_even"]
    assert "left.opening_width" in moved


def test_the_same_choice_again_moves_nothing() -> None:
    assert row_dimensions().changed(START).moved == frozenset()


@given(
    st.lists(
        st.one_of(
            st.tuples(st.just("left.drawers"), st.integers(1, 6)),
            st.tuples(st.just("right.drawers"), st.integers(1, 6)),
            st.tuples(st.just("rail_length"), st.floats(1500, 2400)),
            st.tuples(st.just("mid_stile"), st.floats(20, 80)),
            st.tuples(st.just("grid"), st.sampled_from(sorted(GRIDS)).map(GRIDS.__getitem__)),
        ),
        max_size=8,
    )
)
def test_edits_one_after_another_equal_starting_afresh(edits: list[tuple[str, Any]]) -> None:
    edited = row_dimensions()
    for name, value in edits:
        edited = edited.changed({name: value})

    afresh = row_dimensions(**dict(edits))

    assert edited.values == afresh.values


# ---------------------------------------------------------------- refusals


def test_a_refusal_leaves_the_last_dimensions_whole() -> None:
    good = row_dimensions()
    before = dict(good.values)

    with pytest.raises(CannotBuild):
        good.changed({"rail_length": 1800.0, "left.drawers": 0})

    assert good.values == before
    assert good.changed({"left.drawers": 3})["left.opening_width"] == good["right.opening_width"]


def test_a_refusal_names_the_field_of_its_own_row_and_the_rule_that_noticed() -> None:
    with pytest.raises(CannotBuild) as refusal:
        row_dimensions(**{"right.drawers": 0})

    assert refusal.value.field == "right.drawers"
    assert refusal.value.involved[-1] == "right.clear_length"
    assert refusal.value.sentence == "A row without drawers has no openings."


def test_a_refusal_finds_the_field_of_its_row_among_what_its_rule_does_not_need() -> None:
    """The sentence stands beside the field of the right end, and not beside that of none."""

    @rule
    def panel(opening: Mm) -> Mm:
        """A panel fills its opening."""
        raise CannotBuild("mid_stiles", "So many stiles leave no panel.")

    choices = {"opening": Mm, "head.mid_stiles": Count, "foot.mid_stiles": Count}
    book = RuleBook(choices, [Chapter(module(panel), ("foot",))])

    with pytest.raises(CannotBuild) as refusal:
        Dimensions(book).changed({"opening": 9.0, "head.mid_stiles": 1, "foot.mid_stiles": 5})

    assert refusal.value.field == "foot.mid_stiles"


def test_a_refusal_over_something_that_is_no_dimension_keeps_its_own_word() -> None:
    @rule
    def rail(stock: Mm) -> Mm:
        """A rail."""
        raise CannotBuild("screw", "No screw is so short.")

    with pytest.raises(CannotBuild) as refusal:
        Dimensions(small_book(rail, stock=Mm)).changed({"stock": 3.0})

    assert refusal.value.field == "screw"


def test_a_refusal_keeps_the_choices_in_conflict() -> None:
    @rule
    def rail(stock: Mm) -> Mm:
        """A rail."""
        raise CannotBuild("stock", "Too thin.", involved=("grid",))

    with pytest.raises(CannotBuild) as refusal:
        Dimensions(small_book(rail, stock=Mm)).changed({"stock": 3.0})

    assert refusal.value.involved == ("grid", "rail")


def test_an_error_that_is_no_refusal_stays_what_it_is() -> None:
    """A bug of ours is not told as if the maker's choice were at fault."""

    @rule
    def rail(stock: Mm) -> Mm:
        """A rail."""
        return stock / 0

    with pytest.raises(ZeroDivisionError):
        Dimensions(small_book(rail, stock=Mm)).changed({"stock": 3.0})


# ---------------------------------------------------------------- sizes that keep their names


def test_lengths_keep_the_name_of_their_rule_or_choice() -> None:
    bed = row_dimensions()

    assert bed["left.opening_width"].name == "left.opening_width"
    assert bed["rail_length"].name == "rail_length"


def test_counts_and_yes_or_no_stay_plain() -> None:
    bed = row_dimensions()

    assert type(bed["drawers_in_all"]) is int
    assert type(bed["left.is_even"]) is bool


@dataclass(frozen=True)
class Piece:
    length: float


@pytest.mark.parametrize(
    "again",
    [
        lambda dim: pickle.loads(pickle.dumps(dim)),
        copy.copy,
        copy.deepcopy,
        lambda dim: asdict(Piece(dim))["length"],
    ],
    ids=["pickle", "copy", "deepcopy", "asdict"],
)
def test_a_name_survives_copying(again: Callable[[Dim], Dim]) -> None:
    dim = again(Dim(889.0, "left.opening_width"))

    assert (dim, dim.name) == (889.0, "left.opening_width")


def test_a_named_length_is_written_as_a_number() -> None:
    assert json.loads(json.dumps({"length": Dim(889.5, "rail")})) == {"length": 889.5}


def test_arithmetic_on_a_named_length_gives_a_nameless_one() -> None:
    assert not hasattr(Dim(10, "rail") + Dim(5, "post"), "name")


# ---------------------------------------------------------------- why


def show(value: Any) -> str:
    return f"{value:g} mm" if isinstance(value, float) else str(getattr(value, "name", value))


def test_why_goes_down_to_the_makers_choices() -> None:
    told = list(row_dimensions().why("left.opening_width", show))

    assert told == [
        "left.opening_width = 888 mm. "
        "Openings are alike, so that one spacer and one box size serve the whole row.",
        "  = grid.down(clear_length / drawers)",
        "  source: a maker's notebook, page 7",
        "    left.clear_length = 1777 mm. "
        "What the stiles leave of the rail is shared by the drawers.",
        "      = rail_length - 2 * end_stile_least - (drawers - 1) * mid_stile",
        "        rail_length = 1905 mm, your choice",
        "        end_stile_least = 45 mm, your choice",
        "        mid_stile = 38 mm, your choice",
        "        left.drawers = 2, your choice",
        "    left.drawers = 2, your choice",
        "    grid = 1 mm, your choice",
    ]


def test_why_tells_each_rule_once() -> None:
    @rule
    def post(stock: Mm) -> Mm:
        """Two layers."""
        return 2 * stock

    @rule
    def foot(post: Mm) -> Mm:
        """As wide as its post."""
        return post

    @rule
    def bed(foot: Mm, post: Mm) -> Mm:
        """Foot and post."""
        return foot + post

    dimensions = Dimensions(small_book(post, foot, bed, stock=Mm)).changed({"stock": 20.0})

    told = list(dimensions.why("bed", show))

    assert len([line for line in told if "Two layers." in line]) == 1
    assert told[-1].strip() == "post = 40 mm, see above"


def test_why_of_a_choice_is_the_choice() -> None:
    assert list(row_dimensions().why("mid_stile", show)) == ["mid_stile = 38 mm, your choice"]


def test_a_rule_without_a_source_names_none() -> None:
    book = row_book()

    assert book.source("left.clear_length") is None
    assert book.source("left.opening_width") == "a maker's notebook, page 7"


def test_the_reason_is_the_first_line_alone() -> None:
    assert "What the grid leaves" not in row_book().reason("left.opening_width")


# ---------------------------------------------------------------- what hangs on what


def test_the_roots_of_a_dimension_are_choices_nearest_first() -> None:
    assert row_book().roots("left.opening_width") == (
        *("left.drawers", "grid"),
        *("rail_length", "end_stile_least", "mid_stile"),
    )


def test_a_choice_has_no_roots() -> None:
    assert row_book().roots("grid") == ()


def test_a_choice_drives_all_that_hangs_on_it_and_nothing_else() -> None:
    drives = row_book().drives

    assert drives["left.drawers"] == {
        *("left.clear_length", "left.opening_width", "left.has_wide_openings"),
        *("left.is_even", "right.is_even", "drawers_in_all"),
    }
    assert drives["grid"] == {
        *("left.opening_width", "left.has_wide_openings"),
        *("right.opening_width", "right.has_wide_openings"),
    }


def test_roots_and_drives_say_the_same() -> None:
    book = row_book()

    from_roots = {(root, name) for name in book.rules for root in book.roots(name)}

    assert from_roots == {(root, name) for root, names in book.drives.items() for name in names}


# ---------------------------------------------------------------- the book of the bed family

BED = open_book()


@pytest.mark.parametrize("name", BED.rules)
def test_every_rule_of_the_bed_says_why_in_one_sentence(name: str) -> None:
    reason = BED.reason(name)

    assert reason.endswith(".")
    assert len(reason.split()) >= 3


def test_every_length_of_the_bed_hangs_on_a_choice_or_names_its_source() -> None:
    lengths = [step.name for step in BED.steps if step.is_length]

    loose = [name for name in lengths if not BED.roots(name) and not BED.source(name)]

    assert [name for name in loose if "return 0.0" not in inspect.getsource(BED.rules[name])] == []


def test_every_choice_of_the_bed_drives_something() -> None:
    """A field that moves nothing would be a promise that is not kept; checks count too. What is
    read when the bed is cut and bought is tried there.
    """
    asked = {need for step in check_list().steps for need in step.needs}

    idle = {name for name, driven in BED.drives.items() if not driven and name not in asked}

    later = {choice.name for topic in READ_LATER for choice in choices_of(topic)}
    assert idle <= {"shown_unit", *later}  # lengths are shown in it, and no length hangs on it


def refusals(function: Callable[..., Any]) -> list[str]:
    """The field names that a rule's own refusals give."""
    tree = ast.parse(textwrap.dedent(inspect.getsource(function)))
    calls = [node for node in ast.walk(tree) if isinstance(node, ast.Call)]
    named = [call for call in calls if getattr(call.func, "id", "") == "CannotBuild"]
    return [call.args[0].value for call in named if isinstance(call.args[0], ast.Constant)]


@pytest.mark.parametrize("name", [n for n, f in BED.rules.items() if refusals(f)])
def test_every_refusal_of_a_rule_leads_to_a_choice_of_the_maker(name: str) -> None:
    for field in refusals(BED.rules[name]):
        at_fault = BED.full_name(name.rpartition(".")[0], field)

        assert at_fault in BED.choice_kinds or BED.roots(at_fault), at_fault
