"""The command line: arguments in, one call, text out.

Exit codes: 0 done; 1 a fault of ours; 2 something has to be mended, one sentence for each fault;
130 stopped from the keyboard. `proofread` ends with 1 too when it found something: findings stand
on the standard output with nothing on the standard error, where a fault stands. A traceback is
shown only with --debug or FROGLESS_DEBUG=1. A draft takes less than half a second, so there is no
sign of progress; only `tryout`, which makes hundreds, has one.
"""

from __future__ import annotations

import argparse
import json
import os
import shutil
import sys
import traceback
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from io import TextIOWrapper
from pathlib import Path
from typing import TYPE_CHECKING

from frogless import __version__
from frogless.errors import FroglessError, InputError, Place, ProofFailed

if TYPE_CHECKING:
    from frogless.draft import Draft, Request
    from frogless.publish.pdf import Paper

EXAMPLE = (
    "frogless draft designs/ring-dance-skirt/design.toml --body designs/bodies/dancer-3.toml "
    "--swatch designs/swatches/light-cotton.toml -o out/"
)
PAPERS: dict[str, Paper] = {"cm": "a4", "in": "us-letter"}
NO_ROW = "no row of a pattern was found in it; rows begin as Rnd 1: or Row 1: do"
NARROWEST, NARROWEST_LIST, WIDEST = 60, 30, 100


@dataclass(frozen=True, slots=True)
class Answer:
    """What a command prints, and the exit code once that is printed."""

    text: str
    code: int = 0


Command = Callable[[argparse.Namespace], str | Answer]


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs one command and prints what it gives. Returns the exit code."""
    _accept_every_letter()
    options = parser().parse_args(arguments)
    answer = Answer("")

    def run() -> None:
        nonlocal answer
        given = options.run(options)
        answer = given if isinstance(given, Answer) else Answer(given)

    return (
        _guarded(run, options.debug, "; nothing was written")
        or _guarded(lambda: _show(answer.text), options.debug)
        or answer.code
    )


def _guarded(step: Callable[[], None], debug: bool, left: str = "") -> int:
    """The exit code of a step; whatever it raises becomes one sentence.

    Args:
        left: what is left behind when the step was not completed.
    """
    try:
        step()
    except KeyboardInterrupt:
        return _tell(f"stopped{left}", 130)
    except ProofFailed as error:
        return _fault(str(error), debug, left)
    except FroglessError as error:
        return _tell("\n".join((str(error), *getattr(error, "__notes__", ()))), 2)
    except Exception as error:
        return _fault(f"{type(error).__name__}: {error}", debug, left)
    return 0


def _fault(sentence: str, debug: bool, left: str) -> int:
    """A fault of ours, in one sentence on one line."""
    if debug or os.environ.get("FROGLESS_DEBUG", "0") not in ("", "0"):
        traceback.print_exc()
    plain = " ".join(sentence.split()).removesuffix(":")
    return _tell(f"a fault of ours: {plain}{left}; --debug shows where", 1)


def _tell(sentence: str, code: int) -> int:
    print(f"frogless: {sentence}", file=sys.stderr)
    return code


def _show(text: str) -> None:
    """Prints, and makes sure that it arrived.

    Raises:
        InputError: the output takes no more (a full disk).
    """
    out = sys.stdout
    # Unbuffered (PYTHONUNBUFFERED), a write may take only a part and leaves the rest to its caller.
    rest = memoryview(text.encode(out.encoding, out.errors or "strict"))
    try:
        while rest:
            rest = rest[out.buffer.write(rest) :]
        out.flush()
    except BrokenPipeError:
        # Whoever read has seen enough. Python would try to flush once more at its exit.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    except OSError as error:
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        reason = (error.strerror or "unknown reason").lower()
        raise InputError(f"the text could not be printed ({reason})") from None


def _accept_every_letter() -> None:
    """A name may hold letters that the terminal's encoding lacks: they are shown as their codes."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="backslashreplace")


def _speak_utf8() -> None:
    """JSON is UTF-8 wherever it goes (RFC 8259, 8.1)."""
    if isinstance(sys.stdout, TextIOWrapper):
        sys.stdout.reconfigure(encoding="utf-8")


def parser() -> argparse.ArgumentParser:
    """The command line's own description."""
    top = argparse.ArgumentParser(
        prog="frogless",
        description="A body, a swatch and a design become a proven crochet pattern.",
        epilog=f"For example: {EXAMPLE}",
        allow_abbrev=False,
    )
    top.add_argument("--version", action="version", version=f"frogless {__version__}")
    commands = top.add_subparsers(metavar="COMMAND", required=True)
    _add_draft(commands)
    _add_resume(commands)
    _add_tryout(commands)
    _add_counts(commands)
    _add_stitches(commands)
    _add_proofread(commands)
    _add_studio(commands)
    return top


def _add_draft(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    told = "plan, prove and write a pattern for one body and swatch"
    command = _add_command(commands, "draft", told, _draft)
    command.add_argument(
        "-o",
        "--out",
        type=_folder,
        action=_Once,
        metavar="DIR",
        help="folder for the pattern; without it the summary is all",
    )
    command.add_argument(
        "--paper", choices=list(PAPERS.values()), help="the PDF's pages (a4; us-letter for inches)"
    )
    command.add_argument(
        "--hand", choices=["right", "left"], default="right", help="hand you work with (right)"
    )
    command.add_argument("--json", action="store_true", help="print the plan file and nothing else")


def _add_resume(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    told = "show where an interrupted skirt stands and what comes next"
    command = _add_command(commands, "resume", told, _resume)
    command.add_argument(
        "--round", type=int, required=True, metavar="N", help="round you are in (0: foundation)"
    )
    command.add_argument(
        "--done", type=int, default=0, metavar="N", help="shaping points done in it (0)"
    )


def _add_tryout(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    told = "try designs on the bodies of size tables and of a survey"
    described = f"{told.capitalize()}: for how many each comes out, and why not for the others."
    command = commands.add_parser("tryout", help=told, description=described, allow_abbrev=False)
    command.add_argument(
        "designs", type=Path, nargs="+", metavar="DESIGN", help="design files (TOML)"
    )
    _add_swatch(command)
    command.add_argument(
        "--sizes",
        choices=["women", "child"],
        action="append",
        help="a size table; may be given again (both)",
    )
    command.add_argument(
        "--survey", type=int, default=200, metavar="N", help="surveyed women, 0 to 200 (200)"
    )
    command.add_argument("--json", action="store_true", help="print data instead of a table")
    command.add_argument("--debug", action="store_true", help="show where a fault of ours arose")
    command.set_defaults(run=_tryout)


def _add_counts(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    told = "counts near yours that fit a stitch multiple, and the round that leads there"
    described = f"{told.capitalize()}."
    command = commands.add_parser("counts", help=told, description=described, allow_abbrev=False)
    command.add_argument("count", type=int, metavar="COUNT", help="stitches that you have")
    command.add_argument(
        "--multiple", type=int, required=True, metavar="N", help="stitches of one repeat"
    )
    command.add_argument(
        "--offset", type=int, metavar="N", help="stitches over, in rows: 1 of a multiple of 6 + 1"
    )
    way = command.add_mutually_exclusive_group()
    way.add_argument("--rows", action="store_true", help="worked in rows")
    way.add_argument("--rounds", action="store_true", help="worked in rounds")
    command.add_argument(
        "--gauge", type=Path, action=_Once, metavar="FILE", help="swatch file (TOML), for girths"
    )
    command.add_argument("--terms", choices=["us", "uk"], default="us", help="stitch names (us)")
    command.add_argument("--units", choices=["cm", "in"], default="cm", help="units shown (cm)")
    command.add_argument("--debug", action="store_true", help="show where a fault of ours arose")
    command.set_defaults(run=_counts)


def _add_stitches(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    told = "search the stitches, stitch patterns and edgings"
    described = f"{told.capitalize()}, by what they are called in any dialect."
    command = commands.add_parser("stitches", help=told, description=described, allow_abbrev=False)
    command.add_argument(
        "words", nargs="*", metavar="WORDS", help="a name, part of one, or an abbreviation"
    )
    command.add_argument(
        "--over", type=int, metavar="N", help="only what works over so many stitches"
    )
    command.add_argument("--terms", choices=["us", "uk"], default="us", help="stitch names (us)")
    command.add_argument("--debug", action="store_true", help="show where a fault of ours arose")
    command.set_defaults(run=_stitches)


def _add_proofread(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    told = "find where a written pattern does not add up"
    described = (
        f"{told.capitalize()}. Ends with 0 when everything adds up, 1 when something is found, 2 when "
        "the file cannot be read."
    )
    command = commands.add_parser("proofread", help=told, description=described, allow_abbrev=False)
    command.add_argument(
        "file",
        nargs="?",
        metavar="FILE",
        help="the pattern: text, Markdown, PDF or .docx; - for the standard input",
    )
    command.add_argument("--json", action="store_true", help="print data instead of a report")
    command.add_argument(
        "--terms",
        choices=["auto", "us", "uk"],
        default="auto",
        help="stitch names of the pattern (auto: as it says, or guessed)",
    )
    command.add_argument(
        "--size", action=_Once, metavar="NAME", help="one size of the pattern; without it all"
    )
    command.add_argument(
        "--without",
        action="append",
        default=[],
        metavar="CHECK",
        help="leave out a check, or several joined by commas; may be given again",
    )
    command.add_argument("--checks", action="store_true", help="list the checks and end")
    command.add_argument("--debug", action="store_true", help="show where a fault of ours arose")
    command.set_defaults(run=_proofread)


def _add_swatch(command: argparse.ArgumentParser) -> None:
    command.add_argument(
        "--swatch",
        type=Path,
        required=True,
        action="append",
        metavar="FILE",
        help="swatch file (TOML); may be given again for other stitches",
    )


def _add_studio(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    told = "draft in the browser, on this computer alone"
    described = f"{told.capitalize()}."
    command = commands.add_parser("studio", help=told, description=described, allow_abbrev=False)
    command.add_argument(
        "--port", type=int, default=0, metavar="N", help="port to listen on (any free one)"
    )
    command.add_argument("--no-browser", action="store_true", help="do not open the browser")
    command.add_argument("--debug", action="store_true", help="show where a fault of ours arose")
    command.set_defaults(run=_studio)


def _add_command(
    commands: argparse._SubParsersAction[argparse.ArgumentParser],
    name: str,
    told: str,
    run: Command,
) -> argparse.ArgumentParser:
    """A command over a design, a body and swatches."""
    described = f"{told.capitalize()}."
    command = commands.add_parser(name, help=told, description=described, allow_abbrev=False)
    command.add_argument("design", type=Path, metavar="DESIGN", help="design file (TOML)")
    command.add_argument(
        "--body", type=Path, required=True, action=_Once, metavar="FILE", help="body file (TOML)"
    )
    _add_swatch(command)
    command.add_argument("--terms", choices=["us", "uk"], default="us", help="stitch names (us)")
    command.add_argument("--units", choices=["cm", "in"], default="cm", help="units shown (cm)")
    command.add_argument("--debug", action="store_true", help="show where a fault of ours arose")
    command.set_defaults(run=run)
    return command


class _Once(argparse.Action):
    """An option of which the second would silently win."""

    def __call__(
        self,
        parser: argparse.ArgumentParser,
        namespace: argparse.Namespace,
        values: object,
        option_string: str | None = None,
    ) -> None:
        """Stores the value, unless there is one.

        Raises:
            ArgumentError: the option is given twice.
        """
        if getattr(namespace, self.dest) is not None:
            raise argparse.ArgumentError(self, "it is given twice; one is needed")
        setattr(namespace, self.dest, values)


def _folder(text: str) -> Path:
    # A variable that the shell did not know would put five files wherever one happens to be.
    if not text.strip():
        raise argparse.ArgumentTypeError("the folder needs a name")
    return Path(text)


def _draft(options: argparse.Namespace) -> str:
    # Imported here so that --help and --version answer at once.
    from frogless import draft

    made = _drafted(options)
    # The text is made first: once the pattern is written nothing is left that could fail.
    if options.json:
        _speak_utf8()
        text = draft.plan_text(made.drafted)
    else:
        names = draft.file_names(made.drafted) if options.out else ()
        files = [options.out / name for name in names]
        text = draft.summary(made, files, _columns())
    if options.out:
        draft.publish(made.drafted, options.out, options.paper or PAPERS[options.units])
    return text


def _resume(options: argparse.Namespace) -> str:
    from frogless import draft

    return draft.card(_drafted(options), options.round, options.done)


def _tryout(options: argparse.Namespace) -> str:
    from frogless import tryout

    bodies = tryout.groups(options.sizes or tuple(tryout.TABLES), options.survey)
    tried = tryout.tryout(options.designs, options.swatch, bodies, _progress)
    _progress("")
    if options.json:
        _speak_utf8()
        return json.dumps(tryout.data(tried), ensure_ascii=False, indent=1) + "\n"
    return tryout.table(tried)


def _counts(options: argparse.Namespace) -> str:
    from frogless.publish.counts import ask_which, counts_text
    from frogless.swatch import gauge, load_swatch

    if not (options.rows or options.rounds):
        ask_which(options.count, options.multiple, options.offset)
    swatch = load_swatch(options.gauge) if options.gauge else None
    return counts_text(
        options.count,
        options.multiple,
        options.offset or 0,
        closed=not options.rows,
        gauge=gauge(swatch, swatch.stitch) if swatch else None,
        terms=options.terms,
        units=options.units,
    )


def _stitches(options: argparse.Namespace) -> str:
    from frogless.library.answer import told

    return told(" ".join(options.words), options.terms, options.over, _columns(NARROWEST_LIST))


def _proofread(options: argparse.Namespace) -> str | Answer:
    from frogless.proofread import as_json, as_text
    from frogless.proofread.run import proofread
    from frogless.proofread.sources.read import named, read_source

    if options.checks:
        if options.json or options.file:
            raise InputError("--checks lists the checks and reads no file; give it alone")
        return as_text.checks_told(_columns(NARROWEST_LIST))
    if options.file is None:
        raise InputError("name the file of a pattern, or - for the standard input")
    source = read_source(options.file)
    terms = None if options.terms == "auto" else options.terms
    size = options.size or ""
    silenced = [name.strip() for given in options.without for name in given.split(",")]
    report = proofread(source.text, terms, size, silenced)
    if not report.reckoning.rows:
        raise InputError(NO_ROW, Place(named(options.file)))
    code = 0 if report.proven else 1
    if options.json:
        _speak_utf8()
        found = as_json.data(report, size, source.remarks)
        return Answer(json.dumps(found, ensure_ascii=False, indent=1) + "\n", code)
    return Answer(as_text.told(report, _columns(), size=size, remarks=source.remarks), code)


def _progress(told: str) -> None:
    """What is being done, on one line of the terminal; nothing where nobody looks on."""
    if sys.stderr.isatty():
        print(f"\r\x1b[K{told}", end="", file=sys.stderr, flush=True)


def _drafted(options: argparse.Namespace) -> Draft:
    """The draft; a refusal says what its stitches are called in the terms that were asked for."""
    from frogless import draft

    try:
        return draft.draft(_request(options))
    except FroglessError as error:
        if note := draft.terms_note(str(error), options.terms):
            error.add_note(note)
        raise


def _studio(options: argparse.Namespace) -> str:
    try:
        from frogless.studio import serve
    except ModuleNotFoundError as error:
        raise InputError(
            f"the studio needs {(error.name or 'more').partition('.')[0]}, which is not installed; "
            'install "frogless[studio]" (in a checkout: python -m pip install ".[studio]")'
        ) from None
    return serve.run(options.port, browser=not options.no_browser)


def _request(options: argparse.Namespace) -> Request:
    from frogless.draft import Request

    return Request(
        options.design,
        options.body,
        tuple(options.swatch),
        options.terms,
        options.units,
        getattr(options, "hand", "right"),
    )


def _columns(least: int = NARROWEST) -> int:
    return max(least, min(shutil.get_terminal_size((WIDEST, 24)).columns, WIDEST))


if __name__ == "__main__":
    sys.exit(main())
