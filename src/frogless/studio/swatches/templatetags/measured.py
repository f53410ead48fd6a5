"""Measured values on a page: a number is not parted from its sign or its unit at a line's end."""

from __future__ import annotations

import re

from django import template

register = template.Library()

_SIGN = re.compile(r"± (?=[\d.])")
_UNIT = re.compile(r"(?<=\d) (?=(?:%|cm|mm|in|yd|mg|g|oz)(?![a-z]))")


@register.filter
def unbroken(text: str) -> str:
    """The text with spaces that do not break between ±, number and unit."""
    return _UNIT.sub("\u00a0", _SIGN.sub("±\u00a0", text))
