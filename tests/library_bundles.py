"""Libraries of any make, for what has to hold for all of them."""

from __future__ import annotations

from hypothesis import strategies as st

from frogless.studio.library.bundle import GONE, Bundle, KeptDocument, KeptGarment, KeptVersion

DAY = "2026-05-04T03:02:01+00:00"

words = st.text(st.characters(exclude_categories=["Cs", "Cc"]), min_size=1, max_size=30)
texts = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=200)
versions = st.builds(KeptVersion, words, texts, st.just(DAY))


@st.composite
def bundles(draw: st.DrawFn) -> Bundle:
    """A library with documents, versions, and garments made of them, of examples or of nothing."""
    kinds = draw(st.lists(st.sampled_from(["body", "swatch", "design", "pattern"]), max_size=6))
    documents = tuple(
        KeptDocument(
            f"own:{n}", kind, draw(words), draw(texts), tuple(draw(st.lists(versions, max_size=2)))
        )
        for n, kind in enumerate(kinds)
    )
    refs = st.sampled_from([*(one.key for one in documents), "example:light-cotton", GONE])
    garments = st.builds(
        KeptGarment,
        words,
        refs,
        refs,
        st.lists(refs, max_size=3).map(tuple),
        st.sampled_from(["us", "uk"]),
        st.sampled_from(["cm", "in"]),
        st.sampled_from(["right", "left"]),
    )
    return Bundle(documents, tuple(draw(st.lists(garments, max_size=3))))
