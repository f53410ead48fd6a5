"""A bounded run of the fuzzer, from a fixed seed, over the shortest patterns of the corpus."""

from __future__ import annotations

import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path

import pytest

HERE = Path(__file__).parent
CORPUS = HERE.parent / "reference" / "proofread" / "corpus"
#: Texts to begin from, and texts in all: some thirteen seconds, most of them for watching every line.
SEEDS, RUNS = 8, 12


@pytest.mark.skipif(
    find_spec("atheris") is None,
    reason="atheris is not installed: there are wheels of it for Linux on x86-64 and Python 3.11 to 3.14",
)
def test_fuzzed_patterns_end_in_a_report_or_a_refusal(tmp_path: Path) -> None:
    """No text ends the reader, hangs it or fills the memory."""
    seeds = tmp_path / "seeds"
    seeds.mkdir()
    patterns = sorted(CORPUS.glob("*/*"), key=lambda path: (path.stat().st_size, path.name))
    for pattern in patterns[:SEEDS]:
        (seeds / pattern.name).write_bytes(pattern.read_bytes())
    fuzzer = [sys.executable, str(HERE / "fuzz_proofread.py"), "-seed=6", f"-runs={RUNS}"]
    bounds = ["-max_len=600", "-timeout=120"]
    done = subprocess.run(
        [*fuzzer, *bounds, str(seeds)], cwd=tmp_path, capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr[-3000:]
    assert f"Done {RUNS} runs" in done.stderr
