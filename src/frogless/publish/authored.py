"""What the designer wrote, in the terms that the pattern is published in.

A design names its stitches by their US names, and so does its prose.
"""

from __future__ import annotations

import re

from frogless.publish.drafted import Drafted


def authored(drafted: Drafted, text: str) -> str:
    """The designer's text with every stitch that it names called as the dialect calls it."""
    if drafted.dialect == "us":
        return text
    terms = _terms(drafted)
    longest_first = sorted(terms, key=len, reverse=True)
    found = re.compile(rf"\b({'|'.join(map(re.escape, longest_first))})\b", re.IGNORECASE)
    return found.sub(lambda match: _as_written(terms[match[0].lower()], match[0]), text)


def _terms(drafted: Drafted) -> dict[str, str]:
    """US names and abbreviations that mean something else in the dialect, and what to say there.

    Names that are the same in both are kept among them: "foundation single crochet" must not be
    taken for "single crochet".
    """
    pairs = [(s.terms["us"], s.terms[drafted.dialect]) for s in drafted.stitches.values()]
    names = {us.name.lower(): other.name for us, other in pairs}
    short = {us.abbreviation.lower(): other.abbreviation for us, other in pairs if us != other}
    return {**short, **names}


def _as_written(term: str, found: str) -> str:
    """The term with a capital where the text had one."""
    return term[:1].upper() + term[1:] if found[:1].isupper() else term
