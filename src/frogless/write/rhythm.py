"""On which rounds the shaping falls, in the trade's words."""

from __future__ import annotations

from frogless.plan.model import Clause, Rhythm
from frogless.write.markers import say_numbers
from frogless.write.phrases import Phrases, phrases


def rhythm_sentence(
    rhythm: Rhythm, offset: int = 0, language: str = "en", *, closed: bool = True
) -> str:
    """ "on round 1, then every 3rd round 6 more times (rounds 1, 4, 7, 10, 13, 16, 19)".

    Args:
        offset: rounds worked before the section; the sentence counts through the piece.
        closed: they are rounds; else rows.
    """
    said = phrases(language)
    words = said.say("first_on" if closed else "first_on_row", n=rhythm.first + offset)
    for clause in rhythm.clauses:
        words = said.say("then", before=words, clause=_clause(clause, said, closed=closed))
    if len(rhythm.rounds) < 2:
        return words
    listed = say_numbers(tuple(number + offset for number in rhythm.rounds))
    noun = "rounds_listed" if closed else "rows_listed"
    rounds = said.count(noun, len(rhythm.rounds), list=listed)
    return said.say("rhythm", words=words, rounds=rounds)


def ordinal(n: int, language: str = "en") -> str:
    """1st, 2nd, 3rd, 4th, 11th, 21st."""
    return phrases(language).nth(n)


def _clause(clause: Clause, said: Phrases, *, closed: bool) -> str:
    times = said.count("more_times", clause.times)
    if len(clause.every) == 2:
        a, b = map(said.nth, clause.every)
        return said.say("alternately" if closed else "alternately_rows", a=a, b=b, times=times)
    if clause.every == (1,):
        return said.say("every_round" if closed else "every_row", times=times)
    return said.say(
        "every_nth" if closed else "every_nth_row", nth=said.nth(clause.every[0]), times=times
    )
