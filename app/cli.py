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
from typing import Any

from app import checking, creating, planning, ticking
from app.building import built
from app.memory import keep_freed_memory
from model.errors import BedError

DONE, CHECK_FAILED, REFUSED, OWN_MISTAKE = 0, 1, 2, 3
STOPPED, PIPE_CLOSED, ENDED = 130, 141, 143  # 128 and the signal, as shells count
COLUMNS = 80

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
    creating.add(commands, _new)
    checking.add(commands, _check)
    planning.add(commands, _plan)
    _add_why(commands)
    ticking.add(commands, _tick)
    _add_materials(commands)
    _add_prices(commands)
    window = commands.add_parser("window", help="open the window (the usual way)")
    window.set_defaults(command=_window)
    window.add_argument("design", metavar="DESIGN", type=Path, nargs="?")
    return parser


def _add_why(commands: Any) -> None:
    why = commands.add_parser("why", help="say where a dimension comes from")
    why.set_defaults(command=_why)
    why.add_argument("design", metavar="DESIGN", type=Path)
    why.add_argument("name", metavar="NAME", help="such as left.opening_width, or S1.length")


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


# ---------------------------------------------------------------- new, check, plan


def _new(arguments: argparse.Namespace) -> int:
    from model import designs
    from model.exports import choices_text

    if arguments.choices:
        return _print(choices_text.lines(COLUMNS))
    path = creating.path_asked(arguments)
    designs.write(creating.created(arguments, path), path)
    print(f"Wrote {path}")
    return DONE


def _check(arguments: argparse.Namespace) -> int:
    bed = built(arguments.design)
    _print(checking.told(bed, COLUMNS))
    return CHECK_FAILED if checking.has_failed(bed) else DONE


def _plan(arguments: argparse.Namespace) -> int:
    bed = built(arguments.design)
    return _print(planning.written(bed, arguments.output, arguments.design, COLUMNS))


# ---------------------------------------------------------------- tick


def _tick(arguments: argparse.Namespace) -> int:
    from dataclasses import replace

    from model import designs

    bed = built(arguments.design)
    if ticking.is_asked(arguments):
        design = ticking.ticked(bed, arguments)
        designs.write(design, arguments.design)
        bed = replace(bed, design=design)
    return _print(ticking.told(bed))


# ---------------------------------------------------------------- why


def _why(arguments: argparse.Namespace) -> int:
    from model.exports.why_text import lines

    return _print(lines(built(arguments.design), arguments.name, COLUMNS))


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

    print(content(built(arguments.design), arguments.empty).decode("utf-8"), end="")
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
