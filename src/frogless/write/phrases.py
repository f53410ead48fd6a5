"""Every phrase a pattern is made of, in English, and a translator that reads a catalogue.

A language is `locale/<language>/LC_MESSAGES/frogless.po`: the phrases below are its message ids,
and with the context `stitch` a stitch's key is the message id of its abbreviation. A language that
has no catalogue is refused; English has none and needs none.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from gettext import NullTranslations
from importlib import import_module
from pathlib import Path

LOCALE = Path(__file__).with_name("locale")
STITCH_CONTEXT = "stitch"

PHRASES: Mapping[str, str] = {
    # Labels
    "foundation": "Foundation ({side})",
    "round": "Rnd {first} ({side})",
    "rounds": "Rnds {first}\u2013{last} ({side})",
    "row": "Row {first} ({side})",
    "rows": "Rows {first}\u2013{last} ({side})",
    "two_sides": "{a}, {b}",
    "sides_in_turn": "{a}, {b} in turn",
    "line": "{label}: {text} ({count})",
    # How a row starts
    "use_hook": "Use {hook} mm hook.",
    "change_hook": "Change to {hook} mm hook.",
    "count_spaces": "Count each {chain}-sp as a st.",
    "chain": "{chain} {n}",
    "chain_not_counted": "{chain} {n} (does not count as a st)",
    "chain_counted": "{chain} {n} (counts as first {stitch})",
    "chain_each": "{chain} {n} (each {chain} counts as a st)",
    "chain_one_space": "{chain} {n} (counts as one {chain}-sp)",
    "no_turning_chain": "no turning chain",
    "backwards_round": "working back along the rnd without turning",
    "backwards_row": "working back along the row without turning",
    # What is worked
    "group": "({items})",
    "together": "{stitch}{places}tog",
    "st": "st",
    "ch": "ch",
    "end": "row end",
    "sp": "st and {chain}-sp",
    "each_around": "{what} in each {place} around",
    "each_across": "{what} in each {place} across",
    "each_remaining_around": "{what} in each remaining {place} around",
    "each_remaining_across": "{what} in each remaining {place} across",
    "in_next_st": "{what} in next st",
    "in_next_ch": "{what} in next ch",
    "in_next_end": "{what} in next row end",
    "made_foundation": "work {n} {stitch}",
    # How a row ends
    "without_twisting": "without twisting",
    "join_ring": "join with {slip} to first {stitch} to form a ring",
    "join_first_stitch": "join with {slip} to first {stitch}",
    "join_chain_top": "join with {slip} to top of {chain}-{n}",
    "close_in_next": "close the ring with the first st of the next rnd",
    "do_not_join": "do not join",
    "turn": "turn",
    "fasten_off": "Fasten off.",
    # Markers
    "place_markers": "Place {parts} {group}.",
    "move_markers": "Move {parts} {group}.",
    "marker_placed": "marker {numbers} in the {nth} st",
    "markers_placed": "markers {numbers} in the {nth} st",
    "marker_moved": "marker {numbers} up into the {nth} st",
    "markers_moved": "markers {numbers} up into the {nth} st",
    "and": "{a} and {b}",
    "of_each_increase": "of each increase",
    "of_the_increase": "of the increase",
    "of_each_decrease": "of each decrease",
    "of_the_decrease": "of the decrease",
    "markers_general": (
        "Move the markers up in every round, also in rounds without shaping. They are numbered "
        "from the join as seen with the right side facing; on a WS round you meet the last one "
        "first."
    ),
    "markers_general_unturned": (
        "Move the markers up in every round, also in rounds without shaping. They are numbered "
        "from the join, in the order in which you meet them."
    ),
    # Pieces and seams
    "piece": "{name}: worked {way}.",
    "piece_on_base": "{name}: worked {way}, into {edge}, {side} facing.",
    "edge_foundation": "the foundation edge of {piece}",
    "edge_last_row": "the last row of {piece}",
    "edge_row_ends": "the row ends of {piece}",
    "way_joined_turned": "in joined rounds, turned",
    "way_joined": "in joined rounds, not turned",
    "way_spiral": "in a spiral",
    "way_rounds": "in rounds",
    "way_rows": "in rows",
    "way_rows_turned": "in rows, turned",
    "section": "Section: {name}",
    "terms_us": "Terms: US",
    "terms_uk": "Terms: UK",
    "seam": "Seam {name}",
    "seam_even": "{stitch} through both edges: 1 in each of {first}; {second}, spread evenly.",
    "seam_spread": "{stitch} through both edges: 1 in each of {first}; {second}: {spread}.",
    # Rhythm
    "first_on": "on round {n}",
    "then": "{before}, then {clause}",
    "every_round": "every round {times}",
    "every_nth": "every {nth} round {times}",
    "alternately": "alternately every {a} and {b} round {times}",
    "rhythm": "{words} ({rounds})",
    "nth_1": "{n}st",
    "nth_2": "{n}nd",
    "nth_3": "{n}rd",
    "nth_other": "{n}th",
    # Because: each phrase with the sign that ties it to what stands before it
    "because_measured": "; {name} {value}",
    "because_estimated": " (estimated: {note})",
    "because_estimated_plain": " (estimated)",
    "because_note": " ({note})",
    "because_ease": " + ease {value}",
    "because_ease_less": " \u2212 ease {value}",
    "because_formula": "; {note} = {value}",
    "because_formula_bare": "; by the formula {value}",
    "because_formula_plain": "; {value} as asked",
    "because_wanted": " = {value} wanted",
    "because_gauge": "; at {value} stitches in {span}",
    "because_row_gauge": "; at {value} rows in {span}",
    "because_wanted_formula": " wanted",
    "because_exact": "; exactly {value}",
    "because_exact_at": " {value}",
    "because_landed": "; landed on {value}",
    "because_landed_on": "; landed on a {note}: {value}",
    "because_landed_as": "; landed on {value} ({note})",
    "because_girth": " = {value}",
    "because_off_more": ", {value} more",
    "because_off_less": ", {value} less",
    "because_off_none": ", as wanted",
    "because_growth": "; grows by {value} when it hangs",
    "because_length": "; length {value}",
    "because_depth": "; depth {value}",
    "because_stretch": "; stretches to {value} of its length",
    "because_percent": "; {value}",
    "because_allowance": " \u2212 allowance {value}",
    "because_lap": " + lap {value}",
    "because_cut": "; cut {value}",
    "because_sag": "; sag {value}",
    "because_span": "; distance of the two points {value}",
    "because_tails": "; tails {value}",
    "because_other": "; {name} {value}",
    "span_cm": "10 cm",
    "span_in": "4 in",
}

PLURALS: Mapping[str, tuple[str, str]] = {
    "next_st": ("{stitch} in next st", "{stitch} in next {n} sts"),
    "next_ch": ("{stitch} in next ch", "{stitch} in next {n} chs"),
    "next_end": ("{stitch} in next row end", "{stitch} in next {n} row ends"),
    "made_stitch": ("{stitch}", "{n} {stitch}"),
    "made_ornament": ("{stitch}", "{n} {stitch}s"),
    "made_trim": ("slide up a {stitch}", "slide up {n} {stitch}s"),
    "over_next": (
        "{stitch} over next {places} sts",
        "{n} {stitch} over next {places} sts",
    ),
    "skip_st": ("{skip} next st", "{skip} next {n} sts"),
    "skip_ch": ("{skip} next ch", "{skip} next {n} chs"),
    "skip_end": ("{skip} next row end", "{skip} next {n} row ends"),
    "times": ("[{items}] {n} time", "[{items}] {n} times"),
    "count_stitch": ("{n} {stitch}", "{n} {stitch}"),
    "count_ornament": ("{n} {stitch}", "{n} {stitch}s"),
    "count_space": ("{n} {chain}-{chains} sp", "{n} {chain}-{chains} sps"),
    "count_st": ("{n} st", "{n} sts"),
    "along_foundation": (
        "{n} st along the foundation edge of {piece}",
        "{n} sts along the foundation edge of {piece}",
    ),
    "along_last_row": (
        "{n} st along the last row of {piece}",
        "{n} sts along the last row of {piece}",
    ),
    "along_row_ends": ("{n} row end of {piece}", "{n} row ends of {piece}"),
    "spread": ("{k} in next", "{k} in each of next {n}"),
    "more_times": ("{n} more time", "{n} more times"),
    "rounds_listed": ("round {list}", "rounds {list}"),
    "because_shapings": ("; {n} shaping round", "; {n} shaping rounds"),
    "because_points": ("; {n} shaping point", "; {n} shaping points"),
    "because_repeats": ("; {n} repeat", "; {n} repeats"),
}

# How a measurement is called in a sentence; what is not listed is called by its key.
MEASUREMENTS: Mapping[str, str] = {
    "waist_girth": "waist",
    "high_hip_girth": "high hip",
    "hip_girth": "hip",
    "bust_girth": "bust",
    "thigh_girth": "thigh",
    "shoulder_girth": "shoulders",
    "head_girth": "head",
    "waist_to_hip": "waist to hip",
    "waist_to_high_hip": "waist to high hip",
    "waist_to_knee": "waist to knee",
    "waist_to_floor": "waist to floor",
}


@dataclass(frozen=True, slots=True)
class Phrases:
    """The phrases in one language."""

    language: str
    catalogue: NullTranslations

    def say(self, name: str, /, **values: object) -> str:
        """The phrase of that name with its blanks filled."""
        return self.catalogue.gettext(PHRASES[name]).format(**values)

    def count(self, name: str, n: int, /, **values: object) -> str:
        """The phrase of that name in the form that the number `n` takes."""
        one, many = PLURALS[name]
        return self.catalogue.ngettext(one, many, n).format(n=n, **values)

    def measurement(self, key: str) -> str:
        """What a measurement, or any other thing with a key, is called."""
        plain = MEASUREMENTS.get(key, key.replace("_", " "))
        return self.catalogue.gettext(plain)

    def stitch(self, key: str, abbreviation: str) -> str:
        """The language's abbreviation of a stitch, or the one given."""
        found = self.catalogue.pgettext(STITCH_CONTEXT, key)
        return abbreviation if found == key else found

    def nth(self, n: int) -> str:
        """The ordinal: 1st, 2nd, 3rd, 4th, 11th, 21st."""
        return self.say(f"nth_{_ending(n)}", n=n)


@cache
def phrases(language: str = "en", folder: Path = LOCALE) -> Phrases:
    """The phrases of a language.

    Raises:
        InputError: there is no catalogue for that language.
    """
    if language == "en":
        return Phrases(language, NullTranslations())
    # Babel is needed only to read a catalogue, so English starts without importing it.
    load = import_module("frogless.write.catalogue").load
    return Phrases(language, load(language, folder))


def _ending(n: int) -> str:
    if n % 100 in (11, 12, 13) or n % 10 not in (1, 2, 3):
        return "other"
    return str(n % 10)
