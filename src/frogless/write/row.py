"""One row in words: how it starts, what is worked, how it ends, where the markers go."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from frogless.rows.nodes import Chain, Row
from frogless.write.body import Setting, alike, say_body
from frogless.write.counted import first_stitch
from frogless.write.ground import Ground
from frogless.write.markers import say_markers
from frogless.write.words import Words


@dataclass(frozen=True, slots=True)
class Said:
    """What the rows before have said, and need not be said again.

    Args:
        chains: for a turning chain of so many chains, whether it was said to count.
        hook: the hook in use, mm; 0 when none was named.
        marked: how many markers stand in the work.
    """

    chains: Mapping[int, bool] = field(default_factory=dict)
    hook: float = 0.0
    marked: int = 0

    def after(self, row: Row) -> Said:
        """The same, after one more row."""
        start = row.start
        chains = {**self.chains, start.chains: start.counts} if start.chains else self.chains
        return replace(
            self,
            chains=chains,
            hook=row.hook or self.hook,
            marked=len(row.marks) or self.marked,
        )


def say_row(row: Row, said: Said, ground: Ground, closed: bool, words: Words) -> str:
    """The whole text of a row, as sentences.

    Args:
        ground: what it is worked into.
        closed: whether it is a round.
    """
    setting = Setting(words, ground, closed, remaining=row.start.counts and row.start.chains > 0)
    sentences = (
        _hook(row, said, words),
        _note(row, setting),
        _main(row, said, setting),
        say_markers(row, words.phrases, standing=said.marked),
        words.phrases.say("fasten_off") if row.end.fasten_off else "",
    )
    return " ".join(_capital(sentence) for sentence in sentences if sentence)


def _main(row: Row, said: Said, setting: Setting) -> str:
    items = (
        *_start(row, said, setting.words),
        *_backwards(row, setting),
        *_body(row, setting),
    )
    end = ", ".join(_end(row, setting))
    return ", ".join(items) + (f"; {end}." if end else ".")


def _note(row: Row, setting: Setting) -> str:
    """Counted runs count chain spaces; "in each st and ch-sp" says so by itself."""
    if not setting.ground.spaces or alike(row.body, setting):
        return ""
    return setting.words.phrases.say("count_spaces", chain=setting.words.chain)


def _hook(row: Row, said: Said, words: Words) -> str:
    if not row.hook or row.hook == said.hook:
        return ""
    name = "change_hook" if said.hook else "use_hook"
    return words.phrases.say(name, hook=f"{row.hook:g}")


def _start(row: Row, said: Said, words: Words) -> tuple[str, ...]:
    """The turning chain; in full when it was not said yet whether it counts."""
    start, phrases = row.start, words.phrases
    if not start.chains:
        # A chain that comes first would be taken for the turning chain.
        leading = row.number > 0 and any(isinstance(node, Chain) for node in row.body[:1])
        return (phrases.say("no_turning_chain"),) if leading else ()
    if said.chains.get(start.chains) == start.counts:
        return (phrases.say("chain", chain=words.chain, n=start.chains),)
    name = "chain_counted" if start.counts else "chain_not_counted"
    stitch = _first(row, words)
    return (phrases.say(name, chain=words.chain, n=start.chains, stitch=stitch),)


def _first(row: Row, words: Words) -> str:
    return words.stitch(first_stitch(row) or "chain")


def _backwards(row: Row, setting: Setting) -> tuple[str, ...]:
    name = "backwards_round" if setting.closed else "backwards_row"
    return (setting.words.phrases.say(name),) if row.backwards else ()


def _body(row: Row, setting: Setting) -> tuple[str, ...]:
    """The body; a foundation chain is named without a word on what it counts as."""
    match row.body:
        case (Chain(times, each),) if row.number == 0:
            words = setting.words
            name = "chain" if each else "chain_one_space"
            return (words.phrases.say(name, chain=words.chain, n=times),)
    return say_body(row.body, setting)


def _end(row: Row, setting: Setting) -> tuple[str, ...]:
    phrases, closed = setting.words.phrases, setting.closed
    ring = (phrases.say("without_twisting"),) if closed and row.number == 0 else ()
    turn = (phrases.say("turn"),) if row.end.turn else ()
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
    return sentence[:1].upper() + sentence[1:]
