"""One row in words: how it starts, what is worked, how it ends, where the markers go."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import takewhile

from frogless.rows.count import consumed, left_for_later
from frogless.rows.nodes import Chain, Change, Leave, Row, Start, Work
from frogless.write.body import SaidBody, Setting, say_body
from frogless.write.counted import first_stitch, stands_for
from frogless.write.ground import Ground, is_ring, one_noun, say_place
from frogless.write.hook_places import called
from frogless.write.markers import say_markers
from frogless.write.words import Words


@dataclass(frozen=True, slots=True)
class Said:
    """What the rows before have said, and need not be said again.

    Args:
        chains: for a turning chain of so many chains, whether it was said to count; the fewest
            chains first.
        hook: the hook in use, mm; 0 when none was named.
        marked: how many markers stand in the work.
    """

    chains: tuple[tuple[int, bool], ...] = ()
    hook: float = 0.0
    marked: int = 0

    def after(self, row: Row) -> Said:
        """The same, after one more row."""
        start, chains = row.start, self.chains
        if start.chains and (start.chains, start.counts) not in chains:
            chains = tuple(sorted({**dict(chains), start.chains: start.counts}.items()))
        return Said(chains, row.hook or self.hook, len(row.marks) or self.marked)


@dataclass(frozen=True, slots=True)
class Place:
    """Where a row stands in its piece.

    Args:
        closed: whether it is a round.
        from_hook: chains that the foundation is made longer by, of the foundation and of the row
            that is worked into it from the hook; 0 of every other row.
        rejoined: the yarn was cut after the row before.
        colour: what the piece begins with, of its first row.
        says_unturned: it is said, too, that the work is not turned.
        joined: the loop on the hook sits on the first place, which the round before was joined to.
    """

    closed: bool
    from_hook: int = 0
    rejoined: bool = False
    colour: str = ""
    says_unturned: bool = False
    joined: bool = False


def say_row(
    row: Row, said: Said, ground: Ground, place: Place, words: Words, star: int | None = None
) -> str:
    """The whole text of a row, as sentences.

    Args:
        ground: what it is worked into.
        star: which node of the body repeats to its end, in a row for any number of repeats.
    """
    setting = Setting(words, ground, place.closed, row.start, star)
    return _say(row, said, setting, place, _body(row, setting, place))


def say_twice(row: Row, said: Said, ground: Ground, place: Place, words: Words) -> tuple[str, str]:
    """The whole text of a row, and what it would be if all had been said before."""
    setting = Setting(words, ground, place.closed, row.start)
    body = _body(row, setting, place)
    known = Said(((row.start.chains, row.start.counts),), row.hook, said.marked)
    full = _say(row, known, setting, replace(place, colour=""), body)
    return _say(row, said, setting, place, body), full


def _say(row: Row, said: Said, setting: Setting, place: Place, body: SaidBody) -> str:
    words = setting.words
    sentences = (
        words.phrases.say(f"rejoin_{_noun(place)}") if place.rejoined else "",
        _colour(place, words),
        _hook(row, said, words),
        words.phrases.say("count_spaces", chain=words.chain) if body.noted else "",
        words.phrases.say("short_row") if left_for_later(row.body) else "",
        _main(row, said, setting, place, body),
        say_markers(row, words.phrases, standing=said.marked),
        words.phrases.say("fasten_off") if row.end.fasten_off else "",
    )
    return " ".join(_capital(sentence) for sentence in sentences if sentence)


def begun_joined(rows: Sequence[Row], index: int, *, closed: bool) -> bool:
    """Whether a row begins where the one before was joined; the first as it is joined itself."""
    return closed and rows[max(index - 1, 0)].end.join != "none"


def _noun(place: Place) -> str:
    return "round" if place.closed else "row"


def _main(row: Row, said: Said, setting: Setting, place: Place, body: SaidBody) -> str:
    items = (
        *_across(row.start, setting, place),
        *_start(row, said, setting, place),
        *_backwards(row, setting),
        *_with_older(body.items, row, setting),
    )
    unturned = place.says_unturned and not (row.end.turn or row.end.fasten_off)
    last = (setting.words.phrases.say("do_not_turn"),) if unturned else ()
    end = ", ".join((*_end(row, setting), *last))
    told = ", ".join(items) or setting.words.phrases.say("nothing")
    return told + (f"; {end}." if end else ".")


def _colour(place: Place, words: Words) -> str:
    if not place.colour:
        return ""
    return words.phrases.say("begin_colour", word=words.colour, colour=place.colour)


def _hook(row: Row, said: Said, words: Words) -> str:
    if not row.hook or row.hook == said.hook:
        return ""
    name = "change_hook" if said.hook else "use_hook"
    return words.phrases.say(name, hook=f"{row.hook:g}")


def _across(start: Start, setting: Setting, row: Place) -> tuple[str, ...]:
    """The slip stitches that lead over the first places; the count leaves them out."""
    n, words = start.across, setting.words
    if not n:
        return ()
    if _lands(start, row):
        return (_into_place(n, setting),)
    place = say_place(_together_called(setting, 0, n), n, words)
    return (words.phrases.count("across", n, slip=words.slip, place=place),)


def _lands(start: Start, row: Place) -> bool:
    """Whether the last slip stitch goes into the place that the chain stands in for a stitch in.

    The loop of a joined round sits on its first place already, so that there is one to spare.
    """
    return row.joined and start.across > 0 and start.counts and start.chains > 0


def _into_place(n: int, setting: Setting) -> str:
    """ "sl st in next 2 sts and in next ch-2 sp"."""
    words = setting.words
    before, last = _together_called(setting, 1, n - 1), _together_called(setting, n, 1)
    more = n if n == 1 or before == last else n - 1
    place = say_place(last if more == n else before, more, words)
    told = words.phrases.count("next", more, stitch=words.slip, place=place)
    if more == n:
        return told
    return words.phrases.say("and_in_next", what=told, place=say_place(last, 1, words))


def _together_called(setting: Setting, at: int, n: int) -> str:
    noun = one_noun(setting.ground.of(at, n))
    return "st" if noun == "ring" else noun


def _start(row: Row, said: Said, setting: Setting, place: Place) -> tuple[str, ...]:
    """The turning chain; in full when it was not said yet whether it counts."""
    start, words = row.start, setting.words
    phrases = words.phrases
    if place.from_hook and row.number:
        return (_from_hook(row, words),)
    if not start.chains:
        # A chain that comes first would be taken for the turning chain.
        leading = row.number > 0 and any(isinstance(node, Chain) for node in row.body[:1])
        return (phrases.say("no_turning_chain"),) if leading else ()
    beyond = start.across > 0 and start.counts
    if (start.chains, start.counts) in said.chains and not beyond:
        return (phrases.say("chain", chain=words.chain, n=start.chains),)
    name = "chain_counted" if start.counts else "chain_not_counted"
    values = {"chain": words.chain, "n": start.chains, "stitch": _stands_for(row, words)}
    if beyond and not _lands(start, place):
        # Slip stitches end on one place and the chain stands on the next.
        name = "chain_counted_next"
        values["place"] = say_place(_together_called(setting, start.across, 1), 1, words)
    return (phrases.say(name, **values),)


def _from_hook(row: Row, words: Words) -> str:
    """Where a row begins in a foundation chain: the chains before it are its turning chain."""
    start = row.start
    name = "from_hook_counted" if start.counts else "from_hook_not_counted"
    nth = words.phrases.nth(start.chains + 1)
    stitch = _stands_for(row, words)
    return words.phrases.count(name, start.chains, nth=nth, chain=words.chain, stitch=stitch)


def _first(row: Row, words: Words) -> str:
    return words.stitch(called(first_stitch(row, words), words))


def _stands_for(row: Row, words: Words) -> str:
    return words.stitch(called(stands_for(row, words), words))


def _backwards(row: Row, setting: Setting) -> tuple[str, ...]:
    name = "backwards_round" if setting.closed else "backwards_row"
    return (setting.words.phrases.say(name),) if row.backwards else ()


def _body(row: Row, setting: Setting, place: Place) -> SaidBody:
    """The body; what a ring or a foundation chain is made of is named, not where it stands."""
    made = _foundation(row, setting, place)
    return SaidBody((made,), noted=False) if made else say_body(row.body, setting)


def _foundation(row: Row, setting: Setting, place: Place) -> str:
    """A ring or a foundation chain, without a word on what the chain counts as; "" of other rows."""
    words = setting.words
    is_closed_ring = is_ring(row, words.stitches, closed=setting.closed)
    match row.body:
        case (Work(stitch, _),) if is_closed_ring:
            name = words.stitch(stitch)
            vowel = "_vowel" if name[0] in "aeiou" else ""
            return words.phrases.say(f"made_ring{vowel}", stitch=name)
        case (Chain(times, each),) if row.number == 0:
            name = "chain" if each or is_closed_ring else "chain_one_space"
            return words.phrases.say(name, chain=words.chain, n=times + place.from_hook)
    return ""


def _with_older(items: tuple[str, ...], row: Row, setting: Setting) -> tuple[str, ...]:
    """The items of a body, and how many of the places that earlier rows left are worked into.

    What is left again is said last, and so is a change of colour.
    """
    words, ground = setting.words, setting.ground
    worked = setting.taken + consumed(row.body, words.stands_on) - left_for_later(row.body)
    older = [at for at in sorted(ground.older) if at < worked]
    if not older:
        return items
    nouns = [noun for at in older for noun in ground.of(at, 1)]
    noun = "st" if any(noun.startswith("sp") for noun in nouns) else one_noun(nouns)
    some = len(older) < len(ground.older)
    place = say_place(noun, len(ground.older) if some else len(older), words)
    name = "left_before_some" if some else "left_before"
    told = words.phrases.count(name, len(older), place=place)
    last = takewhile(lambda node: isinstance(node, Leave | Change), reversed(row.body))
    later = len(tuple(last))
    return (*items[: len(items) - later], told, *items[len(items) - later :])


def _end(row: Row, setting: Setting) -> tuple[str, ...]:
    phrases, words = setting.words.phrases, setting.words
    turn = (phrases.say("turn"),) if row.end.turn else ()
    if is_ring(row, words.stitches, closed=setting.closed):
        chains = isinstance(row.body[0], Chain)
        closed = (phrases.say("join_chain_ring", slip=words.slip),) if chains else ()
        return (*closed, *turn)
    ring = (phrases.say("without_twisting"),) if setting.closed and row.number == 0 else ()
    return (*ring, *_join(row, setting), *turn)


def _join(row: Row, setting: Setting) -> tuple[str, ...]:
    words = setting.words
    ring = setting.closed and row.number == 0
    match row.end.join:
        case "none":
            name = "close_in_next" if ring else "do_not_join"
            return (words.phrases.say(name),) if setting.closed else ()
        case "chain_top":
            values = {"chain": words.chain, "n": row.start.chains, "slip": words.slip}
            return (words.phrases.say("join_chain_top", **values),)
        case "first_stitch":
            name = "join_ring" if ring else "join_first_stitch"
            stitch = _first(row, words)
            return (words.phrases.say(name, slip=words.slip, stitch=stitch),)


def _capital(sentence: str) -> str:
    """With a capital, behind what a repeat or brackets begin with: "*Sc in next st"."""
    at = len(sentence) - len(sentence.lstrip("*[("))
    return sentence[:at] + sentence[at : at + 1].upper() + sentence[at + 1 :]
