"""The hand that a pattern is drafted for, from the command line to the plan file."""

from __future__ import annotations

import json

import pytest
from examples import Example

from frogless import draft
from frogless.cli import main


def test_hand_is_carried_through_from_files_and_from_texts() -> None:
    """The right one unless somebody says otherwise; the plan is the same."""
    example = Example()
    design, body, swatch = example.files
    request = draft.Request(design, body, (swatch,), hand="left")
    made = draft.draft(request).drafted
    texts = example.texts()
    given = draft.Texts(texts["design.toml"], texts["body.toml"], (texts["swatch.toml"],))
    assert made.hand == "left"
    assert draft.draft_texts(given, hand="left").drafted.hand == "left"
    right = draft.draft_texts(given).drafted
    assert right.hand == "right"
    assert right.plan.program == made.plan.program


def test_command_line_takes_the_hand(capsys: pytest.CaptureFixture[str]) -> None:
    """`--hand left`, and nothing but right and left."""
    design, body, swatch = map(str, Example().files)
    arguments = ["draft", design, "--body", body, "--swatch", swatch, "--json", "--hand"]
    assert main([*arguments, "left"]) == 0
    assert json.loads(capsys.readouterr().out)["hand"] == "left"
    with pytest.raises(SystemExit):
        main([*arguments, "both"])
    assert "invalid choice" in capsys.readouterr().err
