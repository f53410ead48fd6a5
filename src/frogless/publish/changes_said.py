"""What is said of a draft beside others: of what could be had instead, and of what has changed."""

from __future__ import annotations

from collections.abc import Mapping

from frogless.publish.drafted import Drafted
from frogless.publish.messages import spelled

SAID: Mapping[str, str] = {
    # What could be had instead
    "alternative": "{what}: {stray}",
    "points_instead": "{points} shaping points instead of {before}",
    "and": "{first}, {second}",
    "stray_instead": "at most {stray} {where}, instead of {before} {there}",
    "stray_instead_here": "at most {stray} {where}, instead of {before}",
    "stray_as_far": "at most {stray} {where}, as far as now {there}",
    "stray_as_now": "at most {stray} {where}, as now",
    "too_wide": "{length} too wide",
    "too_narrow": "{length} too narrow",
    "not_off": "nowhere off that a tape could see",
    "at_place": "at the {place}",
    "below_place": "{depth} below the {place}",
    "below_top": "{depth} below the top edge",
    # What has changed
    "arrow": "{before} → {after}",
    "changed": "{what}: {before} → {after}",
    "came": "{what}: {after}",
    "new": "{what}: new, {after}",
    "gone": "{what}: left out, {before}",
    "gone_piece": "{what}: left out",
    "new_used": "a stitch that is new: {after}",
    "gone_used": "a stitch that is no longer used: {before}",
    "new_remark": "to know: {after}",
    "gone_remark": "no longer so: {before}",
    "called": "{before} is called {after}",
    "worked_otherwise": "some rows are worked otherwise, to the same counts",
    "of_piece": "{piece}, {what}",
    "made": "{n} made",
    "stitches": "{n} stitches",
    "in_rounds": "rounds {n}",
    "in_rows": "rows {n}",
    "from_to": "{first} to {last}",
    "girth_at": "girth at the {place}",
    "length": "length",
    "end_of": "end of {name}",
    "rhythm_of": "shaping of {name}",
    "stitch_of": "stitch of {name}",
    "pattern_of": "pattern of {name}",
    "pattern_told": "{name}, repeats {n}",
    "unshaped": "none",
    "shaping": "{points} points, {rhythm}",
    "edging": "edging",
    "edging_told": "{name}, {repeats} repeats over {count} stitches",
    "waist": "what holds the waist",
    "elastic_told": "{kind} elastic, {cut} to cut, a ring of {ring}",
    "cord_told": "cord of {length} through {n} eyelets",
    "band_told": "ribbed band, {rows} rows of {n} stitches",
    "strand_told": "{n} beads, {cut} of yarn to cut",
    "fit_at": "fit at the {place}",
    "fit_ok": "as wanted",
    "fit_tight": "too tight",
    "fit_loose": "too loose",
    "goes_on": "goes on",
    "goes_on_passes": "surely",
    "goes_on_uncertain": "perhaps",
    "goes_on_does_not_pass": "not",
    "begins_with": "begins with",
    "join": "seam {name}",
    "join_told": "{first} to {second}",
    "yarn": "yarn",
    "yarn_of": "yarn {letter}",
    "yarn_told": "about {length}, {balls}",
    "yarn_told_length": "about {length}",
    "hook": "hooks",
    "title": "title",
    "body": "body",
    "swatch": "swatch",
}

COUNTED: Mapping[str, tuple[str, str]] = {
    "clauses_more": ("{n} more line of instructions", "{n} more lines of instructions"),
    "clauses_fewer": ("{n} line of instructions less", "{n} lines of instructions less"),
    "balls": ("{n} ball", "{n} balls"),
}

NUMBERS = (
    "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
    "twelve",
)  # fmt: skip
"""Small numbers as words; larger ones stay figures."""


def tell(drafted: Drafted, name: str, /, **values: object) -> str:
    """The sentence of that name in the pattern's language, its blanks filled."""
    text = drafted.phrases.catalogue.gettext(SAID[name])
    return spelled(drafted, text).format(**values)


def counted(drafted: Drafted, name: str, n: int, told: str = "") -> str:
    """So many of something; `told` is the number as it is said."""
    one, many = COUNTED[name]
    return drafted.phrases.catalogue.ngettext(one, many, n).format(n=told or n)


def number(drafted: Drafted, n: int) -> str:
    """A small number as a word, where the language is one of ours."""
    in_words = drafted.language == "en" and 0 <= n < len(NUMBERS)
    return NUMBERS[n] if in_words else str(n)
