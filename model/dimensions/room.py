"""What stands out of the bed into the room. Read for left, right and foot."""

from model.rules import rule
from model.units import Mm


@rule
def pull_reach(pull_plane: Mm, front_face: Mm) -> Mm:
    """How far front and pull of a closed drawer stand out beyond the posts."""
    return max(-pull_plane, -front_face, 0.0)
