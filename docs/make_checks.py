"""Writes the list of checks in docs/proofreading.md. Run it after a change of a check."""

from __future__ import annotations

from pathlib import Path

from frogless.proofread.as_markdown import with_checks

PAGE = Path(__file__).with_name("proofreading.md")

if __name__ == "__main__":
    PAGE.write_text(with_checks(PAGE.read_text(encoding="utf-8")), encoding="utf-8")
