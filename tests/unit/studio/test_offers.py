"""What a question offers to write, and where."""

from __future__ import annotations

from frogless.studio.offers import Offer, meant, taken

ASKED = "33 cm is no waist girth; did you mean 33 in (83.8 cm)?"


def test_offer_writes_what_the_sentence_says() -> None:
    """Into the field that it stands at."""
    values = {"body-waist_girth": "33", "body-hip_girth": "101"}
    offers = meant(ASKED, "body-waist_girth", values)
    assert offers == (Offer("Write 33 in", (("body-waist_girth", "33 in"),)),)
    assert taken(offers[0].value, values) == {"body-waist_girth": "33 in"}


def test_number_of_the_other_field_is_written_there() -> None:
    """A proportion is told at one of two, and may be a slip of the other."""
    sentence = "waist 80 cm is 2 times hip 40 cm; did you mean 40 in (101.6 cm)?"
    (offer,) = meant(sentence, "waist", {"waist": "80", "hip": "40 cm"})
    assert offer.writes == (("hip", "40 in"),)


def test_what_is_no_offer_offers_nothing() -> None:
    """No question, a number that stands nowhere, a field that the form has not."""
    assert not meant("Measure both again.", "waist", {"waist": "80"})
    assert not meant(ASKED, "waist", {"waist": "34"})
    assert not taken("secret=1", ["waist"])
