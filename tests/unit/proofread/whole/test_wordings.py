"""Small patterns in wordings that people use: the right ones come out, the wrong ones are told.

`wordings*.txt` hold them, each under a line "=== right: why" or "=== 5 row-count: why", the line
and the check of all that is found in it.
"""

import re
from pathlib import Path

import pytest

from frogless.proofread.run import proofread

_CASES = [
    case
    for table in sorted(Path(__file__).parent.glob("wordings*.txt"))
    for case in re.findall(
        r"^=== (.+?): (.+)\n((?:(?!=== ).*\n)+)", table.read_text(encoding="utf-8"), re.MULTILINE
    )
]


@pytest.mark.parametrize(
    ("expected", "text"),
    [(told, text) for told, _, text in _CASES],
    ids=[why.replace(" ", "-") for _, why, _ in _CASES],
)
def test_small_pattern_is_read_as_it_is_meant(expected: str, text: str) -> None:
    """Nothing is found in a right one, and in a wrong one what is wrong and no more."""
    report = proofread(text)
    found = [f"{report.script.line(each.span.start)} {each.kind}" for each in report.findings]
    assert found == ([] if expected == "right" else [expected]), report.findings
    assert report.not_understood == ()
    verdicts = {row.verdict for row in report.reckoning.rows}
    assert verdicts == {"ok"} or (expected != "right" and verdicts == {"ok", "wrong"})
