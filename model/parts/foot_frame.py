"""What differs in the foot's face frame: it is glued between its posts, so no connector cuts into
its stiles.
"""

from model.joints.work import Work
from model.rules import rule


@rule
def stile_connector_near() -> Work:
    """The left end stile stands beside its post, and the rails hold it."""
    return Work()


@rule
def stile_connector_far() -> Work:
    """The right end stile stands beside its post, and the rails hold it."""
    return Work()
