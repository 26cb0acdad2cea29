"""What lies on the bed and who lies in it: masses that the frame and the floor carry."""

from dataclasses import dataclass

from model.rules import rule
from model.units import Count, Kg, KgPerM2, Masses, Mm, Newton, Places, Share

TWO_FIT: Mm = 1100.0  # a narrower mattress holds one sleeper; common practice, no source


@rule
def mattress_mass(mattress_weight: KgPerM2, mattress_across: Mm, mattress_along: Mm) -> Kg:
    """Mattress and bedding weigh on the deck for as long as the bed stands."""
    return mattress_weight * mattress_across * mattress_along / 1e6


@rule
def sleepers_lying(sleepers: Count, mattress_across: Mm) -> Count:
    """On a mattress under 1100 mm only one lies, whoever shares the bed."""
    return sleepers if mattress_across >= TWO_FIT else 1


@dataclass(frozen=True, kw_only=True)
class Handling:
    """All that the bed is asked to bear: who lies in it, what lies on it, how it is handled.

    `lying` (kg) from left to right, `well` (x from, x to, y from, y to) what the mattress covers,
    `contents` (kg) of one drawer by row, `mattress_top` and `lean_z` the heights above the floor of
    where sleepers lie and where they lean on the headboard, `drag` a share of the weight; mm and N.
    """

    lying: tuple[Kg, ...]
    mattress: Kg
    contents: tuple[tuple[str, Kg], ...]
    well: Places
    lean: Newton
    mattress_top: Mm
    lean_z: Mm
    push: Newton
    lift: Mm
    drag: Share
    joint_play: Mm
    mattress_gives: Mm
    mattress_high: Mm


@rule
def lying(first_sleeper: Kg, second_sleeper: Kg, sleepers_lying: Count) -> Masses:
    """Who lies in the bed, from left to right."""
    return (first_sleeper, second_sleeper)[:sleepers_lying]


@rule
def mattress_covers(
    mattress_from_x: Mm, mattress_across: Mm, mattress_foot_y: Mm, mattress_along: Mm
) -> Places:
    """Where the mattress lies on the deck: x from and to, y from and to."""
    return (
        mattress_from_x,
        mattress_from_x + mattress_across,
        mattress_foot_y,
        mattress_foot_y + mattress_along,
    )


@rule
def lean_z(sleeping_height: Mm, lean_height: Mm) -> Mm:
    """Shoulders meet the headboard this high above the floor."""
    return sleeping_height + lean_height


@rule
def handling(
    lying: Masses,
    mattress_mass: Kg,
    mattress_covers: Places,
    left_drawer_contents: Kg,
    right_drawer_contents: Kg,
    foot_drawer_contents: Kg,
    lean_force: Newton,
    sleeping_height: Mm,
    lean_z: Mm,
    push_force: Newton,
    lift_height: Mm,
    drag_share: Share,
    joint_play: Mm,
    mattress_gives: Mm,
    mattress_high: Mm,
) -> Handling:
    """What the frame is loaded with, in one record."""
    return Handling(
        lying=lying,
        mattress=mattress_mass,
        well=mattress_covers,
        contents=(
            ("left", left_drawer_contents),
            ("right", right_drawer_contents),
            ("foot", foot_drawer_contents),
        ),
        lean=lean_force,
        mattress_top=sleeping_height,
        lean_z=lean_z,
        push=push_force,
        lift=lift_height,
        drag=drag_share,
        joint_play=joint_play,
        mattress_gives=mattress_gives,
        mattress_high=mattress_high,
    )
