"""What the steps tell a maker who has nothing but the paper in his hands."""

from __future__ import annotations

import math
import re

import numpy as np
import pytest

from model.building.care import care_sheet
from model.building.fastening import Fastening
from model.building.finishing import finishing_schedule
from model.building.joined import Joined
from model.building.record import Step
from model.building.steps import build_steps
from model.building.tools import tool_list
from model.building.units import Units
from tests.model.building.beds import DEMOS, GUEST, KING, LOFT, QUEEN, demo, turned


def steps(name: str, *words: str) -> list[Step]:
    return [s for s in build_steps(demo(name)) if all(word in s.title for word in words)]


def texts(name: str, *words: str) -> str:
    return "\n".join(text for step in steps(name, *words) for text in step.text)


def _ends(units: Units, one: int, other: int) -> frozenset[object]:
    """Two pieces, or the two units that they belong to where these are not one."""
    a, b = units.of(one).number, units.of(other).number
    return frozenset((a, b)) if a != b else frozenset((("piece", one), ("piece", other)))


@pytest.mark.parametrize("name", DEMOS)
def test_what_is_called_screwed_has_screws(name: str) -> None:
    """What is held by wood in a joint that says so has a screw into a piece that holds it; a glued
    frame hangs by the screws of one of its pieces.
    """
    joined = Joined(demo(name))
    units = Units(joined)
    driven = {_ends(units, each.one, each.other) for each in Fastening(joined).all}

    held: dict[tuple[int, str], list[int]] = {}
    for link in joined.links:
        is_wood = joined.is_wood(link.one) and joined.is_wood(link.other)
        if is_wood and "screwed" in link.joint and " or " not in link.joint:
            held.setdefault((link.one, link.joint), []).append(link.other)
    assert held or name == LOFT
    for (piece, joint), by in held.items():
        has = any(_ends(units, piece, other) in driven for other in by)
        assert has, (joint, joined.names[piece])


def test_panels_are_coated_before_the_frame_is_glued_round_them() -> None:
    order = [step.title for step in build_steps(demo(GUEST))]
    first = order.index("First coat on panels before they are let in")

    assert first < order.index(steps(GUEST, "Headboard: glue")[0].title)
    assert "H5, H6 and H7" in texts(GUEST, "First coat on panels")
    (late,) = steps(GUEST, "Finish parts and assemblies")
    assert not any("panels" in text or text.startswith("Sand with") for text in late.sentences)


@pytest.mark.parametrize("name", DEMOS)
def test_fibreboard_is_sealed_before_it_is_shut_in(name: str) -> None:
    """The step that seals comes before all that bring fibreboard, and is told once."""
    bed = demo(name)
    found = build_steps(bed)
    boards = {m.mark for m in bed.marks if m.made_of and "MDF" in m.made_of.name}
    at = [k for k, step in enumerate(found) if step.title.startswith("Seal fibreboard")]
    brought = [k for k, step in enumerate(found) if boards & {each.mark for each in step.marks}]

    assert len(at) == bool(boards)
    assert not boards or at[0] < min(brought)
    assert sum("no longer drink" in text for step in found for text in step.text) == len(at)
    if boards:
        assert all(mark in found[at[0]].sentences[0] for mark in boards)
        (late,) = [s for s in found if s.title.startswith("Finish parts and assemblies")]
        assert not any(text.startswith("Sealer") for text in late.sentences)


@pytest.mark.parametrize("name", DEMOS)
def test_the_whole_set_prints_a_caution_on_dust_twice(name: str) -> None:
    """Among the cautions, and at the machines, where the dust is made; else it is referred to."""
    told = [text for step in build_steps(demo(name)) for text in step.text]

    assert not any("OSHA" in text for text in (*told, *finishing_schedule(demo(name)).cautions))
    assert any('under "Dust"' in text for text in told)


def test_solid_panels_get_no_sealer() -> None:
    """The king's planks are solid; its blind panels are fibreboard, and sealed in a step before."""
    told = texts(KING, "First coat on panels")

    assert "two coats of clear finish" in told and "sealer" not in told
    assert "sealer" in texts(KING, "Finish parts")


def test_no_finish_needs_no_first_coats() -> None:
    bed = turned(GUEST, finish="none")

    assert not [step for step in build_steps(bed) if "First coat" in step.title]


def test_a_wide_tenon_is_glued_in_part_as_the_check_asks() -> None:
    """The same figure as the check's, an edge that stays level, and room on the tenon itself."""
    (found,) = [
        f for f in demo(GUEST).findings
        if f.place == "footboard" and "Glue only" in f.reason and "tenon" in f.reason
    ]  # fmt: skip
    glued = re.search(r"Glue only (\d+) mm", found.reason)
    assert glued is not None and "longer" not in found.reason

    (step,) = steps(GUEST, "Footboard: glue")

    (told,) = [text for text in step.sentences if "wide across the grain" in text]
    assert f"glue only {glued[1]} mm of each tenon, from the upper edge" in told
    assert "first plane 1.5 mm off the lower edge" in told
    assert step.sentences.index(told) == 0


def test_mirror_images_are_made_in_the_same_steps() -> None:
    """Six bearers of the guest room, three the mirror images of the others: told once."""
    (skid,) = steps(GUEST, "Slide bearer: skid")

    assert (skid.times, skid.mirrors) == (6, 3)
    assert [(each.mark, each.quantity) for each in skid.marks] == [("U3", 6)]
    (told,) = [t for t in skid.sentences if t.startswith("Skid U3 on") and "mirror images" in t]
    own, its = told.split(" In the mirror images: ")
    assert {"back" in own, "back" in its} == {True, False}
    assert "Six are made this way, three of them as mirror images." in skid.sentences


def test_sides_of_other_chapters_stay_apart() -> None:
    assert len(steps(GUEST, "side: glue")) == 2


def test_slides_that_lie_on_skids_get_no_spacer() -> None:
    assert "rests on skid U3: no spacer" in texts(GUEST, "slide (outer")
    assert "spacer, bearer" not in texts(GUEST, "").lower()
    assert "spacer, bearer" in texts(QUEEN, "slides (outer").lower()


def test_fixed_fronts_are_set_from_the_rails_of_the_side_on_the_bench() -> None:
    told = texts(GUEST, "Right side: fit fronts")

    assert "lower edge 2.5 mm above the upper edge of S2" in told
    assert "upper edge 2.5 mm below the lower edge of S1" in told
    assert "above the floor" not in told


def test_edges_of_an_upright_piece_are_told_by_where_they_look() -> None:
    told = texts(GUEST, "Right side: front blocks")

    assert "(on the bed toward its foot)" in told and "(on the bed toward its head)" in told
    assert "(the upper one on the bed)" in told
    assert "on the bed toward" not in texts(GUEST, "Slide bearer")  # six lie in six places


@pytest.mark.parametrize("name", DEMOS)
def test_a_slanting_screw_has_a_start_and_an_angle_that_keep_it_in_the_wood(name: str) -> None:
    bed = demo(name)
    joined, found = Joined(bed), Fastening(Joined(bed))
    low, high = joined.pieces.bounds
    for each in found.all:
        (driving,) = found.drivings([each])
        if driving.slant is None:
            continue
        lean, long = math.radians(driving.slant.lean), driving.length
        up = driving.slant.start + 0.0
        room = max(
            min(high[each.other, k], high[each.one, k]) - max(low[each.other, k], low[each.one, k])
            for k in range(3)
        )
        assert long * math.cos(lean) > up, "the point is past the joint"
        assert long * math.sin(lean) < room, "the point is inside both pieces"
        if each.one in joined.mark_of:
            assert driving.slant.sides.endswith(joined.mark_of[each.one])


def test_slanting_screws_are_told_with_start_and_angle() -> None:
    """Screws 50.8 mm long begin a third of that from the joint; U2 is 19.05 mm thick."""
    told = texts(GUEST, "Slide bearer: bearer legs")

    assert (
        "from both edges of U2, started 17 mm from U1, in the middle of the thickness, at 30 "
        "degrees"
    ) in told
    assert "shank holes 4 mm (reckoned 3.57 mm) in U2" in told


def test_heads_are_countersunk_or_lie_on_washers() -> None:
    assert "heads countersunk flush" in texts(GUEST, "Lay the slats")
    assert "a washer under each head" in texts(GUEST, "Set the drawer fronts")
    assert "countersunk" not in texts(GUEST, "Set the drawer fronts")
    (bits,) = [g for g in tool_list(demo(GUEST), build_steps(demo(GUEST))) if "bits" in g.title]
    assert sum("Countersink" in item for item in bits.items) == 1


def test_nothing_is_turned_under_the_posts_that_cannot_be() -> None:
    for name in DEMOS:
        assert "levellers" not in texts(name, "")


@pytest.mark.parametrize("name", [GUEST, QUEEN, KING, LOFT])
def test_what_is_carried_weighs_the_same_in_the_steps_and_on_the_care_sheet(name: str) -> None:
    found = build_steps(demo(name))
    (carried,) = [line.text for line in care_sheet(demo(name), found) if line.key == "carried"]

    for side in ("left side", "right side"):
        (told,) = {t for step in found for t in step.sentences if t.startswith(f"The {side}: ")}
        weight = told.removeprefix(f"The {side}: ").partition(". Two")[0]
        (line,) = [x for x in carried.split("; ") if side in x.lower()]
        assert f", {weight}" in line


# ---------------------------------------------------------------- how members are turned


@pytest.mark.parametrize("name", DEMOS)
def test_what_is_told_to_look_inside_looks_inside(name: str) -> None:
    """Where the named side of a part lies on the bed, by its mark's own matrices: nearer to the
    middle of the bed than the other side of the same piece.
    """
    bed = demo(name)
    middle = {0: 0.0, 1: bed["bed_length"] / 2}
    marks = {mark.mark: mark for mark in bed.marks}
    seen = 0
    for step in build_steps(bed):
        for told in step.sentences:
            first = told.partition(". ")[0].rstrip(".")
            start, _, rest = first.partition("Turn to the inside of the bed: ")
            if start or not rest:
                continue
            axis = 1 if {"Headboard", "Footboard"} & {step.chapter} else 0
            for side, named in re.findall(
                r"the (back|face) of ([A-Z0-9, and]+?)(?= and the|$)", rest
            ):
                for mark in (marks[word] for word in re.findall(r"[A-Z]\d+", named)):
                    own = [k for k, p in enumerate(mark.pieces) if p in {*step.pieces, *step.there}]
                    (turn, *_) = (mark.matrices[k][axis, 2] for k in own)
                    at = bed.pieces.bounds[0][mark.pieces[own[0]]][axis]
                    out = turn if side == "face" else -turn
                    assert out * (middle[axis] - at) > 0, told
                    seen += 1
    assert seen >= 8


def test_pocket_and_nut_holes_look_where_nobody_sees_them() -> None:
    assert "All holes for barrel nuts and pocket holes are on this side" in texts(
        GUEST, "Right side: glue"
    )
    assert "All pocket holes are on this side" in texts(KING, "Footboard: glue bottom rail")


def test_the_edge_of_a_stile_that_takes_a_bed_plate_is_told() -> None:
    assert "The lower edges of S4, with the recess of the bed plate, look outward" in texts(
        QUEEN, "Each side: glue"
    )


def test_limits_of_glue_stand_where_the_joint_is_closed() -> None:
    """The queen's rails get their stile first and their posts in the next step."""
    for end in ("Headboard", "Footboard"):
        assert "wide across" not in texts(QUEEN, f"{end}: glue end rail")
        told = texts(QUEEN, f"{end}: glue posts")
        assert "of each tenon, from the upper edge" in told
        assert f"of {end[0]}3 only the part told above" in told


# ---------------------------------------------------------------- what a step takes


@pytest.mark.parametrize("name", DEMOS)
def test_a_step_that_clamps_lists_clamps(name: str) -> None:
    for step in build_steps(demo(name)):
        if re.search(r"\b[Cc]lamp (it|all)|with clamps|Clamp,", " ".join(step.sentences)):
            assert step.clamps, step.title


def test_glue_goes_where_a_piece_lies_on_its_host() -> None:
    """The queen's cleat carries its countersinks on its face: its back lies on the rail."""
    assert "Spread glue on the back of S3, clamp it" in texts(QUEEN, "Each side: cleat")
    assert "Spread glue on its face" not in "".join(texts(name, "") for name in DEMOS)


@pytest.mark.parametrize("name", DEMOS)
def test_glue_is_spread_on_the_side_that_touches(name: str) -> None:
    """By the pieces' own boxes: the named side of the part is the one that meets its host."""
    bed = demo(name)
    low, high = bed.pieces.bounds
    ends = {"near end": (0, 0), "far end": (0, 1), "lower edge": (1, 0), "upper edge": (1, 1)}
    ends |= {"back": (2, 0), "face": (2, 1)}
    marks = {mark.mark: mark for mark in bed.marks}
    for step in build_steps(bed):
        for told in step.sentences:
            found = re.match(r"Spread glue on the (.+?) of ([A-Z]\d+),", told)
            if found is None:
                continue
            axis, is_high = ends[found[1]]
            mark = marks[found[2]]
            (k,) = [k for k, p in enumerate(mark.pieces) if p in step.copies[0]][:1]
            turn, piece = mark.matrices[k][:3, axis], mark.pieces[k]
            along = int(abs(turn).argmax())
            up = (turn[along] > 0) == bool(is_high)
            plane = high[piece, along] if up else low[piece, along]
            others = [p for p in (*step.there, *step.copies[0]) if p != piece]
            assert any(abs((low if up else high)[p, along] - plane) < 0.01 for p in others), told


@pytest.mark.parametrize("name", DEMOS)
def test_screws_that_nobody_placed_are_set_out_by_figures(name: str) -> None:
    """Even parts of the joint, half a part at each end; and a hole for every shank."""
    bed = demo(name)
    low, high = bed.pieces.bounds
    joined = Joined(bed)
    found = Fastening(joined)
    for each in found.all:
        (driving,) = found.drivings([each])
        if driving.spread is not None:
            shared = np.minimum(high[each.one], high[each.other]) - np.maximum(
                low[each.one], low[each.other]
            )
            first, apart, number = driving.spread.first, driving.spread.apart, driving.number
            assert 2 * first + (number - 1) * apart == pytest.approx(shared.max(), abs=0.6)
        if driving.kind == "wood screw" and joined.is_wood(each.one):
            own = {hole.kind for hole in joined.part(each.one).holes}
            assert driving.shank or "shank hole" in own
    assert "evenly" not in texts(name, "")


def test_a_beam_is_screwed_to_its_leg_from_its_face() -> None:
    """Its ends are far from its legs."""
    assert "through D3, at a slant into D4: from one face of D3" in texts(KING, "Centre beam")


# ---------------------------------------------------------------- the final assembly


@pytest.mark.parametrize("name", DEMOS)
def test_no_step_of_the_final_assembly_tells_again_what_the_last_one_told(name: str) -> None:
    """A side that hangs at the head is lifted at its foot alone."""
    final = [s for s in build_steps(demo(name)) if s.chapter == "Final assembly"]
    joined = [s for s in final if re.match(r"(Hook|Bolt) the", s.title)]
    told = [t for s in joined for t in s.sentences if "plates" in t or "nuts" in t]

    assert len(joined) == 3
    assert len(told) == len(set(told))


@pytest.mark.parametrize(
    ("name", "far"), [(QUEEN, True), (LOFT, True), (GUEST, True), (KING, False)]
)
def test_the_end_of_a_rail_that_goes_to_the_foot_is_told(name: str, far: bool) -> None:
    """Sides made alike are turned about; the king's right side has marks of its own."""
    assert re.search(r"The near end of S\d goes to the foot", texts(name, "left side to"))
    end = "far" if far else "near"
    assert re.search(rf"The {end} end of S\d goes to the foot", texts(name, "right side to"))


def test_brackets_have_places() -> None:
    """The queen's bearers are 3/4 in thick, as its brackets are 0.55 in wide (14 mm): 0.1 in, which
    is nearly 3/32 in, stays at each side. They are screwed to the bearers at the bench: there are
    3 in of room under those that stand, less than a drill with its bit is long.
    """
    bench = texts(QUEEN, "Slide bearer: fit angle brackets")
    assert "past the near end, in the middle, ~3/32" in bench
    assert 'through the angle bracket, pilot holes 7/64" in U1' in bench
    for words in ("Fix the slide bearers", "right side to"):
        there = texts(QUEEN, words)
        assert "Each bracket: its upright leaf on S2, flush with the upper edge" in there
        assert 'through the angle bracket, pilot holes 7/64" in S2' in there
        assert "in U1." not in there


def test_the_line_of_a_slides_screws_is_told_on_bearer_and_box() -> None:
    """The guest's slides are 45 mm high. They lie on skids of 19.05 mm, 19 mm in whole mm, that are
    flush with the bearer's lower edge, and flush with that of the box.
    """
    bearer, box = texts(GUEST, "slide (outer"), texts(GUEST, "slides (inner")

    assert "lie on a line 41.5 mm from the lower edge of U1, none nearer than 28 mm" in bearer
    assert "lie on a line 22.5 mm from the lower edge of B1." in box


@pytest.mark.parametrize("name", DEMOS)
def test_no_screw_is_driven_up_into_a_bearer_that_stands(name: str) -> None:
    bed = demo(name)
    bearers = {mark.mark for mark in bed.marks if mark.name == "slide bearer"}
    final = [step for step in build_steps(bed) if step.chapter == "Final assembly"]

    for each in (screws for step in final for screws in step.screws):
        assert "angle bracket" not in each.through or not bearers & set(each.into)


@pytest.mark.parametrize("name", DEMOS)
def test_nobody_lifts_more_than_the_check_allows_one(name: str) -> None:
    """23 kg for each who lifts, in every step that tells a weight."""
    words = ("no", "one", "two", "three", "four", "five", "six", "seven")
    numbers = {word: n for n, word in enumerate(words)}
    seen = 0
    for step in build_steps(demo(name)):
        for told in step.sentences:
            found = re.search(r"\b(\d+) kg\)?[.,] (\w+) (?:carry|lift)", told)
            if found:
                assert int(found[1]) <= 23 * numbers[found[2].lower()] + 0.5, told
                seen += 1
    assert seen >= 4


def test_low_screws_of_fronts_are_bored_for_on_the_bench() -> None:
    """The queen's lower screws stand under 25 mm above the bottom; the guest room's do not."""
    told = texts(QUEEN, "Set the drawer fronts")
    assert "bore them on the bench" in told and 'driver bit 6" long or more' in told
    assert any('6" long' in item for item in tools(QUEEN))
    assert "bench" not in texts(GUEST, "Set the drawer fronts")
    assert not any("150 mm" in item for item in tools(GUEST))


def test_which_drawer_goes_where_is_told_where_they_differ() -> None:
    """The king has three kinds of boxes, the queen one."""
    told = texts(KING, "Hang the drawers")
    rows = re.findall(r"(Left|Right|Foot) row: those with (B\d)\.", told)

    assert [row for row, _ in rows] == ["Left", "Right", "Foot"]
    assert len({mark for _, mark in rows}) == 3
    assert "those with" not in texts(QUEEN, "Hang the drawers")


def tools(name: str) -> tuple[str, ...]:
    found = tool_list(demo(name), build_steps(demo(name)))
    return next(each.items for each in found if each.title == "To drive and to glue")
