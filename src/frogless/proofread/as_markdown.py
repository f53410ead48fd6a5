"""The checks as the documentation lists them."""

from __future__ import annotations

from textwrap import dedent

from frogless.proofread.checks.model import Check
from frogless.proofread.checks.table import CHECKS

BEGIN = "<!-- checks: python docs/make_checks.py writes from here -->"
END = "<!-- to here -->"


def with_checks(page: str) -> str:
    """The page with the checks written anew between its two marks."""
    before, _, rest = page.partition(f"{BEGIN}\n")
    _, _, after = rest.partition(END)
    return f"{before}{BEGIN}\n{''.join(map(_check, CHECKS))}\n{END}{after}"


def _check(check: Check) -> str:
    title = check.title[:1].upper() + check.title[1:]
    example = dedent(check.example).strip()
    return f"\n### {check.name}\n\n{title.rstrip('.')}.\n\n```text\n{example}\n```\n"
