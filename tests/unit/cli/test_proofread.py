"""`frogless proofread` on the command line."""

from __future__ import annotations

import io
import json
import sys
from pathlib import Path

import pytest

from frogless import cli
from frogless.proofread import run
from frogless.proofread.checks.table import CHECKS

Capture = pytest.CaptureFixture[str]
RIGHT = """\
Rnd 1: 6 sc in a magic ring. (6 sc)
Rnd 2: 2 sc in each st around. (12 sc)
Rnd 3: *Sc in next st, 2 sc in next st; rep from * around. (18 sc)
Fasten off.
"""
WRONG = RIGHT.replace("18 sc", "20 sc")


@pytest.fixture
def cap(tmp_path: Path) -> Path:
    """A pattern with a wrong count in its third round."""
    file = tmp_path / "cap.txt"
    file.write_text(WRONG, encoding="utf-8")
    return file


def test_pattern_that_adds_up_ends_with_zero(tmp_path: Path, capsys: Capture) -> None:
    """And says so."""
    (tmp_path / "cap.txt").write_text(RIGHT, encoding="utf-8")
    assert cli.main(["proofread", str(tmp_path / "cap.txt")]) == 0
    said = capsys.readouterr()
    assert "everything adds up; 3 rows worked out" in said.out
    assert not said.err


def test_finding_ends_with_one_and_nothing_on_standard_error(cap: Path, capsys: Capture) -> None:
    """Which is how it is told from a fault of the program."""
    assert cli.main(["proofread", str(cap)]) == 1
    said = capsys.readouterr()
    assert said.out.startswith('line 3      Rnd 3: "20 sc"\n')
    assert not said.err


def test_fault_of_ours_ends_with_one_and_nothing_on_standard_output(
    cap: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The other way round."""

    def fail(*_: object) -> None:
        raise RuntimeError("the drum broke")

    monkeypatch.setattr(run, "proofread", fail)
    assert cli.main(["proofread", str(cap)]) == 1
    said = capsys.readouterr()
    assert not said.out
    assert said.err.startswith("frogless: a fault of ours: RuntimeError: the drum broke")


def test_data_tell_the_row(cap: Path, capsys: Capture) -> None:
    """With the same exit code."""
    assert cli.main(["proofread", str(cap), "--json"]) == 1
    found = json.loads(capsys.readouterr().out)
    assert found["format"] == "frogless-proofread/1"
    assert [(one["row"], one["line"]) for one in found["findings"]] == [(3, 3)]
    assert [(one["stated"], one["worked"]) for one in found["rows"]] == [(6, 6), (12, 12), (20, 18)]


def test_standard_input_is_read(capsys: Capture, monkeypatch: pytest.MonkeyPatch) -> None:
    """A single dash."""
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(WRONG.encode())))
    assert cli.main(["proofread", "-"]) == 1
    assert "line 3 " in capsys.readouterr().out


def test_check_that_is_left_out_finds_nothing(cap: Path, capsys: Capture) -> None:
    """And is named at the end."""
    arguments = ["proofread", str(cap), "--without", "row-count, row-range", "--without=sides"]
    assert cli.main(arguments) == 0
    assert "left out    row-count, row-range, sides\n" in capsys.readouterr().out


def test_terms_are_as_asked(cap: Path, capsys: Capture) -> None:
    """Whatever the words say."""
    cli.main(["proofread", str(cap), "--terms", "uk"])
    assert "terms       UK, as asked for\n" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("more", "says"),
    [
        (["--size", "M"], 'the pattern has no size "M"'),
        (["--without", "row-cuont"], 'there is no check "row-cuont"; did you mean "row-count"'),
    ],
)
def test_what_is_not_there_is_refused(
    more: list[str], says: str, cap: Path, capsys: Capture
) -> None:
    """In a sentence, with what was meant."""
    assert cli.main(["proofread", str(cap), *more]) == 2
    said = capsys.readouterr()
    assert (said.out, said.err.startswith(f"frogless: {says}")) == ("", True)


def test_file_is_needed(capsys: Capture) -> None:
    """But for the list of checks."""
    assert cli.main(["proofread"]) == 2
    assert "name the file of a pattern" in capsys.readouterr().err


def test_checks_are_listed(capsys: Capture) -> None:
    """Each with what it looks for."""
    assert cli.main(["proofread", "--checks"]) == 0
    listed = [line.split()[0] for line in capsys.readouterr().out.splitlines() if line[0] != " "]
    assert listed == [check.name for check in CHECKS]
