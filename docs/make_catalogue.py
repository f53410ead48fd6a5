"""Writes docs/catalogue.md from the library. Run it after a change of a stitch or a pattern."""

from __future__ import annotations

from pathlib import Path

from frogless.library.catalogue import catalogue

PAGE = Path(__file__).with_name("catalogue.md")

if __name__ == "__main__":
    PAGE.write_text(catalogue(), encoding="utf-8")
