"""The gallery: every design as a card, and the filters that choose among them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from urllib.parse import urlencode

from django.http import HttpRequest, HttpResponse, QueryDict
from django.shortcuts import render
from django.urls import reverse
from django.views.decorators.http import require_safe

from frogless.body.load import parse_body
from frogless.errors import InputError
from frogless.stitches.model import Dialect
from frogless.studio import refs
from frogless.studio.designs.entries import Entry, entries, known_picture, picture_key
from frogless.studio.designs.facets import FACETS, Facet
from frogless.studio.designs.facts import label
from frogless.studio.designs.sieve import (
    Option,
    Wanted,
    corrected,
    fits,
    loosened,
    options,
    wanted,
    words_of,
)
from frogless.studio.library.preferences import Preferred, preferred
from frogless.studio.needs import need_words


@dataclass(frozen=True, slots=True)
class Card:
    """A design as the gallery shows it.

    Args:
        tags: what it is like, in a few words.
        alt: what its picture shows, or why there is none.
        drawn: whether the picture's words are known; if not, they come with the picture.
    """

    entry: Entry
    line: str
    needs: str
    tags: tuple[str, ...]
    alt: str
    fault: str
    drawn: bool


@dataclass(frozen=True, slots=True)
class Group:
    """The options of one facet."""

    facet: Facet
    options: tuple[Option, ...]


@require_safe
def designs_list(request: HttpRequest) -> HttpResponse:
    """Every design, or those that were looked for; for htmx only what the filters change."""
    likes, all_ = preferred(), entries()
    looked_for = _looked_for(request.GET)
    kept = [one for one in all_ if fits(one, looked_for, likes.terms)]
    better = None
    if not kept and words_of(looked_for):
        better = corrected(all_, looked_for, likes.terms)
        kept = [one for one in all_ if better and fits(one, better, likes.terms)]
    told = _told(len(kept), len(all_), looked_for)
    if better and kept:
        typed, meant = " ".join(words_of(looked_for)), better.words
        told = f"Nothing for “{typed}”; shown for “{meant}”: {told}"
    context = {
        "wanted": looked_for,
        "groups": _groups(all_, better if better and kept else looked_for, likes.terms),
        "bodies": dict(refs.choices("body")).get("Yours", ()),
        "told": told,
        "shelves": _shelves(kept, likes),
        "loosened": _loosened(all_, looked_for, likes.terms) if not kept else (),
    }
    live = getattr(request, "htmx", False)
    return render(request, f"designs/{'_gallery' if live else 'designs_list'}.html", context)


def card(one: Entry, likes: Preferred) -> Card:
    """A design as a card."""
    kind = label("kind", one.facts.has("kind")[0], likes.terms) if one.facts.facets else ""
    shapes = [label("shape", value, likes.terms).lower() for value in one.facts.has("shape")]
    like = f"{kind.lower()}: {', '.join(shapes)}" if shapes else kind.lower()
    known = None
    if one.document is not None:
        known = known_picture(picture_key(one, "outline", likes.units))
    fault = one.facts.fault or (known.fault if known else "")
    return Card(
        entry=one,
        line=one.facts.summary.partition(". ")[0].rstrip(".") + "." if one.facts.summary else "",
        needs="" if one.facts.fault else f"Needs {need_words(one.facts.needs, likes.terms)}",
        tags=tuple(_tags(one, likes.terms)),
        alt=f"Not drawn. {fault}" if fault else f"Outline of the {like}",
        fault=fault,
        drawn=one.document is None or known is not None or bool(fault),
    )


def _tags(one: Entry, dialect: Dialect) -> Iterator[str]:
    for facet in ("worked", "details"):
        yield from (label(facet, value, dialect) for value in one.facts.has(facet))


def _looked_for(query: QueryDict) -> Wanted:
    chosen = {facet.key: query.getlist(facet.key)[:20] for facet in FACETS}
    looked_for = wanted(chosen, query.get("q", ""))
    body = query.get("body", "")
    measured = _measured(body) if body else None
    if measured is None:
        return looked_for
    return Wanted(looked_for.chosen, looked_for.words, body, measured)


def _measured(ref: str) -> frozenset[str] | None:
    """What a body was measured for; None when there is no such body, nothing when it is faulty."""
    try:
        text = refs.resolve("body", ref).text
    except InputError:
        return None
    try:
        return frozenset(parse_body(text, "body.toml").measurements)
    except InputError:
        return frozenset()


def _groups(all_: Sequence[Entry], looked_for: Wanted, dialect: Dialect) -> tuple[Group, ...]:
    made = (Group(facet, options(all_, facet, looked_for, dialect)) for facet in FACETS)
    return tuple(group for group in made if len(group.options) > 1)


def _shelves(kept: Sequence[Entry], likes: Preferred) -> tuple[tuple[str, tuple[Card, ...]], ...]:
    own = tuple(card(one, likes) for one in kept if one.document is not None)
    shipped = tuple(card(one, likes) for one in kept if one.document is None)
    return tuple(shelf for shelf in (("Yours", own), ("Examples", shipped)) if shelf[1])


def _told(kept: int, all_: int, looked_for: Wanted) -> str:
    if not looked_for.number:
        return f"{all_} designs"
    return f"{kept} of {all_} designs" if kept else f"None of {all_} designs"


def _loosened(
    all_: Sequence[Entry], looked_for: Wanted, dialect: Dialect
) -> tuple[tuple[str, str, int], ...]:
    """What to let go of: its name, the address without it, and how many designs that finds."""
    return tuple(
        (one.label, f"{reverse('designs:list')}?{_query(one.wanted)}", one.count)
        for one in loosened(all_, looked_for, dialect)
    )


def _query(looked_for: Wanted) -> str:
    pairs = [(facet, value) for facet, values in looked_for.chosen for value in values]
    pairs += [("q", looked_for.words)] if looked_for.words else []
    pairs += [("body", looked_for.body)] if looked_for.body else []
    return urlencode(pairs)
