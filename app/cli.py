"""The command line: `bedwright new | check | plan | tick | why | materials | prices | window`.

It needs no screen and loads no Qt.
Exit codes: 0 done; 1 a check failed; 2 the design cannot be read or built, or the command not
understood; 3 a mistake of the program's own.
"""

from __future__ import annotations

import argparse
import contextlib
import logging
import os
import signal
import sys
import tempfile
import threading
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path
from textwrap import wrap
from typing import TYPE_CHECKING, Any

from app import ticking
from app.memory import keep_freed_memory
from model.errors import BadInput, BedError, CannotBuild

if TYPE_CHECKING:
    from model.bed import Bed, Design

DONE, CHECK_FAILED, REFUSED, OWN_MISTAKE = 0, 1, 2, 3
STOPPED, PIPE_CLOSED, ENDED = 130, 141, 143  # 128 and the signal, as shells count
COLUMNS = 80
DEMOS = Path(__file__).resolve().parents[1] / "resources" / "demos"

log = logging.getLogger("bedwright")


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command and return its exit code; whatever goes wrong is said in a sentence."""
    keep_freed_memory()
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")  # a name may hold what the screen cannot
    try:
        with _cleaning_up_when_ended():
            code = _run(argv)
            sys.stdout.flush()
            return code
    except BrokenPipeError:  # the reader, such as `head`, has seen enough
        os.dup2(os.open(os.devnull, os.O_WRONLY), 1)  # so that Python's own last flush is quiet
        return PIPE_CLOSED
    except KeyboardInterrupt:
        _complain("Stopped. Nothing is left half written.")
        return STOPPED


def _run(argv: Sequence[str] | None) -> int:
    try:
        arguments = _parser().parse_args(argv)
        command: Callable[[argparse.Namespace], int] = arguments.command
        return command(arguments)
    except SystemExit as asked:  # argparse has said what it does not understand, or helped
        return asked.code if isinstance(asked.code, int) else REFUSED
    except BedError as refusal:
        _complain(_sentence(refusal))
        return REFUSED
    except (BrokenPipeError, KeyboardInterrupt):
        raise
    except Exception:
        _complain(f"Something in Bedwright itself went wrong. {_note_the_trace()}")
        return OWN_MISTAKE


# ---------------------------------------------------------------- what can be asked


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(
        prog="bedwright",
        description="Design beds with under-bed drawers, from mattress to cut list.",
        epilog="Exit codes: 0 done; 1 a check fails; 2 the design cannot be read or built.",
    )
    parser.set_defaults(command=lambda _: parser.error("say which command; --help tells more"))
    parser.add_argument("--version", action="version", version=_version())
    commands = parser.add_subparsers(title="commands", metavar="COMMAND")
    _add_new(commands)
    check = commands.add_parser(
        "check", help="build the bed, print its checks and what would mend them"
    )
    check.set_defaults(command=_check)
    plan = commands.add_parser("plan", help="write parts list, checks and model of the bed")
    plan.set_defaults(command=_plan)
    plan.add_argument("-o", "--output", metavar="DIR", type=Path, required=True)
    why = commands.add_parser("why", help="say where a dimension comes from")
    why.set_defaults(command=_why)
    for each in (check, plan, why):
        each.add_argument("design", metavar="DESIGN", type=Path)
    why.add_argument("name", metavar="NAME", help="such as left.opening_width, or S1.length")
    ticking.add(commands, _tick)
    _add_materials(commands)
    _add_prices(commands)
    window = commands.add_parser("window", help="open the window (the usual way)")
    window.set_defaults(command=_window)
    window.add_argument("design", metavar="DESIGN", type=Path, nargs="?")
    return parser


def _add_new(commands: Any) -> None:
    new = commands.add_parser(
        "new",
        help="write a design file",
        description="Write a design file from the usual choices, a demo, or another design.",
        epilog="Lengths may carry a unit: --set rail_height=16in --set overlay='1/2 in' "
        "--set side_fit=13mm. Without one they are in the design's unit, shown_unit.",
    )
    new.set_defaults(command=_new)
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
    new.add_argument("--replace", action="store_true", help="write over FILE if it is there")
    new.add_argument("--choices", action="store_true", help="list what can be set, and stop")


def _add_materials(commands: Any) -> None:
    materials = commands.add_parser(
        "materials",
        help="list woods and sheets, or one with the source of every figure",
        description="List all woods and sheets, those of a design's own among them; or one of "
        "them, with the source of every figure and the steps to what it may bear.",
    )
    materials.set_defaults(command=_materials)
    materials.add_argument("design", metavar="DESIGN", type=Path, nargs="?")
    materials.add_argument("--of", metavar="NAME", help="such as yellow_poplar")
    materials.add_argument(
        "--grade", metavar="GRADE", help="how sound its boards are: clear, knotty …; else as chosen"
    )
    materials.add_argument(
        "--template", choices=("woods", "sheets"),
        help="print the headings of a table for `new --own`, and stop",
    )  # fmt: skip


def _add_prices(commands: Any) -> None:
    prices = commands.add_parser(
        "prices",
        help="print a table of everything that a design needs a price or a rate for",
        description="Print a table, as CSV, of everything that a design needs a price or a rate "
        "for, with those that it has. Fill it in with a spreadsheet and take it into a design "
        "with `new --from DESIGN --prices TABLE.csv`.",
    )
    prices.set_defaults(command=_prices)
    prices.add_argument("design", metavar="DESIGN", type=Path)
    prices.add_argument("--empty", action="store_true", help="without the figures that it has")


def _version() -> str:
    from model.exports.version import version

    return f"Bedwright {version()}"


# ---------------------------------------------------------------- new


def _new(arguments: argparse.Namespace) -> int:
    from dataclasses import replace

    from model import designs
    from model.exports import choices_text

    if arguments.choices:
        return _print(choices_text.lines(COLUMNS))
    if arguments.file is None:
        raise BadInput("FILE", "Say which file to write: bedwright new FILE.")
    path = _design_path(arguments.file)
    if os.path.lexists(path) and not arguments.replace:
        raise BadInput("FILE", f"{path} is there already; add --replace to write over it.")
    design = _start(arguments.start, designs.read)
    for table in arguments.own:
        design = design.with_own(design.own.joined(designs.read_own(table)))
    for table in arguments.prices:
        design = replace(design, prices=designs.read_prices(table, design.prices))
    design = _with_settings(design, arguments.settings)
    if arguments.name is not None or arguments.start is None:
        design = _named(design, arguments.name, path)
    designs.write(design, path)
    print(f"Wrote {path}")
    return DONE


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


def _with_settings(design: Design, settings: Sequence[str]) -> Design:
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


# ---------------------------------------------------------------- check, plan


def _built(path: Path) -> Bed:
    from model import designs
    from model.bed import solve

    design = designs.read(path)
    try:
        return solve(design)
    except CannotBuild as refusal:
        raise _with_a_way_out(design, refusal) from None


def _with_a_way_out(design: Design, refusal: CannotBuild) -> BedError:
    """The refusal, with what would work in its place, in the design's unit."""
    from model.book import open_book
    from model.brief import all_choices
    from model.mend import works
    from model.units import INCH, ShopGrid, show_length

    mended = works(design, refusal, open_book())
    said = mended.sentence
    if mended.range and all_choices()[mended.choice].is_length and _reads_inches(design):
        sixteenths = ShopGrid(INCH / 16, "inch")  # inwards, so that what is said does work
        low, high = sixteenths.up(mended.range[0]), sixteenths.down(mended.range[1])
        if low <= high:
            span = f"from {show_length(low, 'inch')} to {show_length(high, 'inch')}"
            said = f"{refusal} {mended.choice} {span} would work."
    return BadInput(refusal.field, said)


def _reads_inches(design: Design) -> bool:
    return bool(design.value("shown_unit") == "inch")


def _check(arguments: argparse.Namespace) -> int:
    from model.exports.checks_text import lines
    from model.improve import improvements

    bed = _built(arguments.design)
    _print(lines(bed, COLUMNS, improvements(bed)))
    return CHECK_FAILED if _failed(bed) else DONE


def _failed(bed: Bed) -> int:
    from model.checks.record import Verdict

    return sum(finding.verdict is Verdict.FAILS for finding in bed.findings)


def _plan(arguments: argparse.Namespace) -> int:
    from model.exports.checks_text import tally
    from model.exports.package import write_package
    from model.shop.idle_stock import idle_stock

    bed = _built(arguments.design)
    written = write_package(bed, arguments.output)
    print(f"Wrote {len(written)} files to {arguments.output}:")
    _print(wrap(", ".join(path.name for path in written), COLUMNS))
    _print(wrap(tally(bed), COLUMNS))
    return _print(line for said in idle_stock(bed) for line in wrap(said, COLUMNS))


# ---------------------------------------------------------------- tick


def _tick(arguments: argparse.Namespace) -> int:
    from dataclasses import replace

    from model import designs

    bed = _built(arguments.design)
    if ticking.is_asked(arguments):
        design = ticking.ticked(bed, arguments)
        designs.write(design, arguments.design)
        bed = replace(bed, design=design)
    return _print(ticking.told(bed))


# ---------------------------------------------------------------- why


def _why(arguments: argparse.Namespace) -> int:
    from model.exports.why_text import lines

    return _print(lines(_built(arguments.design), arguments.name, COLUMNS))


# ---------------------------------------------------------------- materials


def _materials(arguments: argparse.Namespace) -> int:
    from model import designs
    from model.bed import Design
    from model.exports import materials_text

    if arguments.template is not None:
        print(materials_text.template(arguments.template), end="")
        return DONE
    design = designs.read(arguments.design) if arguments.design else Design()
    if arguments.of is None:
        return _print(materials_text.lines(design.own, COLUMNS))
    grade = arguments.grade or design.value("stock_grade")
    return _print(materials_text.detail(arguments.of, design.own, grade, COLUMNS))


# ---------------------------------------------------------------- prices


def _prices(arguments: argparse.Namespace) -> int:
    from model.exports.prices_csv import content

    print(content(_built(arguments.design), arguments.empty).decode("utf-8"), end="")
    return DONE


# ---------------------------------------------------------------- window


def _window(arguments: argparse.Namespace) -> int:
    from app.window import open_window

    return int(open_window(arguments.design))


# ---------------------------------------------------------------- saying things


def _print(lines: Iterable[str]) -> int:
    for line in lines:
        print(line)
    return DONE


def _sentence(refusal: BedError) -> str:
    """What the maker reads; the field goes first where the sentence does not name it."""
    said = str(refusal)
    return said if refusal.field in said or "." not in refusal.field else f"{refusal.field}: {said}"


def _complain(sentence: str) -> None:
    with contextlib.suppress(OSError):
        print(f"bedwright: {sentence}", file=sys.stderr)


def _note_the_trace() -> str:
    """Keep the trace of a mistake of ours for whoever mends it, and say where it is."""
    state = Path(os.environ.get("XDG_STATE_HOME") or Path.home() / ".local" / "state", "bedwright")
    for folder in (state, Path(tempfile.gettempdir())):
        with contextlib.suppress(OSError):
            folder.mkdir(parents=True, exist_ok=True)
            path = folder / "bedwright.log"
            keeper = logging.FileHandler(path, encoding="utf-8", errors="backslashreplace")
            log.addHandler(keeper)
            log.exception("A mistake of the program's own")
            log.removeHandler(keeper)
            keeper.close()
            return f"What happened is in {path}; the design is as it was."
    return "The design is as it was."


@contextlib.contextmanager
def _cleaning_up_when_ended() -> Iterator[None]:
    """Let SIGTERM unwind, so that nothing half written stays behind."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    before = signal.signal(signal.SIGTERM, lambda *_: sys.exit(ENDED))
    try:
        yield
    finally:
        signal.signal(signal.SIGTERM, before)


if __name__ == "__main__":
    sys.exit(main())
