"""What a measurement is of: its name in the trade's words, and whether it goes around or along."""

from __future__ import annotations

import re
from collections.abc import Mapping

from frogless.proofread.facts.model import Way

#: Girths by name; the first that is found holds.
GIRTHS: Mapping[str, re.Pattern[str]] = {
    name: re.compile(rf"\b(?:{words})\b", re.IGNORECASE)
    for name, words in {
        "high hip": r"high[ -]hips?|upper hips?",
        "hip": r"(?<!high )(?<!high-)(?<!upper )hips?",
        "bust": r"bust|chest",
        "underbust": r"under ?bust",
        "waist": r"waist(?:band)?",
        "hem": r"hem|bottom edge|lower edge",
        "upper arm": r"upper[ -]arms?|biceps?",
        "cuff": r"cuffs?|wrists?",
        "neck": r"neck(?:line)?(?: opening)?",
        "head": r"head|brim|crown",
        "thigh": r"thighs?",
        "circumference": r"circumference|girth|around|all round",
    }.items()
}
_LENGTH = re.compile(
    r"\b(?:length|long|height|high(?! hip)|tall|depth|deep|drop|down|below|above|inseam|"
    r"(?:from|to)[ ](?:the )?(?:waist|hip|hem|shoulder|underarm|neck|floor|cuff|wrist|armhole|edge))\b",
    re.IGNORECASE,
)
_WIDTH = re.compile(r"\b(?:width|wide|across|wingspan|flat)\b", re.IGNORECASE)
_DIAMETER = re.compile(r"\b(?:diameter|diam)\b", re.IGNORECASE)
_PLAIN = {"wide": "width", "across": "width", "high": "height", "tall": "height", "long": "length"}
_AROUND = GIRTHS["circumference"]


def way_of(words: str) -> Way:
    """Whether some words name a girth, a width, a length or a diameter; "" for none of them."""
    if _DIAMETER.search(words):
        return "diameter"
    if _AROUND.search(words):
        return "girth"
    if _WIDTH.search(words):
        return "width"
    if _LENGTH.search(words):
        return "length"
    return "girth" if landmark_in(words) else ""


def landmark_in(words: str) -> str:
    """The first landmark that is named, such as "hip"; "" when there is none."""
    found = [(m.start(), name) for name, p in GIRTHS.items() if (m := p.search(words))]
    named = [each for each in found if each[1] != "circumference"]
    if named:
        # "girth after waist to hip" is the hip's.
        last = re.search(r"\bto\b", words)
        return (max if last else min)(named, key=lambda each: each[0])[1]
    return "circumference" if found else ""


def name_of(words: str, way: Way) -> str:
    """What a measurement is called: its landmark for a girth, else its own words."""
    if way == "girth":
        return landmark_in(words)
    plain = " ".join(re.sub(r"[^\w /-]", " ", words.lower()).split())
    plain = re.sub(r"^(?:finished|total|[a-h]) ", "", plain)
    return _PLAIN.get(plain, plain[-40:].strip() or way)
