"""What the maker says of the posts and of how the bed comes apart."""

from typing import Literal

from model.brief.declare import count, length, option, row_of
from model.materials import Connector, connectors
from model.units import Count, Mm

PostBuild = Literal["solid", "laminated"]
RailSet = Literal["flush", "centred", "set back"]
FrameJoint = Literal["pocket screw", "dowel", "stub tenon", "mortise and tenon"]


class Posts:
    """Posts and joints"""

    post_build: PostBuild = option("laminated", help="Solid stock, or layers of the frame stock.")
    post_width: Mm = length(
        76.2, cut=True, least=38, most=150, slider=True,
        why_least="Thinner posts split at the connectors.",
        why_most="Thicker posts are columns.", help="Across the bed.",
    )  # fmt: skip
    post_depth: Mm = length(
        76.2, cut=True, least=38, most=150, why_least="Thinner posts split at the connectors.",
        why_most="Thicker posts are columns.", help="Along the bed, where the posts are solid.",
    )  # fmt: skip
    post_layers: Count = count(
        2, least=2, most=5, why_least="One layer is solid.", why_most="More is not clamped well.",
        help="Layers of frame stock in a laminated post, along the bed.",
    )  # fmt: skip
    rail_set: RailSet = option("set back", help="Where rails stand in the post's thickness.")
    rail_reveal: Mm = length(
        6.35, cut=True, least=0, most=40, why_least="The rail stands flush.",
        why_most="More leaves no wood behind the rail.",
        help="How far rails stand back from the post's outer face, where they are set back.",
    )  # fmt: skip
    post_taper: Mm = length(
        0, least=0, most=25, why_least="The post is straight.", why_most="More leaves no foot.",
        help="How much each side of the post narrows from the rail down to the floor.",
    )  # fmt: skip
    glide_width: Mm = length(
        25, least=10, most=60, why_least="Smaller glides cut into the floor.",
        why_most="Larger stands out under the post.",
        help="Diameter of the glide or leveller under each post.",
    )  # fmt: skip
    end_joint: FrameJoint = option(
        "mortise and tenon", help="Rails to posts in headboard and footboard: glued."
    )
    frame_joint: FrameJoint = option("dowel", help="Stiles to rails in face frames.")
    tenon_length: Mm = length(
        25.4, cut=True, least=12, most=60, why_least="Shorter is a stub tenon.",
        why_most="Longer comes out of the post.", help="Mortise and tenon joints.",
    )  # fmt: skip
    connector: Connector = row_of(
        connectors, "hook_plate_150", help="Holds the side rails to the posts; comes apart."
    )
