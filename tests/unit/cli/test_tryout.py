"""`frogless tryout` on the command line."""

from __future__ import annotations

import json

import pytest
from examples import FOLDER

from frogless.cli import main

FILES = [
    str(FOLDER / "whirl-skirt" / "design.toml"),
    "--swatch",
    str(FOLDER / "swatches" / "light-cotton.toml"),
]


def test_tryout_prints_a_table(capsys: pytest.CaptureFixture[str]) -> None:
    """On standard output, and no progress where nobody looks on."""
    assert main(["tryout", *FILES, "--sizes", "child", "--survey", "0"]) == 0
    out, err = capsys.readouterr()
    assert out.splitlines()[1].split() == ["whirl-skirt", "sizes", "child", "8", "0", "8"]
    assert err == ""


def test_tryout_prints_data_when_asked(capsys: pytest.CaptureFixture[str]) -> None:
    """JSON and nothing else."""
    assert main(["tryout", *FILES, "--sizes", "child", "--survey", "1", "--json"]) == 0
    children, surveyed = json.loads(capsys.readouterr().out)
    assert (children["tried"], children["drafted"]) == (8, 0)
    assert (surveyed["tried"], surveyed["drafted"], surveyed["refused"]) == (1, 1, [])


def test_tryout_refuses_a_sample_that_is_not_there(capsys: pytest.CaptureFixture[str]) -> None:
    """Exit code 2 and one sentence."""
    assert main(["tryout", *FILES, "--survey", "201"]) == 2
    assert "the sample has 1 to 200 women, not 201" in capsys.readouterr().err
