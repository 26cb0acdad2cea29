"""Where runners, kickers and rear stops lie in their row. Read for left, right and foot."""

from model.brief.drawers import FrontFit
from model.dimensions.spots import shifted
from model.materials import Slide
from model.rules import rule
from model.units import Count, Mm, Places, ShopGrid


@rule
def runs_on_wood(
    has_wooden_runners: bool, has_skids: bool, box_depth: Mm, slide_closed: Mm, drawer_count: Count
) -> bool:
    """Whether runners or skids lie under the box sides."""
    is_longer = box_depth > slide_closed + 1
    return drawer_count > 0 and (has_wooden_runners or (has_skids and is_longer))


@rule
def runner_length(box_back_plane: Mm, bearer_plane: Mm, grid: ShopGrid) -> Mm:
    """A runner reaches from its bearer's end to the back of the closed box."""
    return grid.down(box_back_plane - bearer_plane)


@rule
def runner_places(opening_places: Places, runs_on_wood: bool) -> Places:
    """A runner is screwed to the bearer's face, at the opening's edge."""
    return opening_places if runs_on_wood else ()


@rule
def runner_far_places(runner_places: Places, opening_width: Mm, runner_width: Mm) -> Places:
    """The runner at the opening's far edge."""
    return shifted(runner_places, opening_width - runner_width)


@rule
def kicker_places(opening_places: Places, has_wooden_runners: bool, drawer_count: Count) -> Places:
    """A kicker lies above each box side, clear of the bearer, on which a beam may rest."""
    return opening_places if has_wooden_runners and drawer_count else ()


@rule
def kicker_far_places(kicker_places: Places, opening_width: Mm, runner_width: Mm) -> Places:
    """The kicker at the opening's far edge."""
    return shifted(kicker_places, opening_width - runner_width)


@rule
def kicker_post_places(kicker_places: Places, bearer_stock: Mm) -> Places:
    """The posts of a kicker stand on the bearer beside it."""
    return shifted(kicker_places, -bearer_stock)


@rule
def kicker_post_far_places(kicker_places: Places, opening_width: Mm) -> Places:
    """The posts at the opening's far edge."""
    return shifted(kicker_places, opening_width)


@rule
def kicker_post_planes(
    bearer_plane: Mm, runner_length: Mm, bearer_height: Mm, grid: ShopGrid
) -> Places:
    """One post stands behind the frame, one under three quarters of the kicker's length."""
    return (bearer_plane, bearer_plane + grid.near(runner_length * 3 / 4 - bearer_height / 2))


@rule
def has_rear_stop(front_fit: FrontFit, slide: Slide, drawer_count: Count) -> bool:
    """Inset fronts, and drawers that their slide does not hold, close against a stop."""
    return drawer_count > 0 and (front_fit == "inset" or not slide.holds_the_drawer)


@rule
def rear_stop_places(
    has_rear_stop: bool, has_centre_runner: bool, bearer_places: Places, opening_places: Places
) -> Places:
    """Rear stops sit on the bearers' faces behind the box sides, or on the centre runner."""
    if not has_rear_stop:
        return ()
    return bearer_places if has_centre_runner else opening_places


@rule
def rear_stop_far_places(
    has_rear_stop: bool,
    has_centre_runner: bool,
    opening_places: Places,
    opening_width: Mm,
    rear_stop_width: Mm,
) -> Places:
    """The rear stop at the opening's far edge."""
    if not has_rear_stop or has_centre_runner:
        return ()
    return shifted(opening_places, opening_width - rear_stop_width)
