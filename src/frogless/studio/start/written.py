"""The first page of a garment as a body file and a swatch file, and what is wrong with it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from frogless.body.estimate import complete
from frogless.body.load import parse_body
from frogless.errors import InputError
from frogless.stitches.load import dictionary
from frogless.stitches.model import Dialect
from frogless.stitches.patterns import patterns
from frogless.studio.fields import Field, Values
from frogless.studio.needs import Needs, PatternNeed, measurement_name
from frogless.studio.offers import Offer, meant
from frogless.studio.people.body_text import FILE, NEW, written
from frogless.studio.people.checked import checked, in_words
from frogless.studio.start.asked import BODY, SWATCH, Asked, pattern_title
from frogless.studio.swatches.doubts import doubts, mark
from frogless.studio.swatches.hooks import hook_offers
from frogless.studio.swatches.in_terms import in_terms
from frogless.studio.swatches.written import checked as checked_swatch
from frogless.swatch import Swatch, advice, has_gauge, parse_swatch
from frogless.units import Units


def is_needed(field: Field) -> str:
    """ "Hip girth is needed.", "Stitches are needed.": of a field that was left empty."""
    return f"{field.label} {'are' if field.label.endswith('s') else 'is'} needed."


@dataclass(frozen=True, slots=True)
class Understood:
    """Both files, and by field what is wrong, what is questioned, what is estimated.

    Args:
        offers: by field what could be written instead.
        advice: what would make the swatch tell more.
        doubt: stands for what is asked of the swatch before it is kept; "" for nothing.
    """

    body: str = ""
    swatch: str = ""
    errors: Mapping[str, str] = field(default_factory=dict)
    questions: Mapping[str, str] = field(default_factory=dict)
    estimates: Mapping[str, str] = field(default_factory=dict)
    offers: Mapping[str, tuple[Offer, ...]] = field(default_factory=dict)
    advice: tuple[str, ...] = ()
    doubt: str = ""


def understood(
    page: Asked,
    values: Values,
    units: Units,
    *,
    body: bool = True,
    swatch: bool = True,
    terms: Dialect = "us",
) -> Understood:
    """What the page comes to.

    Args:
        terms: in which stitches are named.
        body, swatch: whether the page's own is meant, not one that was there before.
    """
    person = _of_body(page, values, units) if body else Understood()
    yarn = _of_swatch(page, values, units, terms) if swatch else Understood()
    return Understood(
        person.body,
        yarn.swatch,
        {**person.errors, **yarn.errors},
        {**person.questions, **yarn.questions},
        person.estimates,
        {**person.offers, **yarn.offers},
        yarn.advice,
        yarn.doubt,
    )


def _of_body(page: Asked, values: Values, units: Units) -> Understood:
    own = _own(values, BODY)
    text = written(NEW, own, units)
    told = checked(text, units)
    errors = {f"{BODY}{name}": said for name, said in told.errors.items()}
    missing = {one.name: is_needed(one) for one in page.measurements if not values.get(one.name)}
    questions = {f"{BODY}{name}": said for name, said in told.questions.items()}
    sizes = {name: one for name, one in values.items() if name.startswith(BODY)}
    asked = [*errors.items(), *questions.items()]
    return Understood(
        body=text,
        errors={**errors, **missing},
        questions=questions,
        estimates={f"{BODY}{name}": said for name, said in told.estimates.items()},
        offers={name: offers for name, said in asked if (offers := meant(said, name, sizes))},
    )


def _of_swatch(page: Asked, values: Values, units: Units, terms: Dialect) -> Understood:
    own = {"units": units, **_own(values, SWATCH)}
    state = values.get(f"{SWATCH}state", "washed")
    own["readings"] = " ".join(str(one.number) for one in page.readings)
    if page.readings:
        own["stitch"] = page.readings[0].of.removeprefix("stitch:")
    for one in page.readings:
        own |= {f"r{one.number}-of": one.of, f"r{one.number}-state": state}
        if one.numbers:
            own[f"r{one.number}-numbers"] = one.numbers
        if one.of == "pattern:":
            own[f"r{one.number}-key"] = one.key
    told = checked_swatch(own)
    named = {f"{SWATCH}{name}": _sentence(said) for name, said in told.errors.items()}
    needed = (page.hook, *(f for one in page.readings for f in one.asked))
    missing = {one.name: is_needed(one) for one in needed if not values.get(one.name)}
    found = doubts(own, units, terms)
    return Understood(
        swatch=told.text,
        errors={**named, **missing},
        questions={f"{SWATCH}{one.field}": one.sentence for one in found},
        offers={
            page.hook.name: hook_offers(page.hook.name, own.get("hook", "")),
            **{f"{SWATCH}{one.field}": tuple(map(_prefixed, one.offers)) for one in found},
        },
        advice=() if told.errors or missing or found else _advice(told.text, units, terms),
        doubt=mark(found),
    )


def _prefixed(offer: Offer) -> Offer:
    """The offer for the fields as this page calls them."""
    return Offer(offer.label, tuple((f"{SWATCH}{name}", text) for name, text in offer.writes))


def _advice(text: str, units: Units, terms: Dialect) -> tuple[str, ...]:
    """What there is to say of a good swatch."""
    return tuple(_sentence(in_terms(one, units, terms)) for one in advice(parse_swatch(text)))


def _own(values: Values, prefix: str) -> dict[str, str]:
    """What belongs to one of the two, under the names that its room has for it."""
    return {
        name.removeprefix(prefix): text for name, text in values.items() if name.startswith(prefix)
    }


def _sentence(words: str) -> str:
    told = words[:1].upper() + words[1:]
    return told if told.endswith((".", "?")) else f"{told}."


def body_lacks(need: Needs, text: str) -> str:
    """What a body was not measured for and a design needs, in a sentence; "" for nothing."""
    try:
        body = parse_body(text, FILE)
        complete(body, (*need.measurements, *need.estimated))
    except InputError as error:
        keys = [fault.place.key.removeprefix("measurements.") for fault in error.faults]
        named = [measurement_name(key).lower() for key in keys if key in _known(need)]
        if not named:
            return in_words(f"This body has a fault: {error.faults[0].message}.")
        told = f"{_listed(named)} {'is' if len(named) == 1 else 'are'} not measured yet."
        return told[:1].upper() + told[1:]
    return ""


def _known(need: Needs) -> tuple[str, ...]:
    return (*need.measurements, *need.estimated)


def swatch_lacks(need: Needs, text: str, terms: Dialect) -> str:
    """What a swatch was not read in and a design needs, in a sentence; "" for nothing."""
    try:
        swatch = parse_swatch(text, "swatch.toml")
    except InputError as error:
        return f"This swatch has a fault: {error.faults[0].message}."
    stitches = [key for key in need.needed_stitches if not has_gauge(swatch, key)]
    missing = [dictionary()[key].terms[terms].name for key in stitches]
    unread = (pattern_title(one, terms) for one in need.patterns if not _is_read(swatch, one))
    missing += [title[:1].lower() + title[1:] for title in unread]
    return f"It was not read in {_listed(missing)}." if missing else ""


def _is_read(swatch: Swatch, one: PatternNeed) -> bool:
    entry = patterns().get(one.key)
    usual = {name: p.default for name, p in entry.parameters.items()} if entry else {}
    wanted = {**usual, **dict(one.parameters)}
    return any(
        reading.pattern == one.key and {**usual, **dict(reading.parameters)} == wanted
        for reading in swatch.readings
    )


def _listed(parts: list[str]) -> str:
    return " and ".join(filter(None, (", ".join(parts[:-1]), parts[-1])))
