"""The library told in a terminal: a list with a line for each thing, or one thing in full."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Callable, Iterator, Mapping, Sequence

from frogless.errors import InputError
from frogless.library.cost import SINGLE, Cost, cost
from frogless.library.find import OWN, WHOLE, Found, find, plain
from frogless.library.items import Fit, Item, Kind, Name, edging_fits, fits, names_of, stated, ways
from frogless.read.motifs import motif
from frogless.stitches import edgings
from frogless.stitches.edged import edging_way
from frogless.stitches.joins import joins, say_join
from frogless.stitches.load import dictionary, explain, explain_left_handed
from frogless.stitches.model import Dialect, Edging, Stitch
from frogless.stitches.motifs import Flatness, MotifEntry, motifs
from frogless.stitches.pattern_rows import Way
from frogless.stitches.patterns import patterns
from frogless.stitches.together import can_close_together, together_steps, together_term
from frogless.write.stitch_motif import rounds_to_tell, say_motif
from frogless.write.stitch_pattern import say_way

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
_INDENT = "  "


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
                f"{places} places, each left before its last step; then yarn over and draw through "
                f"all {loops} loops. It stands on {places} and leaves 1."
            )
            item = Item("stitch", stitch.key, names_of(stitch))
            return f"{_wrapped(how, columns)}\n\n{in_full(item, terms, columns)}"
    return ""


def multiple(number: int, offset: int) -> str:
    """A multiple as the trade writes it: "6 + 1", "8"."""
    return f"{number} + {offset}" if offset else str(number)


def how_it_works(way: Way | Fit) -> str:
    """ "rows over 6 + 1", "rounds over 6"."""
    name = "rounds" if way.closed else "rows"
    any_count = (way.multiple, way.offset) == (1, 0)
    return f"{name} over {'any count' if any_count else multiple(way.multiple, way.offset)}"


def edging_told(made: Edging) -> str:
    """ "rows over 6 + 1; rounds over 6; turns corners"."""
    corners = ["turns corners"] if made.sides else []
    return "; ".join([*map(how_it_works, edging_fits(made)), *corners])


def motif_told(entry: MotifEntry) -> str:
    """ "square, grows round by round"."""
    grows = "grows round by round" if entry.grows else _rounds(entry.own_rounds)
    return f"{entry.shape}, {grows}"


def _rounds(number: int) -> str:
    return f"{number} {'round' if number == 1 else 'rounds'}"


def how_it_goes_on(entry: MotifEntry) -> str:
    """What the letters in the rounds of a motif mean that grows for ever; "" of another."""
    if not entry.grows:
        return ""
    if entry.period == 1:
        return "In the last line r is the number of the round."
    return (
        f"The last {entry.period} lines take turns: r is the number of the round, and k how often "
        "they were all worked before, 0 the first time."
    )


def again_told(way: Way) -> str:
    """Which rows are worked over and over: "Repeat rows 2 and 3."; "" where there is one alone."""
    first, last = way.setup + 1, len(way.rows)
    if last == 1:
        return ""
    name = "rnd" if way.closed else "row"
    if first == last:
        return f"Repeat {name} {first}."
    return f"Repeat {name}s {first} {'and' if last == first + 1 else 'to'} {last}."


def yarn_told(found: Cost, terms: Dialect) -> str:
    """What a pattern costs in yarn, in words."""
    single = dictionary()[SINGLE].terms[terms].name
    return f"{found.yarn:.2f} times the yarn of {single} over the same area"


def _from(basis: str, source: str, terms: Dialect) -> str:
    """Where it comes from. Sources are kept in US terms, and say so where the reader's are others."""
    kept = "" if terms == "us" else " (in US terms)"
    return f"{basis}{kept}: {spelled(source, terms)}"


def spelled(text: str, terms: Dialect) -> str:
    """What the library has in the spelling of the UK, in the reader's.

    >>> spelled("two colours", "us")
    'two colors'
    """
    return text.replace("colour", "color") if terms == "us" else text


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
            lines += [_wrapped(_INDENT + line, columns) for line in some]
    return lines


def _more(number: int, columns: int) -> tuple[str, ...]:
    """That there is more than is told."""
    if number <= 0:
        return ()
    return ("", _wrapped(f"and {number} more: add a word to find fewer", columns))


def _wrapped(line: str, columns: int) -> str:
    indent = _INDENT + " " * (len(line) - len(line.lstrip()))
    return textwrap.fill(
        line, columns, subsequent_indent=indent, break_on_hyphens=False, break_long_words=False
    )


def _line(found: Found, terms: Dialect) -> str:
    item = found.item
    shown = item.name(terms)
    by = found.by
    alias = ""
    if by is not None and by.where != terms and by.name != shown.name:
        alias = f" = {_where(by)} {_named(by)}"
    return f"{_named(shown)}{alias}: {_in_short(item)} [{item.key}]"


def _named(name: Name) -> str:
    same = not name.abbreviation or name.abbreviation == name.name
    return name.name if same else f"{name.name} ({name.abbreviation})"


def _where(name: Name) -> str:
    return name.where.upper() if name.where in ("us", "uk") else name.where


def _in_short(item: Item) -> str:
    if item.kind == "pattern":
        return "; ".join(how_it_works(way) for way in stated(patterns()[item.key]))
    if item.kind == "edging":
        return edging_told(edgings.edging(item.key))
    if item.kind == "motif":
        return motif_told(motifs()[item.key])
    if item.kind == "join":
        return joins()[item.key].looks
    stitch = dictionary()[item.key]
    return _stands(stitch)


def _stands(stitch: Stitch) -> str:
    if not stitch.stands_on and not stitch.leaves:
        return "stands on nothing, leaves nothing to work into"
    return f"stands on {stitch.stands_on}, leaves {stitch.leaves}"


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
        (each.item, f"{_named(each.item.name(terms))}: {_fits_told(every)} [{each.item.key}]")
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
    lines = [_wrapped(_INDENT + _line(each, terms), columns) for each in others[:MOST_BESIDE]]
    more = len(others) - MOST_BESIDE
    lines += [f"{_INDENT}and {more} more"] if more > 0 else []
    return "\n".join(["", "See also", *lines]) + "\n"


def in_full(item: Item, terms: Dialect, columns: int = 100) -> str:
    """All that the library knows of a thing, in lines of so many columns."""
    wrapped = (
        textwrap.fill(line, columns, subsequent_indent=_INDENT, break_on_hyphens=False)
        for line in _IN_FULL[item.kind](item, terms)
    )
    return "\n".join(wrapped) + "\n"


def _stitch_in_full(item: Item, terms: Dialect) -> Iterator[str]:
    stitch = dictionary()[item.key]
    yield f"{_named(item.name(terms))} [{item.key}]"
    yield "; ".join(f"{_where(name)} {_named(name)}" for name in item.names)
    if stitch.also:
        yield f"also called: {', '.join(stitch.also)}"
    yield explain(stitch, terms)
    if stitch.left_handed:
        yield f"Left-handed: {explain_left_handed(stitch, terms)}"
    yield f"{_stands(stitch)}; catches the yarn {stitch.catches} times ({stitch.yarn_basis})"
    if stitch.turning_chain:
        counts = {"yes": "counts", "no": "does not count", "varies": "counts for some designers"}
        told_ = counts.get(stitch.chain_counts, "")
        yield f"usual turning chain: {stitch.turning_chain}" + (f", {told_}" if told_ else "")
    height, single = stitch.height, dictionary()[SINGLE].terms[terms].name
    yield (
        f"height against {single}: {height.typical:g} ({height.low:g} to {height.high:g}); "
        + _from(stitch.basis, stitch.source, terms)
    )


def _pattern_in_full(item: Item, terms: Dialect) -> Iterator[str]:
    entry = patterns()[item.key]
    yield f"{entry.names[terms]} [{entry.key}]"
    if entry.also:
        yield f"also called: {', '.join(entry.also)}"
    yield f"drape: {entry.drape}; stretch: {entry.stretch}; leans: {entry.bias}"
    yield from _may_be_changed(entry.parameters)
    for way in ways(entry):
        found = cost(way, dictionary())
        yield ""
        yield f"{how_it_works(way).capitalize()}; {yarn_told(found, terms)} (derived)"
        yield from say_way(way, dictionary(), terms)
        yield from filter(None, [again_told(way)])
    if any(way.colour for way in ways(entry)):
        yield "To change, draw the new yarn through as the last loop of the stitch before."
    if entry.note:
        yield spelled(entry.note, terms)
    yield ""
    yield _from(entry.basis, entry.source, terms)


def _edging_in_full(item: Item, terms: Dialect) -> Iterator[str]:
    pattern, made = edgings.patterns()[item.key], edgings.edging(item.key)
    yield f"{_named(item.name(terms))} [{item.key}]"
    yield from _may_be_changed(pattern.parameters)
    for way in edging_ways(made):
        yield ""
        yield how_it_works(way).capitalize()
        yield from say_way(way, dictionary(), terms)
    if made.sides:
        yield ""
        yield f"Turns corners, over sides of {multiple(made.multiple, made.side_offset)}."
    if made.note:
        yield spelled(made.note, terms)
    yield ""
    yield _from(made.basis, made.source, terms)


def edging_ways(made: Edging) -> Iterator[Way]:
    """An edging in rows along an edge where it has any, and in rounds."""
    if made.rows:
        yield edging_way(made, closed=False)
    yield edging_way(made, closed=True)


def motif_rows(entry: MotifEntry, terms: Dialect) -> tuple[str, ...]:
    """The rounds of a motif; those that it grows by for ever come last, as sums over the round."""
    if not entry.grows:
        return say_motif(motif(entry.key).program, dictionary(), terms)
    rounds = rounds_to_tell(entry.own_rounds, entry.period)
    made = motif(entry.key, rounds)
    own = entry.own_rounds
    return say_motif(made.program, dictionary(), terms, own=own, period=entry.period)


def flatness_told(flatness: Flatness, terms: Dialect) -> str:
    """How a motif lies, with the figures."""
    stitch, flat = dictionary()[flatness.stitch].terms[terms].name, flatness.flat
    return (
        f"Each round gains {flatness.growth:.3g} stitches of {stitch}; {flat.low:.1f} to "
        f"{flat.high:.1f} lie flat: it {flatness.lies}."
    )


def _motif_in_full(item: Item, terms: Dialect) -> Iterator[str]:
    entry = motifs()[item.key]
    yield f"{entry.names[terms]} [{entry.key}]: {motif_told(entry)}"
    yield from _may_be_changed(entry.parameters)
    yield ""
    yield from motif_rows(entry, terms)
    yield from filter(None, [how_it_goes_on(entry)])
    if flatness := motif(entry.key).flatness:
        yield flatness_told(flatness, terms)
    if entry.note:
        yield spelled(entry.note, terms)
    yield ""
    yield _from(entry.basis, entry.source, terms)


def _join_in_full(item: Item, terms: Dialect) -> Iterator[str]:
    join = joins()[item.key]
    yield f"{join.names[terms]} [{join.key}]: {join.looks}"
    yield f"Hold the pieces {join.held}; with a {join.tool}."
    yield say_join(join, terms)
    yield ""
    yield _from(join.basis, join.source, terms)


def _may_be_changed(parameters: Mapping[str, edgings.Parameter]) -> Iterator[str]:
    if parameters:
        told_ = (f"{n} {p.low} to {p.high} (here {p.default})" for n, p in parameters.items())
        yield f"may be changed: {', '.join(told_)}"


_IN_FULL: Mapping[Kind, Callable[[Item, Dialect], Iterator[str]]] = {
    "stitch": _stitch_in_full,
    "pattern": _pattern_in_full,
    "edging": _edging_in_full,
    "motif": _motif_in_full,
    "join": _join_in_full,
}
