"""What a definition makes of a word: a plain stitch, an increase, a group, a stitch of its own."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from frogless.proofread.script.model import Script, Span
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import (
    Act,
    Aside,
    Bare,
    Chain,
    Increase,
    Into,
    OwnStitch,
    Repeat,
    Skip,
    Together,
    Unclear,
)
from frogless.proofread.words.read import said
from frogless.proofread.words.special import Definition

#: A definition longer than this is a lesson; only its first sentences are read.
LONGEST = 600
_SHAPES = re.compile(
    r"(?:invisible |inv |sc |dc |hdc |htr |tr |beg )?"
    r"(?P<sense>inc|dec)(?:r|rease|reases|reasing)?s?(?: (?:st|stitch))?|(?P<inv>inv ?dec)"
)
_TOGETHER = re.compile(
    r"(?P<stitch>[a-z][a-z .-]{0,30}?)[ ,-]{0,3}(?:(?P<one>\d{1,2})[ -]?(?:st(?:itche)?s? )?tog(?:ether)?"
    r"|(?:over |the |in )*(?:next )?(?P<two>\d{1,2}) st(?:itche)?s (?:together|tog))\b"
)
_MADE = re.compile(
    r"(?:work |make )?(?P<count>\d|two|three|four) (?P<stitch>[a-z][a-z .-]{0,30}?) "
    r"(?:in|into) (?:the )?(?:same|next|one|1|a single|each|that)\b"
)
_MOTIONS = re.compile(
    r"\b(?:yo|yoh|yrh|yarn (?:over|round)|insert|pull (?:up|through)|draw (?:up|through))\b"
)
_OVER = re.compile(
    r"\b(?:over|across|in each of|of|into) (?:the )?(?:next |first |following )*(\d{1,2}) (?:\w+ )?st(?:itche)?s\b"
)
_TIMES = re.compile(r"\b(?:(?P<twice>twice)|(?P<n>\d{1,2}) (?:more )?times)\b")
_COUNTS_AS = re.compile(
    r"\bcounts? as (?P<count>\d{1,2}|one|an?|two|three) (?:st|stitch|dc|sc|hdc|tr|htr)"
)
_PICOT = re.compile(
    r"(?:work |make )?(?:ch|chain) ?\d{1,2}[,;.]? (?:and )?(?:then )?(?:join with |work )?(?:an? )?"
    r"(?:sl ?st|slip ?stitch|ss|sl-st|\w+) (?:in|into|to|in to) "
    r".{0,24}?(?:\bch\b|\bchain\b|\bbase\b|\bmade\b|\bworked\b|\bsame\b|\btop\b|\blast\b|\bsc\b|\bdc\b)"
)
_PLACED = re.compile(
    r"[ ,]*\b(?:all )?(?:in|into|in to)(?: the)? (?:(?:same|next|indicated|one|1|specified|designated|named|marked"
    r"|stated|given|single|a|an?y|that) ?)*(?:(?:st|stitch|sp|space|place|chain|ch|ch-\d+ sp|ch sp|dc|sc|lp|loop)\b"
    r"(?: or (?:ch-?\d* ?)?(?:st|stitch|sp|space|lp|loop))?)?"
    r"(?: (?:indicated|specified|stated|named|given|noted))?[ .]*$"
)
#: "Ch 3, slide 3 beads up, ch 1, ch 3, sl st in the st just worked": a loop upon a stitch.
_LOOPED = re.compile(
    r"(?:ch|chain) ?\d{1,2}\b[^.]{0,120}\b(?:sl ?st|slip ?stitch|ss) (?:in|into) (?:the )?"
    r"(?:same |last )?\w{1,6} (?:just |last )?(?:worked|made)\b"
)
_CABLE = re.compile(r"\b(\d{1,2})[ -]?(?:st|stitch|sts) (?:cable|cross|twist)")
#: "5 dc worked together in one stitch": as many as that are closed into one.
_CLOSED = re.compile(
    r"\b(?:together|tog|as one) (?:in|into) (?:the )?(?:same|one|1|a single|next|a) (?:st|stitch|place)?"
)
#: What the first of its kind in a round is called.
_FIRST = ("beg ", "beginning ", "starting ", "first ")
_NUMBER = {"one": 1, "a": 1, "an": 1, "two": 2, "three": 3, "four": 4}
_EXTRA = re.compile(r"\(.*?\)|\bst(?:itch)?(?:es)?$|\(?e?s\)?$")


def defined(definition: Definition, script: Script, words: Lexicon) -> OwnStitch | None:
    """What a definition makes of its word; None where the dictionary says it, or nothing does."""
    end = min(definition.text.end, definition.text.start + LONGEST)
    text = " ".join(script.plain[definition.text.start : end].lower().split()).strip(" .*_|")
    names = definition.names
    if not text or not names or any(re.search(r"\d+tog$", name) for name in names):
        return None
    if key := _plain_stitch(text, words):
        if all(words.keys.get(name) == key for name in names) or key in names:
            return None
        return _own(definition, meaning=key)
    shape = next((m for name in names if (m := _SHAPES.fullmatch(name))), None)
    if shape:
        return _shaping(definition, text, words, shape["sense"] == "inc")
    if together := _TOGETHER.match(text):
        places = int(together["one"] or together["two"])
        return _own(definition, takes=places, meaning=_plain_stitch(together["stitch"], words))
    if _PICOT.match(text) or _LOOPED.match(text) or ("picot" in names[0] and _MOTIONS.search(text)):
        return _own(definition, takes=0, leaves=0)
    if _CLOSED.search(text):
        return _own(definition)
    if _MOTIONS.search(text):
        return _in_motions(definition, text, words)
    return _of_acts(definition, script, words)


def _own(
    definition: Definition,
    body: tuple[Act, ...] = (),
    takes: int = 1,
    leaves: int = 1,
    meaning: str = "",
) -> OwnStitch:
    names = tuple(dict.fromkeys(form for name in definition.names for form in _forms(name)))
    return OwnStitch(definition.names[0], names, definition.span, body, takes, leaves, meaning)


def _forms(name: str) -> tuple[str, ...]:
    """A name as it stands, with its usual other look, and the plural of each."""
    looks = {name: None, name.removesuffix(" stitch").removesuffix(" st"): None}
    if name.startswith("beginning "):
        looks["beg " + name.removeprefix("beginning ")] = None
    looks |= dict.fromkeys([each.replace("-", " ") for each in looks])
    return tuple(form for each in looks if each for form in (each, _plural(each)))


def _plural(word: str) -> str:
    if len(word) < 2 or word.endswith("s"):
        return word
    return word + "es" if word.endswith(("stitch", "sh", "ch")) and len(word) > 2 else word + "s"


def _plain_stitch(text: str, words: Lexicon) -> str:
    """The key that a text names and does no more, "double crochet stitch(es)"; ""."""
    text = text.strip(" .,;")
    shorter = _EXTRA.sub("", text).strip(" .,;")
    for each in (text, shorter, _EXTRA.sub("", shorter).strip()):
        if each in words.keys:
            return words.keys[each]
    return ""


def _last_stitch(text: str, words: Lexicon) -> str:
    """The stitch that a text ends with, "decrease - single crochet"; ""."""
    tokens = re.split(r"[ :-]+", text.strip())
    ends = (_plain_stitch(" ".join(tokens[at:]), words) for at in range(len(tokens)))
    return next((key for key in ends if key), "")


def _shaping(definition: Definition, text: str, words: Lexicon, more: bool) -> OwnStitch | None:
    """ "inc: 2 sc in same st", "dec = sc2tog": how many of which stitch; None where it is not said."""
    if more:
        made = _MADE.search(text)
        if not made:
            return None
        count = int(_NUMBER.get(made["count"], made["count"]))
        return _own(definition, leaves=count, meaning=_plain_stitch(made["stitch"], words))
    if together := _TOGETHER.search(text):
        places = int(together["one"] or together["two"])
        return _own(definition, takes=places, meaning=_last_stitch(together["stitch"], words))
    if _MOTIONS.search(text):
        return _own(definition, takes=max(2, _places_of(text)))
    return None


def _in_motions(definition: Definition, text: str, words: Lexicon) -> OwnStitch | None:
    """Told in motions: it closes into one stitch over as many places as it is worked into."""
    counts = _COUNTS_AS.search(text)
    leaves = int(_NUMBER.get(counts["count"], counts["count"])) if counts else 1
    takes = _places_of(text)
    known = next((words.keys[name] for name in definition.names if name in words.keys), "")
    if known:
        stitch = words.stitches[known]
        if (stitch.stands_on, stitch.leaves) == (takes, leaves) or stitch.kind != "stitch":
            return None
        if stitch.stands_on != 1 or takes == 1:
            return None  # crossed stitches and cables: the dictionary knows them better
    return _own(definition, takes=takes, leaves=leaves)


def _places_of(text: str) -> int:
    """Over how many places: "over next 3 sts", or as often as the hook goes into a next one."""
    if over := _OVER.search(text):
        return max(1, int(over[1]))
    if re.search(r"\bsame\b", text):
        return 1
    places = len(re.findall(r"\b(?:next|each|following) (?:st|stitch|\w{2,3})\b", text))
    if places == 1 and (times := _TIMES.search(text)):
        return 2 if times["twice"] else int(times["n"]) + int("more" in times[0])
    return max(1, places)


@dataclass(frozen=True, slots=True)
class _Sum:
    takes: int = 0
    leaves: int = 0


def _of_acts(definition: Definition, script: Script, words: Lexicon) -> OwnStitch | None:
    """A group, told in stitches: "(2 dc, ch 1, 2 dc) in same st"."""
    plain = script.plain
    stop = min(definition.text.end, definition.text.start + LONGEST)
    span = _first_sentence(plain, Span(definition.text.start, stop))
    told = plain[span.start : span.end].lower()
    counts = _COUNTS_AS.search(" ".join(plain[definition.text.start : stop].lower().split()))
    placed = _PLACED.search(told)
    inside = _unwrapped(plain, Span(span.start, span.start + placed.start())) if placed else span
    acts = said(inside, script, words).acts
    if acts and all(isinstance(act, Aside) for act in acts):
        return None  # "BLO = back loop only": how, and not what
    if any(name.startswith(_FIRST) for name in definition.names):
        acts = _with_first_chain(acts)
    if not acts or any(isinstance(act, Unclear) for act in _all(acts)):
        if cable := _CABLE.search(" ".join(definition.names)):
            return _own(definition, takes=int(cable[1]), leaves=int(cable[1]))
        return _own(definition, leaves=_named_in(told, words) or 1) if placed else None
    tally = _tally(acts)
    takes = 1 if placed or tally.takes == 0 else tally.takes
    if not placed and all(isinstance(act, Aside | Chain) for act in acts):
        takes = 0  # "bead chain: slide a bead up to the hook, ch 1"
    leaves = int(_NUMBER.get(counts["count"], counts["count"])) if counts else tally.leaves
    return _own(definition, body=acts, takes=takes, leaves=leaves)


def _with_first_chain(acts: tuple[Act, ...]) -> tuple[Act, ...]:
    """ "Beginning shell: (ch 3, 2 dc, ch 2, 3 dc)": its first chain stands for a stitch."""
    first = acts[0] if acts else None
    if isinstance(first, Repeat) and first.extent.kind == "times":
        return (replace(first, body=_with_first_chain(first.body)), *acts[1:])
    if not isinstance(first, Chain) or first.counts is not None:
        return acts
    return (replace(first, counts=True), *acts[1:])


def _named_in(text: str, words: Lexicon) -> int:
    """How many stitches a text that was not understood names, with the numbers before them."""
    return sum(
        int(found[1] or 1)
        for found in re.finditer(r"\b(?:(\d{1,2}) )?([a-z]{2,5})\b", text)
        if words.keys.get(found[2], "chain") != "chain"
    )


def _first_sentence(plain: str, span: Span) -> Span:
    """Up to the first full stop that ends a sentence, without what a group is introduced by."""
    ends = re.compile(r"\.(?=\s|$)|\n[ \t]*\n|;").search(plain, span.start, span.end)
    end = ends.start() if ends else span.end
    lead = re.compile(r"\s*(?:work|make|worked as|to make[^,:]{0,20}[,:])\s+", re.I).match(
        plain, span.start, end
    )
    return Span(lead.end() if lead else span.start, end)


def _unwrapped(plain: str, span: Span) -> Span:
    """Without the one pair of brackets around the whole."""
    text = plain[span.start : span.end]
    start = span.start + len(text) - len(text.lstrip(" \t\n*"))
    end = span.start + len(text.rstrip(" \t\n,*"))
    pair = {"(": ")", "[": "]", "{": "}"}.get(plain[start : start + 1])
    if pair and plain[end - 1 : end] == pair:
        depth = 0
        for at in range(start, end):
            depth += (plain[at] in "([{") - (plain[at] in ")]}")
            if depth == 0:
                return Span(start + 1, end - 1) if at == end - 1 else Span(start, end)
    return Span(start, end)


def _all(acts: Sequence[Act]) -> Sequence[Act]:
    found: list[Act] = []
    for act in acts:
        found.append(act)
        if isinstance(act, Into | Repeat):
            found.extend(_all(act.body))
    return found


def _tally(acts: Sequence[Act]) -> _Sum:
    """Places taken and stitches left, where every number is one for all sizes."""
    takes = leaves = 0
    for act in acts:
        one = _of_act(act)
        takes, leaves = takes + one.takes, leaves + one.leaves
    return _Sum(takes, leaves)


def _of_act(act: Act) -> _Sum:
    match act:
        case Bare(times=times):
            return _Sum(0, times.values[0] if times else 1)
        case Into(body=body, target=target, extent=extent):
            often = extent.times.values[0] if extent.times else 1
            there = target.what == "same" or target.which == "same"
            return _Sum(0 if there else often, often * _tally(body).leaves)
        case Increase(makes=makes):
            return _Sum(1, makes)
        case Together(places=places):
            return _Sum(places, 1)
        case Chain(counts=True):
            return _Sum(1, 1)
        case Skip(times=times):
            return _Sum(times.values[0] if times else 1, 0)
        case Repeat(body=body, extent=extent, more=more):
            often = (extent.times.values[0] if extent.times else 1) + int(more)
            inner = _tally(body)
            return _Sum(often * inner.takes, often * inner.leaves)
    return _Sum()
