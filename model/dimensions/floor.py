"""What the floor bears beside the bed itself."""

from model.rules import rule
from model.units import Count, Kg


@rule
def all_contents(
    left_drawer_count: Count,
    left_drawer_contents: Kg,
    right_drawer_count: Count,
    right_drawer_contents: Kg,
    foot_drawer_count: Count,
    foot_drawer_contents: Kg,
) -> Kg:
    """Every drawer is full at once."""
    return (
        left_drawer_count * left_drawer_contents
        + right_drawer_count * right_drawer_contents
        + foot_drawer_count * foot_drawer_contents
    )


@rule
def all_sleepers(first_sleeper: Kg, second_sleeper: Kg, sleepers_lying: Count) -> Kg:
    """All who sleep in the bed lie in it."""
    return first_sleeper + second_sleeper if sleepers_lying == 2 else first_sleeper
