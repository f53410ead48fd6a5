"""The words for stitches in each dialect, in all the forms that people write them in."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from functools import cache
from types import MappingProxyType

from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect, Stitch

#: Words of one dialect that the dictionary does not write. Common practice, from memory.
_MORE: Mapping[Dialect | str, Mapping[str, tuple[str, ...]]] = {
    "both": {
        "chain": ("chain stitch", "ch st"),
        "slip_stitch": ("ss", "sl st", "slip st", "sl stitch", "slst"),
        "bobble": ("bobble stitch", "bobble st", "bob"),
        "popcorn": ("popcorn stitch", "popcorn st", "pc st"),
        "puff": ("puff st", "puff", "ps", "pf st"),
        "cluster": ("cluster stitch", "cluster st", "clus"),
        "bean": ("bean st",),
        "star": ("star st",),
        "spike": ("spike", "spike st"),
        "picot": ("picot stitch", "picot st", "pic", "3-ch picot", "ch-3 picot"),
        "large_picot": ("4-ch picot", "ch-4 picot"),
        "v_stitch": ("v st", "vst", "v-st", "v stitch"),
        "shell": ("shell stitch", "shell st", "shl"),
        "fan": ("fan stitch", "fan st"),
        "granny_group": ("granny cluster", "granny shell"),
        "reverse_single_crochet": ("crab st",),
        "loop_stitch": ("loop st",),
        "long_loop_knot": ("love knot",),
    },
    "us": {
        "treble": ("triple crochet", "treble", "triple", "trc"),
        "extended_single_crochet": ("exsc", "ext sc"),
        "extended_half_double_crochet": ("exhdc", "ext hdc"),
        "extended_double_crochet": ("exdc", "ext dc"),
        "half_double_crochet": ("half double", "hd"),
        "reverse_single_crochet": ("rsc", "reverse sc", "rev sc"),
        "foundation_single_crochet": ("fdsc", "fnd sc", "foundation sc"),
        "foundation_half_double_crochet": ("foundation hdc", "fnd hdc"),
        "foundation_double_crochet": ("foundation dc", "fnd dc"),
    },
    "uk": {
        "extended_single_crochet": ("edc", "ext dc"),
        "extended_half_double_crochet": ("ehtr", "ext htr"),
        "extended_double_crochet": ("etr", "ext tr"),
        "triple_treble": ("quadtr",),
        "reverse_single_crochet": ("rdc", "reverse dc", "rev dc"),
        "foundation_single_crochet": ("foundation dc", "fnd dc"),
        "foundation_half_double_crochet": ("foundation htr",),
        "foundation_double_crochet": ("foundation tr",),
        "front_post_double_crochet": ("rtrf", "raised treble front", "tr/rf", "tr rf"),
        "back_post_double_crochet": ("rtrb", "raised treble back", "tr/rb", "tr rb"),
        "front_post_single_crochet": ("rdcf",),
        "back_post_single_crochet": ("rdcb",),
        "front_post_half_double_crochet": ("rhtrf",),
        "back_post_half_double_crochet": ("rhtrb",),
        "front_post_treble": ("rdtrf",),
        "back_post_treble": ("rdtrb",),
    },
}
#: "inv dec" and the like tell how many places are taken, not which stitch it is; floss is a thread.
_NO_STITCH = re.compile(r"^(?:(?:inv\w*[ -]*)?(?:inc|dec)(?:rease)?|floss)$")
_PLACES: Mapping[str, tuple[str, ...]] = {"flo": ("fl", "flo"), "blo": ("bl", "blo")}
_POSTS: Mapping[str, tuple[str, ...]] = {
    "fp": ("fp ", "fp-", "front post ", "front-post "),
    "bp": ("bp ", "bp-", "back post "),
}


@cache
def keys_of(dialect: Dialect) -> Mapping[str, str]:
    """Stitch keys by every form of every word of a dialect, in lower case.

    Words that the other dialect alone has are in it as well ("sc" in UK terms): they mean one stitch
    only, and that they are strange here is for a check to say.
    """
    keys = dict(_forms_of_dialect(dialect))
    other: Dialect = "uk" if dialect == "us" else "us"
    for word, key in _forms_of_dialect(other).items():
        keys.setdefault(word, key)
    return MappingProxyType(keys)


@cache
def foreign_to(dialect: Dialect) -> Mapping[str, str]:
    """The words that only the other dialect has, with the stitch that each means there."""
    other: Dialect = "uk" if dialect == "us" else "us"
    own = _forms_of_dialect(dialect)
    return MappingProxyType({w: k for w, k in _forms_of_dialect(other).items() if w not in own})


@cache
def _forms_of_dialect(dialect: Dialect) -> Mapping[str, str]:
    found: dict[str, str] = {}
    # Names and abbreviations first, so that no form of one stitch hides the word of another.
    for key, stitch in dictionary().items():
        for word in _written(stitch, dialect):
            found.setdefault(word, key)
    for key, stitch in dictionary().items():
        for word in _also(key, stitch, dialect):
            found.setdefault(word, key)
    for word, key in tuple(found.items()):
        for form in _looks(word):
            found.setdefault(form, key)
    return MappingProxyType({w: k for w, k in found.items() if not _NO_STITCH.match(w)})


def _written(stitch: Stitch, dialect: Dialect) -> Iterator[str]:
    term = stitch.terms[dialect]
    yield from (word.lower() for word in (term.name, term.abbreviation, *term.others))


def _also(key: str, stitch: Stitch, dialect: Dialect) -> Iterator[str]:
    yield from (word.lower() for word in stitch.also)
    for table in (_MORE["both"], _MORE[dialect]):
        yield from table.get(key, ())
    term = stitch.terms[dialect]
    name, short = term.name.lower(), term.abbreviation.lower()
    if name.endswith("treble crochet"):
        yield name.removesuffix(" crochet")
    yield from _by_place(stitch, short, name)


def _by_place(stitch: Stitch, short: str, name: str) -> Iterator[str]:
    """ "BLsc" and "BLO sc" for "sc blo", "front post dc" for "FPdc"."""
    for place, prefixes in _PLACES.items():
        if short.endswith(f" {place}"):
            plain = short.removesuffix(f" {place}")
            for prefix in prefixes:
                yield from (f"{prefix}{plain}", f"{prefix} {plain}", f"{prefix}-{plain}")
            yield from (f"{plain}{place}", f"{plain}-{place}", f"{plain} in {place}")
    for post, prefixes in _POSTS.items():
        if stitch.like and short.startswith(post) and " " not in short:
            for prefix in prefixes:
                yield prefix + short.removeprefix(post)
            yield prefix + name.removeprefix("front post ").removeprefix("back post ")


def _looks(word: str) -> Iterator[str]:
    """The same word in the plural, and with hyphens, dots or nothing for its blanks."""
    yield from _joined(word)
    for plural in _plurals(word):
        yield plural
        yield from _joined(plural)


def _joined(word: str) -> Iterable[str]:
    if " " not in word or len(word) > 14:
        return ()
    return (
        word.replace(" ", "-"),
        word.replace(" ", "."),
        word.replace(" ", ". "),
        word.replace(" ", ""),
    )


def _plurals(word: str) -> Iterator[str]:
    if word.endswith("s") and len(word) > 2:
        return
    if word.endswith("stitch"):
        yield word + "es"
    elif " in " not in word:
        yield from (word + "s", word + "'s")
