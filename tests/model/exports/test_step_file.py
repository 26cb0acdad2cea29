"""Records, figures and texts as ISO 10303-21 writes them."""

from __future__ import annotations

import re

import pytest

from model.exports.step_file import StepFile, Word, encoded, figure, length

# Source: ISO 10303-21:2016, productions of REAL and STRING in clause 5, from memory.
REAL = re.compile(r"[+-]?[0-9]+\.[0-9]*(E[+-]?[0-9]+)?")
TOKEN = re.compile(
    r"(?P<quote>'')|(?P<slash>\\\\)|\\X2\\(?P<four>(?:[0-9A-F]{4})+)\\X0\\"
    r"|\\X4\\(?P<eight>(?:[0-9A-F]{8})+)\\X0\\|(?P<plain>[ -&(-\[\]-~])"
)


def decoded(text: str) -> str:
    """The other way, by the letter of the standard; refused: what is no text of it."""
    found, at = "", 0
    while at < len(text):
        token = TOKEN.match(text, at)
        assert token is not None, text[at:]
        at = token.end()
        digits = {"four": 4, "eight": 8}.get(str(token.lastgroup), 0)
        codes = re.findall(f".{{{digits}}}", token[str(token.lastgroup)]) if digits else []
        plain = {"quote": "'", "slash": "\\"}.get(str(token.lastgroup), token[0])
        found += "".join(chr(int(code, 16)) for code in codes) or plain
    return found


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Don't", "Don''t"),
        ("a\\b", "a\\\\b"),
        ("\N{GREEK SMALL LETTER PI}", "\\X2\\03C0\\X0\\"),
        ("Zoé's", "Zo\\X2\\00E9\\X0\\''s"),
        ("\N{BED}", "\\X4\\0001F6CF\\X0\\"),
        ("é\N{BED}", "\\X2\\00E9\\X0\\\\X4\\0001F6CF\\X0\\"),
        ("سرير", "\\X2\\06330631064A0631\\X0\\"),
        ("a\nb", "a\\X2\\000A\\X0\\b"),
        ("", ""),
    ],
)
def test_texts_are_told_in_ascii(text: str, expected: str) -> None:
    assert encoded(text) == expected
    assert decoded(encoded(text)) == text


@pytest.mark.parametrize("value", [0.0, -0.0, 1.0, -2.5, 1e-5, 1e-9, 123456.7890123, 1e7])
def test_figures_have_the_point_that_the_format_asks_for(value: float) -> None:
    for told, finest in ((length(value), 1e-6), (figure(value), 1e-12)):
        assert REAL.fullmatch(told)
        assert float(told) == pytest.approx(value, abs=finest / 2)
        assert not told.startswith("-0.") or value < 0


def test_values_are_told_by_their_kind() -> None:
    file = StepFile()
    one = file.add("ONE", "it's", None, True, 2.0, 3, Word(".MILLI."), [])

    file.add("TWO", [one, one], ["a"])

    text = file.to_bytes([("FILE_SCHEMA", (["A"],))]).decode("ascii")
    assert "#1=ONE('it''s',$,.T.,2.,3,.MILLI.,());\n#2=TWO((#1,#1),('a'));\n" in text
    assert text.startswith("ISO-10303-21;\nHEADER;\nFILE_SCHEMA(('A'));\nENDSEC;\nDATA;\n")
    assert text.endswith("ENDSEC;\nEND-ISO-10303-21;\n")


def test_kinds_that_are_joined_stand_by_alphabet() -> None:
    file = StepFile()

    file.joined(NAMED_UNIT=(Word("*"),), LENGTH_UNIT=())

    assert b"#1=(LENGTH_UNIT() NAMED_UNIT(*));" in file.to_bytes([])


def test_one_place_is_one_record() -> None:
    file = StepFile()

    assert file.point((1.0, 0.0, -0.0)) == file.point((1.0, 1e-9, 0.0))
    assert file.point((1.0, 0.0, 0.0)) != file.point((1.0, 0.0, 1e-3))
