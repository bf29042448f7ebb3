"""The settings file: TOML, one entry a setting. A broken one is told with its place, and never written over."""

from __future__ import annotations

import os

from nearhand.notation.errors import InputError
from nearhand.verbs.files import decode, reason_of, write_whole
from nearhand.verbs.lasting import SETTINGS, Setting
from nearhand.verbs.session import Session

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.notation.chart_files import Source

LARGEST_FILE = 100_000
MEND = "mend it or move it away; until then set does not write to it"
_EXAMPLE = 'write for example  symbols = "jazz"'
_MOST_SEMITONES = 1000


def read_settings(path: str) -> dict[str, str]:
    """The settings of a file by their names; none where there is no file.

    Raises InputError with the file, the line, and what is wrong there.
    """
    return _entries(_text_of(path), path)


def with_settings(session: Session, path: str) -> Session:
    """A session as a settings file has it.

    Raises InputError with the file, the line, and what is wrong there.
    """
    for name, value in read_settings(path).items():
        session = SETTINGS[name].changed(session, value).session
    return session._replace(previous=None, undone=None)


def broken_in_words(error: InputError) -> str:
    """One sentence on a settings file that cannot be used."""
    line = f", line {error.line}" if error.line else ""
    return f"The settings in {error.source}{line} are not used: {error.what}."


def keep_setting(path: str, setting: Setting, value: str | None) -> None:
    """Write one setting to a file, or take it out (None); everything else in the file stays as it is.

    Raises InputError for a file that cannot be read as settings, or cannot be written; it stays as it is then.
    """
    text = _text_of(path)
    wanted = {name: kept for name, kept in _entries(text, path).items() if name != setting.name}
    if value is not None:
        wanted[setting.name] = value
    new = _with_entry(text, setting.name, value)
    if _read_back(new, path) != wanted:  # written in a way that one line cannot change
        what = f"{setting.name} is written there in a way that set cannot change"
        raise InputError(what, source=path, hint=f"write one line of it: {setting.name} = {_quoted(value or 'x')}")
    if new == text:
        return
    try:
        os.makedirs(os.path.dirname(path), exist_ok=True)
        write_whole(path, new)
    except (OSError, ValueError) as error:
        raise InputError(f"{path} cannot be written: {reason_of(error)}", hint="the setting is as it was") from None


def _text_of(path: str) -> str:
    try:
        with open(path, "rb") as file:
            data = file.read(LARGEST_FILE + 1)
    except FileNotFoundError:
        return ""
    except (OSError, ValueError) as error:
        raise InputError(f"it cannot be read: {reason_of(error)}", source=path, hint=MEND) from None
    if len(data) > LARGEST_FILE:
        raise InputError("it is too large for settings", source=path, hint=MEND)
    return decode(data, path).replace("\r\n", "\n")


def _read_back(text: str, path: str) -> dict[str, str] | None:
    try:
        return _entries(text, path)
    except InputError:
        return None


def _entries(text: str, path: str) -> dict[str, str]:
    """Every setting of a text, each tried on a session of its own, in the order of the table."""
    if not text.strip():
        return {}
    from nearhand.notation.chart_files import Source, toml_of

    source = Source(text, path)
    found = {}
    for name, value in toml_of(source, _EXAMPLE, "it cannot be read as settings").items():
        if name not in SETTINGS:
            from nearhand.verbs.choices import hint_of

            what, hint = f"there is no setting {name[:30]!r}", hint_of(name, tuple(SETTINGS))
            raise source.at_field(what, name, hint=hint)
        found[name] = _tried(SETTINGS[name], _word(name, value, source), source)
    return {name: found[name] for name in SETTINGS if name in found}


def _word(name: str, value: object, source: Source) -> str:
    """A value as its verb takes it: text as it is, true and false as on and off, a whole number in digits."""
    if isinstance(value, bool):
        return "on" if value else "off"
    if isinstance(value, int) and 0 <= value < _MOST_SEMITONES:
        return str(value)
    if isinstance(value, str):
        return " ".join(value.split())
    raise source.at_field(f"{name} must be a word in quotes", name, hint=_EXAMPLE)


def _tried(setting: Setting, value: str, source: Source) -> str:
    try:
        setting.changed(Session(), value)
    except InputError as error:
        raise source.in_value(error, setting.name, value) from None
    return value


def _with_entry(text: str, name: str, value: str | None) -> str:
    """A text with one entry's line changed, added at the end, or taken out; its remark behind stays."""
    lines = text.splitlines()
    new = [] if value is None else [f"{name} = {_quoted(value)}"]
    for place, line in enumerate(lines):
        head, equals, rest = line.partition("=")
        if equals and head.strip() == name:
            remark = _remark(rest.strip())
            lines[place : place + 1] = [f"{entry}  {remark}".rstrip() for entry in new] or [remark] * bool(remark)
            break
    else:
        lines += new
    return "".join(f"{line}\n" for line in lines)


def _remark(rest: str) -> str:
    """The remark behind a value, with its sign; empty where there is none."""
    close = rest.find(rest[0], 1) if rest[:1] in ("'", '"') else 0
    start = rest.find("#", max(close, 0))
    return rest[start:] if start >= 0 else ""


def _quoted(value: str) -> str:
    return f'"{value}"'
