"""Where the studio keeps what a person saves, by the rules of each system."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from frogless.errors import InputError


def data_folder(environment: Mapping[str, str], system: str, home: Path) -> Path:
    """The folder for data of this program; FROGLESS_DATA names another.

    Args:
        system: as `sys.platform` says it.

    Source: XDG Base Directory Specification 0.8; the folders that Windows and macOS name for data
    of programs.
    """
    if own := environment.get("FROGLESS_DATA"):
        return Path(own)
    if system == "win32":
        return Path(environment.get("LOCALAPPDATA") or home / "AppData" / "Local") / "Frogless"
    if system == "darwin":
        return home / "Library" / "Application Support" / "Frogless"
    given = environment.get("XDG_DATA_HOME", "")
    # The specification has a relative path in this variable ignored.
    base = Path(given) if given.startswith("/") else home / ".local" / "share"
    return base / "frogless"


def made(folder: Path) -> Path:
    """The folder, made if need be, for its owner's eyes alone: measurements of people lie in it.

    Raises:
        InputError: it cannot be made.
    """
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    except OSError as error:
        reason = (error.strerror or "unknown reason").lower()
        raise InputError(
            f"{folder}: the studio cannot keep its library there ({reason}); "
            "name another folder in FROGLESS_DATA"
        ) from None
    return folder


def private(file: Path) -> Path:
    """The file, made if need be, for its owner's eyes alone, whoever may look into its folder.

    Raises:
        InputError: it cannot be made, or belongs to somebody else.
    """
    try:
        file.touch(mode=0o600)
        file.chmod(0o600)
    except OSError as error:
        reason = (error.strerror or "unknown reason").lower()
        raise InputError(
            f"{file}: the library cannot be kept there ({reason}); "
            "name another folder in FROGLESS_DATA"
        ) from None
    return file
