"""What the templates of a garment's page are given: one context for the whole page and its parts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import partial
from typing import Any

from django.urls import reverse

from frogless.errors import FroglessError, InputError
from frogless.studio import refs
from frogless.studio.garments import faults, shown
from frogless.studio.garments.before import as_it_was
from frogless.studio.garments.comes import panel_of
from frogless.studio.garments.lacks import body_lacks, swatch_lacks
from frogless.studio.garments.panel import Panel, panel
from frogless.studio.garments.sheet import Refusal, Shown, Told
from frogless.studio.garments.subject import Made, Subject, colours, made_of
from frogless.studio.library import shelf
from frogless.studio.library.models import Document, Garment
from frogless.studio.work.pool import TooMuchWork, pool

TITLES: Mapping[str, str] = {
    "shape": "Shape",
    "pattern": "Pattern",
    "materials": "Materials",
    "fit": "Fit",
}
"""The rooms in their order."""

TURNED_IN = ("shape", "materials", "fit")
"""Rooms with the panel beside them; the pattern is for reading."""

FILES = (
    ("pattern.pdf", "PDF, to print"),
    ("pattern.html", "Web page"),
    ("pattern.txt", "Text"),
    ("plan.json", "Plan file"),
    ("schematic.svg", "Schematic"),
    ("design.toml", "Design"),
    ("body.toml", "Body"),
    ("swatch.toml", "Swatch"),
)

CHOICES: Mapping[str, tuple[str, tuple[tuple[str, str], ...]]] = {
    "terms": ("Stitch names", (("us", "US terms"), ("uk", "UK terms"))),
    "units": ("Units", (("cm", "cm"), ("in", "inches"))),
    "hand": ("Hand", (("right", "right-handed"), ("left", "left-handed"))),
}

ADDED_AT = {"body": "people:edit", "swatch": "swatches:edit", "design": "designs:text"}
MADE_AT = {"body": "people:new", "swatch": "swatches:new", "design": "designs:list"}

LACKS = {"fit": "Not measured", "materials": "Not swatched"}
ADDED_TO = {"body": "Write down measurements", "swatch": "Write down a swatch"}


@dataclass(frozen=True, slots=True)
class Switch:
    """A choice of what is shown, or for whom: groups of values with their names."""

    name: str
    label: str
    id: str
    value: str
    groups: refs.Choices


@dataclass(frozen=True, slots=True)
class Mend:
    """A fault as the page tells it, with where it is mended."""

    sentence: str
    where: str
    link: str = ""
    said: str = ""
    lines: tuple[str, ...] = ()
    knob: str = ""
    knob_id: str = ""


def asked(subject: Subject, made: Made, room: str, *, prove: bool = True) -> Shown:
    """What a room shows of a subject; why nothing, where that is so."""
    order = made.order(subject)
    if order is None:
        kinds = tuple(Told(said, kind) for kind, said in made.gone)  # type: ignore[arg-type]
        return Shown("", "refused", "Not drafted.", refusal=Refusal("input", kinds))
    try:
        return pool().ask(subject.affinity, shown.show, order, room, prove=prove)
    except TooMuchWork as error:
        return Shown("", "refused", "Not drafted.", refusal=faults.too_much(error))
    except FroglessError as error:
        return shown.refused(error)


def context(subject: Subject, room: str, made: Made | None = None) -> dict[str, Any]:
    """Everything but what is drafted."""
    made = made or made_of(subject)
    design = made.design
    document = design.document if design else None
    return {
        "subject": subject,
        "garment": subject.garment,
        "name": subject.name,
        "made": made,
        "document": document,
        "base": document.revision if document else 0,
        "notices": (),
        "others": others(subject),
        "undo": shelf.can_undo(document) if document else None,
        "redo": shelf.can_redo(document) if document else None,
        "room": room,
        "room_title": TITLES[room],
        "tabs": tuple((key, title, subject.address(key)) for key, title in TITLES.items()),
        "here": subject.address(room),
        "switches": partial(switches, subject, made),
        "lacks": lacks(subject, made, room),
        "why": subject.why(),
        "back": f"{subject.query or '?'}{'&' if subject.query else ''}back={room}",
        "files": FILES if subject.garment and not made.gone else (),
        "who": made.body.name if made.body else "",
        "yarns": " and ".join(dict.fromkeys(one.name for one in made.swatches)),
        "made_of_words": spoken(subject),
    }


def others(subject: Subject) -> tuple[Garment, ...]:
    """Other garments that are made from the same design of one's own: a change changes them too."""
    if subject.garment is None or not subject.design.startswith("own:"):
        return ()
    found = Garment.objects.filter(removed=False, design=subject.design)
    return tuple(found.exclude(pk=subject.garment.pk))


def panel_context(subject: Subject, made: Made) -> dict[str, Any]:
    """What the panel "Change it" needs; nothing for an example, which stays as it is."""
    if subject.garment is None or made.design is None:
        return {}
    order = made.order(subject)
    try:
        if order is None:
            found = panel(made.design.text, subject.terms)
        else:
            found = pool().ask(subject.affinity, panel_of, order)
    except FroglessError as error:
        found = Panel(error=str(error))
    return {"panel": found}


def with_shown(found: dict[str, Any], seen: Shown) -> dict[str, Any]:
    """A context with what is drafted."""
    made: Made = found["made"]
    refusal = seen.refusal
    mends = tuple(mend(told, made) for told in refusal.told) if refusal else ()
    if refusal and found.get("panel"):
        pairs = zip(mends, refusal.told, strict=True)
        mends = tuple(_at_knob(one, told, found["panel"]) for one, told in pairs)
    found = {**found, "shown": seen, "mends": mends}
    if refusal and refusal.why != "proof" and found["room"] == "shape":
        found["was"] = as_it_was(found["subject"], made)
    return found


def _at_knob(one: Mend, told: Told, found: Panel) -> Mend:
    """A fault with the knob that it is about, where the panel has it."""
    name = faults.knob_name(told.path) if told.path else ""
    said = found.called(name) if name else ""
    return replace(one, knob=said, knob_id=found.fields()[name].id) if said else one


def mend(told: Told, made: Made) -> Mend:
    """Where a fault is mended."""
    nth = min(told.nth, max(len(made.swatches) - 1, 0))
    swatch = made.swatches[nth] if made.swatches else None
    found = {"design": made.design, "body": made.body, "swatch": swatch}[told.kind]
    where = told.kind.capitalize()
    if found is not None:
        where = f"{where} “{found.name}”"
    if told.line and told.kind == "design":
        where += f", line {told.line}"
    if found is not None and found.document is not None:
        check = "?check=1" if told.kind == "design" else ""
        link = reverse(ADDED_AT[told.kind], args=[found.document.pk]) + check
        said = {"design": "Open its text", "body": "Open the measurements", "swatch": "Open it"}
        return Mend(told.sentence, where, link, said[told.kind])
    if told.kind == "design":
        gone = made.design is None
        link = reverse("library:show") if gone else ""
        return Mend(told.sentence, where, link, "Bring it back from the bin" if gone else "")
    return Mend(told.sentence, where, reverse(MADE_AT[told.kind]), ADDED_TO[told.kind])


def switches(subject: Subject, made: Made) -> tuple[Switch, ...]:
    """Body, swatches, terms, units and hand."""
    found = []
    if made.design is None:
        designs = (*_missing("design"), *refs.choices("design"))
        found.append(Switch("design", "Design", "choose-design", "", designs))
    bodies = (*(() if made.body else _missing("body")), *refs.choices("body"))
    found.append(Switch("body", "For whom", "choose-body", subject.body, bodies))
    letters = colours(made.design.text) if made.design else ()
    swatches = refs.choices("swatch")
    for n in range(max(1, len(letters), len(subject.swatches))):
        label = (
            "Swatch"
            if len(letters) < 2
            else f"Swatch, color {letters[n] if n < len(letters) else n + 1}"
        )
        value = subject.swatches[n] if n < len(subject.swatches) else ""
        same: refs.Choices = (("", (("", "the same yarn as the first"),)),) if n else ()
        if value and not _stands("swatch", value):
            same = _missing("swatch")
        found.append(Switch("swatch", label, f"choose-swatch-{n + 1}", value, (*same, *swatches)))
    for name, (label, choices) in CHOICES.items():
        value = str(getattr(subject, name))
        found.append(Switch(name, label, f"choose-{name}", value, (("", choices),)))
    return tuple(found)


def _stands(kind: str, ref: str) -> bool:
    """Whether a ref stands for something that is there."""
    try:
        refs.resolve(kind, ref)
    except InputError:
        return False
    return True


def _missing(kind: str) -> refs.Choices:
    """What stands first in a list when that which was chosen is gone."""
    return (("", (("", f"Choose a {kind}"),)),)


def lacks(subject: Subject, made: Made, room: str) -> Mend | None:
    """In the room that it concerns: what was not measured or swatched, and where that is added."""
    if made.design is None or made.body is None or not made.swatches or room not in LACKS:
        return None
    if room == "fit":
        found = body_lacks(made.design.text, made.body.text)
        kind, one = "body", made.body
    else:
        texts = tuple(swatch.text for swatch in made.swatches)
        found = swatch_lacks(made.design.text, texts, subject.terms)
        kind, one = "swatch", made.swatches[0]
    if not found:
        return None
    said = tuple(f"{lack.name}. {lack.why}" for lack in found)
    if one.document is not None:
        link = reverse(ADDED_AT[kind], args=[one.document.pk])
        return Mend(LACKS[room], one.name, link, f"Add to “{one.name}”", said)
    return Mend(LACKS[room], one.name, reverse(MADE_AT[kind]), ADDED_TO[kind], said)


def of_its_own(copy: Document) -> str:
    """What is said when the first change made a copy of an example."""
    return f"This garment now has a design of its own, “{copy.name}”; the example stays as it was."


def spoken(subject: Subject) -> str:
    """How it is shown, in a line."""
    return ", ".join(dict(CHOICES[name][1])[str(getattr(subject, name))] for name in CHOICES)
