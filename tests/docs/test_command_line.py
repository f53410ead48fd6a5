"""The page of the command line and the commands in all papers are those that the program takes."""

from __future__ import annotations

import argparse
import re
import shlex

import pytest
from pages import ROOT, named, page, papers, part

from frogless.cli import main, parser

PAGE = page("command-line.md")


def commands() -> dict[str, argparse.ArgumentParser]:
    """Every command by name."""
    (found,) = [a.choices for a in parser()._actions if isinstance(a, argparse._SubParsersAction)]
    return dict(found)


def options(command: argparse.ArgumentParser) -> set[str]:
    """The words by which its options are given, and its files; help goes without saying."""
    actions = [a for a in command._actions if a.dest != "help"]
    words = {word for action in actions for word in action.option_strings}
    return words | {str(a.metavar) for a in actions if not a.option_strings}


def told(heading: str) -> set[str]:
    """The words that the tables under a heading name, values left out."""
    return {name.split()[0] for name in named(part(PAGE, heading))}


def test_page_has_every_command() -> None:
    """One heading each."""
    headings = re.findall(r"^## frogless (\w+)$", PAGE, re.MULTILINE)
    assert headings == list(commands())


def test_page_names_every_option_of_draft() -> None:
    """And none that is not there."""
    assert told("## frogless draft") == options(commands()["draft"])


@pytest.mark.parametrize("name", [name for name in commands() if name != "draft"])
def test_page_names_every_option_of_the_other_commands(name: str) -> None:
    """Options that a command shares with draft are explained there."""
    own = options(commands()[name])
    shared = options(commands()["draft"]) & own
    assert own - shared <= told(f"## frogless {name}") <= own


COMMANDS = sorted(
    {
        line.strip().replace("\\\n", " ")
        for paper in papers()
        for line in re.findall(
            r"^ *frogless (?:draft|resume) (?:[^\n]*\\\n)*[^\n]*$",
            paper.read_text(encoding="utf-8"),
            re.MULTILINE,
        )
        if "DESIGN" not in line
    }
)


@pytest.mark.parametrize("line", COMMANDS)
def test_command_in_a_paper_is_taken(line: str) -> None:
    """What can be copied is understood, and the example files that it names are there."""
    given = parser().parse_args(shlex.split(line)[1:])
    named_files = [given.design, given.body, *given.swatch]
    assert [f for f in named_files if f.parts[0] == "designs" and not (ROOT / f).is_file()] == []


def test_papers_show_commands() -> None:
    """The search above finds some."""
    assert len(COMMANDS) >= 3


def test_help_shows_an_example(capsys: pytest.CaptureFixture[str]) -> None:
    """The first thing that a person types leads on."""
    with pytest.raises(SystemExit) as stopped:
        main(["--help"])
    assert stopped.value.code == 0
    assert "frogless draft designs/" in " ".join(capsys.readouterr().out.split())
