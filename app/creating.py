"""`bedwright new`: a design file from the usual choices, a demo, or another design."""

from __future__ import annotations

import argparse
import contextlib
import os
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from model.errors import BadInput

if TYPE_CHECKING:
    from model.bed import Design
    from model.publisher import Publisher

DEMOS = Path(__file__).resolve().parents[1] / "resources" / "demos"


def add(commands: Any, run: Any) -> None:
    """The command's own options; `run` is called with them."""
    new = commands.add_parser(
        "new",
        help="write a design file",
        description="Write a design file from the usual choices, a demo, or another design.",
        epilog="Lengths may carry a unit: --set rail_height=16in --set overlay='1/2 in' "
        "--set side_fit=13mm. Without one they are in the design's unit, shown_unit.",
    )
    new.set_defaults(command=run)
    new.add_argument("file", metavar="FILE", type=Path, nargs="?")
    new.add_argument("--name", help="the design's name; else the file's")
    new.add_argument(
        "--set", metavar="NAME=VALUE", action="append", default=[], dest="settings",
        help="a choice; may be given more than once",
    )  # fmt: skip
    new.add_argument(
        "--from", metavar="DEMO", dest="start", help="a demo's name, or a design file to start from"
    )
    new.add_argument(
        "--own", metavar="TABLE.csv", type=Path, action="append", default=[],
        help="woods or sheets of your own, to choose from; kept in the design. See "
        "`materials --template`",
    )  # fmt: skip
    new.add_argument(
        "--prices", metavar="TABLE.csv", type=Path, action="append", default=[],
        help="your price list and rates; kept in the design. See `prices`",
    )  # fmt: skip
    new.add_argument("--shop", metavar="NAME", help="whose name stands on the plan set")
    new.add_argument("--shop-line", metavar="TEXT", help="a line below the shop's name")
    new.add_argument(
        "--logo",
        metavar="PICTURE",
        type=Path,
        help="the shop's logo, for the cover of the plan set",
    )
    new.add_argument("--replace", action="store_true", help="write over FILE if it is there")
    new.add_argument("--choices", action="store_true", help="list what can be set, and stop")


def path_asked(arguments: argparse.Namespace) -> Path:
    """Where the design is to be written, with the ending of design files.

    Refused: no file, another ending, and what is there already unless it may be replaced.
    """
    if arguments.file is None:
        raise BadInput("FILE", "Say which file to write: bedwright new FILE.")
    path = _design_path(arguments.file)
    if os.path.lexists(path) and not arguments.replace:
        raise BadInput("FILE", f"{path} is there already; add --replace to write over it.")
    return path


def created(arguments: argparse.Namespace, path: Path) -> Design:
    """The design that was asked for, named after the file at `path` where nobody named it."""
    from dataclasses import replace

    from model import designs

    design = _start(arguments.start, designs.read)
    for table in arguments.own:
        design = design.with_own(design.own.joined(designs.read_own(table)))
    for table in arguments.prices:
        design = replace(
            design, prices=designs.read_prices(table, design.prices, design.value("shown_unit"))
        )
    design = _with_settings(design, arguments.settings, is_new=arguments.start is None)
    if arguments.name is not None or arguments.start is None:
        design = _named(design, arguments.name, path)
    return replace(design, publisher=_publisher(design.publisher, arguments))


def _publisher(publisher: Publisher, arguments: argparse.Namespace) -> Publisher:
    """Who publishes the plan set: what is not told stays as it was."""
    from dataclasses import replace

    from model.exports.files import told_in_a_sentence
    from model.publisher import checked_line

    if arguments.shop is not None:
        publisher = replace(publisher, name=checked_line(arguments.shop, "shop's name"))
    if arguments.shop_line is not None:
        line = checked_line(arguments.shop_line, "line below the shop's name")
        publisher = replace(publisher, line=line)
    if arguments.logo is not None:
        with told_in_a_sentence(f"{arguments.logo} cannot be read", "logo"):
            file = arguments.logo.read_bytes()
        publisher = publisher.with_logo(file)
    return publisher


def _design_path(path: Path) -> Path:
    from model.designs import SUFFIX

    if path.suffix not in ("", SUFFIX):
        raise BadInput("FILE", f"Design files end in {SUFFIX}; {path.name} does not.")
    return path if path.suffix else path.with_name(path.name + SUFFIX)


def _start(start: str | None, read: Callable[[Path], Design]) -> Design:
    from model.bed import Design

    if start is None:
        return Design()
    demos = {path.stem: path for path in sorted(DEMOS.glob("*.bedwright"))}
    if start not in demos and not os.path.lexists(start):
        raise BadInput("--from", f"There is no demo called {start}. Demos: {', '.join(demos)}.")
    return read(demos.get(start, Path(start)))


def _with_settings(design: Design, settings: Sequence[str], is_new: bool) -> Design:
    from model.brief.metric import IN_MM

    given: dict[str, str] = {}
    for setting in settings:
        name, sign, value = setting.partition("=")
        if not sign:
            raise BadInput("--set", f"--set takes NAME=VALUE, and {setting} has no =.")
        if name.strip() in given:
            raise BadInput(name.strip(), f"{name.strip()} is set twice; which one counts?")
        given[name.strip()] = value
    if "shown_unit" in given:  # first, for the unit of what is written without one
        design = design.with_choices({"shown_unit": given["shown_unit"].strip()})
        if is_new and design.value("shown_unit") == "mm":
            design = design.with_choices(IN_MM)
    unit = design.value("shown_unit")
    return design.with_choices({n: _setting(design, n, text, unit) for n, text in given.items()})


def _setting(design: Design, name: str, text: str, unit: str) -> Any:
    from model.brief import all_choices
    from model.designs import checked_value, unknown_choice

    known = all_choices(design.own)
    if name not in known:
        raise unknown_choice(name)
    try:
        return checked_value(known[name], text.strip(), unit)
    except BadInput as refusal:
        if known[name].is_length and unit != "mm" and _is_bare(text):
            hint = f"Without a unit, {text.strip()} is read in inches here: write {text.strip()}mm."
            raise BadInput(name, f"{refusal} {hint}") from None
        raise


def _is_bare(text: str) -> bool:
    try:
        return float(text) > 0
    except ValueError:
        return False


def _named(design: Design, name: str | None, path: Path) -> Design:
    from dataclasses import replace

    from model.designs import checked_name

    if name is not None:
        return replace(design, name=checked_name(name))
    with contextlib.suppress(BadInput):  # a file may be called what a page cannot
        return replace(design, name=checked_name(path.stem.replace("_", " ").replace("-", " ")))
    return design
