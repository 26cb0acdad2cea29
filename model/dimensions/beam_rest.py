"""Where the centre beam rests on the bearers of the long sides' drawers."""

from model.brief.deck import BeamKind
from model.dimensions.toes import Toe, toe_from_both_edges
from model.errors import CannotBuild
from model.rules import rule
from model.units import Mm, Places, snapped


@rule
def left_packers(
    beam: BeamKind,
    left_own_bearer_places: Places,
    left_back_plane: Mm,
    left_bearer_run: Mm,
    left_middle_plane: Mm,
    beam_stock: Mm,
) -> Places:
    """The left bearers carry the beam where they pass under the whole of it."""
    passes = left_back_plane + left_bearer_run >= left_middle_plane + beam_stock / 2
    return left_own_bearer_places if beam == "bearers" and passes else ()


@rule
def right_packers(
    beam: BeamKind,
    right_own_bearer_places: Places,
    right_back_plane: Mm,
    right_bearer_run: Mm,
    right_middle_plane: Mm,
    beam_stock: Mm,
) -> Places:
    """The right bearers carry the beam where they pass under the whole of it."""
    passes = right_back_plane + right_bearer_run >= right_middle_plane + beam_stock / 2
    return right_own_bearer_places if beam == "bearers" and passes else ()


@rule
def packer_places(beam: BeamKind, left_packers: Places, right_packers: Places) -> Places:
    """A beam on the bearers rests on at least two of them."""
    found = left_packers or right_packers
    if beam == "bearers" and len(found) < 2:
        raise CannotBuild("beam", "No bearers pass under the centre beam for it to rest on.")
    return found


@rule
def packer_height(beam_bottom: Mm, bearer_top: Mm, packer_places: Places) -> Mm:
    """A packer fills the height between a bearer and the beam; none is needed where they meet."""
    height = snapped(beam_bottom - bearer_top)
    if packer_places and height < 0:
        raise CannotBuild(
            "beam_height", f"The centre beam would hang {-height:.1f} mm into the bearers."
        )
    return height


@rule
def packer_toe(
    packer_height: Mm, beam_stock: Mm, bearer_stock: Mm, bearer_rise: Mm, packer_places: Places
) -> Toe | None:
    """Screws from both edges of a packer slant into its bearer and end clear of each other."""
    if not packer_places:
        return None
    return toe_from_both_edges(beam_stock, bearer_stock, packer_height, bearer_rise)


@rule
def beam_rests_on_bearers(packer_places: Places, packer_height: Mm) -> bool:
    """Whether the beam lies right on the bearers."""
    return bool(packer_places) and packer_height < 1e-6
