"""What lies on the bed and who lies in it: masses that the frame and the floor carry."""

from model.rules import rule
from model.units import Count, Kg, KgPerM2, Mm

TWO_FIT: Mm = 1100.0  # a narrower mattress holds one sleeper; common practice, no source


@rule
def mattress_mass(mattress_weight: KgPerM2, mattress_across: Mm, mattress_along: Mm) -> Kg:
    """Mattress and bedding weigh on the deck for as long as the bed stands."""
    return mattress_weight * mattress_across * mattress_along / 1e6


@rule
def sleepers_lying(sleepers: Count, mattress_across: Mm) -> Count:
    """On a mattress under 1100 mm only one lies, whoever shares the bed."""
    return sleepers if mattress_across >= TWO_FIT else 1
