"""Coverage-guided fuzzing of the reader of written patterns: no text ends it, and none takes long.

    python tests/fuzz/fuzz_proofread.py -runs=20000 CORPUS_FOLDER

Atheris changes the bytes of patterns and keeps what reaches code that nothing reached before. A
text that raises anything but a refusal, or that takes more than half a minute, ends the run with its
bytes written beside it. Watched like this a text takes ten times as long as by itself.
"""

from __future__ import annotations

import sys

import atheris

with atheris.instrument_imports(include=["frogless.proofread"]):
    from frogless.proofread.run import proofread

from frogless.errors import InputError

#: Letters of one text: what is found in short ones is found in less time.
LONGEST = 3000
SECONDS = 30


def one(data: bytes) -> None:
    """Proofreads what the bytes say."""
    text = data.decode("utf-8", errors="replace")
    try:
        report = proofread(text)
    except InputError:
        return
    for finding in report.findings:
        assert 0 <= finding.span.start <= finding.span.end <= len(report.script.text)
    assert 0 <= report.understood <= 1


if __name__ == "__main__":
    bounds = (f"-max_len={LONGEST}", f"-timeout={SECONDS}", "-rss_limit_mb=1024")
    atheris.Setup([sys.argv[0], *bounds, *sys.argv[1:]], one)
    atheris.Fuzz()
