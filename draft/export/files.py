"""Write one file so that either all of it is there or nothing has changed.

The content goes to a temporary file in the same folder, reaches the disk, and only then takes the name of the target.
Whatever fails on the way is one `DraftError`; the temporary file is removed and an old target stays as it was.
"""

from __future__ import annotations

import os
from pathlib import Path

from draft.errors import DraftError

FIELD = "path"
_EXPECTED = "the name of a file in a folder that exists"


def write_text(path: str | os.PathLike[str], text: str, encoding: str = "utf-8") -> Path:
    r"""Write text to a file, all or nothing; line ends are written as they are.

    Parameters
    ----------
    path : str or path-like
        Where to write. Its folder must exist; a file of that name is replaced, a link to a file is followed.
    text : str
        The whole content.
    encoding : str
        How the characters become bytes.

    Returns
    -------
    pathlib.Path
        The path as given.

    Raises
    ------
    DraftError
        When the path does not name a file that can be written, or the text does not fit the encoding; nothing has
        been written then.

    Examples
    --------
    >>> from tempfile import TemporaryDirectory
    >>> with TemporaryDirectory() as folder:
    ...     write_text(Path(folder) / "note.txt", "cut 2\n").read_text()
    'cut 2\n'
    >>> write_text("", "cut 2")
    Traceback (most recent call last):
        ...
    draft.errors.DraftError: path is '', expected the name of a file in a folder that exists: name a file.
    """
    if not isinstance(text, str):
        raise DraftError("text", type(text).__name__, "text", "use write_bytes for bytes")
    try:
        content = text.encode(encoding)
    except LookupError:
        raise DraftError("encoding", encoding, "an encoding known here", "use 'utf-8'") from None
    except UnicodeEncodeError as error:
        wrong = text[error.start : error.start + 1]
        raise DraftError("text", wrong, f"characters that {encoding} can write", "leave this character out") from None
    return write_bytes(path, content)


def write_bytes(path: str | os.PathLike[str], content: bytes) -> Path:
    """Write bytes to a file, all or nothing; otherwise as `write_text`."""
    if not isinstance(content, bytes | bytearray | memoryview):
        raise DraftError("content", type(content).__name__, "bytes", "use write_text for text")
    given = _checked_name(path)
    try:
        target = Path(os.path.realpath(given))
        _check_target(given, target)
        _replace(target, content)
    except DraftError:
        raise
    except (OSError, ValueError) as error:  # ValueError: a name that the file system cannot spell
        reason = getattr(error, "strerror", None) or str(error)
        remedy = f"choose another place ({reason.lower()})"
        raise DraftError(FIELD, str(given), "a file that can be written", remedy) from error
    return given


def _checked_name(path: object) -> Path:
    try:
        name = os.fspath(path)  # type: ignore[call-overload]
    except TypeError:
        name = None
    if not isinstance(name, str):
        given = path if isinstance(path, bytes | int | float | bool | None) else type(path).__name__
        raise DraftError(FIELD, given, _EXPECTED, "write it as text or as a pathlib.Path")
    if not name.strip():
        raise DraftError(FIELD, name, _EXPECTED, "name a file")
    if "\0" in name:
        raise DraftError(FIELD, name, _EXPECTED, "leave the zero character out")
    if name.endswith(("/", os.sep)):
        raise DraftError(FIELD, name, _EXPECTED, "add the name of the file after the folder")
    return Path(name)


def _check_target(given: Path, target: Path) -> None:
    folder = target.parent
    if target.is_dir():
        raise DraftError(FIELD, str(given), f"{_EXPECTED}, and this is a folder", "add the name of the file")
    if not folder.is_dir():
        file = next((p for p in (folder, *folder.parents) if p.exists()), None)
        if file is not None and not file.is_dir():
            raise DraftError(FIELD, str(given), _EXPECTED, f"choose another folder: {str(file)!r} is a file")
        raise DraftError(FIELD, str(given), _EXPECTED, f"make the folder {str(folder)!r} first")
    if target.exists():
        if not target.is_file():
            raise DraftError(FIELD, str(given), "an ordinary file, not a device or pipe", "choose another name")
        if not os.access(target, os.W_OK):
            raise DraftError(FIELD, str(given), "a file that can be written", "it is read-only: choose another name")


def _replace(target: Path, content: bytes) -> None:
    spare = target.parent / f".{os.urandom(8).hex()}.part"
    try:
        with spare.open("xb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        if target.exists():
            spare.chmod(target.stat().st_mode & 0o7777)
        spare.replace(target)
    except BaseException:
        spare.unlink(missing_ok=True)
        raise
