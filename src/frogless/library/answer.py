"""What a terminal answers to words: one thing in full, several in a list, what works over a count."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Mapping, Sequence

from frogless.errors import InputError
from frogless.library.find import OWN, WHOLE, Found, find, plain
from frogless.library.items import Fit, Item, Kind, fits, names_of
from frogless.library.told import INDENT, in_full, in_short, multiple, named, where_named
from frogless.stitches.load import dictionary
from frogless.stitches.load import words as reading_words
from frogless.stitches.model import Dialect
from frogless.stitches.together import can_close_together, together_steps, together_term

#: A count over which nobody works; more is a slip of the pen.
MOST_PLACES = 5000
#: More lines are not read: so many in a list of what words find, and beside what is told in full.
MOST_LISTED, MOST_BESIDE = 40, 12

#: "dc2tog", "2 dc together".
_TOGETHER = re.compile(
    r"(?:(?P<first>\d{1,2}) )?(?P<stitch>\D+?) ?(?P<last>\d{1,2})? ?tog(?:ether)?"
)
_MOST_TOGETHER = 9

_KINDS: Mapping[Kind, str] = {
    "stitch": "Stitches",
    "pattern": "Stitch patterns",
    "edging": "Edgings",
    "motif": "Motifs",
    "join": "Joins",
}


def told(words: str, terms: Dialect, over: int | None = None, columns: int = 100) -> str:
    """What the words find: one thing in full, several in a list.

    Args:
        over: only what works over so many stitches, and how.

    Raises:
        InputError: nothing is called so, nothing works over that count, or a count that is none.
    """
    if over is None and (together := _together(words, terms, columns)):
        return together
    found = find(words, terms=terms)
    if over is not None:
        return _over(found, over, terms, words, columns)
    sure = _meant(found, words) if words.strip() else ()
    if not sure:
        return _list(found, terms, columns, MOST_LISTED if words.strip() else len(found))
    others = [each for each in found if each not in sure]
    fully = "\n".join(in_full(each.item, terms, columns) for each in sure)
    return fully + _see_also(others, terms, columns)


def _meant(found: Sequence[Found], words: str) -> tuple[Found, ...]:
    """What is told in full: what is called just so, or found alone; nothing where it is left open.

    A key says what is meant where it is written as one, "picot_group" or "[plain]".
    """
    key = words.strip().strip("[]")
    if key != words.strip() or "_" in key:
        found_by_key = tuple(each for each in found if each.item.key == key)
        if found_by_key:
            return found_by_key
    for rank in (OWN, WHOLE):
        named = tuple(each for each in found if each.rank == rank and each.by is not None)
        if named:
            # A stitch and the pattern of it may share a name.
            return named if len(named) == 1 or rank == OWN else ()
    return tuple(found) if len(found) == 1 else ()


def _together(words: str, terms: Dialect, columns: int) -> str:
    """Stitches worked together, "dc2tog": any stitch that can be; "" of other words."""
    asked = _TOGETHER.fullmatch(plain(words))
    if asked is None:
        return ""
    places = int(asked["first"] or asked["last"] or 2)
    for stitch in dictionary().values():
        term = stitch.terms[terms]
        called = {plain(term.name), plain(term.abbreviation)}
        if (
            asked["stitch"] in called
            and can_close_together(stitch)
            and 2 <= places <= _MOST_TOGETHER
        ):
            made = together_term(stitch, places, terms)
            loops = together_steps(stitch, places)[-1].loops
            how = (
                f"{made.abbreviation} ({made.name}): {places} {term.abbreviation}, one in each of "
                f"{places} places, each left before its last step; then "
                f"{reading_words(terms)['yarn_over'].name} and draw through all {loops} loops. It "
                f"stands on {places} and leaves 1."
            )
            item = Item("stitch", stitch.key, names_of(stitch))
            return f"{_wrapped(how, columns)}\n\n{in_full(item, terms, columns)}"
    return ""


def _list(found: Sequence[Found], terms: Dialect, columns: int, most: int) -> str:
    """The surest of what is found, by kind."""
    lines = _by_kind([(each.item, _line(each, terms)) for each in found[:most]], columns)
    return "\n".join([*lines, *_more(len(found) - most, columns)]) + "\n"


def _by_kind(told: Sequence[tuple[Item, str]], columns: int) -> list[str]:
    lines: list[str] = []
    for kind, heading in _KINDS.items():
        some = [line for item, line in told if item.kind == kind]
        if some:
            lines += ["", heading] if lines else [heading]
            lines += [_wrapped(INDENT + line, columns) for line in some]
    return lines


def _more(number: int, columns: int) -> tuple[str, ...]:
    """That there is more than is told."""
    if number <= 0:
        return ()
    return ("", _wrapped(f"and {number} more: add a word to find fewer", columns))


def _wrapped(line: str, columns: int) -> str:
    indent = INDENT + " " * (len(line) - len(line.lstrip()))
    return textwrap.fill(
        line, columns, subsequent_indent=indent, break_on_hyphens=False, break_long_words=False
    )


def _line(found: Found, terms: Dialect) -> str:
    item = found.item
    shown = item.name(terms)
    by = found.by
    alias = ""
    if by is not None and by.where != terms and by.name != shown.name:
        alias = f" = {where_named(by)} {named(by)}"
    return f"{named(shown)}{alias}: {in_short(item)} [{item.key}]"


def _over(found: Sequence[Found], over: int, terms: Dialect, words: str, columns: int) -> str:
    """What works over a count as it stands, then what does with other numbers or over any count."""
    if not 1 <= over <= MOST_PLACES:
        raise InputError(f"{over} is no count of stitches; write 1 to {MOST_PLACES}")
    fitting = [(each, every) for each in found if (every := fits(each.item, over))]
    fitting.sort(key=lambda pair: _how_well(pair[1]))
    if not fitting:
        called = f' called "{words}"' if words else ""
        raise InputError(f"no stitch pattern or edging{called} works over {over} stitches")
    told_ = [
        (each.item, f"{named(each.item.name(terms))}: {_fits_told(every)} [{each.item.key}]")
        for each, every in fitting
    ]
    head = f"Works over {over} stitches: {len(told_)}"
    return "\n".join([head, "", *_by_kind(told_, columns)]) + "\n"


def _how_well(every: Sequence[Fit]) -> tuple[bool, bool]:
    """First what fits by its usual multiple; any count is no news."""
    return all(fit.multiple == 1 for fit in every), all(fit.parameters for fit in every)


def _fits_told(every: Sequence[Fit]) -> str:
    """Each way of working that fits, with its first choice of parameters."""
    first: dict[bool, Fit] = {}
    for fit in every:
        first.setdefault(fit.closed, fit)
    return "; ".join(_fit_told(fit) for fit in first.values())


def _fit_told(fit: Fit) -> str:
    way = "rounds" if fit.closed else "rows"
    chosen = ", ".join(f"{name} = {value}" for name, value in fit.parameters)
    if (fit.multiple, fit.offset) == (1, 0) and not chosen:
        return f"{way} (any count)"
    return f"{way} ({multiple(fit.multiple, fit.offset)}{'; with ' + chosen if chosen else ''})"


def _see_also(others: Sequence[Found], terms: Dialect, columns: int) -> str:
    if not others:
        return ""
    lines = [_wrapped(INDENT + _line(each, terms), columns) for each in others[:MOST_BESIDE]]
    more = len(others) - MOST_BESIDE
    lines += [f"{INDENT}and {more} more"] if more > 0 else []
    return "\n".join(["", "See also", *lines]) + "\n"
