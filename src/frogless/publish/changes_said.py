"""What is said of a draft beside others: of what could be had instead, and of what has changed."""

from __future__ import annotations

from collections.abc import Mapping

from frogless.publish.drafted import Drafted
from frogless.publish.messages import spelled

SAID: Mapping[str, str] = {
    # What could be had instead
    "alternative": "{what}: {stray}",
    "points_instead": "{points} shaping points instead of {before}",
    "clauses_fewer": "{n} fewer",
    "clauses_more": "{n} more",
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
    "along": "{depth} from its beginning",
    "on_its_way": "on its way",
    # What has changed
    "changed": "{what}: {before} → {after}",
    "came": "{what}: {after}",
    "new": "{what}: new, {after}",
    "gone": "{what}: left out",
    "count_at": "{place}",
    "stitches": "{n} stitches",
    "rows": "{n} rows",
    "rounds": "{n} rounds",
    "rounds_from": "{what}: rounds {first} to {last} → {first_after} to {last_after}",
    "rows_from": "{what}: rows {first} to {last} → {first_after} to {last_after}",
    "made": "{n} made",
    "first_edge": "{piece}, first row",
    "last_edge": "{piece}, last row",
    "of_piece": "{piece}, {what}",
    "girth_at": "girth at the {place}",
    "rhythm_of": "shaping of {name}",
    "unshaped": "not shaped",
    "shaping": "{points} points, {rhythm}",
    "pattern_repeats": "{name}, {n} repeats",
    "edging": "edging",
    "edging_told": "{name}, {repeats} repeats over {count} stitches",
    "waist": "waist",
    "elastic_told": "elastic, cut {cut}, sewn to a ring of {ring}",
    "cord_told": "cord of {length} through {n} eyelets",
    "band_told": "ribbed band, {rows} rows of {n} stitches",
    "strand": "strand {name}",
    "strand_told": "{n} beads, yarn cut {cut}",
    "length": "length",
    "fit_at": "fit at the {place}",
    "fit_ok": "fits",
    "fit_tight": "too tight",
    "fit_loose": "too loose",
    "goes_on": "goes on",
    "yarn": "yarn",
    "yarn_of": "yarn {letter}",
    "yarn_told": "about {length}, {balls}",
    "yarn_told_length": "about {length}",
    "hook": "hook",
    "hook_of": "hook of {name}",
    "stitch_of": "stitch of {name}",
    "stitches_used": "stitches used",
    "join": "seam {name}",
    "join_told": "{first} to {second}",
    "title": "title",
    "begins_with": "begins with",
}

COUNTED: Mapping[str, tuple[str, str]] = {
    "clauses": ("{n} clause", "{n} clauses"),
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
