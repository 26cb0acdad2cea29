"""Every style of end, in every joint, hung by every connector, is proved to fit and to stand."""

import pytest

from model.bed import Bed, Design, solve
from model.brief import all_choices
from model.solids.exact import exact_overlaps

STYLES = ("panel", "planks", "slats", "low rail", "none")
JOINTS = ("pocket screw", "dowel", "stub tenon", "mortise and tenon")
STURDY = {
    "post_build": "solid",
    "post_depth": 90.0,
    "post_width": 90.0,
    "bottom_rail_width": 80.0,
    "rail_height": 440.0,
    "foot.height": 620.0,
    "has_skirting": True,
}


def bed_with(**choices: object) -> Bed:
    named = {name.replace("__", "."): value for name, value in choices.items()}
    return solve(Design().with_choices(STURDY | named))


@pytest.mark.parametrize("joint", JOINTS)
@pytest.mark.parametrize("style", STYLES)
def test_an_end_fits_together(style: str, joint: str) -> None:
    bed = bed_with(head__style=style, foot__style=style, end_joint=joint)

    assert bed.proof.holds
    assert exact_overlaps(bed.parts, bed.pieces) == ()


@pytest.mark.parametrize("joint", JOINTS)
def test_a_foot_with_drawers_is_a_face_frame_under_its_style(joint: str) -> None:
    bed = bed_with(
        foot__drawers=2, end_joint=joint, left__side="plain", right__side="plain"
    )  # fmt: skip

    assert bed.proof.holds
    assert [part.name for part in bed.parts["foot.bottom_rail"]] == ["bottom rail"]


@pytest.mark.parametrize("side", ["plain", "drawer", "closed frame"])
@pytest.mark.parametrize("connector", all_choices()["connector"].keys)
def test_every_connector_hangs_every_side(connector: str, side: str) -> None:
    bed = bed_with(
        connector=connector, frame_stock=38.0, left__side=side, right__side=side
    )  # fmt: skip

    assert bed.proof.holds


def test_left_and_right_posts_mirror_each_other() -> None:
    bed = bed_with(head__style="panel", foot__style="panel")

    (left,), (right,) = bed.parts["head.post_left"], bed.parts["head.post_right"]

    assert left.size == right.size
    width = left.size[1]
    here = {(c.kind, c.low[0], round(c.low[1], 6), c.low[2]) for c in left.cuts}
    there = {(c.kind, c.low[0], round(width - c.high[1], 6), c.low[2]) for c in right.cuts}
    assert here == there


def test_a_laminated_post_tells_its_layers() -> None:
    bed = solve(Design().with_choices({"post_build": "laminated", "post_layers": 3}))

    (post,) = bed.parts["head.post_left"]

    assert post.layers * post.layer_thickness == pytest.approx(post.thickness)


def test_no_glue_crosses_a_knock_down_joint() -> None:
    bed = bed_with()

    sides = [part for rule in ("left.post_plates", "left.rail_plates") for part in bed.parts[rule]]

    assert sides
    assert not any(hold.glued for part in sides for hold in part.held)


def test_a_post_without_a_glide_stands_on_the_floor() -> None:
    bed = bed_with(glide_height=0.0)

    (post,) = bed.parts["foot.post_right"]

    assert [hold.by for hold in post.held] == ["floor"]
    assert not bed.parts.get("foot.glides")
