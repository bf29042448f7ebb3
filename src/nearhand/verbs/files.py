"""Reading and writing chart files. Whatever goes wrong is one sentence; writing never destroys a file."""

from __future__ import annotations

import os

from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.key import Key
from nearhand.theory.progression import Progression
from nearhand.verbs.sections import sectioned
from nearhand.verbs.tune import Tune, tune_from_charts, tune_from_text

SUFFIX, ABC_SUFFIX = ".toml", ".abc"
SUFFIXES = (SUFFIX, ABC_SUFFIX)
"""Of the files that are read; those of the first kind are written, too."""
LARGEST_FILE = 5_000_000
_MOST_DIGITS = 9
_HINT = "list shows the charts of a folder"


def with_suffix(path: str) -> str:
    """A path as ``open`` takes it: the suffix may be left out, of an ABC file where there is no chart of that name.

    >>> with_suffix("waltz"), with_suffix("waltz.toml"), with_suffix("jigs.abc 2")
    ('waltz.toml', 'waltz.toml', 'jigs.abc 2')
    """
    if path.endswith(SUFFIX) or is_abc_file(path) or os.path.exists(from_home(path)):
        return path
    is_abc = os.path.exists(from_home(path + ABC_SUFFIX)) and not os.path.exists(from_home(path + SUFFIX))
    return path + (ABC_SUFFIX if is_abc else SUFFIX)


def chart_name(path: str) -> str:
    """A path as ``save`` takes it: the suffix of chart files may be left out.

    Raises InputError for the name of an ABC file, which is never written.

    >>> chart_name("waltz"), chart_name("waltz.toml")
    ('waltz.toml', 'waltz.toml')
    """
    if is_abc_file(path):
        name = path[: path.lower().rindex(ABC_SUFFIX)]
        raise InputError("ABC files are read, not written", path, hint=f"write  save {name}{SUFFIX}")
    return path if path.endswith(SUFFIX) or os.path.exists(from_home(path)) else path + SUFFIX


def is_abc_file(path: str) -> bool:
    """Whether a path is that of an ABC file, which the number of one of its tunes may follow.

    >>> is_abc_file("jigs.abc"), is_abc_file("jigs.abc 2"), is_abc_file("jigs.toml")
    (True, True, False)
    """
    return file_and_number(path)[0].lower().endswith(ABC_SUFFIX)


def file_and_number(path: str) -> tuple[str, int | None]:
    """The path of a file, and the number of the tune in it where one follows the name of an ABC file.

    >>> file_and_number("jigs.abc 2"), file_and_number("jigs.abc"), file_and_number("waltz 2.toml")
    (('jigs.abc', 2), ('jigs.abc', None), ('waltz 2.toml', None))
    """
    file, _, number = path.rpartition(" ")
    if number.isascii() and number.isdigit() and len(number) <= _MOST_DIGITS:
        file = file.rstrip()
        if file.lower().endswith(ABC_SUFFIX) and not os.path.exists(from_home(path)):
            return file, int(number)
    return path, None


def from_home(path: str) -> str:
    """A path as the system takes it: a lone ``~`` in front is the player's own folder.

    >>> from_home("waltz.toml"), from_home("~/waltz.toml") == os.path.expanduser("~/waltz.toml")
    ('waltz.toml', True)
    """
    return os.path.expanduser(path) if path == "~" or path.startswith("~/") else path


def read_text(path: str) -> str:
    """The text of a file.

    Raises InputError when it is missing, a folder, too large, not to be read, or not UTF-8.
    """
    if os.path.isdir(from_home(path)):
        raise InputError(f"{path} is a folder, not a chart", path, hint=f"list {path} shows its charts")
    try:
        with open(from_home(path), "rb") as file:
            data = file.read(LARGEST_FILE + 1)
    except FileNotFoundError:
        raise InputError(f"there is no file {path}", path, wanted="a chart file", hint=_HINT) from None
    except (OSError, ValueError) as error:
        raise InputError(
            f"{path} cannot be read: {reason_of(error)}", path, wanted="a chart file", hint=_HINT
        ) from None
    if len(data) > LARGEST_FILE:
        raise InputError(f"{path} is too large for a chart", path, hint="a chart holds at most 5 MB")
    return decode(data, path)


def decode(data: bytes, source: str) -> str:
    """Bytes as UTF-8 text.

    Raises InputError with the line and column of the first byte that is not UTF-8.

    >>> decode(b"| C |", "standard input")
    '| C |'
    """
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = data[: error.start].decode("utf-8", "replace")
        text = before.rpartition("\n")[2] + "\N{REPLACEMENT CHARACTER}"
        raise InputError(
            "this is not UTF-8 text",
            text,
            len(text) - 1,
            len(text),
            wanted="UTF-8",
            hint="save the file as UTF-8 text",
            source=source,
            line=before.count("\n") + 1,
        ) from None


def _begins_with_chords(text: str) -> bool:
    """Whether a file's first line is chords, and not an entry or a table of a chart file."""
    from nearhand.notation.chart import looks_like_a_chord

    first = text.split(maxsplit=1)[0] if text.split() else ""
    return first[:1] != "[" and "=" not in text.lstrip().split("\n", 1)[0] and looks_like_a_chord(first)


def _tune_of_chords(text: str, source: str, key: Key | None, conventions: Conventions) -> Tune:
    try:
        return tune_from_text(text, key, conventions)
    except InputError as error:
        line = error.text.count("\n", 0, error.start)
        begin = error.text.rfind("\n", 0, error.start) + 1
        rows = error.text.split("\n") or [""]
        raise InputError(
            error.what,
            rows[line],
            error.start - begin,
            wanted=error.wanted,
            hint=error.hint,
            source=source,
            line=line + 1,
        ) from None


def read_tune(path: str, key: Key | None = None, conventions: Conventions = DEFAULT) -> Tune:
    """Read a chart file, or a tune of an ABC file, as a tune; ``key`` overrides the file's own.

    Raises InputError with the line and column in the file.
    """
    if is_abc_file(path):
        file, number = file_and_number(path)
        return tune_from_abc(read_text(file), file, key, conventions, number)
    return tune_from_file_text(read_text(path), path, key, conventions)


def tune_from_abc(
    text: str, source: str, key: Key | None = None, conventions: Conventions = DEFAULT, number: int | None = None
) -> Tune:
    """Read an ABC file's text as a tune: its first one, or the one with a ``number``; ``key`` overrides its own.

    Raises InputError with the line and column in the file.
    """
    from nearhand.exchange.abc_files import read_abc

    read = read_abc(text, source, number, conventions)
    progression = read.progression or Progression(read.key, ())
    tune = Tune(progression, title=read.title, tempo_bpm=read.tempo_bpm, remarks=read.remarks, melody=read.melody)
    return tune if key is None else tune.read_in(key)


def tune_from_file_text(text: str, source: str, key: Key | None = None, conventions: Conventions = DEFAULT) -> Tune:
    """Read a chart file's text as a tune; a file that begins with chords is read as chords alone.

    Raises InputError with the line and column in the file.
    """
    if _begins_with_chords(text):
        return _tune_of_chords(text, source, key, conventions)
    from nearhand.notation.chart_files import read_chart_file

    chart_file = read_chart_file(text, source)
    try:
        if any(section.melody is not None for section in chart_file.sections):
            from nearhand.verbs.melody_files import tune_with_melody  # most charts have none

            tune = tune_with_melody(chart_file, key, conventions)
        else:
            charts = [section.chart for section in chart_file.sections if section.chart is not None]
            tune = tune_from_charts(charts, key or chart_file.key, conventions)
            bars = sectioned(tune.progression.bars, chart_file.sections)
            tune = tune._replace(progression=tune.progression._replace(bars=bars))
    except InputError as error:
        raise chart_file.placed(error) from None
    return tune._replace(title=chart_file.title, tempo_bpm=chart_file.tempo_bpm, notes=chart_file.notes)


def write_tune(path: str, tune: Tune, replace: bool) -> None:
    """Write a tune as a chart file: to a temporary file beside it first, which then takes its name.

    Raises InputError when the file exists and ``replace`` is not set, or when it cannot be written; nothing is lost
    then.
    """
    place = from_home(path)
    if os.path.exists(place) and not replace:
        raise InputError(f"{path} exists already", path, hint=f"save {path} --over writes over it")
    from nearhand.notation.chart_writing import write_chart_file

    text = write_chart_file(tune.progression, tune.title, tune.tempo_bpm, tune.notes, tune.melody)
    try:
        write_whole(place, text)
    except (OSError, ValueError) as error:
        raise InputError(
            f"{path} cannot be written: {reason_of(error)}", path, hint="choose another folder or name"
        ) from None


def write_whole(path: str, text: str) -> None:
    """Write a file as a whole: to a temporary file beside it first, which then takes its name.

    Raises OSError or ValueError; the old file is then as it was.
    """
    temporary = f"{path}.{os.getpid()}.part"
    try:
        with open(temporary, "w", encoding="utf-8", newline="\n") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        os.replace(temporary, path)
    finally:
        if os.path.exists(temporary):
            os.unlink(temporary)


def charts_in(folder: str) -> tuple[str, ...]:
    """The chart files and ABC files of a folder, by name.

    Raises InputError when there is no such folder or it cannot be read.
    """
    try:
        names = sorted(name for name in os.listdir(from_home(folder)) if name.lower().endswith(SUFFIXES))
    except FileNotFoundError:
        raise InputError(
            f"there is no folder {folder}", folder, wanted="a folder", hint="list FOLDER shows its charts"
        ) from None
    except (OSError, ValueError) as error:
        raise InputError(f"{folder} cannot be read: {reason_of(error)}", folder, wanted="a folder", hint="") from None
    return tuple(os.path.join(folder, name) for name in names)


def reason_of(error: OSError | ValueError) -> str:
    """What the system says of a file; a name that no file can have is a ValueError without words for a player."""
    return getattr(error, "strerror", None) or "its name cannot be used"
