"""Does the mattress find its place, can it be bedded, and is it right for the sleeper?"""

from model.brief.ends import EndStyle
from model.brief.loads import SleepersAre
from model.checks.record import Finding, advice, at_least, at_most, between, check
from model.units import INCH, Count, Measured, Mm

FORUM = "a furniture forum, bed builders, 2013"
ARTICLES = "five articles on headboard heights, no two alike: there is no standard"


@check(
    "fit",
    "The largest mattress drops in, across",
    about="side_fit_built",
    source="EN 1334 allows a mattress 20 mm either way; elsewhere the tolerance is an assumption",
    remedies=("side_fit",),
)
def mattress_drops_in_across(side_fit_built: Mm, mattress_tolerance: Mm) -> Finding:
    """A mattress may be wider than its label by its tolerance and must still drop in."""
    return at_least(2 * side_fit_built, mattress_tolerance, tight=3)


@check(
    "fit",
    "The largest mattress drops in, lengthwise",
    about="end_fit_built",
    source="EN 1334 allows a mattress 20 mm either way; elsewhere the tolerance is an assumption",
    remedies=("end_fit",),
)
def mattress_drops_in_along(end_fit_built: Mm, mattress_tolerance: Mm) -> Finding:
    """A mattress may be longer than its label by its tolerance and must still drop in."""
    return at_least(2 * end_fit_built, mattress_tolerance, tight=3)


@check("fit", "Hand room to tuck the bedding", about="side_fit_built", source=FORUM)
def bedding_room(side_fit_built: Mm) -> Finding:
    """Under half an inch beside the mattress, sheets cannot be tucked."""
    return advice(at_least(side_fit_built, 12.7))


@check("fit", "The mattress does not look loose", about="side_fit_built", source=FORUM)
def mattress_not_loose(side_fit_built: Mm) -> Finding:
    """An inch at each side is the most that makers leave; a client has refused that much as too
    loose.
    """
    return advice(at_most(side_fit_built, INCH, tight=INCH / 8))


@check("fit", "Recess holds the mattress", about="recess_built")
def recess_holds(recess_built: Mm) -> Finding:
    """One to three inches: less lets the mattress slide off, more hides it and hurts the tucking
    hand.
    """
    return advice(between(recess_built, 25, 3 * INCH))


@check("fit", "Mattress stands above the rail", about="mattress_high")
def mattress_shows(mattress_high: Mm, recess_built: Mm) -> Finding:
    """Who sits down must load the mattress, not the rail's edge."""
    return advice(at_least(mattress_high - recess_built, 152))


@check(
    "fit",
    "Sleeping height is easy to rise from",
    about="sleeping_height",
    source="ADA lodging fact sheet: 17 to 23 in",
)
def sleeping_height_easy(sleeping_height: Mm, sleepers_are: SleepersAre) -> Finding:
    """17 to 23 in is recommended; drawers under a thick mattress soon make a bed to jump into.

    Advice, but a limit where a frail adult has to rise from it.
    """
    found = between(sleeping_height, 17 * INCH, 23 * INCH)
    return found if sleepers_are == "a frail adult" else advice(found)


@check(
    "fit",
    "Two mattresses count as their sum",
    about="mattress_across",
    source="a builder's blog, 2018: two 39 in mattresses measured 78 in, not 76",
)
def two_piece_sum(
    mattress_pieces: Count, mattress_across: Mm, mattress_width_measured: Measured
) -> Finding | None:
    """Two pieces side by side are often wider than the label of one; measure each."""
    if mattress_pieces == 1:
        return None
    measured = 1.0 if mattress_width_measured is not None else 0.0
    return advice(at_least(measured, 1.0, unit="measured"))


@check("fit", "Headboard shows above the mattress", about="head.height", source=ARTICLES)
def headboard_shows(head_style: EndStyle, head_post_top: Mm, sleeping_height: Mm) -> Finding | None:
    """A thick mattress and its pillows swallow a low headboard: 14 in above it is the least that
    is advised.
    """
    if head_style in ("none", "low rail"):
        return None
    return advice(at_least(head_post_top - sleeping_height, 14 * INCH))


@check("fit", "Footboard is not in the way of feet", about="foot.height")
def footboard_low(foot_style: EndStyle, foot_post_top: Mm, sleeping_height: Mm) -> Finding | None:
    """A footboard more than 4 in above the mattress stops the feet of tall sleepers and the
    bedding hand.
    """
    if foot_style == "none":
        return None
    return advice(at_most(foot_post_top - sleeping_height, 102))
