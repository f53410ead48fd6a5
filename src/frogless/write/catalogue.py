"""Message catalogues: read as they are written, and an empty one for whoever adds a language."""

from __future__ import annotations

from gettext import GNUTranslations
from io import BytesIO
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.mofile import write_mo
from babel.messages.pofile import PoFileError, read_po, write_po

from frogless.errors import InputError, Place, near_names
from frogless.write.messages import MEASUREMENTS, PHRASES, PLURALS

DOMAIN = "frogless"


def load(language: str, folder: Path) -> GNUTranslations:
    """The catalogue of a language, compiled in memory.

    Raises:
        InputError: there is none in `folder`, or it is not a catalogue.
    """
    file = folder / language / "LC_MESSAGES" / f"{DOMAIN}.po"
    if not file.is_file():
        known = sorted({"en", *(path.parts[-3] for path in folder.glob(f"*/*/{DOMAIN}.po"))})
        raise InputError(
            f'there is no language "{language}"; there is {", ".join(known)}'
            f"{near_names(language, known)}"
        )
    compiled = BytesIO()
    try:
        with file.open("rb") as source:
            # "xx" and the like are no locales that Babel knows, but their catalogues are readable.
            catalogue = read_po(source, domain=DOMAIN, abort_invalid=True)
    except (PoFileError, ValueError) as error:
        raise InputError(f"not a message catalogue: {error}", Place(str(file))) from error
    write_mo(compiled, catalogue)
    compiled.seek(0)
    return GNUTranslations(compiled)


def template() -> str:
    """An empty catalogue with every phrase, to start a language from."""
    catalogue = Catalog(project="Frogless", charset="utf-8")
    for message in (*PHRASES.values(), *MEASUREMENTS.values()):
        catalogue.add(message, flags=["python-brace-format"] if "{" in message else [])
    for forms in PLURALS.values():
        catalogue.add(forms, flags=["python-brace-format"])
    written = BytesIO()
    write_po(written, catalogue, sort_output=False, width=100)
    return written.getvalue().decode("utf-8")
