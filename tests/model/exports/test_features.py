"""What a part's features tell besides cuts and holes."""

from model.bed import Design, solve
from model.exports.features import features


def test_posts_tell_of_their_taper_and_of_their_eased_edges() -> None:
    plain = {"left.side": "plain", "right.side": "plain"}
    bed = solve(Design().with_choices({**plain, "post_taper": 8, "eased_edge": 3}))

    (post,) = bed.parts["foot.post_left"]
    told = {feature["kind"]: feature["size"] for feature in features(post)}

    assert told["eased edge"] == {"radius": 3}
    assert told["taper"]["depth"] == 8


def test_an_edge_that_is_left_sharp_is_no_feature() -> None:
    bed = solve(Design().with_choices({"eased_edge": 0}))

    (post,) = bed.parts["foot.post_left"]

    assert "eased edge" not in {feature["kind"] for feature in features(post)}
