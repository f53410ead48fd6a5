"""The command line: arguments in, one call, text out. Errors are one sentence each and exit 2."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from frogless import __version__
from frogless.errors import FroglessError

if TYPE_CHECKING:
    from frogless.draft import Request

EXAMPLE = (
    "frogless draft designs/ring-dance-skirt/design.toml --body designs/bodies/dancer-3.toml "
    "--swatch designs/swatches/light-cotton.toml -o out/"
)


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs one command. Returns the exit code: 0 done, 2 something has to be mended."""
    options = parser().parse_args(arguments)
    try:
        return int(options.run(options))
    except FroglessError as error:
        print(f"frogless: {error}", file=sys.stderr)
        return 2
    except BrokenPipeError:
        return 0
    except KeyboardInterrupt:
        print("frogless: stopped; nothing was written", file=sys.stderr)
        return 130


def parser() -> argparse.ArgumentParser:
    """The command line's own description."""
    top = argparse.ArgumentParser(
        prog="frogless", description="A body, a swatch and a design become a proven crochet pattern.",
        epilog=f"For example: {EXAMPLE}",
    )  # fmt: skip
    top.add_argument("--version", action="version", version=f"frogless {__version__}")
    commands = top.add_subparsers(metavar="COMMAND", required=True)
    _draft_command(commands)
    _resume_command(commands)
    return top


def _draft_command(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    told = "plan, prove and write a pattern for one body and swatch"
    command = commands.add_parser("draft", help=told, description=told.capitalize() + ".")
    _add_inputs(command)
    command.add_argument("-o", "--out", type=Path, metavar="DIR", help="folder for the pattern")
    command.add_argument("--paper", choices=["a4", "us-letter"], help="size of the PDF's pages")
    command.add_argument("--json", action="store_true", help="print the plan file alone")
    command.set_defaults(run=_draft)


def _resume_command(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    told = "show where an interrupted skirt stands and what comes next"
    command = commands.add_parser("resume", help=told, description=told.capitalize() + ".")
    _add_inputs(command)
    command.add_argument("--round", type=int, required=True, help="round you are in")
    command.add_argument(
        "--done", type=int, default=0, metavar="N", help="shaping points done in it (0)"
    )
    command.set_defaults(run=_resume)


def _add_inputs(command: argparse.ArgumentParser) -> None:
    command.add_argument("design", type=Path, metavar="DESIGN", help="design file (TOML)")
    command.add_argument("--body", type=Path, required=True, help="body file (TOML)")
    command.add_argument(
        "--swatch", type=Path, required=True, action="append",
        help="swatch file (TOML); may be given again for other stitches",
    )  # fmt: skip
    command.add_argument("--terms", choices=["us", "uk"], default="us", help="stitch names (us)")
    command.add_argument("--units", choices=["cm", "in"], default="cm", help="units shown (cm)")


def _draft(options: argparse.Namespace) -> int:
    # Imported here so that --help and --version answer at once.
    from frogless import draft

    made = draft.draft(_request(options))
    if options.json:
        print(draft.plan_text(made.drafted), end="")
        return 0
    paper = options.paper or ("us-letter" if options.units == "in" else "a4")
    written = draft.publish(made.drafted, options.out, paper) if options.out else ()
    print(draft.summary(made, written))
    return 0


def _resume(options: argparse.Namespace) -> int:
    from frogless import draft

    made = draft.draft(_request(options))
    print(draft.card(made, options.round, options.done))
    return 0


def _request(options: argparse.Namespace) -> Request:
    from frogless.draft import Request

    return Request(
        options.design, options.body, tuple(options.swatch), options.terms, options.units
    )


if __name__ == "__main__":
    sys.exit(main())
