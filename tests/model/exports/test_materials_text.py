"""Materials for a plain terminal: every figure and every step with its source."""

from __future__ import annotations

import re

import pytest

from model.errors import BadInput
from model.exports.materials_text import detail, figures, lines, row_of, template
from model.materials import OwnRows, allowed, sheet, sheets, species, wood
from model.materials.own_rows import rows_of_table

OWN = rows_of_table(
    "name,kind,density_kg_m3,shrinkage_radial_pct,shrinkage_tangential_pct\n"
    "Wych elm,hardwood,670,5.2,8.0\n",
    "a",
)


@pytest.mark.parametrize("key", [*species(), *sheets()])
def test_every_figure_of_every_material_says_where_it_comes_from(key: str) -> None:
    found = figures(row_of(key, OwnRows()))

    assert len(found) >= 7
    for figure in found:
        assert figure.source, figure.name
        assert re.match(r"\d", figure.value), figure


def test_all_materials_are_listed_and_the_makers_own_are_marked() -> None:
    told = list(lines(OWN, 80))

    keys = [line.split()[0] for line in told if line and not line.startswith(" ")]
    assert [*species(OWN.species), *sheets()] == keys[: len(species()) + 1 + len(sheets())]
    assert [line for line in told if line.endswith("your own")][0].startswith("wych_elm")


def test_one_material_is_told_down_to_what_it_may_bear() -> None:
    told = " ".join(" ".join(detail("yellow_poplar", OwnRows(), "straight", 80)).split())

    # 70 x (1 - 1.645 x 0.16) / 2.3 = 22.42 MPa: ASTM D245 on the Wood Handbook's average.
    assert "bending: 22.42 MPa" in told
    assert "= 70 (Wood Handbook" in told
    assert "95 pieces of 100 reach x 0.737 = 51.58" in told
    assert "x 0.435 = 22.42" in told
    assert "table 5-3" in told and "ASTM D245" in told


def test_a_grade_is_told_with_what_it_takes_off() -> None:
    told = " ".join(" ".join(detail("yellow_poplar", OwnRows(), "knotty", 80)).split())

    assert f"bending: {allowed('yellow_poplar', 'knotty').bending_mpa:.4g} MPa" in told
    assert "Knotty: No. 2 lumber" in told


def test_lines_fit_the_terminal() -> None:
    for each in (*lines(OWN, 80), *detail("wych_elm", OWN, "clear", 80)):
        assert len(each) <= 80


def test_a_template_is_read_back_with_a_row_of_the_table() -> None:
    """The headings are those of the shipped tables, so that a row can be copied and changed."""
    ash, ply = wood("white_ash"), sheet("birch_ply_12")
    for kind, row in (("woods", ash), ("sheets", ply)):
        headings = template(kind).strip().split(",")
        cells = [getattr(row, name) for name in headings]
        texts = [";".join(c) if isinstance(c, tuple) else f"{c}" for c in cells]

        own = rows_of_table("\t".join(headings) + "\n" + "\t".join(texts) + "\n", "a")

        (found,) = own.species or own.sheets
        assert [getattr(found, name) for name in headings] == cells


def test_what_is_not_there_is_refused() -> None:
    with pytest.raises(BadInput, match="no table of stones"):
        template("stones")
    with pytest.raises(BadInput, match="no material called “elm”"):
        list(detail("elm", OwnRows(), "clear", 80))
