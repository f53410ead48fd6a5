"""The command line: what it prints, where, and with which exit code."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from examples import Example, write_files

from frogless import __version__, cli
from frogless.proof import prove
from frogless.proof.model import Finding, Subject

Capture = pytest.CaptureFixture[str]
OUTPUTS = ["pattern.html", "pattern.pdf", "pattern.txt", "plan.json", "schematic.svg"]


RING = Example()


def example(command: str = "draft", example: Example = RING) -> list[str]:
    """The arguments that draft an example."""
    design, body, swatch = map(str, example.files)
    return [command, design, "--body", body, "--swatch", swatch]


def python(*arguments: str, **environment: str) -> subprocess.CompletedProcess[bytes]:
    """Python in a process of its own."""
    return subprocess.run(
        [sys.executable, *arguments],
        capture_output=True,
        check=False,
        env={**os.environ, **environment},
    )


def ended(arguments: list[str], capsys: Capture) -> tuple[int | str | None, str, str]:
    """Exit code, output and errors, also where argparse ends the program itself."""
    code: int | str | None
    try:
        code = cli.main(arguments)
    except SystemExit as end:
        code = end.code
    said = capsys.readouterr()
    return code, said.out, said.err


def test_summary_is_all_when_no_folder_is_named(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Capture
) -> None:
    """Nothing is written anywhere."""
    monkeypatch.chdir(tmp_path)
    code, out, err = ended(example(), capsys)
    assert (code, err) == (0, "")
    assert out.startswith("Ring dance skirt, for Dancer 3, in light cotton, washed\n")
    assert "written" not in out
    assert not list(tmp_path.iterdir())


def test_folder_gets_the_five_files_and_they_are_told(tmp_path: Path, capsys: Capture) -> None:
    """In one entry of the summary."""
    code, out, _ = ended([*example(), "-o", str(tmp_path / "out")], capsys)
    assert code == 0
    assert sorted(path.name for path in (tmp_path / "out").iterdir()) == OUTPUTS
    told = " ".join(out[out.index("written") :].split())
    assert all(name in told for name in OUTPUTS)


@pytest.mark.parametrize("folder", [True, False])
def test_json_is_the_plan_file_and_nothing_else(
    tmp_path: Path, capsys: Capture, *, folder: bool
) -> None:
    """Not even a warning beside it; a folder that is named is filled all the same."""
    out = tmp_path / "out"
    where = ["-o", str(out)] if folder else []
    code, text, err = ended([*example(), "--json", *where], capsys)
    assert (code, err) == (0, "")
    assert json.loads(text)["format"] == "frogless-plan/1"
    assert out.exists() is folder
    assert not folder or (out / "plan.json").read_text(encoding="utf-8") == text


def test_terms_and_units_are_as_asked(capsys: Capture) -> None:
    """In the plan file's rows and in the summary's lengths."""
    _, text, _ = ended([*example(), "--json", "--terms", "uk", "--units", "in"], capsys)
    plan = json.loads(text)
    assert (plan["terms"], plan["units"]) == ("uk", "in")
    assert " ftr" in plan["sizes"][0]["pieces"][0]["rows"][0]["text"]
    _, out, _ = ended([*example(), "--units", "in"], capsys)
    assert "28 1/4 in" in out
    assert " cm" not in out.replace("cm to", "")


def test_two_swatches_answer_for_two_stitches(capsys: Capture) -> None:
    """The second one has the stitch that the first one lacks."""
    arguments = example(example=Example("procession-skirt", swatch="bulky-blend"))
    code, _, err = ended(arguments, capsys)
    assert code == 2
    assert "no gauge of single crochet" in err
    more = str(Example(swatch="light-cotton").files[2])
    assert ended([*arguments, "--swatch", more], capsys)[0] == 0


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        ([], "required: COMMAND"),
        (["draft"], "required: DESIGN, --body, --swatch"),
        (["draft", "x.toml", "--body", "y.toml"], "required: --swatch"),
        (["drafd"], "invalid choice: 'drafd' (choose from "),
        ([*example(), "--colour"], "unrecognized arguments: --colour"),
        ([*example(), "--unit", "in"], "unrecognized arguments: --unit in"),
        ([*example(), "--units", "mm"], "--units: invalid choice: 'mm' (choose from "),
        ([*example(), "--terms", "fr"], "--terms: invalid choice: 'fr'"),
        ([*example(), "--paper", "letter"], "--paper: invalid choice: 'letter'"),
        ([*example(), "--body", "b.toml"], "argument --body: it is given twice; one is needed"),
        ([*example(), "-o", "a", "--out", "b"], "argument -o/--out: it is given twice"),
        (example("resume"), "required: --round"),
        ([*example("resume"), "--round", "two"], "--round: invalid int value: 'two'"),
    ],
)
def test_command_that_is_not_understood_ends_with_two(
    arguments: list[str], says: str, capsys: Capture
) -> None:
    """With what is wrong and how it goes."""
    code, out, err = ended(arguments, capsys)
    assert (code, out) == (2, "")
    assert err.startswith("usage: frogless")
    assert says in err


@pytest.mark.parametrize("command", [[], ["draft"], ["resume"]])
def test_help_tells_every_option(command: list[str], capsys: Capture) -> None:
    """With an example to begin with."""
    code, out, err = ended([*command, "--help"], capsys)
    assert (code, err) == (0, "")
    options = {"draft": ["--out", "--json", "--paper", "--swatch"], "resume": ["--round", "--done"]}
    for option in options.get(" ".join(command), ["For example: frogless draft designs/"]):
        assert option in out


def test_version_is_that_of_the_package(capsys: Capture) -> None:
    """In one line."""
    assert ended(["--version"], capsys) == (0, f"frogless {__version__}\n", "")


def test_help_starts_without_the_heavy_libraries() -> None:
    """Arrays, models and pages are loaded by the command that needs them."""
    heavy = ("numpy", "pydantic", "typst", "lark", "babel", "django", "frogless.draft")
    look = (
        "import sys\nfrom frogless import cli\ncli.parser().format_help()\n"
        f"print(*[name for name in {heavy!r} if name in sys.modules])"
    )
    assert python("-c", look).stdout.split() == []


def test_module_runs_as_the_command_does() -> None:
    """`python -m frogless`."""
    assert python("-m", "frogless", "--version").stdout.decode().split() == [
        "frogless",
        __version__,
    ]


@pytest.mark.parametrize("command", [["draft"], ["resume", "--round", "1"]])
def test_refusal_says_what_its_stitches_are_called_in_uk_terms(
    command: list[str], capsys: Capture
) -> None:
    """A UK double crochet is another stitch than a US one."""
    name, *more = command
    arguments = [*example(name, Example("procession-skirt", swatch="bulky-blend")), *more]
    _, _, plain = ended(arguments, capsys)
    _, _, noted = ended([*arguments, "--terms", "uk"], capsys)
    note = noted.removeprefix(plain)
    assert "\n" not in plain.rstrip()
    assert note.startswith("(Stitches are named in US terms in files and refusals: ")
    assert "single crochet is UK double crochet" in note
    assert "half double crochet is UK half treble" in note


def test_resume_prints_the_card(capsys: Capture) -> None:
    """In the round that is named, after the points that are done."""
    _, text, _ = ended([*example(), "--json"], capsys)
    sections = json.loads(text)["sizes"][0]["pieces"][0]["sections"]
    (section,) = [one for one in sections if one["name"] == "waist to hip"]
    shaped = section["shaping_rows"][-1]
    code, out, err = ended([*example("resume"), "--round", str(shaped), "--done", "3"], capsys)
    assert (code, err) == (0, "")
    assert re.match(
        rf"Round {shaped} of 51 \((RS|WS)\), waist to hip\n184 to 192 stitches; 3 of 8 ", out
    )
    assert re.search(r"\nNext: dc in next \d+ to marker \d, then 2 dc in the marked st\n", out)


def test_resume_in_a_round_that_is_not_there_is_refused(capsys: Capture) -> None:
    """With the rounds there are."""
    code, out, err = ended([*example("resume"), "--round", "99"], capsys)
    assert (code, out) == (2, "")
    assert err == ("frogless: there is no round 99; there are 1 to 52, and 0 for the foundation\n")


def test_letters_that_the_terminal_lacks_are_shown_as_codes(tmp_path: Path) -> None:
    """A name from anywhere does not stop the summary; the plan file keeps its letters."""
    texts = Example().texts()
    texts["design.toml"] = texts["design.toml"].replace("Ring dance", "Röck 🧶")
    arguments = write_files(tmp_path, texts)
    plain = python("-m", "frogless", *arguments, PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    assert plain.returncode == 0
    assert plain.stdout.startswith(rb"R\xf6ck \U0001f9f6 skirt, for")
    plan = python("-m", "frogless", *arguments, "--json", PYTHONIOENCODING="ascii", PYTHONUTF8="0")
    assert json.loads(plan.stdout.decode("utf-8"))["title"] == "Röck 🧶 skirt"


def broken(monkeypatch: pytest.MonkeyPatch, fault: Callable[[], Any]) -> None:
    """A check that does not come to an end: what any fault of ours looks like from outside."""

    def check_fault(subject: Subject) -> Finding:
        """Raises."""
        fault()
        raise AssertionError

    monkeypatch.setattr(prove, "CHECKS", (check_fault,))


def test_fault_of_ours_is_one_sentence(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: Capture
) -> None:
    """Exit code 1, no traceback, and nothing is written."""
    monkeypatch.delenv("FROGLESS_DEBUG", raising=False)
    broken(monkeypatch, lambda: 1 // 0)
    code, out, err = ended([*example(), "-o", str(tmp_path / "out")], capsys)
    assert (code, out) == (1, "")
    assert err == (
        "frogless: a fault of ours: ZeroDivisionError: integer division or modulo by zero; "
        "nothing was written; --debug shows where\n"
    )
    assert not list(tmp_path.iterdir())


@pytest.mark.parametrize("by_option", [True, False])
def test_debugging_shows_where_a_fault_arose(
    monkeypatch: pytest.MonkeyPatch, capsys: Capture, *, by_option: bool
) -> None:
    """By an option or by the environment."""
    broken(monkeypatch, lambda: {}["place"])
    monkeypatch.setenv("FROGLESS_DEBUG", "0" if by_option else "1")
    code, _, err = ended([*example(), *(["--debug"] if by_option else [])], capsys)
    assert code == 1
    assert err.startswith("Traceback (most recent call last)")
    assert err.splitlines()[-1].startswith("frogless: a fault of ours: KeyError: 'place'; nothing")


def test_failed_proof_is_a_fault_of_ours(monkeypatch: pytest.MonkeyPatch, capsys: Capture) -> None:
    """No input can make a sound program write a wrong count."""

    def check_never(subject: Subject) -> Finding:
        """Fails over every pattern."""
        return Finding("never", "fail", 1, "patterns", ("not\nliked",))

    monkeypatch.setattr(prove, "CHECKS", (check_never,))
    code, _, err = ended(example(), capsys)
    assert code == 1
    assert err == (
        "frogless: a fault of ours: the pattern did not pass its own proof: never: not liked "
        "(1 patterns looked at); nothing was written; --debug shows where\n"
    )


def interrupt() -> None:
    """What ctrl-c raises."""
    raise KeyboardInterrupt


def test_interrupted_draft_writes_nothing(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, capsys: Capture
) -> None:
    """And says so; 130 is what a shell gives for ctrl-c."""
    broken(monkeypatch, interrupt)
    code, out, err = ended([*example(), "-o", str(tmp_path / "out")], capsys)
    assert (code, out, err) == (130, "", "frogless: stopped; nothing was written\n")
    assert not list(tmp_path.iterdir())
