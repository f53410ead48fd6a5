"""Files read with places for their faults; folders written wholly or not at all."""

from __future__ import annotations

import codecs
import errno
import re
import secrets
import shutil
import stat
import tomllib
import typing
import unicodedata
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import Annotated, Any, Generic, TypeVar

from pydantic import AfterValidator, BaseModel, Field, ValidationError
from pydantic_core import ErrorDetails, PydanticCustomError

from frogless.errors import Fault, InputError, Place, near_names
from frogless.toml_text import Steps, in_plain_words, key_lines, overgrown

Model = TypeVar("Model", bound=BaseModel)


def _is_control(letter: str) -> bool:
    # The last two are no characters at all, and XML, which drawings are written in, has neither.
    return unicodedata.category(letter) == "Cc" or letter in "\ufffe\uffff"


def _plain(text: str) -> str:
    if any(_is_control(letter) and letter not in "\n\t" for letter in text):
        raise PydanticCustomError("text", "must be text without control characters")
    return text


def _one_line(text: str) -> str:
    if any(_is_control(letter) or unicodedata.category(letter) in ("Zl", "Zp") for letter in text):
        raise PydanticCustomError("text", "must be on one line, without control characters")
    return text


Prose = Annotated[str, AfterValidator(_plain)]
"""A pydantic field: text that a page can show."""

Line = Annotated[str, AfterValidator(_one_line)]
"""A pydantic field: text that stands on one line wherever it is shown."""

Name = Annotated[str, Field(min_length=1), AfterValidator(_one_line)]
"""A pydantic field: a name or a title, which is never empty."""


def _capital(letter: str) -> str:
    if len(letter) != 1 or not "A" <= letter <= "Z":
        raise PydanticCustomError("letter", "must be one capital letter from A to Z")
    return letter


Letter = Annotated[str, AfterValidator(_capital)]
"""A pydantic field: the letter of a colour."""

MOST_HOMES = 3
"""A key that more tables know is no key in the wrong place."""

_AT_LINE = re.compile(r"\s*\(at (?:line (\d+), column \d+|end of document)\)$")


def read_text(path: Path | str, *, what: str = "file") -> str:
    """The text of a UTF-8 file.

    Raises:
        InputError: there is no such file, it is a folder, cannot be read, or is not UTF-8.
    """
    path = Path(path)
    data = read_bytes(path, what=what)
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = error.object.count(b"\n", 0, error.start) + 1
        wide = error.object.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE))
        found = "; it is UTF-16" if wide else ""
        raise InputError(
            f"this {what} is not UTF-8 text{found}; save it as UTF-8", Place(path.name, line)
        ) from None


def read_bytes(path: Path | str, *, what: str = "file", most: int = -1) -> bytes:
    """What stands in a file.

    Args:
        most: bytes that are read at most; -1: all.

    Raises:
        InputError: there is no such file, it is a folder, or it cannot be read.
    """
    path = Path(path)
    try:
        with path.open("rb") as file:
            return file.read(most)
    except OSError as error:
        raise InputError(f"{path}: {_cannot_read(path, error)}; a {what} is needed") from None


@dataclass(frozen=True, slots=True)
class Document(Generic[Model]):
    """A TOML document that was found good, with what was written and where.

    Args:
        checked: the document as its model. data: the same as written.
    """

    checked: Model
    data: Mapping[str, Any]
    file: str
    lines: Mapping[Steps, int]

    def place(self, steps: Steps) -> Place:
        """The place of a key; a key that is not there has the line of what should hold it."""
        return _place(self.file, self.lines, steps)


def load_document(path: Path | str, model: type[Model], *, what: str = "design file") -> Model:
    """A TOML document, checked against its model.

    Args:
        what: what the file is, as the person knows it: "body file".

    Raises:
        InputError: every fault of the file, each with line and key; several are told together.
    """
    return read_document(path, model, what=what).checked


def read_document(
    path: Path | str, model: type[Model], *, what: str = "design file"
) -> Document[Model]:
    """As `load_document`, with the places of the keys for faults that are found later.

    Raises:
        InputError: as `load_document`.
    """
    path = Path(path)
    return parse_document(read_text(path, what=what), path.name, model, what=what)


def parse_document(
    text: str, name: str, model: type[Model], *, what: str = "design file"
) -> Document[Model]:
    """As `read_document`, of a text that is not in a file, or not yet.

    Args:
        name: what its faults are told of; "" for nothing.

    Raises:
        InputError: as `load_document`.
    """
    data = _parse_toml(text, name)
    lines = key_lines(text)
    place = partial(_place, name, lines)
    _check_format(data, model, what, place(("format",)))
    try:
        return Document(model.model_validate(data), data, name, lines)
    except ValidationError as error:
        raise InputError.of(_faults(error, data, model, place)) from None


def write_all(folder: Path | str, contents: Mapping[str, bytes]) -> tuple[Path, ...]:
    """Writes files into a folder, all of them or none; the folder is made when it is not there.

    Everything is first written beside its final place and then renamed, so that a full disk or a
    refused name leaves no partial output and the files that were there as they were.

    Raises:
        InputError: the folder cannot be made or written to, or a name is taken by a folder or by
            a file that may not be written to.
    """
    folder = Path(folder)
    if strange := [name for name in contents if Path(name).name != name]:
        raise ValueError(f"not plain file names: {strange}")
    with _told(folder), _new_parents(folder.parent):
        for name in contents:
            _may_be_replaced(folder / name)
        if folder.is_dir():
            _write_into(folder, contents)
        else:
            _write_new(folder, contents)
    return tuple(folder / name for name in contents)


def _may_be_replaced(file: Path) -> None:
    if file.is_dir():
        raise InputError(f"{file}: a folder stands where a file is to be written")
    # A rename asks nothing of the file it replaces, and root may do anything: hence the bits.
    if file.exists() and not file.stat().st_mode & (stat.S_IWUSR | stat.S_IWGRP | stat.S_IWOTH):
        raise InputError(
            f"{file}: this file is read-only, so nothing was written; make it writable, or take "
            "another folder"
        )


def _place(file: str, lines: Mapping[Steps, int], steps: Steps) -> Place:
    known = (steps[:n] for n in range(len(steps), 0, -1) if steps[:n] in lines)
    return Place(file, lines.get(next(known, ())), dotted(steps))


def dotted(steps: Steps) -> str:
    """`section[2].length`: places in a list are counted from 1, as people count."""
    parts = (f"[{step + 1}]" if isinstance(step, int) else f".{step}" for step in steps)
    return "".join(parts).removeprefix(".")


def refuse_overgrown(text: str, name: str, *, what: str = "text") -> None:
    """Keeps from the parser what it would take minutes or all memory for.

    Raises:
        InputError: the text is far too long, or a key or a number in it is.
    """
    if (found := overgrown(text)) is not None:
        line, told = found
        raise InputError(f"this {what} {told}" if line is None else told, Place(name, line))


def _parse_toml(text: str, name: str) -> dict[str, Any]:
    refuse_overgrown(text, name, what="file")
    try:
        return tomllib.loads(text)
    except RecursionError:
        raise InputError("this is nested too deeply", Place(name)) from None
    except ValueError as error:
        found = _AT_LINE.search(str(error))
        reason = _AT_LINE.sub("", str(error))
        line = int(found[1]) if found and found[1] else text.count("\n") + 1 if found else None
        told = in_plain_words(reason, text, line)
        raise InputError(f"this is not valid TOML: {told}", Place(name, line)) from None


def _check_format(data: Mapping[str, Any], model: type[BaseModel], what: str, place: Place) -> None:
    # A file of another format would give a page of faults that all have one cause.
    field = model.model_fields.get("format")
    accepted = typing.get_args(field.annotation) if field else ()
    listed = " or ".join(f'"{name}"' for name in accepted)
    if accepted and "format" not in data:
        raise InputError(f"is missing; a {what} begins with format = {listed}", place)
    if accepted and data["format"] not in accepted:
        found = _quoted(data["format"])
        raise InputError(f"{found} is not the format of a {what}; accepted is {listed}", place)


# One sentence for each kind of fault; {found} stands in the file, the rest comes from pydantic.
_SENTENCES = {
    "missing": "is missing",
    "string_type": "must be text in quotes, not {found}",
    "string_too_short": "must not be empty",
    "int_type": "must be a whole number, not {found}",
    "int_parsing": "must be a whole number, not {found}",
    "int_from_float": "must be a whole number, not {found}",
    "float_type": "must be a number, not {found}",
    "float_parsing": "must be a number, not {found}",
    "finite_number": "must be a number, not {found}",
    "bool_type": "must be true or false, not {found}",
    "bool_parsing": "must be true or false, not {found}",
    "list_type": "must be a list in square brackets, not {found}",
    "tuple_type": "must be a list in square brackets, not {found}",
    "dict_type": "must be a table of keys, not {found}",
    "model_type": "must be a table of keys, not {found}",
    "model_attributes_type": "must be a table of keys, not {found}",
    "literal_error": "must be {expected}, not {found}",
    "union_tag_invalid": "must be {expected_tags}, not {found}",
    "greater_than": "must be more than {gt}, not {found}",
    "greater_than_equal": "must be {ge} or more, not {found}",
    "less_than": "must be less than {lt}, not {found}",
    "less_than_equal": "must be {le} or less, not {found}",
    "multiple_of": "must be a multiple of {multiple_of}, not {found}",
    "too_short": "needs {min_length} or more, has {actual_length}",
    "too_long": "takes {max_length} at most, has {actual_length}",
}


def _faults(
    error: ValidationError,
    data: Mapping[str, Any],
    model: type[BaseModel],
    place: Callable[[Steps], Place],
) -> list[Fault]:
    # A choice between types gives one fault for each type; a person has made one mistake.
    told: dict[Steps, list[str]] = {}
    for detail in error.errors(include_url=False):
        steps = _steps(detail, data)
        sentence = _sentence(detail, steps, data, model)
        if sentence not in told.setdefault(steps, []):
            told[steps].append(sentence)
    # A list with a faulty item is also said to be faulty itself: the item says more.
    inner = {steps[:n] for steps in told for n in range(len(steps))}
    _tell_forgotten_headers(told, model)
    faults = [Fault(_either(told[s]), place(s)) for s in told if s not in inner]
    return sorted(faults, key=lambda fault: fault.place.line or 0)


def _tell_forgotten_headers(told: dict[Steps, list[str]], model: type[BaseModel]) -> None:
    """Keys whose table is missing have one cause: its header was forgotten."""
    for key, field in model.model_fields.items():
        steps: Steps = (field.alias or key,)
        if told.get(steps) != ["is missing"]:
            continue
        header = _header(steps, field.annotation)
        strays = [
            s
            for s, said in told.items()
            if len(s) == 1 and said == [f'unknown key "{s[0]}"; it belongs in {header}']
        ]
        if strays:
            told[steps] = [f"is missing; write {header} on a line of its own above {strays[0][0]}"]
        for stray in strays:
            del told[stray]


def _either(sentences: Sequence[str]) -> str:
    # Where the kind is right, the other kinds that would do are no help.
    closer = [s for s in sentences if not s.startswith("must be ")]
    if closer or len(sentences) == 1:
        return (closer or sentences)[0]
    wants = [s.removeprefix("must be ").rsplit(", not ", 1) for s in sentences]
    return f"must be {' or '.join(want[0] for want in wants)}, not {wants[0][1]}"


def _steps(detail: ErrorDetails, data: object) -> Steps:
    """The keys as they stand in the document, without pydantic's labels of union members."""
    steps: list[str | int] = []
    for place, step in enumerate(detail["loc"]):
        last = place == len(detail["loc"]) - 1
        if _holds(data, step):
            data = data[step]  # type: ignore[index]
        elif not (last and detail["type"] == "missing"):
            continue
        steps.append(step)
    if detail["type"].startswith("union_tag"):
        steps.append(detail["ctx"]["discriminator"].strip("'"))
    return tuple(steps)


def _holds(data: object, step: str | int) -> bool:
    if isinstance(data, list):
        return isinstance(step, int) and step < len(data)
    return isinstance(data, Mapping) and step in data


def _sentence(detail: ErrorDetails, steps: Steps, data: object, model: type[BaseModel]) -> str:
    kind = detail["type"]
    if kind == "extra_forbidden":
        return _unknown_key(str(steps[-1]), steps[:-1], data, model)
    if kind == "union_tag_not_found":
        return "is missing"
    if kind not in _SENTENCES:
        return detail["msg"].removeprefix("Value error, ")
    context = {k: _limit(v) for k, v in detail.get("ctx", {}).items()}
    if "expected_tags" in context:
        context["expected_tags"] = " or ".join(context["expected_tags"].rsplit(", ", 1))
    if kind in ("tuple_type", "list_type") and isinstance(detail["input"], dict) and steps:
        return f"is a table that may stand again: write [[{steps[-1]}]], in two brackets"
    found = detail["ctx"]["tag"] if kind == "union_tag_invalid" else detail["input"]
    return _SENTENCES[kind].format(found=_quoted(found), **context)


def _unknown_key(key: str, table: Steps, data: object, model: type[BaseModel]) -> str:
    here = tuple(step for step in table if isinstance(step, str))
    homes = [told for steps, told in _homes(model, key) if steps != here]
    if 0 < len(homes) <= MOST_HOMES:
        return f'unknown key "{key}"; it belongs {" or ".join(dict.fromkeys(homes))}'
    known = sorted(set(_known_keys(model, table, data)) - {key})  # another kind's own key
    return f'unknown key "{key}"' + (near_names(key, known) or f"; known are {', '.join(known)}")


def _homes(model: type[BaseModel], key: str) -> Iterator[tuple[Steps, str]]:
    """The tables of a document that know a key: their steps, and how each is told."""
    if key in _names_of(model):
        yield (), "at the top of the file, before the first table"
    for name, field in model.model_fields.items():
        steps: Steps = (field.alias or name,)
        for inner in _models_in(field.annotation):
            if key in _names_of(inner):
                yield steps, f"in {_header(steps, field.annotation)}"


def _names_of(model: type[BaseModel]) -> set[str]:
    return {field.alias or name for name, field in model.model_fields.items()}


def _header(steps: Steps, annotation: object) -> str:
    return f"[[{steps[0]}]]" if _is_listed(annotation) else f"[{steps[0]}]"


def _is_listed(annotation: object) -> bool:
    inner = typing.get_args(annotation)
    return typing.get_origin(annotation) is tuple or any(_is_listed(one) for one in inner)


def _limit(value: object) -> str:
    return f"{value:g}" if isinstance(value, float) else str(value).replace("'", '"')


def _known_keys(model: type[BaseModel], steps: Steps, data: object) -> set[str]:
    models = {model}
    for step in steps:
        data = data[step]  # type: ignore[index]
        if isinstance(step, str):
            models = {inner for one in models for inner in _models_of(one, step)}
        chosen = {m for m in models if _has_kind(m, data)}
        models = chosen or models
    return {name for one in models for name in _names_of(one)}


def _models_of(model: type[BaseModel], key: str) -> Iterator[type[BaseModel]]:
    for name, field in model.model_fields.items():
        if key in (field.alias, name):
            yield from _models_in(field.annotation)


def _models_in(annotation: object) -> Iterator[type[BaseModel]]:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        yield annotation
    for inner in typing.get_args(annotation):
        yield from _models_in(inner)


def _has_kind(model: type[BaseModel], data: object) -> bool:
    """Whether this member of a union is the one that the document's `kind` names."""
    field = model.model_fields.get("kind")
    if field is None or not isinstance(data, Mapping):
        return field is None
    return data.get("kind") in typing.get_args(field.annotation)


def _quoted(found: object) -> str:
    if isinstance(found, bool):
        return str(found).lower()
    if isinstance(found, str):
        return f'"{found}"' if len(found) <= 60 else f'"{found[:57]}…"'
    if isinstance(found, dict):
        return "a table of keys"
    if isinstance(found, list):
        return "a list"
    return str(found)


_REASONS = {
    errno.EACCES: "it may not be written to",
    errno.EPERM: "it may not be written to",
    errno.EROFS: "it is on a read-only disk",
    errno.ENOSPC: "the disk is full",
    errno.EDQUOT: "the disk quota is used up",
    errno.EFBIG: "the disk takes no file of this size",
    errno.ENOENT: "no folder can be made there",
    errno.ENOTDIR: "a file stands where a folder is needed",
    errno.EEXIST: "a file stands where a folder is needed",
    errno.ENAMETOOLONG: "a name is too long",
}


def _cannot_read(path: Path, error: OSError) -> str:
    if isinstance(error, FileNotFoundError):
        return "there is no such file"
    if isinstance(error, IsADirectoryError) or path.is_dir():
        return "this is a folder"
    if isinstance(error, PermissionError):
        return "it may not be read"
    return f"it cannot be read ({(error.strerror or 'unknown reason').lower()})"


@contextmanager
def _told(folder: Path) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        reason = _REASONS.get(error.errno or 0) or (error.strerror or "unknown reason").lower()
        raise InputError(f"{folder}: nothing was written, because {reason}") from None


@contextmanager
def _new_parents(folder: Path) -> Iterator[None]:
    """Makes the folder and those above it; takes away again what it made if the rest fails."""
    missing = [one for one in (folder, *folder.parents) if not one.exists()]
    try:
        folder.mkdir(parents=True, exist_ok=True)
        yield
    except BaseException:
        for made in missing:
            if made.is_dir() and not any(made.iterdir()):
                made.rmdir()
        raise


def _write_new(folder: Path, contents: Mapping[str, bytes]) -> None:
    beside = _beside(folder.parent)
    try:
        for name, content in contents.items():
            (beside / name).write_bytes(content)
        beside.rename(folder)
    except BaseException:
        shutil.rmtree(beside, ignore_errors=True)
        raise


def _write_into(folder: Path, contents: Mapping[str, bytes]) -> None:
    beside = _beside(folder)
    try:
        for name, content in contents.items():
            (beside / name).write_bytes(content)
        _exchange(folder, beside, list(contents))
    finally:
        shutil.rmtree(beside, ignore_errors=True)


def _beside(parent: Path) -> Path:
    # Not tempfile.mkdtemp: its folders let only the owner in, and this one becomes the result.
    beside = parent / f".frogless-{secrets.token_hex(8)}"
    beside.mkdir()
    return beside


def _exchange(folder: Path, beside: Path, names: Sequence[str]) -> None:
    """Moves new files in and old ones out; on a failure puts everything back."""
    kept = beside / "kept"
    kept.mkdir()
    done: list[str] = []
    try:
        for name in names:
            done.append(name)
            if (folder / name).exists():
                _keep(folder / name, kept / name)
            (beside / name).replace(folder / name)
    except BaseException:
        for name in done:
            if (kept / name).exists():
                (kept / name).replace(folder / name)
            elif not (beside / name).exists():
                (folder / name).unlink(missing_ok=True)
        raise


def _keep(file: Path, kept: Path) -> None:
    # Not moved: were the program killed now, there would be neither the old file nor the new one.
    try:
        kept.hardlink_to(file)
    except OSError:
        shutil.copy2(file, kept)
