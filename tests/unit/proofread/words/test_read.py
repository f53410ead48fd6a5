"""The text of a row read as acts: a table of phrasings, and what no text may do to the reader."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from frogless.proofread.script.model import Script, Span
from frogless.proofread.script.normal import plain_of
from frogless.proofread.words.forms import keys_of
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import (
    Act,
    Again,
    Aside,
    Bare,
    Chain,
    Evenly,
    Extent,
    Increase,
    Into,
    Join,
    Leave,
    Met,
    Numbers,
    OwnStitch,
    Repeat,
    Ring,
    Said,
    Skip,
    Stated,
    Target,
    Terms,
    Together,
    Turn,
    Unclear,
)
from frogless.proofread.words.read import said
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect

TABLE = Path(__file__).with_name("phrases.txt")
SHORT = {
    "single_crochet": "sc", "double_crochet": "dc", "half_double_crochet": "hdc", "treble": "tr",
    "slip_stitch": "sl", "front_post_double_crochet": "FPdc", "back_post_double_crochet": "BPdc",
    "": "?",
}  # fmt: skip
LEXICONS: dict[Dialect, Lexicon] = {
    "us": Lexicon(Terms("us"), dictionary(), keys_of("us")),
    "uk": Lexicon(Terms("uk"), dictionary(), keys_of("uk")),
}


def read(
    text: str, dialect: Dialect = "us", sizes: int = 1, lexicon: Lexicon | None = None
) -> Said:
    """What a text says."""
    names = tuple(f"size {n}" for n in range(sizes)) if sizes > 1 else ("",)
    script = Script(text, plain_of(text), (0,), sizes=names)
    return said(Span(0, len(text)), script, lexicon or LEXICONS[dialect])


def told(what: Said) -> str:
    """Acts and counts in the notation of the table."""
    acts = [act(each) for each in what.acts]
    return " ; ".join([*acts, *(f"= {count(each)}" for each in what.stated)])


def count(stated: Stated) -> str:
    """One count that is stated: "12 dc", "4 space-2", "+6"."""
    sign = "+" if stated.change and min(stated.count.values) >= 0 else ""
    what = SHORT.get(stated.stitch, stated.stitch) if stated.stitch else stated.what
    return f"{sign}{many(stated.count)} {what}{f'-{stated.chains}' if stated.chains else ''}"


def many(numbers: Numbers | None) -> str:
    """ "3", or "3/4/5" of three sizes."""
    return "" if numbers is None else "/".join(map(str, numbers.values))


def place(target: Target) -> str:
    """ "next st", "each space-2", "next chain-from-hook#2"."""
    what = "st" if target.what == "stitch" else target.what
    if target.what == "stitch" and target.stitch:
        what = SHORT.get(target.stitch, target.stitch)
    if target.chains:
        what += f"-{many(target.chains)}"
    if target.nth:
        what += f"#{target.nth}"
    if target.of:
        what += f" of {SHORT.get(target.of, target.of)}"
    if target.counts is not None:
        what += f" [{'' if target.counts else 'not '}counted {SHORT.get(target.counts_as)}]"
    also = "".join(f" + {place(each)}" for each in target.others)
    return f"{target.which} {what}{also}"


def far(extent: Extent) -> str:
    """ "x3", "end", "to-last 2 st", "until <next marked>"."""
    match extent.kind:
        case "times":
            return f"x{many(extent.times)}"
        case "but_last":
            assert extent.target is not None
            return f"to-last {many(extent.times)} {place(extent.target).removeprefix('next ')}"
        case "until":
            assert extent.target is not None
            before = f" -{many(extent.times)}" if extent.times else ""
            return f"until <{place(extent.target)}>{before}"
        case kind:
            return kind


def act(what: Act) -> str:
    """One act."""
    stitch = SHORT.get(getattr(what, "stitch", ""), getattr(what, "stitch", ""))
    match what:
        case Bare():
            after = what.written_after
            return (
                f"{stitch} {many(what.times)}".strip() if after else f"{many(what.times)}{stitch}"
            )
        case Into():
            return (
                f"{{{', '.join(map(act, what.body))}}} in {place(what.target)} {far(what.extent)}"
            )
        case Met():
            parts = (f"{act(each.body[0])} in {place(each.target)}" for each in what.parts)
            return f"MET({' | '.join(parts)}) {far(what.extent)}"
        case Increase():
            return f"INC({stitch},{what.makes}) {place(what.target)} {far(what.extent)}"
        case Together():
            return f"TOG({stitch},{what.places}) {place(what.target)} {far(what.extent)}"
        case Chain():
            counted = {None: "", True: " counted", False: " not-counted"}[what.counts]
            named = f" {SHORT.get(what.counts_as)}" if what.counts_as else ""
            return f"CH{many(what.times)}{counted}{named}{f'+{what.space}' if what.space else ''}"
        case Skip():
            return f"SKIP {many(what.times) or 1} {place(what.target)}"
        case Leave():
            return f"LEAVE {many(what.times) or 'rest'}"
        case Repeat():
            flags = [n for n in ("more", "doubtful", "in_place") if getattr(what, n)]
            return " ".join([f"REP({', '.join(map(act, what.body))})", far(what.extent), *flags])
        case Evenly():
            sign = "-" if what.sense < 0 else "+"
            change = f" {sign}{many(what.change)}" if what.change else ""
            total = f" {many(what.total)} in all" if what.total else ""
            return (
                f"EVENLY {stitch}{change}{total}{f' over {many(what.over)}' if what.over else ''}"
            )
        case Again():
            return again(what)
        case Turn():
            return "TURN" if what.turned else "NO-TURN"
        case Join():
            named = f" {stitch}" if what.stitch else ""
            return f"JOIN {what.to}{named}{f' {what.chains}' if what.chains else ''}"
        case Ring():
            return "RING"
        case Aside():
            return f"({what.kind}{f' {what.hook:g}' if what.hook else ''})"
        case Unclear():
            return "UNCLEAR"


def again(what: Again) -> str:
    """ "AGAIN 3-4 x2", "AGAIN increase every 4 x6"."""
    rows = f" {what.first}-{what.last}" if what.first else f" {what.last}" if what.last else ""
    name = f" {what.name}" if what.name else ""
    said_more = {
        "every": what.every if what.every > 1 else 0,
        "x": many(what.times),
        "rows": many(what.rows),
        "until": what.until_rows,
        "mm": "/".join(f"{each:g}" for each in what.length),
    }
    more = "".join(f" {key} {value}" for key, value in said_more.items() if value)
    return f"AGAIN{name}{rows}{more}"


def cases() -> Iterator[tuple[str, str, str]]:
    """The rows of the table: dialect and sizes, the phrasing, and what it says."""
    how = "us"
    for line in TABLE.read_text(encoding="utf-8").splitlines():
        if line.startswith("## "):
            how = line.removeprefix("## ")
        elif line and not line.startswith("#"):
            text, _, says = line.partition("  =>  ")
            yield how, text, says


@pytest.mark.parametrize(("how", "text", "says"), tuple(cases()))
def test_phrase(how: str, text: str, says: str) -> None:
    """Each phrasing of the table says what stands beside it."""
    dialect, _, sizes = how.partition(" ")
    assert told(read(text, "uk" if dialect == "uk" else "us", int(sizes or 1))) == says


def unclear(acts: tuple[Act, ...]) -> Iterator[Unclear]:
    """All that was not understood, however deep."""
    for each in acts:
        if isinstance(each, Unclear):
            yield each
        elif isinstance(each, Into | Repeat):
            yield from unclear(each.body)


def test_bad_clause_hides_nothing() -> None:
    """A word nobody knows is unclear by itself, and what stands around it is read."""
    what = read("Ch 1, sc in next 3 sts, wobble twice about, dc in next st, turn.")
    assert told(what).startswith("CH1 ; {sc} in next st x3 ; UNCLEAR")
    assert told(what).endswith("{dc} in next st x1 ; TURN")


def test_guess_near_word() -> None:
    """A slip of the pen is guessed at."""
    text = "ch 1, sc in next 3 sts, skipp next 2 sts"
    (lost,) = unclear(read(text).acts)
    assert '"skip"' in lost.guess
    assert text[lost.span.start : lost.span.end].startswith("skipp")


def test_open_bracket_told() -> None:
    """A bracket that is never closed is told as that, and its stitches are read."""
    what = read("(sc in next st, inc 6 times")
    assert any("not closed" in each.guess for each in unclear(what.acts))
    assert "{sc} in next st x1" in told(what)


def test_star_missing_told() -> None:
    """ "rep from *" without a star says what is missing."""
    what = read("sc in next 3 sts, inc; rep from * around")
    assert any("where the repeat begins" in each.guess for each in unclear(what.acts))


def test_used_words() -> None:
    """Words of the trade are told as they are written, and dc2tog is one of them."""
    used = {each.word for each in read("Dc2tog, sk 1 st, 2 dc in ch-2 sp; rep from *").used}
    assert {"dc2tog", "sk", "st", "dc", "ch", "sp", "rep"} <= used


def test_own_stitch() -> None:
    """A stitch that the pattern defines is named by its key."""
    own = OwnStitch("fern", ("fern", "ferns"), Span(0, 0), leaves=3)
    lexicon = Lexicon(Terms("us"), dictionary(), keys_of("us"), {"fern": own})
    what = read("fern in next st (8 ferns)", lexicon=lexicon)
    assert told(what) == "{fern} in next st x1 ; = 8 fern"


def test_own_increase() -> None:
    """ "inc" makes what the pattern says that it makes."""
    own = OwnStitch("inc", ("inc",), Span(0, 0), leaves=3, meaning="double_crochet")
    lexicon = Lexicon(Terms("us"), dictionary(), keys_of("us"), {"inc": own})
    assert told(read("inc in next st", lexicon=lexicon)) == "INC(dc,3) next st x1"


def test_own_decrease() -> None:
    """ "cl" for three stitches worked together is worked over three places."""
    own = OwnStitch("cl", ("cl",), Span(0, 0), takes=3, meaning="double_crochet")
    lexicon = Lexicon(Terms("us"), dictionary(), keys_of("us"), {"cl": own})
    assert told(read("cl over next 3 sts", lexicon=lexicon)) == "TOG(dc,3) next st x1"


def test_deep_brackets() -> None:
    """Brackets beyond the depth that anyone writes are unclear, and end."""
    assert list(unclear(read("(" * 60 + "sc" + ")" * 60).acts))


def test_great_number_capped() -> None:
    """A number that no row has is cut, not followed."""
    (bare,) = read("sc 999999999999999999").acts
    assert isinstance(bare, Bare)
    assert bare.times is not None
    assert bare.times.values == (100_000,)


def test_ending_with_the_last_of_a_repeat() -> None:
    """ "Ending with" the stitch that a repeat ends with says where that one stands."""
    what = read("*ch 1, dc in next dc; rep from * across, ending with dc in top of ch-4")
    assert told(what) == "REP(CH1, {dc} in next dc x1) end ; (remark)"


def test_ending_with_another_stitch() -> None:
    """ "Ending with" another stitch is one more."""
    what = read("*dc in next st, ch 1, sk 1; rep from * across, end with dc in last st")
    assert told(what).endswith("; {dc} in last st x1")


WORDS = st.sampled_from(
    (
        "sc", "dc", "ch", "inc", "dec", "in", "next", "each", "st", "sts", "sp", "2", "3", "12", "(3)", "*", "**",
        "(", ")", "[", "]", ",", ";", ".", "-", "rep", "from", "around", "across", "to", "last", "turn", "join",
        "with", "sl", "of", "and", "tog", "sc2tog", "2nd", "hook", "x", "times", "more", "until", "measures",
        "10 cm", "Row", "4", "skip", "leave", "unworked", "magic", "ring", "same", "first", "counts", "as", "=",
        "<", ">", "{", "}", "fnord", "on", "top",
    )
)  # fmt: skip


@given(st.lists(WORDS, max_size=40).map(" ".join))
def test_any_words_are_read(text: str) -> None:
    """Words of the trade in any order raise nothing, and every act lies in the text."""
    for each in read(text, sizes=3).acts:
        assert 0 <= each.span.start <= each.span.end <= len(text)


@given(st.text(max_size=200))
def test_any_text_is_read(text: str) -> None:
    """No text raises."""
    read(text)


@given(st.lists(WORDS, max_size=30).map(" ".join))
def test_letters_are_accounted_for(text: str) -> None:
    """A text with words in it is never read as nothing at all."""
    what = read(text)
    assert what.acts or what.stated or not any(each.isalnum() for each in text)
