"""The colours of a garment: what each letter stands for, and how one is changed for another."""

from __future__ import annotations

from collections.abc import Iterator

from frogless.design.colours import Stripe
from frogless.publish.blocks import Block, Bullets, Heading, Paragraph, Terms
from frogless.publish.drafted import Drafted
from frogless.publish.messages import say
from frogless.publish.remarks import notes_at
from frogless.publish.shown import about, mass_about
from frogless.tally.model import YarnNeed
from frogless.write.pattern import write_colour_note


def colours(drafted: Drafted) -> tuple[Block, ...]:
    """The key of the colours, by letter and name; nothing when there is only one colour."""
    needs = [need for need in drafted.tally.yarn if need.colour]
    if not needs:
        return ()
    key = tuple((say(drafted, "colour", letter=n.colour), _told(drafted, n)) for n in needs)
    note = write_colour_note(drafted.plan.program, drafted.dialect, drafted.language)
    return (
        Heading(say(drafted, "colours")),
        Terms(key),
        *((Bullets(told),) if (told := tuple(_stripes(drafted))) else ()),
        *((Paragraph(note),) if note else ()),
        *(Paragraph(text) for text in _how(drafted)),
        *notes_at(drafted, "colours"),
    )


def _told(drafted: Drafted, need: YarnNeed) -> str:
    """What a maker needs to lay the yarns out: name and amount."""
    name, units = name_of(drafted, need.colour), drafted.units
    return say(
        drafted, "colour_told", name=f"{name}, " if name else "",
        length=about(need.length.value, units), mass=mass_about(need.mass.value, units),
    )  # fmt: skip


def _stripes(drafted: Drafted) -> Iterator[str]:
    """The stripes that the design asks for, in the order worked; first those of no piece alone."""
    asked = drafted.basis.design.colours
    for stripes in sorted(asked.stripes if asked else (), key=lambda each: bool(each.on)):
        told = [_stripe(drafted, stripe) for stripe in stripes.repeat]
        again = len(told) > 1 and stripes.repeat[-1].rows is not None
        text = say(drafted, "stripes_again" if again else "stripes", told=", ".join(told))
        where = ", ".join(stripes.on)
        yield capital(say(drafted, "stripes_on", where=where, told=text) if where else text)


def _stripe(drafted: Drafted, stripe: Stripe) -> str:
    if stripe.rows is None:
        return say(drafted, "stripe_rest", letter=stripe.colour)
    key = "stripe_one" if stripe.rows == 1 else "stripe"
    return say(drafted, key, rows=stripe.rows, letter=stripe.colour)


def _how(drafted: Drafted) -> Iterator[str]:
    """What to mind where colours change at the end of rows and of joined rounds."""
    ends = [
        (row.row, change)
        for rows in drafted.fabric.pieces.values()
        for row in rows
        for after, change in row.changes
        if after == row.stitch.size
    ]
    if any(row.end.join != "none" for row, _ in ends):
        yield say(drafted, "colour_in_rounds")
    if any(change.carried for _, change in ends):
        yield say(drafted, "colour_up")


def name_of(drafted: Drafted, letter: str) -> str:
    """What the design calls a colour; "" when only a stitch pattern has it."""
    asked = drafted.basis.design.colours
    return asked.names.get(letter, "") if asked else ""


def labelled(drafted: Drafted, letter: str) -> str:
    """ "Color A, cream"; the letter alone when it has no name."""
    name = name_of(drafted, letter)
    key = "colour_named" if name else "colour"
    return say(drafted, key, letter=letter, name=name)


def capital(text: str) -> str:
    """The text with its first letter as a capital."""
    return text[:1].upper() + text[1:]


def ends(drafted: Drafted) -> tuple[str, ...]:
    """How many ends the colours leave, for the finishing; nothing in one colour."""
    needs = [need for need in drafted.tally.yarn if need.ends]
    if len(needs) < 2:
        return ()
    listed = ", ".join(_ends_of(drafted, need) for need in needs)
    return (say(drafted, "finish_colours", ends=sum(n.ends for n in needs), listed=listed),)


def _ends_of(drafted: Drafted, need: YarnNeed) -> str:
    name = name_of(drafted, need.colour)
    key = "ends_of_named" if name else "ends_of"
    return say(drafted, key, number=need.ends, letter=need.colour, name=name)
