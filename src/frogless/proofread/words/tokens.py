"""The text of a row as tokens: every word or phrase of the trade with its place in the text."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache, lru_cache

from frogless.proofread.script.brackets import TOO_MANY, decimal_list, number_list
from frogless.proofread.script.model import Script, Span
from frogless.proofread.words.forms import keys_of
from frogless.proofread.words.lexicon import Lexicon
from frogless.proofread.words.model import Numbers, OwnStitch
from frogless.proofread.words.terms import NOISE, NUMBERS, OFTEN, ORDINALS, TENS, phrases
from frogless.stitches.model import Dialect

#: Words in a phrase, at most.
LONGEST = 9
_LOWER = str.maketrans("ABCDEFGHIJKLMNOPQRSTUVWXYZ", "abcdefghijklmnopqrstuvwxyz")
_RAW = re.compile(
    r"(?P<word>[^\W\d_]+(?:'[^\W\d_]{1,2}(?![^\W\d_]))?)|(?P<number>\d+(?:\.\d+)?)|(?P<stars>(?:\*{1,3}|[†‡#])(?:'?s\b)?)"
    r"|(?P<mark>[()\[\]{}<>,;:.=+&/\"-])|(?P<other>[^\s\w])"
)
_MARKS: Mapping[str, str] = {
    "(": "OPEN", "[": "OPEN", "{": "OPEN", "<": "OPEN",
    ")": "CLOSE", "]": "CLOSE", "}": "CLOSE", ">": "CLOSE",
    ",": "COMMA", ";": "SEMI", ":": "COLON", ".": "STOP", "-": "DASH", "=": "DASH", "+": "PLUS",
    "&": "AND", "!": "STOP",
}  # fmt: skip
_UNIT = re.compile(
    r"[ -]?(?P<unit>cm|mm|inch(?:es)?|\"|''"
    r"|in(?=\s*(?:[.,;:)\]]|$|from|long|wide|high|tall|deep|or|and|for|after|past|above|below|total|ending|end|with|less|before|\()))"
    r"(?![a-z])"
)
_MILLIMETRES = {"cm": 10.0, "mm": 1.0}
#: A list of two in a pattern of more sizes: told by what follows, or, of chains, by itself.
_PAIR = (
    re.compile(
        r"[ ]?\((\d{1,6})\)(?=[ ]{1,2}(?:sts?|stitch|times|sc|dc|hdc|tr|ch|sps?|rows?|rnds?|more)\b)"
    ),
    re.compile(r"[ ]?\((\d{1,6})\)"),
)
_SHADE = r"(?:MC|CC\d?|C\d|[A-H])"
_COLOUR = re.compile(
    r"(?:(?:(?:[Ww]ith|[Ii]n|[Uu]sing|w/)\s+)?(?:(?:the\s+)?(?:main|contrast(?:ing)?)\s+colou?r"
    rf"|(?:yarn|col(?:ou?r)?\.?)\s+(?:[A-Z0-9]\b|{_SHADE}\b))"
    rf"|(?:[Ww]ith|[Ii]n|[Uu]sing)\s+{_SHADE}\b"
    r"|(?:with|using|in)\s+(?:a\s+)?(?:new|next|different|other)\s+col(?:ou?r)?\b"
    r"(?:\s+every\s+(?:\d{1,3}\s+)?(?:rows?|rnds?|rounds?))?"
    # a hook is named before the work that is done with it, and no comma parts the two
    r"|(?:[Ww]ith|[Uu]sing)\s+(?:an?\s+|the\s+)?(?:\d{1,2}(?:\.\d{1,2})?\s?mm|smaller|larger|main)"
    r"\s+(?:crochet\s+)?hook\s+(?:\(\d{1,2}(?:\.\d{1,2})?\s?mm[^()]{0,12}\)\s+)?"
    r"(?=(?:make|work|ch|chain|begin|start)\b)"
    rf"|\({_SHADE}\))(?:\s+only\b)?"
)
#: The words that it begins with.
_OF_COLOUR = frozenset({
    "with", "in", "using", "w", "the", "main", "contrast", "contrasting", "yarn", "col", "color", "colour",
})  # fmt: skip
#: The letter of a colour behind a stitch: "4 sc A, 4 sc B".
_LETTER = re.compile(rf"{_SHADE}(?=\s{{0,3}}(?:[,;.)\]]|$))")
_PLACES = frozenset({"st", "sts", "stitch", "stitches"})


@dataclass(frozen=True, slots=True)
class Token:
    """A word or phrase.

    Args:
        kind: its terminal in `clause.lark`, or that of a mark.
        value: the number, the key of the stitch, the chains of a space: what the kind needs.
    """

    kind: str
    start: int
    end: int
    value: object = None

    @property
    def span(self) -> Span:
        """Where it stands."""
        return Span(self.start, self.end)


@dataclass(frozen=True, slots=True)
class Times:
    """ "3 times", "twice more", "another 2 times", "6 times in all"."""

    times: Numbers
    more: bool = False
    total: bool = False


@dataclass(frozen=True, slots=True)
class _Raw:
    kind: str
    text: str
    start: int
    end: int
    tight: bool  # nothing stands between it and the one before


@dataclass(slots=True, eq=False)
class _Phrases:
    """Phrases by their words: each word leads on to the next; `means` is what may end there."""

    after: dict[str, _Phrases] = field(default_factory=dict)
    means: tuple[str, object] | None = None

    def longest(self, words: Sequence[str]) -> tuple[int, str, object] | None:
        """How many of the words are a phrase, and which."""
        node, found = self, None
        for n, word in enumerate(words, 1):
            if word not in node.after:
                break
            node = node.after[word]
            if node.means is not None:
                found = (n, *node.means)
        return found

    def add(self, words: Sequence[str], means: tuple[str, object]) -> None:
        """One more phrase."""
        node = self
        for word in words:
            node = node.after.setdefault(word, _Phrases())
        node.means = means


def words_of(span: Span, script: Script, lexicon: Lexicon) -> tuple[Token, ...]:
    """The words and phrases, marks and numbers each by itself."""
    return tuple(_merged_words(list(_raw(script.plain, span)), script, lexicon))


def _raw(plain: str, span: Span) -> Iterator[_Raw]:
    """Words, numbers and marks; articles and hyphens within words are left out."""
    at = span.start
    text = plain[span.start : span.end].translate(_LOWER)
    for found in _RAW.finditer(text):
        start, end = span.start + found.start(), span.start + found.end()
        kind, word = found.lastgroup or "other", found[0]
        if kind == "word":
            word = word.split("'")[0] if word.endswith("'s") else word.replace("'", "")
        tight = start == at and start > span.start
        at = end
        yield _Raw(kind, word, start, end, tight)


def _is_hyphen(raw: list[_Raw], at: int) -> bool:
    """A hyphen within a word: "ch-3", "V-st", "sl-st"; a dash stands free, or between figures."""
    if raw[at].text != "-" or not raw[at].tight or at + 1 >= len(raw):
        return False
    after = raw[at + 1]
    before = raw[at - 1]
    return (
        after.tight
        and before.kind in ("word", "number")
        and after.kind in ("word", "number")
        and not (before.kind == after.kind == "number")
    )


def _merged_words(raw: list[_Raw], script: Script, lexicon: Lexicon) -> Iterator[Token]:
    known = _phrases(lexicon, tuple(lexicon.own))
    sizes = len(script.sizes)
    words = [
        each
        for at, each in enumerate(raw)
        if not (each.kind == "word" and each.text in NOISE)
        and not (_is_hyphen(raw, at) and script.text[each.start] != "\u2014")
    ]
    at = 0
    after = -1
    while at < len(words):
        each = words[at]
        if each.start < after:
            at += 1
            continue
        if each.kind == "word":
            if colour := (
                (_COLOUR.match(script.plain, each.start) if each.text in _OF_COLOUR else None)
                or _letter_at(words, at, script, lexicon)
            ):
                after = colour.end()
                yield Token("COLOUR", each.start, after)
                continue
            if each.text == "r" and _is_row(words, at):
                yield Token("ROWS", each.start, each.end)
                at += 1
                continue
            window = [w.text for w in words[at : at + LONGEST]]
            if found := known.longest(window):
                length, kind, value = found
                if kind == "CENTER" and _is_made(words, at) and each.text in lexicon.keys:
                    kind, value = "STITCH", lexicon.keys[each.text]
                yield Token(kind, each.start, words[at + length - 1].end, value)
                at += length
                continue
            if each.text in TENS:
                ones = words[at + 1 : at + 2]
                more = NUMBERS.get(ones[0].text, 0) if ones else 0
                last = ones[0] if 0 < more < 10 else each
                span = Span(each.start, last.end)
                total = TENS[each.text] + (more if 0 < more < 10 else 0)
                yield Token("NUM", span.start, span.end, Numbers((total,), span))
                at += 1 + (last is not each)
                continue
            yield _plain_word(each)
        elif each.kind == "number" and (found := _numbered(known, words, at)):
            length, kind, value = found
            yield Token(kind, each.start, words[at + length - 1].end, value)
            at += length
            continue
        elif each.kind == "number":
            token = _number(words, at, script.plain, sizes)
            after = token.end
            yield token
        elif each.kind == "stars":
            yield Token("STAR", each.start, each.end, each.text.rstrip("'s"))
        elif each.text in ("'", '"'):
            pass
        else:
            if each.text == "(" and (colour := _COLOUR.match(script.plain, each.start)):
                after = colour.end()
                yield Token("COLOUR", each.start, after)
                continue
            kind = "RANGE" if _is_range(words, at) else _MARKS.get(each.text, "OTHER")
            yield Token(kind, each.start, each.end, each.text)
        at += 1


def _letter_at(
    words: list[_Raw], at: int, script: Script, lexicon: Lexicon
) -> re.Match[str] | None:
    """A colour's letter right behind a stitch."""
    before = words[at - 1].text if at else ""
    if before not in _PLACES and before not in lexicon.keys:
        return None
    return _LETTER.match(script.plain, words[at].start)


def _is_made(words: list[_Raw], at: int) -> bool:
    """ "3 ctr over next 6 sts", "(6 ctr, 5 sc)": a stitch, and not the center of what follows."""
    numbered = at > 0 and words[at - 1].kind == "number"
    after = words[at + 1].text if at + 1 < len(words) else ""
    return after == "over" or (numbered and after not in _PLACES)


def _numbered(known: _Known, words: list[_Raw], at: int) -> tuple[int, str, object] | None:
    """A phrase that begins with a figure: "3-dc cl", "3rd loop"."""
    return known.longest([each.text for each in words[at : at + LONGEST]])


def _is_range(words: list[_Raw], at: int) -> bool:
    """ "1-4"."""
    near = words[at - 1 : at] + words[at + 1 : at + 2]
    numbers = len(near) == 2 and all(each.kind == "number" for each in near)
    return words[at].text == "-" and words[at].tight and numbers and near[1].tight


def _is_row(words: list[_Raw], at: int) -> bool:
    """ "R5"."""
    return at + 1 < len(words) and words[at + 1].tight and words[at + 1].kind == "number"


def _plain_word(each: _Raw) -> Token:
    span = (each.start, each.end)
    if each.text in NUMBERS:
        return Token("NUM", *span, Numbers((NUMBERS[each.text],), Span(*span)))
    if each.text in OFTEN:
        return Token("OFTEN", *span, OFTEN[each.text])
    if each.text in ORDINALS:
        return Token("ORD", *span, ORDINALS[each.text])
    return Token("WORD", *span, each.text)


def _number(words: list[_Raw], at: int, plain: str, sizes: int) -> Token:
    each = words[at]
    if length := _length(plain, each.start, sizes):
        return length
    if "." in each.text:
        return Token("WORD", each.start, each.end, each.text)
    after = words[at + 1] if at + 1 < len(words) else None
    if after and after.tight and after.kind == "word" and after.text in ("st", "nd", "rd", "th"):
        n = min(int(each.text[:6]), TOO_MANY)
        if after.text == _suffix(n):
            return Token("ORD", each.start, after.end, n)
    read = number_list(plain, each.start, sizes)
    if read is None:
        return Token("WORD", each.start, each.end, each.text)
    values, end = read
    after_chain = at > 0 and words[at - 1].text in ("ch", "chain")
    if sizes > 1 and len(values) == 1 and (pair := _PAIR[after_chain].match(plain, end)):
        # a list that is too short: what follows says that it is one
        values, end = (*values, min(int(pair[1]), TOO_MANY)), pair.end()
    return Token("NUM", each.start, end, Numbers(values, Span(each.start, end)))


def _length(plain: str, at: int, sizes: int) -> Token | None:
    """A length, one or one for each size: "12 cm", "4 (5, 6) in"."""
    read = decimal_list(plain, at, sizes)
    if read is None:
        return None
    values, end = read
    unit = _UNIT.match(plain, end)
    if unit is None and len(values) > 1:
        inside = _UNIT.search(plain, at, end)
        found = inside["unit"] if inside else ""
    else:
        found = unit["unit"] if unit else ""
        end = unit.end() if unit else end
    if not found:
        return None
    return Token("LENGTH", at, end, tuple(each * _MILLIMETRES.get(found, 25.4) for each in values))


def _suffix(n: int) -> str:
    if n % 100 in (11, 12, 13):
        return "th"
    return {1: "st", 2: "nd", 3: "rd"}.get(n % 10, "th")


@dataclass(frozen=True, slots=True, eq=False)
class _Known:
    """The phrases of a dialect, and those that the pattern defines itself, which come first."""

    own: _Phrases
    all: _Phrases

    def longest(self, words: Sequence[str]) -> tuple[int, str, object] | None:
        """How many of the words are a phrase, and which."""
        own, found = self.own.longest(words), self.all.longest(words)
        return own if own and (not found or own[0] >= found[0]) else found


@lru_cache(maxsize=8)
def _phrases(lexicon: Lexicon, own_keys: tuple[str, ...]) -> _Known:
    """The fixed phrases, the stitches of the lexicon, and what the pattern defines itself.

    Its own stitches are read one after the other, each with those before: `own_keys` says how far.
    """
    dialect = lexicon.terms.dialect
    usual = lexicon.keys is keys_of(dialect)
    known = _of_dialect(dialect) if usual else _of_keys(lexicon.keys)
    mine = _Phrases()
    for own in lexicon.own.values():
        for word in own.words:
            words = _split(word)
            found = known.longest(words)
            if words and not (found and found[0] == len(words) and found[1] in _FIXED):
                mine.add(words, _own(own))
    return _Known(mine, known)


@cache
def _of_dialect(dialect: Dialect) -> _Phrases:
    return _of_keys(keys_of(dialect))


def _of_keys(keys: Mapping[str, str]) -> _Phrases:
    found: dict[tuple[str, ...], tuple[str, object]] = {}
    for word, key in keys.items():
        found[_split(word)] = ("STITCH", key)
    for kind, listed in phrases().items():
        for phrase in listed:
            words = tuple(w for w in _split(phrase) if w not in NOISE)
            for each in (words, (*words[:-1], f"{words[-1]}s")) if words else ():
                found.setdefault(each, (kind, None)) if each != words else found.update(
                    {each: (kind, None)}
                )
    phrases_found = _Phrases()
    for words, means in found.items():
        if words:
            phrases_found.add(words, means)
    return phrases_found


#: Words that a pattern may explain, and that stay what they are.
_FIXED = frozenset({"CH", "ST", "INC", "DEC", "SP", "ROWS", "TCH", "SKIP", "REP"})


def _own(own: OwnStitch) -> tuple[str, object]:
    """What a word is that the pattern defines: a stitch, or several of another worked together."""
    if own.takes > 1 and own.leaves == 1 and own.meaning and not own.body:
        return "TOGETHER", (own.meaning, own.takes)
    plain = own.meaning and not own.body and own.takes == own.leaves == 1
    return "STITCH", own.meaning if plain else own.key


def _split(phrase: str) -> tuple[str, ...]:
    return tuple(
        re.findall(r"[^\W\d_]+|\d+", phrase.replace("'s", "").replace("'", "").translate(_LOWER))
    )
